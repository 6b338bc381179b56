using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Rounds;
using Foundress.Book.Rules;
using Foundress.Web.Shell;

namespace Foundress.Web.Pages.Rounds;

/// <summary>
/// The jar that is being worked: every step and every tap is in the draft at once, so that a reload goes on exactly there.
/// Times are kept as instants, so that a locked screen does not stop them.
/// </summary>
/// <param name="draft">Where it is kept.</param>
public sealed class JarInHand(FormDraft draft)
{
    /// <summary>The draft, for the fields that people type into.</summary>
    public FormDraft Draft => draft;

    /// <summary>The colony it is taken from, once it was begun; null before.</summary>
    public ColonyId? Colony
    {
        get => Guid.TryParse(draft["colony"], out var id) ? new ColonyId(id) : null;
        set => draft["colony"] = value?.ToString() ?? string.Empty;
    }

    /// <summary>Which step it is at.</summary>
    public JarStep Step
    {
        get => Enum.TryParse<JarStep>(draft["step"], out var step) ? step : JarStep.Find;
        set => draft["step"] = value.ToString();
    }

    /// <summary>When the shaking was begun.</summary>
    public DateTimeOffset? Shaking
    {
        get => Instant("shaking");
        set => draft["shaking"] = Text(value);
    }

    /// <summary>When the settling was begun.</summary>
    public DateTimeOffset? Settling
    {
        get => Instant("settling");
        set => draft["settling"] = Text(value);
    }

    /// <summary>Seconds it was shaken, as far as it was timed.</summary>
    public int? Shaken
    {
        get => Whole("shaken");
        set => draft["shaken"] = Text(value);
    }

    /// <summary>Seconds it stood, as far as it was timed.</summary>
    public int? Settled
    {
        get => Whole("settled");
        set => draft["settled"] = Text(value);
    }

    /// <summary>Mites counted.</summary>
    public int Mites
    {
        get => Whole("mites") ?? 0;
        set => draft["mites"] = Text(value);
    }

    /// <summary>Mites of each washing after the first, the latest last; at least one number.</summary>
    public IReadOnlyList<int> Again
    {
        get
        {
            var counts = draft["again"].Split(';').Select(text => int.TryParse(text, NumberStyles.None, CultureInfo.InvariantCulture, out var mites) ? mites : 0).ToList();
            return counts.Count > JarLimits.MostPasses - 1 ? counts[..(JarLimits.MostPasses - 1)] : counts;
        }

        private set => draft["again"] = string.Join(';', value.Select(mites => Text(mites)));
    }

    /// <summary>Mites counted after the latest washing.</summary>
    public int MitesAgain
    {
        get => Again[^1];
        set => Again = [.. Again.SkipLast(1), value];
    }

    /// <summary>Whether the same bees were washed again.</summary>
    public bool WashedAgain
    {
        get => draft["again-on"] == "yes";
        set => draft["again-on"] = value ? "yes" : string.Empty;
    }

    /// <summary>Whether bees, sugar or air were damp.</summary>
    public bool Damp
    {
        get => draft["damp"] == "yes";
        set => draft["damp"] = value ? "yes" : string.Empty;
    }

    /// <summary>The counts, first wash first.</summary>
    public IReadOnlyList<int> Passes => WashedAgain ? [Mites, .. Again] : [Mites];

    /// <summary>Whether the same bees may be washed once more.</summary>
    public bool MayWashAgain => Passes.Count < JarLimits.MostPasses;

    /// <summary>The same bees are washed once more: the count starts anew.</summary>
    public void WashOnceMore() => Again = [.. Again, 0];

    /// <summary>Goes one step back; from a later washing to the one before it.</summary>
    /// <param name="times">The round's times.</param>
    public void Back(JarTimes times)
    {
        if (Step == JarStep.Again && Again.Count > 1)
            Again = [.. Again.SkipLast(1)];
        else
            Step = Previous(times);
    }

    /// <summary>
    /// Empties the jar: the next colony begins. In one write, for a page that died between two would come back with the old
    /// count and without its colony, and give it to the next.
    /// </summary>
    public Task ClearAsync() => draft.DiscardAsync();

    /// <summary>The step after this one. Times of 0 seconds are not taken.</summary>
    /// <param name="times">The round's times.</param>
    public JarStep Next(JarTimes times) => Step switch
    {
        JarStep.Scoop when times.Agitation == 0 && times.Settling == 0 => JarStep.Count,
        JarStep.Scoop when times.Agitation == 0 => JarStep.Settle,
        JarStep.Shake when times.Settling == 0 => JarStep.Count,
        JarStep.Count when !WashedAgain => JarStep.Bees,
        JarStep.Bees => JarStep.Bees,
        var step => step + 1,
    };

    /// <summary>The step before this one.</summary>
    /// <param name="times">The round's times.</param>
    public JarStep Previous(JarTimes times) => Step switch
    {
        JarStep.Count when times.Settling == 0 && times.Agitation == 0 => JarStep.Scoop,
        JarStep.Count when times.Settling == 0 => JarStep.Shake,
        JarStep.Settle when times.Agitation == 0 => JarStep.Scoop,
        JarStep.Bees when !WashedAgain => JarStep.Count,
        JarStep.Find => JarStep.Find,
        var step => step - 1,
    };

    private static string Text(int? value) => value?.ToString(CultureInfo.InvariantCulture) ?? string.Empty;

    private static string Text(DateTimeOffset? value) => value?.ToUnixTimeMilliseconds().ToString(CultureInfo.InvariantCulture) ?? string.Empty;

    private int? Whole(string field) => int.TryParse(draft[field], NumberStyles.None, CultureInfo.InvariantCulture, out var number) ? number : null;

    private DateTimeOffset? Instant(string field) =>
        long.TryParse(draft[field], NumberStyles.None, CultureInfo.InvariantCulture, out var milliseconds) ? DateTimeOffset.FromUnixTimeMilliseconds(milliseconds) : null;
}
