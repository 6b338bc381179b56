using System.Collections.Concurrent;
using Foundress.Storage;

namespace Foundress.Server.Books;

/// <summary>
/// The books of all operations as far as this server has read them, an apiary at a time: the first question about an
/// operation reads through it once, later ones read only what came since, and an apiary is worked out anew only when
/// something came that concerns it.
/// </summary>
/// <param name="store">The book.</param>
internal sealed class ApiaryBooks(BookStore store) : IDisposable
{
    private readonly ConcurrentDictionary<string, OperationParts> _operations = new(StringComparer.Ordinal);

    /// <summary>An operation's parts.</summary>
    internal OperationParts Of(string operation) => _operations.GetOrAdd(operation, id => new OperationParts(store, id));

    /// <summary>Forgets what was read of an operation whose entries were removed.</summary>
    internal void Forget(string operation) => _operations.TryRemove(operation, out _);

    /// <summary>Lets go of what was read.</summary>
    public void Dispose()
    {
        foreach (var parts in _operations.Values)
            parts.Dispose();
    }
}
