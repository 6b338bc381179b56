using System.Globalization;
using Foundress.Book.Calibrating;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Web.Kit;

namespace Foundress.Web.Pages.Jars;

/// <summary>The fields of the jar form, and the jar they say.</summary>
/// <param name="knowledge">The known methods, measures and weights.</param>
/// <param name="policy">The keeper's settings: units and scoop.</param>
/// <param name="scoops">What jars of a measure hold.</param>
/// <param name="author">Who fills the jar.</param>
/// <param name="today">The keeper's day.</param>
/// <param name="before">The bees of the jar that is corrected; null for a new one.</param>
public sealed class JarFields(KnowledgeBase knowledge, PolicyRecord policy, JarScoops scoops, string author, DateOnly today, JarBees? before = null)
{
    /// <summary>Bees that were counted one by one.</summary>
    public const string Counted = "counted";

    /// <summary>Bees that were weighed.</summary>
    public const string Weighed = "weighed";

    /// <summary>Bees taken with a measure whose number is known roughly.</summary>
    public const string Measured = "measure";

    /// <summary>The keeper's own scoop, or own weight of a bee.</summary>
    public const string Own = JarBees.OwnScoop;

    /// <summary>A bee's weight learnt from bees that were counted and weighed with the jar.</summary>
    public const string Sample = "sample";

    /// <summary>The number of bees as the corrected jar has it: a jar keeps what it was recorded with.</summary>
    public const string Before = "before";

    /// <summary>Grams in an ounce (the international avoirdupois ounce, exact by definition, 1959).</summary>
    public const double GramsInOunce = 28.349523125;

    /// <summary>Counts of mites that are allowed.</summary>
    public static readonly NumberRule Mites = new(0, JarLimits.MostMites);

    /// <summary>Counts of bees that are allowed.</summary>
    public static readonly NumberRule Bees = new(1, JarLimits.MostBees);

    /// <summary>Sizes of a counted and weighed sub-sample that are allowed.</summary>
    public static readonly NumberRule SampleBees = new(2, JarLimits.MostBees);

    /// <summary>Weights of one bee that are allowed, in milligrams.</summary>
    public static readonly NumberRule Milligrams = new(50, 250, 1);

    /// <summary>Whether weights are typed in ounces.</summary>
    public bool Ounces => policy.Units == UnitSystem.UsCustomary;

    /// <summary>Weights of bees that are allowed, in the keeper's unit.</summary>
    public NumberRule Weight => Ounces ? new(0.01, 35, 2) : new(0.1, 1000, 1);

