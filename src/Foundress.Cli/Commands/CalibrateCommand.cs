using System.CommandLine;
using Foundress.Book.Calibrating;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;
using Foundress.Science.Estimation;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress calibrate</c>: what counted jars teach of a scoop, from a file or from the book.</summary>
internal static class CalibrateCommand
{
    // A jar near the usual lines, and one in which the bees matter more than the mites.
    private static readonly int[] ExampleMites = [10, 60];

    internal static Command Make(Surroundings around)
    {
        var knowledge = KnowledgeBase.Load();
        var file = new Argument<string?>(SharedTexts.WordCsvFile) { Description = CountCommandTexts.CalibrateFile, Arity = ArgumentArity.ZeroOrOne };
        var measure = new Option<string?>("--measure") { Description = CountCommandTexts.FormatCalibrateMeasure(string.Join(", ", [.. knowledge.JarMeasures.Ids, JarBees.OwnScoop]), knowledge.JarMeasures[0].Id), HelpName = "ID" };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("calibrate", CountCommandTexts.Calibrate) { file, measure, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            var given = MeasureOf(parsed.GetValue(measure), knowledge);
            var (scoops, taught) = parsed.GetValue(file) is { } path
                ? OfFile(path, given ?? knowledge.JarMeasures[0].Id, knowledge)
                : await OfBookAsync(given);
            var confidence = knowledge.Judging.Confidence.Value;
            var read = taught.Select(scoop => (Scoop: scoop, Gains: Gains(scoop, scoops, confidence))).Select(one => (one.Scoop, one.Gains, Output: CalibrationOutput.Of(one.Scoop, confidence, one.Gains))).ToList();
            if (parsed.GetValue(json))
            {
                JsonOut.Write(around.Out, read.Select(one => one.Output).ToList());
                return ExitCodes.Fine;
            }

            if (read.Count == 0)
                around.Out.WriteLine(CountCommandTexts.CalibrateNoJar);
            foreach (var (scoop, gains, output) in read)
                CalibrationText.Write(around.Out, scoop, output, gains, around.Culture);
            return ExitCodes.Fine;

            async Task<(JarScoops Scoops, IReadOnlyList<TaughtScoop> Taught)> OfBookAsync(string? only)
            {
                using var book = await BookAccess.OpenExistingAsync(
                    CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
                var scoops = new JarScoops(book.Ledger.State, knowledge);
                return (scoops, [.. scoops.All.Where(scoop => only is null || scoop.Measure == only)]);
            }
        });
        return command;
    }

    private static (JarScoops Scoops, IReadOnlyList<TaughtScoop> Taught) OfFile(string path, string measure, KnowledgeBase knowledge)
    {
        var jars = ReadFile(path);
        var scoops = new JarScoops(BookState.Empty, knowledge);
        var taught = jars
            .GroupBy(jar => (jar.Observer, Measure: MeasureOf(jar.Scoop.Length == 0 ? null : jar.Scoop, knowledge) ?? measure))
            .OrderBy(group => group.Key.Observer, StringComparer.Ordinal).ThenBy(group => group.Key.Measure, StringComparer.Ordinal)
            .Select(group => scoops.Taught(group.Key.Observer, group.Key.Measure, [.. group.Select(jar => jar.Bees)]));
        return (scoops, [.. taught]);
    }

    private static IReadOnlyList<CountedJar> ReadFile(string path)
    {
        try
        {
            using var csv = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.Read);
            return CountedJarsFile.Read(csv);
        }
        catch (ImportFormatException error)
        {
            throw new UsageException(CountCommandTexts.FormatFileProblem(path, error.Message), error);
        }
        catch (Exception error) when (FileProblem.Is(error))
        {
            throw new UsageException(SharedTexts.FormatFileUnread(path, FileProblem.Of(error, path)), error);
        }
    }

    private static List<CountingGain> Gains(TaughtScoop scoop, JarScoops scoops, double confidence) =>
        [.. ExampleMites.Select(mites => CountingGain.Of(scoop, scoops.Said(scoop.Measure), mites, confidence))];

    private static string? MeasureOf(string? text, KnowledgeBase knowledge)
    {
        if (text is null)
            return null;
        return MeasureField.Read(text, [.. knowledge.JarMeasures.Ids, JarBees.OwnScoop], out var id) is { } problem
            ? throw UsageException.OfValue("--measure", text, problem)
            : id;
    }
}
