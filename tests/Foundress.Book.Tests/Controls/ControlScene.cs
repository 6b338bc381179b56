using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.Controls;

/// <summary>An apiary of three colonies to use controls on.</summary>
internal sealed class ControlScene
{
    public ControlScene(double? latitude = 50)
    {
        Apiary = Book.Apiary("Orchard", latitude);
        Colonies = [.. Enumerable.Range(1, 3).Select(n => Book.Colony(Apiary, $"{n}", new DateOnly(2025, 4, 1)))];
    }

    public TestBook Book { get; } = new();

    public ApiaryId Apiary { get; }

    public IReadOnlyList<ColonyId> Colonies { get; }

    public ControlId NewControl() => new(Book.Ids.Next());

    /// <summary>A use on all three colonies that is written into the book.</summary>
    public ControlRecord Use(string agent, DateOnly start, int days, params ColonyId[] colonies)
    {
        var record = new ControlRecord(NewControl(), agent, start, colonies.Length > 0 ? colonies : Colonies, start.AddDays(days));
        Book.Write(record);
        return record;
    }
}
