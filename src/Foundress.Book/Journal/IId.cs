namespace Foundress.Book.Journal;

/// <summary>A typed identifier over a <see cref="Guid"/>, so that a colony cannot be passed where an apiary is meant.</summary>
/// <typeparam name="TSelf">The identifier itself.</typeparam>
public interface IId<TSelf>
    where TSelf : struct, IId<TSelf>
{
    /// <summary>The bare identifier.</summary>
    Guid Value { get; }

    /// <summary>Wraps a bare identifier.</summary>
    static abstract TSelf From(Guid value);
}
