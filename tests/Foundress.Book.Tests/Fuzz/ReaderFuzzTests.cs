using System.Text;
using System.Text.Json;
using CsCheck;
using Foundress.Book.Choosing;
using Foundress.Book.Demo;
using Foundress.Book.Forecasting;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Knowledge;

namespace Foundress.Book.Tests.Fuzz;

/// <summary>Every reader of what comes from outside: whatever the file holds, it is read, or refused in the reader's own words, and nothing else.</summary>
public sealed class ReaderFuzzTests
{
    private static readonly KnowledgeBase Facts = KnowledgeBase.Load();

    private static readonly DateOnly Today = new(2026, 9, 1);

    private static readonly Entry[] Entries = [.. DemoBook.Entries(Facts, DemoBook.DefaultSeed, Today)];

    [Fact]
    public void Controls_AnyFile_AreReadOrRefused()
    {
        var book = new Ledger();
        book.Add(Entries);
        Damage.To(
            "apiary,colony,agent,start,end,ending,quantity,batch,withdrawal_days,reason,note\r\n"
            + "Mill orchard,M13;M14,formic-acid-long,2026-07-20,2026-07-30,as planned,2 strips,\"B 7\",0,\"over; the line\",\r\n"
            + "Heather bank,all,oxalic-acid-trickled,2025-12-20,,,50 mL,,,,\"two\nlines\"\r\n"
            + "Nowhere,1,unheard of,2026-01-01,2025-01-01,stopped early,,,x,,\r\n").Sample(
            bytes =>
            {
                foreach (var keep in new[] { false, true })
                {
                    try
                    {
                        var file = ControlImport.Read(new MemoryStream(bytes), book, "demo", Facts, Today, keep);
                        Assert.All(file.Rejected, row => Assert.NotEmpty(row.Problems));
                        Assert.All(file.Uses.SelectMany(use => use.Records), one => Assert.NotNull(RecordJson.TryRead(RecordKinds.Of(one.Record), RecordJson.Write(one.Record), out _)));
                    }
                    catch (ImportFormatException error)
                    {
                        Assert.NotEmpty(error.Message);
                    }
                }
            },
            iter: 3_000);
    }

    [Fact]
    public void Temperatures_AnyFile_AreReadOrRefused() =>
        Damage.To("day;low;high\n2026-07-01;11.5;24\n2026-07-02;-3;8,5\n2026-07-03;12;31\n").Sample(
            bytes => Import(() =>
            {
                var file = TemperatureImport.Read(new MemoryStream(bytes));
                Assert.All(file.Days.Values, day => Assert.True(day.Low >= -60 && day.High <= 60 && day.Low <= day.High));
                return file;
            }),
            iter: 4_000);

    [Fact]
    public void CountedJars_AnyFile_AreReadOrRefused() =>
        Damage.To("keeper,bees,half cup\nAda,312,x\nBea,287,\n").Sample(bytes => Import(() => CountedJarsFile.Read(new MemoryStream(bytes))), iter: 4_000);

    [Theory]
    [InlineData("sites", "apiary,latitude,longitude,altitude\nHome,51.2,4.4,20\nSüd,-33.9,18.4,\n")]
    [InlineData("inspections", "apiary;colony;date;frames_of_bees;frames_of_brood\nHome;1;2026-05-01;8;5,5\nSüd;2;2026-05-02;;3\n")]
    [InlineData("controls", "apiary,colony,agent,start,end\nHome,1,formic-acid-long,2026-07-20,2026-07-30\nHome,,oxalic-acid-trickled,2025-12-20,\n")]
    [InlineData("jars", "apiary,colony,date,method,mites,bees\nHome,1,2026-07-01,alcohol-wash,20,310\nSüd,2,2026-08-01,sugar-shake,0,290\n")]
    [InlineData("targets", "apiary,colony,date,bees\nHome,1,2026-08-01,300\nHome,2,2026-08-02,310\n")]
    public void Forecasts_AnyFile_AreReadOrRefused(string what, string good) =>
        Damage.To(good).Sample(
            bytes => Import(() =>
            {
                var batch = new ForecastBatch(Facts);
                batch.ReadSites(new MemoryStream("apiary,latitude,longitude\nHome,51.2,4.4\n"u8.ToArray()));
                var unknown = what switch
                {
                    "sites" => batch.ReadSites(new MemoryStream(bytes)),
                    "inspections" => batch.ReadInspections(new MemoryStream(bytes)),
                    "controls" => batch.ReadControls(new MemoryStream(bytes)),
                    "jars" => batch.ReadJars(new MemoryStream(bytes)),
                    _ => batch.ReadTargets(new MemoryStream(bytes)),
                };
                Assert.All(batch.Problems, problem => Assert.NotEmpty(problem.File));
                return unknown;
            }),
            iter: 2_500);

