using System.Globalization;
using Foundress.Book.Forecasting;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Forecasting;
using Foundress.Science.Numerics;
using ForecastEvaluation;

// Foretells each later jar of the open trial from the earlier ones, given the arm. Prints the tables of docs/methods/forecast-evaluation.md.
// dotnet run -c Release --project bench/ForecastEvaluation -- PATH/autumn-trial.csv [particles] [seed]
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
if (args.Length == 0)
{
    Console.Error.WriteLine("Name the trial's table: dotnet run -c Release --project bench/ForecastEvaluation -- ../shared/data/autumn-trial.csv");
    return 2;
}

var particles = args.Length > 1 ? int.Parse(args[1], CultureInfo.InvariantCulture) : 2000;
var seed = args.Length > 2 ? ulong.Parse(args[2], CultureInfo.InvariantCulture) : 1UL;
var knowledge = KnowledgeBase.Load();
var trial = Trial.Read(args[0], knowledge);
var wishes = trial.Colonies.SelectMany((colony, i) => colony.Jars.OrderBy(jar => jar.On).Skip(1).Select(jar => (Wish: new JarWish(i, jar.On, (int)jar.Bees.Bees), Seen: jar))).ToArray();

// A jar of a day is foretold from earlier days only, so no jar of that day is given, not even of another colony.
var builder = new HistoryBuilder(knowledge, trial.Latitude);
var forecast = new ApiaryForecast(knowledge, particles);
List<(string Name, Func<int, JarPrediction> Predict)> methods = [];
var visits = wishes.Select(wish => wish.Wish.On).Distinct().Order().ToArray();
var thin = 0;

JarPrediction[] Foretell(bool inspections)
{
    var predictions = new JarPrediction[wishes.Length];
    foreach (var visit in visits)
    {
        var earlier = trial.Colonies.Select(colony => colony with
        {
            Jars = [.. colony.Jars.Where(jar => jar.On < visit)],
            Inspections = inspections ? [.. colony.Inspections.Where(seen => seen.On < visit)] : [],
        }).ToArray();
        var today = Enumerable.Range(0, wishes.Length).Where(i => wishes[i].Wish.On == visit).ToArray();
        var found = forecast.Foretell(builder, earlier, [.. today.Select(i => wishes[i].Wish)], seed);
        for (var j = 0; j < today.Length; j++)
        {
            predictions[today[j]] = found[j].Prediction;
            thin += found[j].Report.Thin ? 1 : 0;
        }
    }

    return predictions;
}

JarPrediction Plain(int i, double growth)
{
    var (wish, _) = wishes[i];
    var last = trial.Colonies[wish.Colony].Jars.Where(jar => jar.On < wish.On).MaxBy(jar => jar.On)!;
    var generator = SeededGenerator.ForPart(seed, $"plain {i}");
    var loads = new float[particles];
    var factor = Math.Exp(growth * (wish.On.DayNumber - last.On.DayNumber));
    for (var p = 0; p < particles; p++)
        loads[p] = (float)(generator.NextGamma(last.Mites + 0.5) / last.Bees.Bees * factor * generator.NextGamma(knowledge.Mites.Priors.JarSize) / knowledge.Mites.Priors.JarSize);
    return JarPrediction.Of(loads, BeeCount.Counted(wish.Bees), 1, knowledge.Mites.Priors);
}

var bare = Foretell(inspections: false);
var seen = Foretell(inspections: true);
methods.Add(("this forecast", i => bare[i]));
methods.Add(("this forecast, bees and brood seen", i => seen[i]));
methods.Add(("persistence", i => Plain(i, 0)));
methods.Add(("2.1 % a day", i => Plain(i, 0.021)));
Console.WriteLine($"{wishes.Length} jars, {particles} particles, seed {seed}, thin {thin}");
Console.WriteLine("| jars | forecast | n | in 50 % | in 80 % | in 90 % | below median | CRPS of log1p(level) |");
Console.WriteLine("|---|---|---|---|---|---|---|---|");
(string Name, Func<int, bool> Which)[] parts =
[
    ("all", _ => true),
    .. trial.Arms.Distinct().Order(StringComparer.Ordinal).Select(arm => (arm, (Func<int, bool>)(i => trial.Arms[wishes[i].Wish.Colony] == arm))),
    .. new[] { (0, 30), (30, 60), (60, 200) }.Select(span => ($"{span.Item1} to {span.Item2} days after the start", (Func<int, bool>)(i => Days(i) >= span.Item1 && Days(i) < span.Item2))),
];
foreach (var (part, which) in parts)
{
    foreach (var (name, predict) in methods)
    {
        var score = new Score();
        for (var i = 0; i < wishes.Length; i++)
        {
            if (which(i))
                score.Add(predict(i), wishes[i].Seen.Mites, wishes[i].Seen.Bees.Bees);
        }

        Console.WriteLine($"| {part} | {name} | {score.Jars} | {score.Row} |");
    }
}

// Quantiles of the levels foretold and seen, for each arm and visit: where the forecast lies, not only how often it errs.
Console.WriteLine();
Console.WriteLine("| arm | day | n | foretold 10 % | median | 90 % | seen 10 % | median | 90 % |");
Console.WriteLine("|---|---|---|---|---|---|---|---|---|");
foreach (var arm in trial.Arms.Distinct().Order(StringComparer.Ordinal))
{
    foreach (var visit in visits.GroupBy(DaysOf).OrderBy(group => group.Key))
    {
        var jars = Enumerable.Range(0, wishes.Length).Where(i => trial.Arms[wishes[i].Wish.Colony] == arm && DaysOf(wishes[i].Wish.On) == visit.Key).ToArray();
        double Foretold(double chance) => jars.Average(i => bare[i].Level(Chance.Of(chance)).Per100Bees);
        double Seen(double share) => jars.Select(i => 100d * wishes[i].Seen.Mites / wishes[i].Seen.Bees.Bees).Order().ElementAt((int)(share * (jars.Length - 1)));
        Console.WriteLine($"| {arm} | {visit.Key} | {jars.Length} | {Foretold(0.1):F2} | {Foretold(0.5):F2} | {Foretold(0.9):F2} | {Seen(0.1):F2} | {Seen(0.5):F2} | {Seen(0.9):F2} |");
    }
}

return 0;

string DaysOf(DateOnly day) => day.Month switch { 10 => "about 25", 11 => "about 47", _ => "about 143" };

int Days(int i) => wishes[i].Wish.On.DayNumber - trial.Colonies[wishes[i].Wish.Colony].Jars.Min(jar => jar.On).DayNumber;
