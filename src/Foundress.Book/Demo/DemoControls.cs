using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Science.Numerics;

namespace Foundress.Book.Demo;

/// <summary>Invents the controls of the demo's keeper: one that worked, one that did not, a winter one, one still in.</summary>
/// <param name="seed">The demo's seed.</param>
/// <param name="ids">Where ids come from.</param>
internal sealed class DemoControls(ulong seed, IIdSource ids)
{
    /// <summary>Days the pads of August lie.</summary>
    internal const int PadDays = 14;

    /// <summary>Days the strips of August hang.</summary>
    internal const int StripDays = 49;

    // Of its own, so that everything else in the demo stays as it was invented.
    private readonly SeededGenerator _chance = new(seed ^ 0x5DEECE66DUL);
    private readonly List<(ControlRecord Use, IReadOnlyList<ColonyId> Sampled)> _open = [];
    private readonly List<(DateOnly On, IReadOnlyList<ColonyId> Sampled)> _ended = [];

    /// <summary>Gear the keeper has.</summary>
    internal static string[] Gear => ["gloves", "acid-gloves", "goggles", "acid-gas-respirator", "water", "dispenser", "drone-comb"];

    /// <summary>Whether something is still in.</summary>
    internal bool HasOpen => _open.Count > 0;

    /// <summary>Usual temperatures, of no station.</summary>
    internal static NormalsRecord Normals(ApiaryId apiary) => new(
        apiary, [6, 7, 11, 15, 19, 22, 24, 24, 20, 15, 10, 7], [1, 1, 3, 5, 9, 12, 14, 14, 11, 8, 4, 2], "no station: invented");

    internal ControlRecord August(ApiaryId apiary, DateOnly day, bool strips, IReadOnlyList<DemoHive> hives, BookState state)
    {
        var jars = state.JarsIn(apiary).Where(one => one.Jar.Facts.On <= day && one.Jar.Facts.On >= day.AddDays(-14)).ToArray();
        var use = new ControlRecord(
            new ControlId(ids.Next()), strips ? "tau-fluvalinate-strips" : "formic-acid-long", day, Ids(hives), day.AddDays(strips ? StripDays : PadDays),
            strips ? "Invented strips" : "Invented pads", strips ? "2 strips" : "1 pad", $"INV-{day.Year}-{(strips ? "S" : "P")}", "Invented supply house", $"invoice INV-{day.Year}",
            "Keeper (invented)", null, 0, [.. jars.Select(one => one.Jar.Id)], "After the August round.", 14, 25, "dry, light wind");
        _open.Add((use, [.. jars.Select(one => one.Colony.Id).Distinct()]));
        return use;
    }

    internal ControlRecord Winter(DateOnly day, IReadOnlyList<DemoHive> hives) => new(
        new ControlId(ids.Next()), "oxalic-acid-trickle", day, Ids(hives), day, "Invented solution", "as the label says", $"INV-{day.Year}-W", "Invented supply house",
        By: "Keeper (invented)", WithdrawalDays: 0, Reason: "No brood: the winter control.", AirLow: 2, AirHigh: 5, Weather: "still and grey", Note: "Bees in the cluster.");

    internal ControlRecord LateStrips(DateOnly day, IReadOnlyList<DemoHive> hives) => new(
        new ControlId(ids.Next()), "hop-beta-acids", day, Ids(hives), day.AddDays(24), "Invented strips", "2 strips", $"INV-{day.Year}-H", "Invented supply house",
        By: "Helper (invented)", Reason: "Three strong colonies at the end of the row, before winter.");

    /// <summary>What ends on a day.</summary>
    internal IReadOnlyList<ControlEnded> Ends(DateOnly day)
    {
        var over = _open.Where(one => one.Use.PlannedEnd == day).ToArray();
        foreach (var one in over)
        {
            _open.Remove(one);
            _ended.Add((day, one.Sampled));
        }

        return [.. over.Select(one => new ControlEnded(one.Use.Control, day))];
    }

    /// <summary>The colonies with jars before, of what ended on a day.</summary>
    internal IEnumerable<IReadOnlyList<ColonyId>> Ended(DateOnly day) => _ended.Where(one => one.On == day).Select(one => one.Sampled);

    internal JarRecord JarAfter(DemoHive hive, DateOnly day)
    {
        var bees = Math.Clamp((int)Math.Round(315 * Math.Exp(0.13 * _chance.NextNormal())), 150, 520);
        return new JarRecord(
            day, "alcohol-wash", [_chance.NextPoisson(bees * hive.Level / 100)], JarBees.Counted(bees, "half-cup-us"), hive.Id, null, new JarConditions(AgitationSeconds: 60), "Jar after the control.");
    }

    private static ColonyId[] Ids(IReadOnlyList<DemoHive> hives) => [.. hives.Select(hive => hive.Id)];
}