    [Fact]
    public void Entries_AnyText_AreReadOrRefused() =>
        Damage.To(Encoding.UTF8.GetString(EntryJson.WriteMany(Entries.Take(3)))).Sample(
            bytes =>
            {
                try
                {
                    var read = EntryJson.ReadMany(bytes);
                    // What was taken can be passed on and read again, and folded.
                    Assert.Equal(read, EntryJson.ReadMany(EntryJson.WriteMany(read)));
                    var book = new Ledger();
                    book.Add(read);
                    Assert.NotNull(book.State);
                }
                catch (EntryFormatException error)
                {
                    Assert.NotEmpty(error.Message);
                }

                try
                {
                    EntryJson.Read(Encoding.UTF8.GetString(bytes));
                }
                catch (EntryFormatException error)
                {
                    Assert.NotEmpty(error.Message);
                }
            },
            iter: 6_000);

    [Fact]
    public void Records_AnyPayloadOfAnyKind_AreReadOrSaidToBeUnreadable()
    {
        string[] kinds = [.. typeof(RecordKinds).GetFields().Where(field => field is { IsLiteral: true } && field.FieldType == typeof(string)).Select(field => (string)field.GetRawConstantValue()!), "unheard-of"];
        Entry[] one = [.. Entries.GroupBy(entry => entry.Kind).Select(group => group.MaxBy(entry => entry.Payload.Length)!)];
        Gen.Int[0, one.Length - 1].SelectMany(n => Gen.Select(Damage.To(one[n].Payload), Gen.OneOf(Gen.Const(one[n].Kind), Gen.Const(one[n].Kind), Gen.Int[0, kinds.Length - 1].Select(k => kinds[k])))).Sample(
            (bytes, kind) =>
            {
                var payload = Encoding.UTF8.GetString(bytes);
                var record = RecordJson.TryRead(kind, payload, out var problem);
                if (record is null && problem is null)
                    Assert.Equal("null", payload.Trim());
                // The journal takes only payloads that are JSON objects; of those, all are kept.
                if (!IsObject(payload))
                    return;
                var entry = Entries[0] with { Kind = kind, Payload = payload };
                var book = new Ledger();
                book.Add([entry]);
                Assert.Equal(record is null, book.State.Unreadable.Any(kept => kept.Entry == entry && !kept.Problem.Contains("makes no sense", StringComparison.Ordinal)));
                Assert.Equal([entry], book.Entries);
                // What makes sense can be written again; numbers beyond all bounds cannot.
                if (book.State.Unreadable.Count == 0)
                    Assert.NotEmpty(RecordJson.Write(record!));
            },
            iter: 8_000);
    }

    private static bool IsObject(string payload)
    {
        try
        {
            using var document = JsonDocument.Parse(payload);
            return document.RootElement.ValueKind == JsonValueKind.Object;
        }
        catch (JsonException)
        {
            return false;
        }
    }

    private static void Import(Func<object> read)
    {
        try
        {
            Assert.NotNull(read());
        }
        catch (ImportFormatException error)
        {
            Assert.NotEmpty(error.Message);
        }
    }
}