    /// <summary>The field of a pass, the first being 0.</summary>
    public static string Pass(int pass) => pass == 0 ? "mites" : "mites" + (pass + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>How many passes the form shows.</summary>
    public static int Passes(string typed) =>
        int.TryParse(typed, NumberStyles.None, CultureInfo.InvariantCulture, out var passes) ? Math.Clamp(passes, 1, JarLimits.MostPasses) : 1;

    /// <summary>The field where a problem that <see cref="RecordRules"/> found belongs.</summary>
    public static string FieldOf(Problem problem, string basis) => problem.Field switch
    {
        "passes" => "mites",
        "grams" => "weight",
        "sampleBees" => "samplebees",
        "sampleGrams" => "sampleweight",
        "milligramsPerBee" => "mg",
        "bees" or "logSpread" => basis switch { Weighed => "weight", Measured => "measure", _ => "bees" },
        "measure" => basis == Counted ? "scooped" : "measure",
        var field => field,
    };

    /// <summary>Reads the jar. What is wrong is noted in the form.</summary>
    /// <param name="form">The form.</param>
    /// <param name="needed">Whether what is missing is a problem as well: not while somebody still types.</param>
    /// <returns>The jar without a colony; null when something is wrong or missing.</returns>
    public JarRecord? Read(FormReader form, bool needed)
    {
        var passes = new List<int>();
        for (var pass = 0; pass < Passes(form.Text("passes") ?? string.Empty); pass++)
        {
            var field = Pass(pass);
            if (form.Number(field, Mites) is { } mites)
                passes.Add((int)mites);
            else if (needed)
                form.Add(field, pass == 0 ? QuickTexts.MitesMissing : QuickTexts.PassMissing);
        }

        var bees = ReadBees(form, needed);
        var on = form.Day("on", today);
        var damp = form.YesNo("damp") == true;
        if (!form.Fine || bees is null || passes.Count == 0)
            return null;
        return new JarRecord(on, form.Text("method") ?? string.Empty, passes, bees, Conditions: damp ? new JarConditions(Damp: true) : null, Note: form.Text("note"));
    }

    /// <summary>What the form starts with when a recorded jar is corrected.</summary>
    public Dictionary<string, string> Of(JarRecord jar)
    {
        var texts = new Dictionary<string, string>
        {
            ["method"] = jar.Method,
            ["passes"] = jar.Passes.Count.ToString(CultureInfo.InvariantCulture),
            ["on"] = Say.IsoDay(jar.On),
            ["note"] = jar.Note ?? string.Empty,
            ["damp"] = jar.Conditions?.Damp == true ? "yes" : string.Empty,
        };
        for (var pass = 0; pass < jar.Passes.Count; pass++)
            texts[Pass(pass)] = Number(jar.Passes[pass]);
        switch (jar.Bees)
        {
            case { Basis: BeeBasis.Counted } counted:
                (texts["basis"], texts["bees"], texts["scooped"]) = (Counted, Number(counted.Count), counted.Measure ?? string.Empty);
                break;
            case { Basis: BeeBasis.Weighed, Grams: { } grams, SampleBees: { } sample, SampleGrams: { } sampleGrams } weighed:
                (texts["basis"], texts["weight"], texts["beeweight"]) = (Weighed, Typed(grams), Sample);
                (texts["samplebees"], texts["sampleweight"], texts["apart"]) = (Number(sample), Typed(sampleGrams), weighed.SampleApart == true ? "yes" : string.Empty);
                break;
            case { Basis: BeeBasis.Weighed, Grams: { } grams, MilligramsPerBee: { } each }:
                (texts["basis"], texts["weight"], texts["beeweight"], texts["mg"]) = (Weighed, Typed(grams), Own, Number(each));
                break;
            default:
                (texts["basis"], texts["measure"]) = (Measured, Before);
                break;
        }

        return texts;
    }

    /// <summary>Spread of a weighed number of bees (standard deviation of its logarithm).</summary>
    public double WeighedSpread => BeeSpreads.Of(knowledge, policy).Weighed;

    private string Typed(double grams) => Number(Math.Round(Ounces ? grams / GramsInOunce : grams, 3));

    private double Grams(double typed) => Ounces ? typed * GramsInOunce : typed;

    private static string Number(double value) => NumberText.Write(value, CultureInfo.CurrentCulture);

    private JarBees? ReadBees(FormReader form, bool needed) => form.Text("basis") switch
    {
        Weighed => ReadWeighed(form, needed),
        Measured => ReadMeasured(form),
        _ => ReadCounted(form, needed),
    };

    private static JarBees? ReadCounted(FormReader form, bool needed)
    {
        if (form.Number("bees", Bees) is { } bees)
            return JarBees.Counted((int)bees, form.Text("scooped"));
        if (needed)
            form.Add("bees", QuickTexts.BeesMissing);
        return null;
    }

    private JarBees? ReadWeighed(FormReader form, bool needed)
    {
        var weight = form.Number("weight", Weight);
        if (needed && weight is null)
            form.Add("weight", QuickTexts.WeightMissing);
        var bees = form.Text("beeweight") == Sample ? ReadSampled(form, weight, needed) : ReadByWeight(form, weight, needed);
        if (bees is null || (bees.Count >= Bees.Least && bees.Count <= Bees.Most))
            return bees;
        form.Add("weight", QuickTexts.FormatWeightOff(bees.Count.ToString("0", CultureInfo.CurrentCulture), Number(Bees.Least), Number(Bees.Most)));
        return null;
    }

    private JarBees? ReadByWeight(FormReader form, double? weight, bool needed)
    {
        var each = knowledge.BeeWeights.TryGet(form.Text("beeweight"), out var known) ? known.Weight.Value : form.Number("mg", Milligrams);
        if (needed && each is null)
            form.Add("mg", QuickTexts.WeightOfOneMissing);
        return weight is { } typed && each is { } milligrams ? JarBees.Weighed(Grams(typed), milligrams, WeighedSpread) : null;
    }

    private JarBees? ReadSampled(FormReader form, double? weight, bool needed)
    {
        var counted = form.Number("samplebees", SampleBees);
        var lot = form.Number("sampleweight", Weight);
        if (needed && counted is null)
            form.Add("samplebees", QuickTexts.SampleBeesMissing);
        if (needed && lot is null)
            form.Add("sampleweight", QuickTexts.SampleWeightMissing);
        if (weight is not { } typed || counted is not { } bees || lot is not { } lotTyped)
            return null;
        var apart = form.YesNo("apart") == true;
        if (!apart && lotTyped > typed)
        {
            form.Add("sampleweight", QuickTexts.SampleTooHeavy);
            return null;
        }

        try
        {
            return JarBees.Weighed(Grams(typed), new WeighedSample((int)bees, Grams(lotTyped), fromJar: !apart), knowledge.Weighing.ToWeighing());
        }
        catch (ArgumentOutOfRangeException)
        {
            form.Add("weight", QuickTexts.WeightsDoNotGo);
            return null;
        }
    }

    private JarBees? ReadMeasured(FormReader form)
    {
        var measure = form.Text("measure");
        if (measure == Before)
            return before;
        return measure is null || (measure != Own && !knowledge.JarMeasures.TryGet(measure, out _)) ? null : scoops.Assumed(author, measure);
    }
}
