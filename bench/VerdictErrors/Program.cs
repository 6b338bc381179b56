using System.Globalization;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;
using Foundress.Science.Verifying;

// How often each verdict is given, and how often intervals hold the truth, at true efficacies. Prints the tables of docs/methods/efficacy.md.
// dotnet run -c Release --project bench/VerdictErrors -- 2000 [scale of the prior of the spread between colonies]
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
int repeats = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 2000;
EfficacyPrior prior = args.Length > 1 ? new(double.Parse(args[1], CultureInfo.InvariantCulture)) : EfficacyPrior.Default;
int[] groups = [3, 8, 20];

Console.WriteLine("| true efficacy | level before | colonies | worked | partly | failed | cannot tell | 90 % interval holds it | median limits |");
Console.WriteLine("|---|---|---|---|---|---|---|---|---|");
EfficacyTest test = new(0.95, 0.1, 0.9);
double held = 0d;
int cells = 0;
foreach (double truth in (double[])[0.95, 0.8])
{
    foreach (double level in (double[])[3d, 8d])
    {
        foreach (int colonies in groups)
        {
            Row row = Run(truth, level, colonies, 0.5, 300, test, prior, repeats);
            Console.WriteLine($"| {100d * truth:0} % | {level} | {colonies} | {row.Share(Verdict.Worked)} | {row.Share(Verdict.Partly)} | {row.Share(Verdict.Failed)} | {row.Share(Verdict.CannotTell)} | {row.Held(repeats)} | {row.Middle()} |");
        }
    }
}

Console.WriteLine();
Console.WriteLine("| true efficacy | spread between colonies | colonies | 90 % interval holds it |");
Console.WriteLine("|---|---|---|---|");
foreach (double truth in (double[])[0.95, 0.8, 0.5])
{
    foreach (double spread in (double[])[0d, 0.5, 1d])
    {
        foreach (int colonies in groups)
        {
            Row row = Run(truth, 5d, colonies, spread, 300, test, prior, repeats);
            Console.WriteLine($"| {100d * truth:0} % | {spread} | {colonies} | {row.Held(repeats)} |");
            held += row.Hits / (double)row.Runs;
            cells++;
        }
    }
}

Console.WriteLine($"| all | all | all | {100d * held / cells:0.0} |");

static Row Run(double truth, double level, int colonies, double spread, int bees, EfficacyTest test, EfficacyPrior prior, int repeats)
{
    SeededGenerator generator = SeededGenerator.ForPart(11, $"{truth}/{level}/{colonies}/{spread}");
    Row row = new();
    for (int run = 0; run < repeats; run++)
    {
        JarPair[] pairs = new JarPair[colonies];
        for (int i = 0; i < colonies; i++)
        {
            // Levels before: gamma with a standard deviation as large as the mean; what is left: gamma with the given spread.
            double before = generator.NextGamma(1d) * level / 100d;
            double left = (1d - truth) * (spread > 0d ? generator.NextGamma(1d / (spread * spread)) * spread * spread : 1d);
            pairs[i] = new([new JarCount(generator.NextPoisson(bees * before), BeeCount.Counted(bees))], [new JarCount(generator.NextPoisson(bees * before * left), BeeCount.Counted(bees))]);
        }

        row.Add(EfficacyOf.Group(pairs, prior), test, truth);
    }

    return row;
}

/// <summary>Counts of one row of the tables.</summary>
internal sealed class Row
{
    private readonly int[] _verdicts = new int[4];
    private readonly List<double> _lower = [];
    private readonly List<double> _upper = [];

    public int Hits { get; private set; }

    public int Runs { get; private set; }

    public void Add(EfficacyOutcome outcome, EfficacyTest test, double truth)
    {
        Runs++;
        if (outcome.Efficacy is not { } efficacy)
        {
            // No mite before: refused, which tells nothing.
            _verdicts[(int)Verdict.CannotTell]++;
            Hits++;
            return;
        }

        _verdicts[(int)test.Judge(efficacy)]++;
        EfficacyInterval interval = efficacy.Interval(test.Confidence);
        Hits += interval.Contains(truth) ? 1 : 0;
        _lower.Add(interval.Lower);
        _upper.Add(interval.Upper);
    }

    public string Share(Verdict verdict) => $"{100d * _verdicts[(int)verdict] / Runs:0.0}";

    public string Held(int repeats) => $"{100d * Hits / repeats:0.0}";

    public string Middle()
    {
        _lower.Sort();
        _upper.Sort();
        return $"{100d * _lower[_lower.Count / 2]:0} to {100d * _upper[_upper.Count / 2]:0} %";
    }
}
