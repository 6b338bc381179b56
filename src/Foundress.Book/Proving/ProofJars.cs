using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science.Estimation;
using Foundress.Science.Verifying;

namespace Foundress.Book.Proving;

/// <summary>Finds the jars of a colony before and after a control.</summary>
internal sealed class ProofJars(BookState state, KnowledgeBase knowledge)
{
    /// <summary>Jars later than the window by more than this show another state of the colony (product choice).</summary>
    internal const int LateDays = 21;

    /// <summary>The jars of the last day in the window before the start.</summary>
    internal IReadOnlyList<Jar> Before(ColonyId colony, DateOnly start, string? scale = null) =>
        OfOneDay(state.JarsOf(colony).Where(jar => jar.Facts.On <= start && jar.Facts.On >= start.AddDays(-(int)knowledge.Controls.Proof.JarsBefore.Value) && Fits(jar, scale)), last: true);

    /// <summary>The jars of the first day from the window on; jars taken between the end and the window only when there are none later.</summary>
    /// <param name="colony">The colony.</param>
    /// <param name="end">The control's end.</param>
    /// <param name="due">The window.</param>
    /// <param name="until">Jars from this day on belong to what came next.</param>
    /// <param name="scale">The scale of the jars before.</param>
    internal IReadOnlyList<Jar> After(ColonyId colony, DateOnly end, ProofDue due, DateOnly? until, string scale)
    {
        var jars = state.JarsOf(colony)
            .Where(jar => jar.Facts.On >= end && jar.Facts.On <= due.To.AddDays(LateDays) && (until is null || jar.Facts.On <= until) && Fits(jar, scale))
            .ToArray();
        var inTime = OfOneDay(jars.Where(jar => jar.Facts.On >= due.From), last: false);
        return inTime.Count > 0 ? inTime : OfOneDay(jars, last: true);
    }

    /// <summary>The scale jars of a method are on; null for a method that is not known.</summary>
    internal string? ScaleOf(Jar jar) => knowledge.Methods.TryGet(jar.Facts.Method, out var method) && method.IsJar ? method.ScaleId : null;

    internal static JarPair Pair(IReadOnlyList<Jar> before, IReadOnlyList<Jar> after) => new([.. before.Select(Count)], [.. after.Select(Count)]);

    private static JarCount Count(Jar jar) => new(jar.Facts.Mites, jar.Facts.Bees.AsBeeCount);

    private bool Fits(Jar jar, string? scale) => ScaleOf(jar) is { } own && (scale is null || own == scale);

    private IReadOnlyList<Jar> OfOneDay(IEnumerable<Jar> jars, bool last)
    {
        var all = jars.ToArray();
        if (all.Length == 0)
            return [];
        var day = last ? all.Max(jar => jar.Facts.On) : all.Min(jar => jar.Facts.On);
        var ofDay = all.Where(jar => jar.Facts.On == day).ToArray();
        // Jars of one day by ways of counting on different scales are never put together.
        var scale = ScaleOf(ofDay[0]);
        return [.. ofDay.Where(jar => ScaleOf(jar) == scale)];
    }
}
