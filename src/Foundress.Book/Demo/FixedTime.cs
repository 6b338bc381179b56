namespace Foundress.Book.Demo;

/// <summary>A clock that stands where it is put, for records written down on invented days.</summary>
internal sealed class FixedTime : TimeProvider
{
    private DateTimeOffset _now;

    public override DateTimeOffset GetUtcNow() => _now;

    internal void PutAt(DateOnly day, int minute) => _now = new DateTimeOffset(day.ToDateTime(new TimeOnly(9, 0)), TimeSpan.Zero).AddMinutes(minute);
}
