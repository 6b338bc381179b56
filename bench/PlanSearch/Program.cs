using System.Diagnostics;
using System.Globalization;
using Foundress.Book.Planning;
using Foundress.Knowledge;
using Foundress.PlanSearchBench;

var culture = CultureInfo.InvariantCulture;
var colonies = args.Length > 0 ? int.Parse(args[0], culture) : 20;
var (book, apiary) = InventedApiary.Of(colonies, inspected: true);
var planner = new ControlPlanner(book, KnowledgeBase.Load(), culture);
for (var round = 0; round < 3; round++)
{
    var watch = Stopwatch.StartNew();
    var cpu = Process.GetCurrentProcess().TotalProcessorTime;
    var longest = TimeSpan.Zero;
    var last = TimeSpan.Zero;
    var doing = string.Empty;
    var stages = new List<string>();
    ControlPlans? plans = null;
    foreach (var step in planner.Steps(apiary, InventedApiary.Today))
    {
        var now = watch.Elapsed;
        if (now - last > longest)
            longest = now - last;
        last = now;
        var stage = step.Doing.Split(':')[0];
        if (stage != doing)
        {
            stages.Add(string.Create(culture, $"{stage} at {now.TotalMilliseconds:0} ms"));
            doing = stage;
        }

        plans = step.Plans;
    }

    Console.WriteLine(string.Create(culture, $"{colonies} colonies: {watch.Elapsed.TotalMilliseconds:0} ms ({(Process.GetCurrentProcess().TotalProcessorTime - cpu).TotalMilliseconds:0} ms of processor time); longest step {longest.TotalMilliseconds:0} ms; {string.Join(", ", stages)}"));
    if (round < 2)
        continue;
    Console.WriteLine(plans!.Sentence);
    Console.WriteLine(plans.Searched);
    foreach (var choice in plans.Choices)
    {
        Console.WriteLine(string.Create(culture, $"- [{string.Join(", ", choice.Virtues)}] {choice.Title}: {string.Join("; ", choice.Controls.Select(control => $"{control.Agent} {control.Start:yyyy-MM-dd} to {control.End:yyyy-MM-dd}"))} peak {choice.Peak:0.00} holds {choice.Holds} days over {choice.DaysOver:0.0}"));
        Console.WriteLine("    " + choice.Sentence);
    }

    foreach (var dropped in plans.Dropped)
        Console.WriteLine("  " + dropped.Reason);
}

// A small case with nothing left aside, beside the usual search: what the first reckoning saves, and whether it misses anything.
var (small, place) = InventedApiary.Of(3, inspected: true);
var usual = new PlanOptions { Ahead = 126, Step = 21, SearchColonies = 3, Tolerance = 0.25 };
foreach (var (name, options) in new[] { ("usual search", usual), ("every plan that no sure rule drops", usual with { Runs = int.MaxValue }) })
{
    var watch = Stopwatch.StartNew();
    var plans = new ControlPlanner(small, KnowledgeBase.Load(), culture).Of(place, InventedApiary.Today, options);
    Console.WriteLine(string.Create(culture, $"3 colonies, {name}: {watch.Elapsed.TotalMilliseconds:0} ms. {plans.Searched}"));
    foreach (var choice in plans.Choices)
        Console.WriteLine(string.Create(culture, $"  [{string.Join(", ", choice.Virtues)}] {string.Join("; ", choice.Controls.Select(control => $"{control.Agent} {control.Start:yyyy-MM-dd}"))} peak {choice.Peak:0.000}"));
}
