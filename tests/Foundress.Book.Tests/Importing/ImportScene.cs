using System.Text;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.Importing;

/// <summary>A book to import into, and short ways to do it.</summary>
internal sealed class ImportScene
{
    internal const string Header = "apiary,colony,date,method,mites,bees";

    internal static readonly DateOnly Today = new(2026, 9, 1);

    private readonly Scribe _scribe = new("home", "Ada", "laptop", new HybridClock(TimeProvider.System), new TimeOrderedIds(TimeProvider.System));

    internal static JarImportRules Rules { get; } = new(Today, ["alcohol-wash", "sugar-shake", "ether-roll"], WeighedLogSpread: 0.08, AssumedLogSpread: 0.2);

    internal Ledger Book { get; } = new();

    internal JarImport Open(string text) => Open(Encoding.UTF8.GetBytes(text));

    internal JarImport Open(byte[] bytes) => JarImport.Open(new MemoryStream(bytes), Book, "home", Rules);

    /// <summary>Imports all rows and writes what is new into the book.</summary>
    internal JarImport Import(string text, out List<RejectedRow> rejected)
    {
        var import = Open(text);
        rejected = [];
        foreach (var row in import.Rows())
        {
            if (row is AcceptedRow accepted)
                Book.Add(accepted.Records.Select(record => _scribe.Write(record.Record, record.Id)));
            else
                rejected.Add((RejectedRow)row);
        }

        return import;
    }

    /// <summary>The problems of a file of one row, as the reader sees them.</summary>
    internal string ProblemOf(string row, string extraColumns = "") =>
        string.Join(" ", Assert.IsType<RejectedRow>(Assert.Single(Open($"{Header}{extraColumns}\n{row}\n").Rows())).Problems);

    internal void Write(Foundress.Book.Records.Record record) => Book.Add([_scribe.Write(record)]);

    internal ApiaryId AddApiary(string name)
    {
        var id = new ApiaryId(_scribe.Ids.Next());
        Write(new ApiaryRecord(id, name));
        return id;
    }

    internal ColonyId AddColony(ApiaryId apiary, string name)
    {
        var id = new ColonyId(_scribe.Ids.Next());
        Write(new ColonyRecord(id, name, apiary));
        return id;
    }
}
