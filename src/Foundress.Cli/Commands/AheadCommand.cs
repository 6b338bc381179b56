using System.CommandLine;
using Foundress.Book.Forecasts;
using Foundress.Cli.Output;
using Foundress.Cli.Running;
using Foundress.Knowledge;

namespace Foundress.Cli.Commands;

/// <summary><c>foundress ahead</c>: where the apiaries of the book are heading.</summary>
internal static class AheadCommand
{
    internal static Command Make(Surroundings around)
    {
        var apiary = CommonOptions.Apiaries();
        var days = new Option<int>("--days") { Description = BookCommandTexts.AheadDays, HelpName = "N", DefaultValueFactory = _ => new ForecastOptions().Ahead };
        var seed = new Option<ulong>("--seed") { Description = BookCommandTexts.SeedForecast, HelpName = "N", DefaultValueFactory = _ => 1UL };
        var data = CommonOptions.Data();
        var operation = CommonOptions.Operation();
        var json = CommonOptions.Json();
        var command = new Command("ahead", BookCommandTexts.Ahead) { apiary, days, seed, data, operation, json };
        command.SetAction(async (parsed, cancellation) =>
        {
            if (parsed.GetValue(days) is var ahead && ahead is < 1 or > 366)
                throw UsageException.OfValue("--days", ahead, BookCommandTexts.FormatDaysRange(1, 366));
            using var book = await BookAccess.OpenExistingAsync(
                CommonOptions.PlaceOf(parsed.GetValue(data), around), parsed.GetValue(operation)!, around, cancellation);
            var state = book.Ledger.State;
            var forecaster = new ApiaryForecaster(state, KnowledgeBase.Load(), around.Culture);
            var options = new ForecastOptions { Ahead = ahead, Seed = parsed.GetValue(seed) };
            var courses = ApiaryArgument.Find(ApiaryArgument.ReadAll(parsed.GetValue(apiary) ?? []), state)
                .Select(id => forecaster.Of(state.Apiaries[id], around.Today, options, cancellation));
            AheadApiary[] places = [.. ApiaryCourse.InOrder(courses).Select(course => new AheadApiary(state.Apiaries[course.Apiary].Name, course))];
            if (parsed.GetValue(json))
                JsonOut.Write(around.Out, places);
            else
                Write(around.Out, places);
            return ExitCodes.Fine;
        });
        return command;
    }

    private static void Write(TextWriter text, AheadApiary[] places)
    {
        foreach (var (name, course) in places)
        {
            text.WriteLine($"{name}: {course.Sentence}");
            foreach (var colony in course.Colonies)
                text.WriteLine($"  {colony.Name}: {colony.Sentence}");
        }

        if (places.Length == 0)
            text.WriteLine(BookCommandTexts.NoApiaryYet);
    }
}
