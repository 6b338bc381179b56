using System.Globalization;
using Foundress.Book.Importing;
using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Cli.Running;

namespace Foundress.Cli.Commands;

/// <summary>
/// An apiary as it is given on the command line: <c>Home</c> is one of the book's, <c>Home=12</c> one with colonies 1 to 12
/// that need no book.
/// </summary>
/// <param name="Name">Its name.</param>
/// <param name="Colonies">How many colonies it is said to have; null for one of the book's.</param>
internal sealed record ApiaryArgument(string Name, int? Colonies)
{
    private const int GreatestApiary = 10_000;

    /// <summary>Reads the apiaries given; they are all of the book or all without one.</summary>
    internal static IReadOnlyList<ApiaryArgument> ReadAll(IReadOnlyList<string> given)
    {
        var read = given.Select(Read).ToArray();
        if (read.Select(apiary => apiary.Colonies is null).Distinct().Count() > 1)
            throw new UsageException(RoundCommandTexts.ApiariesHaveColonies);
        if (read.GroupBy(apiary => NameField.Key(apiary.Name)).FirstOrDefault(group => group.Count() > 1) is { } twice)
            throw new UsageException(RoundCommandTexts.FormatApiaryTwice(twice.First().Name));
        return read;
    }

    /// <summary>Finds apiaries of the book by name; all of them when none is given.</summary>
    internal static IReadOnlyList<ApiaryId> Find(IReadOnlyList<ApiaryArgument> given, BookState state)
    {
        if (given.Count == 0)
            return [.. state.ApiariesByName.Select(apiary => apiary.Id)];
        return [.. given.Select(argument =>
        {
            var named = state.Apiaries.Values.Where(apiary => NameField.Key(apiary.Name) == NameField.Key(argument.Name)).ToArray();
            return named.Length switch
            {
                1 => named[0].Id,
                0 => throw UsageException.OfValue("--apiary", argument.Name, RoundCommandTexts.FormatNoSuchApiary(string.Join(", ", state.ApiariesByName.Select(apiary => apiary.Name)))),
                _ => throw UsageException.OfValue("--apiary", argument.Name, RoundCommandTexts.ApiaryNotAlone),
            };
        })];
    }

    private static ApiaryArgument Read(string text)
    {
        var at = text.LastIndexOf('=');
        if (NameField.Read(at < 0 ? text : text[..at], out var name) is { } problem)
            throw UsageException.OfValue("--apiary", text, problem);
        if (at < 0)
            return new ApiaryArgument(name, null);
        return int.TryParse(text.AsSpan(at + 1), NumberStyles.None, CultureInfo.InvariantCulture, out var colonies) && colonies is >= 1 and <= GreatestApiary
            ? new ApiaryArgument(name, colonies)
            : throw UsageException.OfValue("--apiary", text, RoundCommandTexts.FormatColoniesRange(GreatestApiary, name));
    }
}
