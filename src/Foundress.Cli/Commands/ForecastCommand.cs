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
        var jars = Needed("--jars", ForecastCommandTexts.Jars);
        var sites = Needed("--sites", ForecastCommandTexts.Sites);
        var targets = Needed("--targets", ForecastCommandTexts.Targets);
        var inspections = Given("--inspections", ForecastCommandTexts.Inspections);
        var controls = Given("--controls", ForecastCommandTexts.Controls);
        var quantiles = new Option<string?>("--quantiles") { Description = ForecastCommandTexts.Quantiles, HelpName = "N" };
        var particles = new Option<string?>("--particles") { Description = ForecastCommandTexts.FormatParticles(UsualParticles), HelpName = "N" };
        var seed = new Option<string?>("--seed") { Description = ForecastCommandTexts.Seed, HelpName = "N" };
        var output = Needed("--out", ForecastCommandTexts.Out);
        var command = new Command("forecast", ForecastCommandTexts.Description) { jars, sites, targets, inspections, controls, quantiles, particles, seed, output };
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
                around.Error.WriteLine(SharedTexts.FormatRowProblem(problem.File, problem.Row, problem.Problem));

            var results = ForecastRun.Foretell(batch, many, start, cancellation);
            var thin = results.Values.Count(one => one.Report.Thin || one.Report.Strays > 0);
            using (var file = Create(parsed.GetValue(output)!))
                ForecastCsv.Write(file, batch.Targets, results, count);
            if (thin > 0)
                around.Error.WriteLine(ForecastCommandTexts.FormatRough(Say.Jars(thin)));
            around.Out.WriteLine(ForecastCommandTexts.FormatDone(Say.Jars(results.Count), Say.Jars(batch.Jars), parsed.GetValue(output)!));
            return Task.FromResult(batch.Problems.Count > 0 ? ExitCodes.SomeRejected : ExitCodes.Fine);
        });
        return command;
    }

    private static Option<string?> Needed(string name, string description) => new(name) { Description = description, HelpName = SharedTexts.WordFile, Required = true };

    private static Option<string?> Given(string name, string description) => new(name) { Description = description, HelpName = SharedTexts.WordFile };

    private static void Read(string option, string path, Func<Stream, IReadOnlyList<string>> read, Surroundings around)
    {
        try
        {
            using var file = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read, bufferSize: 1 << 16);
            foreach (var unknown in read(file))
                around.Error.WriteLine(SharedTexts.FormatColumnUnknown(path, unknown));
        }
        catch (ImportFormatException error)
        {
            throw UsageException.OfValue(option, path, error.Message, error);
        }
        catch (Exception error) when (FileProblem.Is(error))
        {
            throw new UsageException(ForecastCommandTexts.FormatFileUnread(option, path, FileProblem.Of(error, path)), error);
        }
    }

    private static StreamWriter Create(string path)
    {
        try
        {
            return new StreamWriter(path, append: false);
        }
        catch (Exception error) when (FileProblem.Is(error))
        {
            throw new UsageException(ForecastCommandTexts.FormatFileUnwritten(path, FileProblem.Of(error, path)), error);
        }
    }

    private static int Whole(string option, string? text, int usual, int least, int most)
    {
        if (text is null)
            return usual;
        return int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= least && number <= most
            ? number
            : throw UsageException.OfValue(option, text, ForecastCommandTexts.FormatWholeRange(least, most));
    }

    private static ulong Seed(string? text)
    {
        if (text is null)
            return 1;
        return ulong.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var number)
            ? number
            : throw UsageException.OfValue("--seed", text, ForecastCommandTexts.SeedRange);
    }
}
