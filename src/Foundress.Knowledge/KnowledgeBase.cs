namespace Foundress.Knowledge;

/// <summary>Everything Foundress takes as given about counting mites, judging counts and controlling mites, each figure with its source.</summary>
/// <remarks>
/// Safe for concurrent use: immutable. The built-in files are read once. A figure without a source, a status or a unit is
/// refused, so every <see cref="Figure"/> that comes out of here has all three.
/// </remarks>
public sealed class KnowledgeBase
{
    private static readonly Lazy<KnowledgeBase> BuiltIn = new(() => Read(OpenBuiltIn));
    private readonly ReadingLog _log;

    internal KnowledgeBase(
        Catalog<CountingMethod> methods,
        Catalog<Scale> scales,
        Catalog<LinePolicy> linePolicies,
        Catalog<JarMeasure> jarMeasures,
        Catalog<BeeWeight> beeWeights,
        Catalog<Climate> climates,
        Catalog<CalendarEntry> calendarRules,
        SamplingRules sampling,
        JudgingDefaults judging,
        BeeFacts bees,
        ControlFacts controls,
        CalibrationRules calibration,
        WeighingFacts weighing,
        Catalog<FallFactor> fallFactors,
        MiteFacts mites,
        ReadingLog log)
    {
        Methods = methods;
        Scales = scales;
        LinePolicies = linePolicies;
        JarMeasures = jarMeasures;
        BeeWeights = beeWeights;
        Climates = climates;
        CalendarRules = calendarRules;
        Sampling = sampling;
        Judging = judging;
        Bees = bees;
        Controls = controls;
        Calibration = calibration;
        Weighing = weighing;
        FallFactors = fallFactors;
        Mites = mites;
        _log = log;
    }

    /// <summary>The names of the data files, each read once by <see cref="Read"/>.</summary>
    public static IReadOnlyList<string> Files { get; } =
        ["methods.json", "lines.json", "calendar.json", "jars.json", "climates.json", "sampling.json", "judging.json", "bees.json", "agents.json", "fall.json", "biology.json"];

    /// <summary>Ways of counting mites.</summary>
    public Catalog<CountingMethod> Methods { get; }

    /// <summary>Scales that counts and lines are on.</summary>
    public Catalog<Scale> Scales { get; }

    /// <summary>Selectable sets of lines.</summary>
    public Catalog<LinePolicy> LinePolicies { get; }

    /// <summary>Measures of bees.</summary>
    public Catalog<JarMeasure> JarMeasures { get; }

    /// <summary>What a bee weighs.</summary>
    public Catalog<BeeWeight> BeeWeights { get; }

    /// <summary>Usual years of the colony.</summary>
    public Catalog<Climate> Climates { get; }

    /// <summary>When in the year counting is due.</summary>
    public Catalog<CalendarEntry> CalendarRules { get; }

    /// <summary>How many colonies to count and how often.</summary>
    public SamplingRules Sampling { get; }

    /// <summary>How sure a judgement must be.</summary>
    public JudgingDefaults Judging { get; }

    /// <summary>Bees and brood through the year.</summary>
    public BeeFacts Bees { get; }

    /// <summary>Controls: what they are, what they do, what they need, and how it is proven that they worked.</summary>
    public ControlFacts Controls { get; }

    /// <summary>How much the keeper's own counted jars weigh.</summary>
    public CalibrationRules Calibration { get; }

    /// <summary>What is known about weighing bees.</summary>
    public WeighingFacts Weighing { get; }

    /// <summary>What sources make of the mites that fall in a day.</summary>
    public Catalog<FallFactor> FallFactors { get; }

    /// <summary>Mite life, how much colonies differ, and how counts scatter.</summary>
    public MiteFacts Mites { get; }

    /// <summary>The knowledge that comes with the program.</summary>
    public static KnowledgeBase Load() => BuiltIn.Value;

    /// <summary>Reads knowledge from files of the keeper's own.</summary>
    /// <param name="open">Opens one of <see cref="Files"/> by name, as UTF-8 JSON; the stream is closed after reading.</param>
    /// <exception cref="KnowledgeException">A file is not JSON, a figure lacks its source, status or unit, a field is unknown or out of range, or a name is used that no entry has. All problems are listed.</exception>
    public static KnowledgeBase Read(Func<string, Stream> open) => new KnowledgeReader(open).Read();

    /// <summary>The policies whose lines counts by that method may be held against, the default policy first.</summary>
    /// <param name="method">A method of this knowledge.</param>
    /// <returns>Empty when no line was published on the method's scale.</returns>
    public IReadOnlyList<LinePolicy> PoliciesFor(CountingMethod method) =>
        [.. LinePolicies.Where(p => p.AppliesTo(method.ScaleId)).OrderBy(p => p.Id == Judging.DefaultPolicyId ? 0 : 1)];

    /// <summary>Every figure with its place, as file name, "#" and JSON Pointer, in reading order.</summary>
    public IEnumerable<(string Path, Figure Figure)> AllFigures() => _log.Figures;

    /// <summary>The source of every figure and of every statement that is not a number, with its place, in reading order.</summary>
    public IEnumerable<(string Path, Source Source)> AllSources() => _log.Sources;

    private static Stream OpenBuiltIn(string file) =>
        typeof(KnowledgeBase).Assembly.GetManifestResourceStream(file)
        ?? throw new KnowledgeException($"The built-in file {file} is missing from the program: rebuild it with Data/{file} embedded.");
}
