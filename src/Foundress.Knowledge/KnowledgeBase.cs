using System.Globalization;
using System.Reflection;

namespace Foundress.Knowledge;

/// <summary>Everything Foundress takes as given about counting mites, judging counts and controlling mites, each figure with its source.</summary>
/// <remarks>
/// Safe for concurrent use: immutable. The built-in files are read once for each language. A figure without a source, a status or a unit is
/// refused, so every <see cref="Figure"/> that comes out of here has all three.
/// </remarks>
public sealed class KnowledgeBase
{
    private const string English = "en";

    /// <summary>The languages its texts are written in, by their codes of ISO 639-1, English first.</summary>
    public static IReadOnlyList<string> Languages { get; } = [English, "de"];

    // Stands behind the languages, which are there first: the initialisers of a type run in this order.
    private static readonly Dictionary<string, Lazy<KnowledgeBase>> BuiltIn =
        Languages.ToDictionary(language => language, language => new Lazy<KnowledgeBase>(() => ReadBuiltIn(language)), StringComparer.Ordinal);

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
        string language,
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
        Language = language;
        _log = log;
    }

    /// <summary>The names of the data files, each read once by <see cref="Read(Func{string, Stream})"/>.</summary>
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

    /// <summary>The code of the language its texts are in (ISO 639-1): one of <see cref="Languages"/>.</summary>
    public string Language { get; }

    /// <summary>The knowledge that comes with the program, in the language of this thread's reader (<see cref="CultureInfo.CurrentUICulture"/>).</summary>
    /// <remarks>Do not keep it where readers of different languages come by: ask again. After the first time it costs a look-up.</remarks>
    public static KnowledgeBase Load() => In(CultureInfo.CurrentUICulture);

    /// <summary>The knowledge that comes with the program, in the language of a culture; in English when no text is written in that language or its texts were not installed.</summary>
    /// <remarks>Ids, numbers and the order of everything are the same in every language.</remarks>
    public static KnowledgeBase In(CultureInfo reader)
    {
        ArgumentNullException.ThrowIfNull(reader);
        return (BuiltIn.GetValueOrDefault(reader.TwoLetterISOLanguageName) ?? BuiltIn[English]).Value;
    }

    /// <summary>Reads knowledge from files of the keeper's own.</summary>
    /// <param name="open">Opens one of <see cref="Files"/> by name, as UTF-8 JSON; the stream is closed after reading.</param>
    /// <exception cref="KnowledgeException">A file is not JSON, a figure lacks its source, status or unit, a field is unknown or out of range, or a name is used that no entry has. All problems are listed.</exception>
    public static KnowledgeBase Read(Func<string, Stream> open) => Read(open, English, _ => null);

    /// <summary>Reads knowledge from files of the keeper's own, with its texts in another language.</summary>
    /// <param name="open">As in <see cref="Read(Func{string, Stream})"/>.</param>
    /// <param name="language">The code of the language (ISO 639-1).</param>
    /// <param name="translation">Opens the texts of one of <see cref="Files"/> in that language, or gives null where there are none; a text that is not among them stays English.</param>
    /// <exception cref="KnowledgeException">As in <see cref="Read(Func{string, Stream})"/>; or texts are not written as docs/language.md has it.</exception>
    public static KnowledgeBase Read(Func<string, Stream> open, string language, Func<string, Stream?> translation) => new KnowledgeReader(language, open, translation).Read();

    /// <summary>The policies whose lines counts by that method may be held against, the default policy first.</summary>
    /// <param name="method">A method of this knowledge.</param>
    /// <returns>Empty when no line was published on the method's scale.</returns>
    public IReadOnlyList<LinePolicy> PoliciesFor(CountingMethod method) =>
        [.. LinePolicies.Where(p => p.AppliesTo(method.ScaleId)).OrderBy(p => p.Id == Judging.DefaultPolicyId ? 0 : 1)];

    /// <summary>Every figure with its place, as file name, "#" and JSON Pointer, in reading order.</summary>
    public IEnumerable<(string Path, Figure Figure)> AllFigures() => _log.Figures;

    /// <summary>The source of every figure and of every statement that is not a number, with its place, in reading order.</summary>
    public IEnumerable<(string Path, Source Source)> AllSources() => _log.Sources;

    private static KnowledgeBase ReadBuiltIn(string language)
    {
        if (language == English)
            return Read(OpenBuiltIn);
        return Satellite(language) is { } texts
            ? Read(OpenBuiltIn, language, file => texts.GetManifestResourceStream(Translation.FileOf(file, language)))
            : BuiltIn[English].Value;
    }

    /// <summary>The assembly with the texts of a language; null where it was left out, or could not be fetched when the web app began.</summary>
    private static Assembly? Satellite(string language)
    {
        try
        {
            return typeof(KnowledgeBase).Assembly.GetSatelliteAssembly(CultureInfo.GetCultureInfo(language));
        }
        catch (FileNotFoundException)
        {
            return null;
        }
    }

    private static Stream OpenBuiltIn(string file) =>
        typeof(KnowledgeBase).Assembly.GetManifestResourceStream(file)
        ?? throw new KnowledgeException($"The built-in file {file} is missing from the program: rebuild it with Data/{file} embedded.");
}
