using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Calibrating;

/// <summary>
/// The bees a jar is taken to hold when nobody counts them: learnt from the writer's own counted jars of the same measure where
/// there are enough, else what the measure is said to hold. Only jars that are written from now on are taken so: a jar keeps the
/// number it was recorded with.
/// </summary>
/// <param name="state">The book.</param>
/// <param name="knowledge">Measures, and how much the counted jars weigh.</param>
public sealed class JarScoops(BookState state, KnowledgeBase knowledge)
{
    // The root of the variance of ln bees beyond which jars are not from one scoop; the estimators take no more.
    private const double MostSpread = 1;

    /// <summary>The name of the keeper's own scoop.</summary>
    public static string OwnName => CalibratingTexts.OwnScoop;

    /// <summary>Every person and measure with at least one counted jar, by person, then by measure.</summary>
    public IReadOnlyList<TaughtScoop> All =>
    [
        .. Teaching()
            .GroupBy(jar => (jar.Entry.Author, Measure: jar.Facts.Bees.Measure!))
            .OrderBy(group => group.Key.Author, StringComparer.Ordinal).ThenBy(group => group.Key.Measure, StringComparer.Ordinal)
            .Select(group => Taught(group.Key.Author, group.Key.Measure, [.. group.Select(Bees)])),
    ];

    /// <summary>How many counted jars name no measure and so teach nothing.</summary>
    public int Unnamed => state.Jars.Count(jar => jar.Facts.Bees is { Basis: BeeBasis.Counted, Measure: null });

    /// <summary>The measure jars are taken with unless another is named: the keeper's own scoop where one was set, else the usual one.</summary>
    /// <param name="method">The way of counting; null when none is chosen.</param>
    public string UsualMeasure(CountingMethod? method = null) => state.Policy.ScoopBees is not null
        ? JarBees.OwnScoop
        : state.Policy.JarMeasure ?? method?.DefaultJarId ?? FirstJar;

    /// <summary>What one person's counted jars of one measure teach; with none, what is believed beforehand.</summary>
    /// <param name="observer">The person.</param>
    /// <param name="measure">Id of the measure, or <see cref="JarBees.OwnScoop"/>.</param>
    /// <exception cref="KnowledgeException">There is no such measure.</exception>
    public TaughtScoop Of(string observer, string measure) =>
        Taught(observer, measure, [.. Teaching().Where(jar => jar.Entry.Author == observer && jar.Facts.Bees.Measure == measure).Select(Bees)]);

    /// <summary>The bees of a jar that one person filled with one measure and did not count.</summary>
    /// <param name="observer">The person.</param>
    /// <param name="measure">Id of the measure, or <see cref="JarBees.OwnScoop"/>.</param>
    /// <exception cref="KnowledgeException">There is no such measure.</exception>
    public JarBees Assumed(string observer, string measure)
    {
        var scoop = Of(observer, measure);
        if (scoop.Use != CalibrationUse.InUse)
            return Said(measure);
        var next = scoop.Calibration.NextJar;
        return new JarBees(BeeBasis.Assumed, Math.Round(next.Bees), Math.Round(next.LogSpread, 4), measure, CountedJars: scoop.Counted.Count);
    }

    /// <summary>The bees of an uncounted jar as the measure is said to hold them, whatever was counted.</summary>
    /// <param name="measure">Id of the measure, or <see cref="JarBees.OwnScoop"/>.</param>
    /// <exception cref="KnowledgeException">There is no such measure.</exception>
    public JarBees Said(string measure)
    {
        if (measure == JarBees.OwnScoop)
        {
            return new JarBees(
                BeeBasis.Assumed, state.Policy.ScoopBees ?? knowledge.Sampling.BeesPerJar.Value,
                state.Policy.ScoopLogSpread ?? knowledge.JarMeasures[state.Policy.JarMeasure ?? FirstJar].LogSpread.Value, measure);
        }

        var known = knowledge.JarMeasures[measure];
        return new JarBees(BeeBasis.Assumed, known.UsualBees.Value, known.LogSpread.Value, known.Id);
    }

    /// <summary>The name of a measure for people.</summary>
    public string NameOf(string measure) => measure == JarBees.OwnScoop
        ? OwnName
        : knowledge.JarMeasures.TryGet(measure, out var known) ? known.Name : measure;

    /// <summary>What counted jars teach that are not in the book.</summary>
    /// <param name="observer">Who filled them.</param>
    /// <param name="measure">Id of the measure, or <see cref="JarBees.OwnScoop"/>.</param>
    /// <param name="counted">Bees of each jar, at least 1 each.</param>
    /// <exception cref="KnowledgeException">There is no such measure.</exception>
    /// <exception cref="ArgumentOutOfRangeException">A jar holds no bee.</exception>
    public TaughtScoop Taught(string observer, string measure, IReadOnlyList<int> counted)
    {
        var said = Said(measure);
        var calibration = JarCalibration.From(knowledge.Calibration.PriorOf(said.Count, said.LogSpread), counted);
        var use = counted.Count < knowledge.Calibration.JarsEnough.Value ? CalibrationUse.TooFew
            : state.Policy.CountedJarsTeach == false ? CalibrationUse.SwitchedOff
            : calibration.ExpectedLogSpreadAfter(0) > MostSpread ? CalibrationUse.TooDifferent
            : CalibrationUse.InUse;
        return new TaughtScoop(observer, measure, NameOf(measure), counted, calibration, use);
    }

    private string FirstJar => knowledge.Methods.First(one => one.IsJar && one.DefaultJarId is not null).DefaultJarId!;

    // A measure that a later version names cannot be judged here; its jars wait.
    private IEnumerable<Jar> Teaching() => state.TeachingJars.Where(jar =>
        jar.Facts.Bees.Measure == JarBees.OwnScoop || knowledge.JarMeasures.TryGet(jar.Facts.Bees.Measure, out _));

    private static int Bees(Jar jar) => (int)Math.Round(jar.Facts.Bees.Count);
}
