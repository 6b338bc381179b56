using System.Text.Json;
using System.Text.Json.Nodes;
using Foundress.Book.Demo;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Knowledge;
using Foundress.Science.Estimation;
using Json.Schema;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests.Published;

/// <summary>The published JSON Schema of entries, evaluated by an implementation that knows nothing of our reader, and held against that reader.</summary>
public sealed class EntrySchemaTests
{
    private const string Update = "FOUNDRESS_UPDATE_DOCS";

    private static readonly JsonSchema Schema = JsonSchema.FromText(EntrySchema.Text());
    private static readonly Dictionary<string, Entry> Examples = Every().GroupBy(entry => entry.Kind).ToDictionary(group => group.Key, group => group.OrderByDescending(entry => entry.Payload.Length).First());

    public static TheoryData<string> Kinds => [.. RecordKinds.All];

    [Fact]
    public void Document_CommittedCopy_IsTheOneMadeFromTheRecords()
    {
        var file = Path.Combine(Root(), "docs", "schema", "entry.schema.json");
        if (Environment.GetEnvironmentVariable(Update) == "1")
            File.WriteAllText(file, EntrySchema.Text());
        Assert.True(File.Exists(file) && File.ReadAllText(file) == EntrySchema.Text(), $"{file} is not up to date. Run this test with {Update}=1 and look at what changed: entries that were valid must stay so.");
    }

