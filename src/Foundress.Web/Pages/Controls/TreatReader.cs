using System.Globalization;
using Foundress.Book.Choosing;
using Foundress.Book.Controls;
using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Knowledge;
using Foundress.Web.Kit;
using Foundress.Web.Shell;
using Foundress.Web.Store;

namespace Foundress.Web.Pages.Controls;

/// <summary>Reads the form about a control: the record, and what speaks against it.</summary>
/// <param name="session">The open book.</param>
/// <param name="apiary">Where.</param>
/// <param name="controls">The operation's controls.</param>
/// <param name="known">The use that is put right; null for a new one.</param>
public sealed class TreatReader(BookSession session, Apiary apiary, ControlList controls, Control? known)
{
    /// <summary>The choice that stands for something outside the list.</summary>
    public const string Other = "?";

    private static readonly NumberRule Withdrawal = new(0, 3650);
    private static readonly NumberRule Celsius = new(-30, 60, 1);
    private static readonly NumberRule Fahrenheit = new(-22, 140, 0);

    private ControlId? _id;

    /// <summary>Whether temperatures are typed in degrees Fahrenheit.</summary>
    public bool IsFahrenheit => session.State.Policy.Units == UnitSystem.UsCustomary;

    /// <summary>Which temperatures can be typed.</summary>
    public NumberRule Air => IsFahrenheit ? Fahrenheit : Celsius;

    /// <summary>Which withdrawal periods can be typed.</summary>
    public static NumberRule WithdrawalRule => Withdrawal;

    /// <summary>The units a quantity can be given in.</summary>
    public static IReadOnlyList<Choice> Units =>
    [
        new("strips", TreatTexts.UnitStrips), new("mL", "mL"), new("g", "g"), new("pads", TreatTexts.UnitPads), new("trays", TreatTexts.UnitTrays),
        new("wafers", TreatTexts.UnitWafers), new("combs", TreatTexts.UnitCombs),
    ];

    /// <summary>Where a use of a control is recorded, with what was chosen elsewhere filled in.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="agent">Id of the control.</param>
    /// <param name="start">The first day.</param>
    /// <param name="colonies">The colonies; all of the apiary when there are none.</param>
    public static string Address(ApiaryId apiary, string agent, DateOnly start, IEnumerable<ColonyId> colonies) =>
        $"treat/{apiary}?agent={Uri.EscapeDataString(agent)}&start={Say.IsoDay(start)}&colonies={string.Join(',', colonies)}";

    /// <summary>The field of a colony.</summary>
    public static string In(ColonyId colony) => $"c:{colony}";

    /// <summary>The field of a reason's jar.</summary>
    public static string Jar(EntryId jar) => $"j:{jar}";

    /// <summary>The control that is chosen; null for none, or one outside the list.</summary>
    public ControlAgent? Agent(FormDraft draft) => controls.Find(draft["agent"]);

    /// <summary>The colonies that are chosen.</summary>
    public static IReadOnlyList<ColonyId> Colonies(FormDraft draft, IEnumerable<Colony> offered) =>
        [.. offered.Where(colony => draft[In(colony.Id)] == "yes").Select(colony => colony.Id)];

