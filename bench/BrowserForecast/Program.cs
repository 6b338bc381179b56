using System.Diagnostics;
using System.Globalization;
using Foundress.Book;
using Foundress.Book.Forecasts;
using Foundress.Book.Forecasts.Exchange;
using Foundress.Book.Jobs;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Knowledge;
using Microsoft.Playwright;

// How long a forecast takes in the worker of the published app, in a real Chromium, beside the same job here in one run.
// dotnet publish src/Foundress.Server -c Release -o PUBLISHED
// dotnet run -c Release --project bench/BrowserForecast -- PUBLISHED [path of chromium]
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args.Length == 0)
{
    Console.Error.WriteLine("Name the folder of the published server: dotnet publish src/Foundress.Server -c Release -o FOLDER");
    return 2;
}

const int Warm = 6;
const int Times = 8;
var today = new DateOnly(2026, 10, 1);
var (entries, apiary) = Book();
var ledger = new Ledger();
ledger.Add(entries);
var setting = new JobSetting(ledger.State, new BroodSeasons(KnowledgeBase.Load()), CultureInfo.InvariantCulture);
(string Name, ForecastRequest Ask)[] asks =
[
    ("a colony-year with 6 jars, 2,000 particles", new(apiary, today, 2000, 365, Ahead: 1)),
    ("the same with 120 days ahead, next jar and fans", new(apiary, today, 2000, 365)),
    ("400 particles, 270 days of the record", new(apiary, today, 400, 270)),
];

var data = Directory.CreateTempSubdirectory("foundress-bench-").FullName;
using var server = Process.Start(new ProcessStartInfo("dotnet")
{
    ArgumentList = { Path.Combine(Path.GetFullPath(args[0]), "Foundress.Server.dll"), "--port", "0", "--data", data },
    RedirectStandardOutput = true,
})!;
try
{
    string? address = null;
    while (address is null && await server.StandardOutput.ReadLineAsync() is { } line)
        address = line.Split(' ').FirstOrDefault(word => word.StartsWith("http://", StringComparison.Ordinal));
    using var playwright = await Playwright.CreateAsync();
    await using var browser = await playwright.Chromium.LaunchAsync(new()
    {
        ExecutablePath = args.Length > 1 ? args[1] : "/usr/bin/chromium",
        Args = ["--no-sandbox", "--disable-gpu", "--disable-background-networking"],
    });
    var page = await browser.NewPageAsync();
    await page.GotoAsync(address!);
    await page.Locator("h1").WaitForAsync();
    await page.EvaluateAsync(
        "async pairs => (await import('/js/store.js')).append('home', JSON.stringify(pairs), false)",
        entries.Select(entry => new[] { entry.Id.ToString(), EntryJson.Write(entry) }).ToArray());
    var started = await page.EvaluateAsync<double>("async () => { const at = performance.now(); await (await import('/js/work.js')).start('en-GB'); return performance.now() - at; }");
    var runtime = "globalThis.getDotnetRuntime(0)";
    var vectors = await page.Workers[0].EvaluateAsync<string>($"() => {runtime}.getAssemblyExports('Foundress.Web').then(web => web.Foundress.Web.Background.Reckoner.Vectors())");
    Console.WriteLine($"Chromium {browser.Version}; the worker was ready after {started:F0} ms; vectors: {vectors}");
    var id = 0;
    foreach (var (name, ask) in asks)
    {
        var input = ForecastJson.Write(ask);
        var beside = new List<double>();
        for (var i = 0; i < Warm + Times; i++)
        {
            beside.Add(await page.EvaluateAsync<double>(
                "async ([id, count, input]) => { const { run } = await import('/js/work.js'); const at = performance.now(); await run(id, 'forecast', 'home', count, input); return performance.now() - at; }",
                new object[] { 1000 + id++, entries.Count, input }));
        }

        var here = new List<double>();
        for (var i = 0; i < Warm + Times; i++)
        {
            var clock = Stopwatch.StartNew();
            var answer = BookJobs.Find(ForecastJob.Called).Run(setting, input).Last();
            here.Add(answer.Output is null ? throw new InvalidOperationException("The job ended without an answer.") : clock.Elapsed.TotalMilliseconds);
        }

        var (best, native) = (beside.Skip(Warm).Min(), here.Skip(Warm).Min());
        Console.WriteLine($"{name}: first {beside[0]:F0} ms, then best {best:F0} and middle {beside.Skip(Warm).Order().ElementAt(Times / 2):F0} ms; here {native:F1} ms; ratio {best / native:F1}");
    }

    var memory = await page.Workers[0].EvaluateAsync<double>($"() => {runtime}.localHeapViewU8().length");
    Console.WriteLine($"memory of the worker's runtime: {memory / (1024 * 1024):F0} MiB");
}
finally
{
    server.Kill(entireProcessTree: true);
    await server.WaitForExitAsync();
    Directory.Delete(data, recursive: true);
}

return 0;

static (List<Entry> Entries, ApiaryId Apiary) Book()
{
    var ids = new TimeOrderedIds(TimeProvider.System);
    var scribe = new Scribe(Operations.Home, "bench", "bench", new HybridClock(TimeProvider.System), ids);
    var apiary = new ApiaryId(ids.Next());
    var colony = new ColonyId(ids.Next());
    List<Entry> entries = [scribe.Write(new ApiaryRecord(apiary, "Bench", 48)), scribe.Write(new ColonyRecord(colony, "1", apiary, new DateOnly(2025, 5, 1)))];
    foreach (var (on, mites) in new[] { (new DateOnly(2025, 11, 1), 4), (new DateOnly(2026, 4, 15), 1), (new DateOnly(2026, 6, 1), 3), (new DateOnly(2026, 7, 10), 6), (new DateOnly(2026, 8, 10), 12), (new DateOnly(2026, 9, 15), 20) })
        entries.Add(scribe.Write(new JarRecord(on, "alcohol-wash", [mites], JarBees.Counted(300), colony)));
    return (entries, apiary);
}