    [Fact]
    public void Evaluate_EveryEntryOfTheDemoBook_IsValid()
    {
        foreach (var entry in DemoBook.Entries(TestBook.Knowledge, DemoBook.DefaultSeed, TestBook.Today))
            Assert.True(Accepts(EntryJson.Write(entry)), EntryJson.Write(entry));
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Evaluate_ExampleOfEachKind_IsValid(string kind) => Assert.True(Accepts(EntryJson.Write(Examples[kind])), Examples[kind].Payload);

    // Each field taken away or given another type: the schema refuses what the reader refuses.
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Evaluate_PayloadMutated_IsRefusedWhereTheReaderRefusesIt(string kind)
    {
        var refused = 0;
        foreach (var payload in Mutants(JsonNode.Parse(Examples[kind].Payload)!.AsObject()))
        {
            var read = RecordJson.TryRead(kind, payload, out _) is not null;
            var accepted = Accepts(EntryJson.Write(Examples[kind] with { Payload = payload }));
            // The reader alone puts up with a number in the place of a name out of a list; nobody should write one.
            Assert.True(read == accepted || (read && payload.EndsWith(":7}", StringComparison.Ordinal)), $"{(read ? "read" : "not read")}: {payload}");
            refused += accepted ? 0 : 1;
        }

        Assert.True(kind is RecordKinds.Policy ? refused > 10 : refused > 2, $"only {refused} mutants were refused");
    }

    [Fact]
    public void Evaluate_EnvelopeMutated_IsRefusedByBoth()
    {
        var whole = JsonNode.Parse(EntryJson.Write(Examples[RecordKinds.Strike]))!.AsObject();
        var mutants = whole.Select(field => field.Key).SelectMany(name => new[] { With(whole, name, null), With(whole, name, true), With(whole, name, "") })
            .Append(With(whole, "clock", "0199a3c1f2b4")).Append(With(whole, "id", "7")).Append(With(whole, "schema", 0)).Append(With(whole, "schema", 1.5)).Append(With(whole, "more", 1));
        foreach (var mutant in mutants)
        {
            Assert.False(Accepts(mutant), mutant);
            Assert.Throws<EntryFormatException>(() => EntryJson.Read(mutant));
        }
    }

    [Fact]
    public void Evaluate_EntryOfANewerVersion_IsValid()
    {
        Assert.True(Accepts(EntryJson.Write(Examples[RecordKinds.Strike] with { Kind = "of-tomorrow" })));
        Assert.True(Accepts(EntryJson.Write(Examples[RecordKinds.Strike] with { Schema = 2, Payload = "{}" })));
    }

    private static bool Accepts(string json)
    {
        using var document = JsonDocument.Parse(json);
        return Schema.Evaluate(document.RootElement).IsValid;
    }

    private static IEnumerable<string> Mutants(JsonObject whole)
    {
        foreach (var name in whole.Select(field => field.Key))
        {
            yield return With(whole, name, null);
            foreach (var other in new JsonNode[] { "text", 7, true, new JsonObject(), new JsonArray(), "2026-13-99x" })
            {
                if (other.GetValueKind() != whole[name]!.GetValueKind() || other.ToString() == "2026-13-99x")
                    yield return With(whole, name, other);
            }

            // One level down: lists and parts.
            if (whole[name] is JsonArray { Count: > 0 } list)
                yield return With(whole, name, new JsonArray([.. list.Skip(1).Select(item => item!.DeepClone()), list[0]!.GetValueKind() == JsonValueKind.Number ? JsonValue.Create("x") : JsonValue.Create(1)]));
            if (whole[name] is JsonObject part)
            {
                foreach (var inner in part.Select(field => field.Key))
                {
                    yield return With(whole, name, JsonNode.Parse(With(part, inner, new JsonObject())));
                    yield return With(whole, name, JsonNode.Parse(With(part, inner, null)));
                }
            }
        }
    }

    // Null takes the field away.
    private static string With(JsonObject whole, string name, JsonNode? value)
    {
        var copy = whole.DeepClone().AsObject();
        copy.Remove(name);
        if (value is not null)
            copy[name] = value.DeepClone();
        return copy.ToJsonString();
    }

    private static IEnumerable<Entry> Every()
    {
        var book = new TestBook();
        var (apiary, colony, other) = (new ApiaryId(book.Ids.Next()), new ColonyId(book.Ids.Next()), new ColonyId(book.Ids.Next()));
        var (round, control, jar) = (new RoundId(book.Ids.Next()), new ControlId(book.Ids.Next()), new EntryId(book.Ids.Next()));
        var day = new DateOnly(2026, 6, 1);
        var months = Enumerable.Repeat(12.5, 12).ToArray();
        Record[] records =
        [
            new ApiaryRecord(apiary, "Orchard", 50, -1, "temperate", "own", "by the wall", 120, 2, 10),
            new ColonyRecord(colony, "1", apiary, day, "calm"),
            new ColonyMoved(colony, apiary, day, "by night"),
            new ColonyDied(colony, day, "robbed"),
            new ColonySplit(colony, other, "1b", day, 5, 3),
            new ColoniesUnited(colony, other, day),
            new InspectionRecord(colony, day, 10, 6, true, false, "fine", false),
            new QueenRecord(colony, day, QueenEvent.Swarmed, 0.5, "seen"),
            new ColonyBegan(colony, day, ColonyBeginning.Package, 1.5, 4, 0, "hived"),
            new BroodRemoved(colony, day, RemovedBrood.Drone, 0.5, "frame"),
            new RoundRecord(round, day, "after the peak", "alcohol-wash", "three", "1", [new ApiaryDraw(apiary, [colony], [other], new EarlyStop(1, 3, 0.1, 2, 300))]),
            new RoundSkip(round, colony, "queen not found", day),
            new RoundStop(round, apiary, "clear", day),
            new JarRecord(day, "alcohol-wash", [5, 2], JarBees.Counted(300, "half-cup"), colony, round, null, "two washes"),
            new JarPlaced(jar, colony),
            new ControlRecord(control, "thymol", day, [colony], day.AddDays(28), "gel", "50 g", "B7", "shop", "receipt", "Ada", "vet", 0, [jar], "over the line", 12, 25, "dry", "note"),
            new ControlEnded(control, day, ControlEnding.StoppedEarly, [colony], "hot"),
            new AgentRecord("thymol", "Thymol", "thymol", ["T"], 28, 12, 30, SuperRule.NotOn, 7, 0, 14, 0.9, false, "label", "note", 2.5),
            new ControlPlanRecord(apiary, [colony], [new PlannedUse("thymol", day, day.AddDays(28))], day, 0.1, 2.5, "note"),
            new NormalsRecord(apiary, months, months, "station"),
            new MiteFallRecord(colony, day, 30, 3, 0.5, true, false, false, true, "note"),
            new OpenedBroodRecord(colony, day, BroodKind.Drone, 100, 7, 9, "note"),
            new PolicyRecord("Hill bees", "own", 2, 3, 0.1, 0.9, 0.95, UnitSystem.Metric, "half-cup", 300, 0.1, Jurisdiction.EuropeanUnion, true, ["pan"], true, "a", "b", "c", 0.1),
            new Strike(jar, "typed wrongly"),
            new DueSnoozed("jar:1", day, "rain"),
            new ApiaryDays(apiary, day, day.AddDays(60)),
        ];
        foreach (var record in records)
            book.Write(record);
        return book.Ledger.Entries;
    }

    private static string Root()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "Foundress.slnx")))
                return folder.FullName;
        }

        throw new DirectoryNotFoundException("No folder above the test holds Foundress.slnx.");
    }
}
