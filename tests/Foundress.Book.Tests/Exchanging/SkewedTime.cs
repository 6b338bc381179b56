namespace Foundress.Book.Tests.Exchanging;

/// <summary>A device's own wall clock: the true time and how far it is off, which may jump.</summary>
internal sealed class SkewedTime(TimeProvider world, TimeSpan skew) : TimeProvider
{
    public TimeSpan Skew { get; set; } = skew;

    public override DateTimeOffset GetUtcNow() => world.GetUtcNow() + Skew;
}
