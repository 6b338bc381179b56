namespace Foundress.Science.Judging;

/// <summary>Judges a level by the chance that it is over a line, never by comparing two decimals.</summary>
public static class Judgement
{
    /// <summary>Where a level stands.</summary>
    /// <param name="overTheLine">The chance that the level is over the line.</param>
    /// <param name="certainty">How sure one wants to be.</param>
    public static Standing Judge(Chance overTheLine, Certainty certainty)
    {
        if (overTheLine <= certainty.SureBelow)
            return Standing.Below;
        return overTheLine >= certainty.SureAbove ? Standing.Above : Standing.Unclear;
    }
}
