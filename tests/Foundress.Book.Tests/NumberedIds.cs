using Foundress.Book.Journal;

namespace Foundress.Book.Tests;

/// <summary>Identifiers that count up, so a failing test reads the same every time.</summary>
internal sealed class NumberedIds(int seed) : IIdSource
{
    private int _next;

    public Guid Next() => new(seed, 0, 0, [0, 0, 0, 0, .. BitConverter.GetBytes(++_next).Reverse()]);
}
