using System.Globalization;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Knowledge;
using Foundress.Science;
using Foundress.Web.Kit;

namespace Foundress.Web.Pages.Jars;

/// <summary>The fields of the jar form, and the jar they say.</summary>
/// <param name="knowledge">The known methods, measures and weights.</param>
/// <param name="policy">The keeper's settings: units and scoop.</param>
/// <param name="today">The keeper's day.</param>
public sealed class JarFields(KnowledgeBase knowledge, PolicyRecord policy, DateOnly today)
{
    /// <summary>Bees that were counted one by one.</summary>
    public const string Counted = "counted";

    /// <summary>Bees that were weighed.</summary>
    public const string Weighed = "weighed";

    /// <summary>Bees taken with a measure whose number is known roughly.</summary>
    public const string Measured = "measure";

    /// <summary>The keeper's own scoop, or own weight of a bee.</summary>
    public const string Own = "own";

    /// <summary>Grams in an ounce (the international avoirdupois ounce, exact by definition, 1959).</summary>
    public const double GramsInOunce = 28.349523125;

    /// <summary>Counts of mites that are allowed.</summary>
    public static readonly NumberRule Mites = new(0, JarLimits.MostMites);

    /// <summary>Counts of bees that are allowed.</summary>
    public static readonly NumberRule Bees = new(1, JarLimits.MostBees);

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
        "milligramsPerBee" => "mg",
        "bees" or "logSpread" => basis switch { Weighed => "weight", Measured => "measure", _ => "bees" },
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
                form.Add(field, pass == 0 ? "The mites are missing. Type how many you counted, 0 when you saw none." : "This pass has no count. Type it, or take the pass away.");
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
            ["on"] = FormReader.Iso(jar.On),
            ["note"] = jar.Note ?? string.Empty,
            ["damp"] = jar.Conditions?.Damp == true ? "yes" : string.Empty,
        };
        for (var pass = 0; pass < jar.Passes.Count; pass++)
            texts[Pass(pass)] = Number(jar.Passes[pass]);
        switch (jar.Bees)
        {
            case { Basis: BeeBasis.Counted } counted:
                (texts["basis"], texts["bees"]) = (Counted, Number(counted.Count));
                break;
            case { Basis: BeeBasis.Weighed, Grams: { } grams, MilligramsPerBee: { } each }:
                (texts["basis"], texts["weight"], texts["beeweight"], texts["mg"]) =
                    (Weighed, Number(Math.Round(Ounces ? grams / GramsInOunce : grams, 3)), Own, Number(each));
                break;
            case { Measure: { } measure }:
                (texts["basis"], texts["measure"]) = (Measured, measure);
                break;
            case var other:
                (texts["basis"], texts["measure"], texts["scoop"]) = (Measured, Own, Number(other.Count));
                break;
        }

        return texts;
    }

    /// <summary>Spread of a weighed number of bees (standard deviation of its logarithm).</summary>
    public double WeighedSpread => BeeSpreads.Of(knowledge, policy).Weighed;

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
            return JarBees.Counted((int)bees);
        if (needed)
            form.Add("bees", "The bees are missing. Type how many you counted, or choose another way above.");
        return null;
    }

    private JarBees? ReadWeighed(FormReader form, bool needed)
    {
        var weight = form.Number("weight", Weight);
        var each = knowledge.BeeWeights.TryGet(form.Text("beeweight"), out var known) ? known.Weight.Value : form.Number("mg", Milligrams);
        if (needed && weight is null)
            form.Add("weight", "The weight is missing. Type what the bees weigh without the jar.");
        if (needed && each is null)
            form.Add("mg", "The weight of one bee is missing. Weigh a counted lot of bees, or choose a usual weight.");
        if (weight is not { } typed || each is not { } milligrams)
            return null;
        var grams = Ounces ? typed * GramsInOunce : typed;
        var bees = JarBees.Weighed(grams, milligrams, WeighedSpread);
        if (bees.Count < Bees.Least || bees.Count > Bees.Most)
        {
            form.Add("weight", $"That makes {bees.Count:0} bees. A jar holds from {Bees.Least} to {Bees.Most}: check the weight and its unit.");
            return null;
        }

        return bees;
    }

    private JarBees? ReadMeasured(FormReader form)
    {
        if (knowledge.JarMeasures.TryGet(form.Text("measure"), out var measure))
            return new JarBees(BeeBasis.Assumed, measure.UsualBees.Value, measure.LogSpread.Value, measure.Id);
        var scoop = form.Number("scoop", Bees) ?? policy.ScoopBees;
        return scoop is { } bees ? new JarBees(BeeBasis.Assumed, bees, BeeSpreads.Of(knowledge, policy).Assumed) : null;
    }
}
