using System.CommandLine;
using System.Globalization;
using Foundress.Book.Forecasting;
using Foundress.Book.Importing;
using Foundress.Book.Wording;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress forecast</c>: foretells jars of many colonies from files.</summary>
internal static class ForecastCommand
{
    private const int UsualParticles = 2_000;

    internal static Command Make(Surroundings around)
    {
        var jars = Needed("--jars", "Jars so far: the columns of 'foundress import jars'.");
        var sites = Needed("--sites", "Where apiaries stand: apiary, latitude, longitude.");
        var targets = Needed("--targets", "Jars to foretell: apiary, colony, date, bees.");
        var inspections = Given("--inspections", "Inspections: apiary, colony, date, frames_of_bees, frames_of_brood.");
        var controls = Given("--controls", "Controls: apiary, colony, agent, start, end. An empty colony means every colony of the apiary.");
        var quantiles = new Option<string?>("--quantiles") { Description = "How many quantiles, 1 to 999: 99 gives q01 to q99. [default: 99]", HelpName = "N" };
        var particles = new Option<string?>("--particles") { Description = $"Possible courses followed for each colony, 64 to 100000. [default: {UsualParticles}]", HelpName = "N" };
        var seed = new Option<string?>("--seed") { Description = "Seed: the same files and seed give the same numbers. [default: 1]", HelpName = "N" };
        var output = Needed("--out", "Where the forecasts are written, as CSV.");
        var command = new Command(
            "forecast",
            """
            Foretell the mites in jars to come, for many colonies at once, from files and without a book.

            A jar is foretold from what was known on its day. A colony without jars is foretold from its
            apiary, an apiary without jars from what is usual for the season. The columns are in docs/csv.md.

            Example:
              foundress forecast --jars jars.csv --sites sites.csv --targets targets.csv --quantiles 99 --seed 1 --out out.csv
            """) { jars, sites, targets, inspections, controls, quantiles, particles, seed, output };
        command.SetAction((parsed, cancellation) =>
        {
            var count = Whole("--quantiles", parsed.GetValue(quantiles), 99, 1, 999);
            var many = Whole("--particles", parsed.GetValue(particles), UsualParticles, 64, 100_000);
            var start = Seed(parsed.GetValue(seed));
            var batch = new ForecastBatch(KnowledgeBase.Load());
            Read("--jars", parsed.GetValue(jars)!, batch.ReadJars, around);
            Read("--sites", parsed.GetValue(sites)!, batch.ReadSites, around);
            if (parsed.GetValue(inspections) is { } seen)
                Read("--inspections", seen, batch.ReadInspections, around);
            if (parsed.GetValue(controls) is { } given)
                Read("--controls", given, batch.ReadControls, around);
            Read("--targets", parsed.GetValue(targets)!, batch.ReadTargets, around);
            foreach (var problem in batch.Problems)
                around.Error.WriteLine($"{problem.File}, row {problem.Row.ToString(CultureInfo.InvariantCulture)}: {problem.Problem}");

            var results = ForecastRun.Foretell(batch, many, start, cancellation);
            var thin = results.Values.Count(one => one.Report.Thin || one.Report.Strays > 0);
            using (var file = Create(parsed.GetValue(output)!))
                ForecastCsv.Write(file, batch.Targets, results, count);
            if (thin > 0)
                around.Error.WriteLine($"{Say.Count(thin, "jar", "jars")} foretold from counts that contradict each other or the model: those rows are rough.");
            around.Out.WriteLine($"{Say.Count(results.Count, "jar", "jars")} foretold from {Say.Count(batch.Jars, "jar", "jars")}, into {parsed.GetValue(output)}.");
            return Task.FromResult(batch.Problems.Count > 0 ? ExitCodes.SomeRejected : ExitCodes.Fine);
        });
        return command;
    }

    private static Option<string?> Needed(string name, string description) => new(name) { Description = description, HelpName = "FILE", Required = true };

    private static Option<string?> Given(string name, string description) => new(name) { Description = description, HelpName = "FILE" };

    private static void Read(string option, string path, Func<Stream, IReadOnlyList<string>> read, Surroundings around)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1 << 16);
            foreach (var unknown in read(file))
                around.Error.WriteLine($"{path}: the column '{unknown}' is not known and was not read.");
        }
        catch (ImportFormatException error)
        {
            throw new UsageException($"{option} '{path}': {error.Message}", error);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new UsageException($"{option}: the file '{path}' cannot be read: {error.Message}", error);
        }
    }

    private static StreamWriter Create(string path)
    {
        try
        {
            return new StreamWriter(path, append: false);
        }
        catch (Exception error) when (error is IOException or UnauthorizedAccessException or ArgumentException or NotSupportedException)
        {
            throw new UsageException($"--out: the file '{path}' cannot be written: {error.Message}", error);
        }
    }

    private static int Whole(string option, string? text, int usual, int least, int most)
    {
        if (text is null)
            return usual;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most
            ? number
            : throw new UsageException(string.Create(CultureInfo.InvariantCulture, $"{option} '{text}': Write a whole number from {least} to {most}."));
    }

    private static ulong Seed(string? text)
    {
        if (text is null)
            return 1;
        return ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw new UsageException($"--seed '{text}': Write a whole number, 0 or more.");
    }
}
