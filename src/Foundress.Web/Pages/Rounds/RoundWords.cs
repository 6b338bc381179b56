using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Book.Wording;

namespace Foundress.Web.Pages.Rounds;

/// <summary>A round in few words.</summary>
public static class RoundWords
{
    /// <summary>The apiaries of a round: <c>Heath and Mill</c>.</summary>
    public static string Places(Round round, BookState state) =>
        Say.List([.. round.Plan.Draws.Where(draw => draw.Chosen.Count > 0).Select(draw => Words.Name(draw.Apiary, state))], 4);

    /// <summary>How many jars the round needs as things stand.</summary>
    public static int Wanted(Round round) => round.Plan.Draws.Sum(draw => round.ToSample(draw).Count);

    /// <summary>How many of them are taken.</summary>
    public static int Taken(Round round) => Wanted(round) - round.Open.Count;

    /// <summary>How many of the jars it needs are taken: <c>3 of 8 jars</c>.</summary>
    public static string TakenOf(Round round) => Plural.Pick(Wanted(round), RoundTexts.FormatTakenOf(Taken(round), Wanted(round)));

    /// <summary>Which apiary's draw a colony belongs to.</summary>
    public static ApiaryId? ApiaryOf(Round round, ColonyId colony) =>
        round.Plan.Draws.FirstOrDefault(draw => draw.Chosen.Contains(colony) || draw.Reserves.Contains(colony))?.Apiary;

    /// <summary>Seconds as people say them.</summary>
    public static string Length(int seconds) => Say.Length(seconds);
}
