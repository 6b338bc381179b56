using System.Diagnostics;
using System.Globalization;
using Foundress.Book.Forecasting;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Dynamics;
using Foundress.Science.Forecasting;

// The mite engine's speed: bench/MiteEngine/run.sh puts it beside the same loop in C++ and NumPy, in one run.
// dotnet run -c Release --project bench/MiteEngine -- [loop|colony|many] [colonies]
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
const int Days = 365;
const int Particles = 2000;
var knowledge = KnowledgeBase.Load();
var first = new DateOnly(2025, 1, 1);
var season = knowledge.Bees.SeasonAt("temperate", Foundress.Science.Dynamics.Bees.Site.At(48));
var bees = Foundress.Science.Dynamics.Bees.BeeCourses.Of(season, [], [], first, first.AddDays(Days));
var course = ColonyDays.Of(bees, knowledge.Mites.Life, Hemisphere.North, [], []);
var what = args.Length > 0 ? args[0] : "all";
if (what is "all" or "loop")
{
    foreach (var mites in new[] { 20_000f, 20f })
    {
        var ensemble = new MiteEnsemble(Particles, 0);
        var start = Enumerable.Repeat(mites, Particles).ToArray();
        var week = new float[Particles];
        Console.WriteLine($"C# {(mites > 1000 ? "many" : "few")} mites: {Best(40, () => { ensemble.Start(course, 0, start, week); MiteRun.Advance(ensemble, course, Days, 7); }):F2} ms");
    }
}

if (what is "all" or "colony")
{
    Evidence[] jars = [.. new[] { (100, 1), (150, 3), (190, 5), (220, 12), (260, 22), (290, 25) }.Select(jar => Evidence.Jar(jar.Item1, jar.Item2, BeeCount.Counted(300), 0.95, knowledge.Mites.Priors.JarSize))];
    var history = new ColonyHistory(course, 0, 0.005, jars, []);
    var belief = ColonyBelief.Before(history, knowledge.Mites.Priors);
    var filter = new ColonyFilter(Particles);
    FilterReport report = default;
    Console.WriteLine($"one colony, 365 days, 2,000 particles, 6 jars: {Best(40, () => report = filter.Run(history, belief, knowledge.Mites.Priors, Days, 3)):F2} ms ({report.Passes} pass, least effective share {report.LeastEffectiveShare:F3})");
    ColonyOutlook? outlook = null;
    filter.Run(history, belief, knowledge.Mites.Priors, 290, 3);
    Console.WriteLine($"outlook of 75 days with its fan: {Best(20, () => { outlook = filter.Project(course, Days, 0.95, 1); outlook.Fan(); }):F2} ms");
}

if (what is "all" or "many")
{
    var colonies = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 1000;
    const int InApiary = 20;
    int[] jarDays = [10, 60, 100, 130, 170, 200];
    var clock = Stopwatch.StartNew();
    Parallel.For(0, colonies / InApiary, () => new ApiaryForecast(knowledge, Particles), (apiary, _, forecast) =>
    {
        ForecastColony[] all = [.. Enumerable.Range(0, InApiary).Select(colony => new ForecastColony(
            $"{colony}",
            [.. jarDays.Select((day, i) => new ForecastJar(first.AddDays(90 + day), "alcohol-wash", (i + 1) * ((apiary + colony) % 7), BeeCount.Counted(300)))],
            [], []))];
        forecast.Foretell(new HistoryBuilder(knowledge, season), all, [.. Enumerable.Range(0, InApiary).Select(colony => new JarWish(colony, first.AddDays(Days + 70), 300))], (ulong)apiary);
        return forecast;
    }, _ => { });
    var seconds = clock.Elapsed.TotalSeconds;
    Console.WriteLine($"{colonies} colonies on {Environment.ProcessorCount} cores: {seconds:F1} s, that is {seconds * 10000 / colonies:F0} s for 10,000; peak memory {Process.GetCurrentProcess().PeakWorkingSet64 / (1024 * 1024)} MiB");
}

static double Best(int times, Action run)
{
    var best = double.PositiveInfinity;
    for (var i = 0; i < times; i++)
    {
        var clock = Stopwatch.StartNew();
        run();
        best = Math.Min(best, clock.Elapsed.TotalMilliseconds);
    }

    return best;
}
