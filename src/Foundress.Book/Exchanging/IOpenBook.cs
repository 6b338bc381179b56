using Foundress.Book.Journal;

namespace Foundress.Book.Exchanging;

/// <summary>The book that is open on a device, as its exchange with the server sees it.</summary>
public interface IOpenBook
{
    /// <summary>The device's clock.</summary>
    HybridClock Clock { get; }

    /// <summary>Every entry of the open book.</summary>
    IEnumerable<Entry> Entries { get; }

    /// <summary>
    /// Takes in entries: by id, and where one id was given to two entries the one of them that <see cref="Ledger.ComesBefore"/>
    /// names is kept. They are on the device's disk when this returns.
    /// </summary>
    /// <param name="operation">The operation they belong to. Entries of another one are passed over.</param>
    /// <param name="entries">The entries.</param>
    /// <param name="pending">True when the server still has to be given them.</param>
    /// <returns>How many were new to the open book.</returns>
    Task<int> TakeInAsync(string operation, IEnumerable<Entry> entries, bool pending);
}
