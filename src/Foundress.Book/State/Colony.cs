using Foundress.Book.Journal;

namespace Foundress.Book.State;

/// <summary>A colony as the book has it today.</summary>
/// <param name="Id">Its id.</param>
/// <param name="Name">Its number or name.</param>
/// <param name="Stays">Where it stood, in order of date; never empty.</param>
/// <param name="End">How it ended; null while it lives.</param>
/// <param name="SplitFrom">The colony it was made from, if any.</param>
/// <param name="Note">Anything else.</param>
public sealed record Colony(
    ColonyId Id,
    string Name,
    IReadOnlyList<Stay> Stays,
    ColonyEnd? End = null,
    ColonyId? SplitFrom = null,
    string? Note = null)
{
    /// <summary>Where it stands now, or stood last.</summary>
    public ApiaryId Apiary => Stays[^1].Apiary;

    /// <summary>Where it stood on a day. Before its first known day it is taken to have stood where it was first seen.</summary>
    public ApiaryId ApiaryOn(DateOnly day)
    {
        var apiary = Stays[0].Apiary;
        foreach (var stay in Stays)
        {
            if (stay.Since is null || stay.Since <= day)
                apiary = stay.Apiary;
        }

        return apiary;
    }

    /// <summary>Whether it had not ended by the close of a day.</summary>
    public bool LivesOn(DateOnly day) => End is null || End.On > day;
}