    /// <summary>The record as it stands; null while something that is needed is missing.</summary>
    /// <param name="form">The form, in which faults are noted.</param>
    /// <param name="draft">What was typed.</param>
    /// <param name="offered">The colonies that can be chosen.</param>
    /// <param name="jars">The jars that can be the reason.</param>
    public ControlRecord? Read(FormReader form, FormDraft draft, IReadOnlyList<Colony> offered, IEnumerable<Jar> jars)
    {
        var agent = draft["agent"] == Other ? form.Needed("other", TreatTexts.NeedsOther) : form.Needed("agent", TreatTexts.NeedsControl);
        if (!FormReader.TryIso(draft["start"], out var start))
            form.Add("start", TreatTexts.NeedsStart);
        DateOnly? end = null;
        if (draft["end"].Length > 0)
        {
            if (FormReader.TryIso(draft["end"], out var last))
                end = last;
            else
                form.Add("end", TreatTexts.EndNoDay);
        }

        var colonies = Colonies(draft, offered);
        if (colonies.Count == 0)
            form.Add("colonies", TreatTexts.NeedsColony);
        var withdrawal = form.Number("withdrawal", Withdrawal);
        var low = Celsiused(form.Number("low", Air));
        var high = Celsiused(form.Number("high", Air));
        if (!form.Fine)
            return null;
        EntryId[] reason = [.. jars.Where(jar => draft[Jar(jar.Id)] == "yes").Select(jar => jar.Id)];
        var quantity = form.Text("quantity") is { } amount ? Unit(draft) is { } unit ? $"{amount} {unit}" : amount : null;
        return new ControlRecord(
            known?.Id ?? (_id ??= new ControlId(session.Ids.Next())), agent, start, colonies, end, form.Text("product"), quantity, form.Text("batch"), form.Text("supplier"),
            form.Text("proof"), form.Text("by"), form.Text("prescriber"), (int?)withdrawal, reason.Length == 0 ? null : reason, form.Text("reason"), low, high, form.Text("weather"), form.Text("note"));
    }

    /// <summary>What the engine says of the choice as it stands; null while no known control and no day is chosen.</summary>
    public ControlOffer? Offer(FormDraft draft, IReadOnlyList<Colony> offered)
    {
        if (Agent(draft) is not { } agent || !FormReader.TryIso(draft["start"], out var start))
            return null;
        var colonies = Colonies(draft, offered);
        if (colonies.Count == 0)
            return null;
        var situation = Situations.Of(apiary, colonies, session.State, KnowledgeBase.Load(), start);
        // A use that is put right does not stand in its own way.
        if (known is not null)
            situation = situation with { Courses = [.. (situation.Courses ?? []).Where(course => course.Control.Id != known.Id)] };
        return ControlChoices.For(agent, situation, controls);
    }

    /// <summary>What is wrong with a record, or unusual about it.</summary>
    public IReadOnlyList<Problem> Check(ControlRecord record) => RecordRules.Check(record, session.State, KnowledgeBase.Load(), session.Today);

    /// <summary>
    /// Everything that speaks against a choice, in sentences and each once: where the engine has said it for all colonies,
    /// what the rules doubt in each of them is left out. Supers that are on count against it also where only the label knows.
    /// </summary>
    public static IReadOnlyList<string> Warnings(ControlOffer? offer, IReadOnlyList<Problem> problems)
    {
        var against = offer is null ? [] : offer.Against.Concat(offer.Missing.Where(IsSupersOn)).ToArray();
        var told = against.Any(reason => reason.Ground == Ground.Interval);
        return
        [
            .. against.Select(reason => reason.Text),
            .. problems.Where(problem => problem.Gravity == Gravity.Doubt)
                .Where(doubt => offer is null || (doubt.Field != "agent" && (doubt.Field != "start" || !told)))
                .Select(doubt => doubt.Message),
        ];
    }

    /// <summary>What must be known first, less what is among the warnings.</summary>
    public static IReadOnlyList<Reason> Unknown(ControlOffer? offer) => [.. (offer?.Missing ?? []).Where(reason => !IsSupersOn(reason))];

    private static bool IsSupersOn(Reason reason) => reason is { Ground: Ground.Supers, Holds: true };

    /// <summary>A temperature as it is typed here.</summary>
    public string Typed(double? celsius) => celsius is { } degrees
        ? NumberText.Write(IsFahrenheit ? Math.Round((degrees * 9 / 5) + 32) : degrees, CultureInfo.CurrentCulture)
        : string.Empty;

    // The book keeps a quantity as a text, in the words of whoever writes it.
    private static string? Unit(FormDraft draft) => Units.FirstOrDefault(unit => unit.Value == draft["unit"])?.Label;

    private double? Celsiused(double? typed) => typed is { } degrees && IsFahrenheit ? Math.Round((degrees - 32) * 5 / 9, 1) : typed;
}
