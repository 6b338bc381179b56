using System.Globalization;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Numerics;

// How often intervals of an apiary hold the truth, at fixed truths. Prints the table of docs/methods/apiary.md.
// dotnet run -c Release --project bench/ApiaryCoverage -- 400
CultureInfo.CurrentCulture = CultureInfo.InvariantCulture;
int repeats = args.Length > 0 ? int.Parse(args[0], CultureInfo.InvariantCulture) : 400;
double[] confidences = [0.5, 0.8, 0.95];
double[] total = new double[9];
int places = 0;
Console.WriteLine("| colonies | k | runs | apiary mean 50 / 80 / 95 | population mean | sampled colony |");
Console.WriteLine("|---|---|---|---|---|---|");
foreach (int sampled in (int[])[3, 8, 20, 60])
{
    foreach (double shape in (double[])[0.3, 1d, 5d])
    {
        double[] hits = new double[9];
        int runs = 0;
        foreach (double level in (double[])[0.2, 1d, 4d, 15d])
        {
            SeededGenerator generator = SeededGenerator.ForPart(7, $"{sampled}/{shape}/{level}");
            for (int run = 0; run < repeats; run++, runs++)
            {
                double[] levels = new double[3 * sampled];
                for (int i = 0; i < levels.Length; i++)
                    levels[i] = generator.NextGamma(shape) * level / 100d / shape;
                ColonyJars[] jars = new ColonyJars[sampled];
                for (int i = 0; i < sampled; i++)
                    jars[i] = new($"colony {i}", [new JarCount(generator.NextPoisson(300d * levels[i]), BeeCount.Counted(300))]);
                ApiaryPosterior posterior = ApiaryPosterior.FromJars(jars, 2 * sampled);
                for (int c = 0; c < 3; c++)
                {
                    hits[c] += posterior.MeanInterval(confidences[c]).Contains(MiteLevel.FromPerBee(levels.Average())) ? 1 : 0;
                    hits[3 + c] += posterior.PopulationMeanInterval(confidences[c]).Contains(MiteLevel.Per100(level)) ? 1 : 0;
                    hits[6 + c] += posterior.Sampled[0].Interval(confidences[c]).Contains(MiteLevel.FromPerBee(levels[0])) ? 1 : 0;
                }
            }
        }

        string Share(int from) => string.Join(" / ", Enumerable.Range(from, 3).Select(i => $"{100d * hits[i] / runs:F1}"));
        Console.WriteLine($"| {sampled} | {shape} | {runs} | {Share(0)} | {Share(3)} | {Share(6)} |");
        for (int i = 0; i < 9; i++)
            total[i] += hits[i] / runs;
        places++;
    }
}

string Mean(int from) => string.Join(" / ", Enumerable.Range(from, 3).Select(i => $"{100d * total[i] / places:F1}"));
Console.WriteLine($"| all | all | | {Mean(0)} | {Mean(3)} | {Mean(6)} |");
