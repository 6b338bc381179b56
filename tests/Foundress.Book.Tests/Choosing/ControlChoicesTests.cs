using System.Text;
using Foundress.Book.Choosing;
using Foundress.Book.Controls;
using Foundress.Book.Importing;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Tests.Controls;
using Foundress.Knowledge;
using Foundress.Science.Choosing;
using Foundress.Science.Judging;

namespace Foundress.Book.Tests.Choosing;

public sealed class ControlChoicesTests
{
    private static readonly DateOnly Day = new(2026, 8, 1);
    private static readonly double[] Highs = [3, 5, 10, 15, 20, 23, 25, 25, 20, 14, 8, 4];
    private static readonly double[] Lows = [-3, -2, 1, 4, 9, 12, 14, 14, 10, 6, 2, -1];
    private readonly ControlScene _scene = new();

    private ControlList Controls => ControlList.Of(_scene.Book.State, TestBook.Knowledge);

    /// <summary>August after the harvest, 23 to 25 °C, brood, nothing used yet, all gear at hand.</summary>
    private static Situation August => new(
        Day, SeasonPhase.Decrease, new MonthlyNormals(Lows, Highs), SupersOn: false, Brood: BroodState.Some, BroodFrames: 8, ClusterFrom: new DateOnly(2026, 11, 1),
        Jurisdiction: Jurisdiction.UnitedKingdom, CertifiedOrganic: false, Gear: [.. TestBook.Knowledge.Controls.Gear.Ids], Courses: []);

    [Fact]
    public void For_AugustAfterTheHarvest_OffersTheKnockDownsAndRulesOutTrickling()
    {
        var offers = ControlChoices.For(August, Controls);

        string[] workable = [.. offers.Where(o => o.Workability == Workability.Workable).Select(o => o.Agent.Id)];
        Assert.Contains("amitraz-strips", workable);
        Assert.Contains("thymol", workable);
        Assert.Contains("formic-acid-short", workable);
        Assert.Contains("queen-caging", workable);
        Against("oxalic-acid-trickle", August, Ground.Brood, "There is sealed brood.");
        Assert.DoesNotContain(offers, o => o.Agent.Id == "amitraz-other");
        Assert.All(offers, o => Assert.Equal(o.Against.Count > 0, o.Workability == Workability.RuledOut));
    }

    [Fact]
    public void For_WinterWithoutBrood_OffersTricklingAndNoStrips()
    {
        var winter = August with { Start = new DateOnly(2026, 12, 15), Phase = SeasonPhase.DormantBroodless, Brood = BroodState.None, BroodFrames = 0, ClusterFrom = new DateOnly(2026, 12, 15) };

        Assert.Equal(Workability.Workable, Offer("oxalic-acid-trickle", winter).Workability);
        Assert.Equal(Workability.Workable, Offer("oxalic-acid-vapour", winter).Workability);
        Against("amitraz-strips", winter, Ground.Cluster, "The bees are in the winter cluster");
        Against("thymol", winter, Ground.Temperature, "It wants at least 15 °C as the mean of the day");
        Against("drone-comb-removal", winter, Ground.Brood, "No drones are reared");
        Against("brood-comb-removal", winter, Ground.Brood, "There is no brood.");
    }

    [Fact]
    public void For_NothingKnown_AsksInsteadOfGuessing()
    {
        var bare = new Situation(Day, SeasonPhase.Peak);

        Asks("thymol", bare, Ground.Temperature, "enter the usual temperatures of this apiary, or import a forecast");
        Asks("thymol", bare, Ground.Supers, "enter whether supers are on");
        Asks("oxalic-acid-trickle", bare, Ground.Brood, "enter whether there is sealed brood");
        Asks("formic-acid-short", bare, Ground.Brood, "enter the frames of brood; at least 6 are wanted");
        Assert.All(ControlChoices.For(bare, Controls).SelectMany(o => o.Missing), reason => Assert.StartsWith("Not known: ", reason.Text, StringComparison.Ordinal));
    }

    /// <summary>UK summary of product characteristics: thymol not in a honey flow. US labels allow short formic acid; for amitraz supers wait 14 days.</summary>
    [Fact]
    public void For_Supers_GoByTheRuleOfTheJurisdiction()
    {
        var on = August with { SupersOn = true, HarvestOn = Day.AddDays(10) };

        Against("thymol", on, Ground.Supers, "Supers are on. Not in a honey flow. Supers come off on 11 Aug 2026.");
        Asks("flumethrin-strips", on, Ground.Supers, "Read the label");
        Asks("amitraz-strips", on with { Jurisdiction = null }, Ground.Supers, "your country is not set");
        Assert.Equal(Workability.Workable, Offer("formic-acid-short", on with { Jurisdiction = Jurisdiction.UnitedStates }).Workability);
        Assert.Empty(Offer("queen-caging", on).Against);

        var spring = August with { Phase = SeasonPhase.Increase, SupersDue = Day.AddDays(60) };
        Against("amitraz-strips", spring, Ground.Supers, "it would be over on 26 Sep 2026, and supers must wait 14 days more");
        Assert.Equal(Workability.Workable, Offer("amitraz-strips", spring with { SupersDue = Day.AddDays(70) }).Workability);
        Asks("amitraz-strips", spring with { SupersDue = null }, Ground.Supers, "enter when supers are to go on");
    }

    [Fact]
    public void For_HotSpellForetold_RulesOutFormicAcidOnTheFirstDayOnly()
    {
        var hot = August with { Temperatures = Forecast(0, 33) };
        Against("formic-acid-short", hot, Ground.Temperature, "at most 29.5 °C as the highest of the day; foretold on 1 Aug 2026: 33 °C");
        Assert.Equal(Workability.Workable, Offer("formic-acid-short", August with { Temperatures = Forecast(4, 32) }).Workability);
        Against("thymol", August with { Temperatures = Forecast(4, 32) }, Ground.Temperature, "foretold on 5 Aug 2026: 32 °C");

        ITemperatures Forecast(int day, double high) =>
            new TemperatureForecast(new Dictionary<DateOnly, DayTemperatures> { [Day.AddDays(day)] = new(18, high) }, new MonthlyNormals(Lows, Highs));
    }

    [Fact]
    public void For_ForecastThatEndsTooSoon_AsksForTheRest()
    {
        var days = Enumerable.Range(0, 10).ToDictionary(Day.AddDays, _ => new DayTemperatures(15, 24));

        Asks("thymol", August with { Temperatures = new TemperatureForecast(days) }, Ground.Temperature, "the temperature of 18 days of the application");
    }

    [Fact]
    public void For_SameGroupLastTime_IsRuledOutByRotation()
    {
        var use = _scene.Use("tau-fluvalinate-strips", Day.AddDays(-340), 42);
        _scene.Book.Write(new ControlEnded(use.Control, Day.AddDays(-298)));
        var after = August with { Courses = _scene.Book.State.CoursesOf(_scene.Colonies[0]) };

        Against("flumethrin-strips", after, Ground.Rotation, "The same group, pyrethroids (group 3A), was used last time (Tau-fluvalinate strips, over on 7 Oct 2025)");
        Assert.Equal(Workability.Workable, Offer("amitraz-strips", after).Workability);

        _scene.Use("oxalic-acid-trickle", Day.AddDays(-220), 0);
        Assert.DoesNotContain(Offer("flumethrin-strips", August with { Courses = _scene.Book.State.CoursesOf(_scene.Colonies[0]) }).Against, r => r.Ground == Ground.Rotation);
    }

    [Fact]
    public void For_TooSoonOrStillAtWork_IsRuledOut()
    {
        var use = _scene.Use("formic-acid-short", Day.AddDays(-20), 7);
        _scene.Book.Write(new ControlEnded(use.Control, Day.AddDays(-13)));
        Against("formic-acid-short", August with { Courses = _scene.Book.State.CoursesOf(_scene.Colonies[0]) }, Ground.Interval, "the next use is usual from 18 Aug 2026 on (30 days)");

        _scene.Use("amitraz-strips", Day.AddDays(-5), 56);
        var running = August with { Courses = _scene.Book.State.CoursesOf(_scene.Colonies[0]) };
        Against("amitraz-strips", running, Ground.Interval, "is still at work");
        Assert.Contains(Offer("thymol", running).Mind, note => note.StartsWith("Amitraz strips is still at work", StringComparison.Ordinal));
    }

    [Fact]
    public void For_KeeperOrganicAndGear_AreHeldTo()
    {
        Against("oxalic-acid-vapour", August with { Gear = ["goggles", "acid-gloves", "vaporiser"] }, Ground.Gear, "a fitted respirator with cartridges for acid gas");
        Assert.Contains(Offer("oxalic-acid-vapour", August with { Gear = null }).Mind, note => note.StartsWith("You need ", StringComparison.Ordinal));
        Against("amitraz-strips", August with { CertifiedOrganic = true }, Ground.Organic, "certified organic");
        Asks("hop-beta-acids", August with { CertifiedOrganic = true }, Ground.Organic, "ask your certifier");
        Assert.Equal(Workability.Workable, Offer("thymol", August with { CertifiedOrganic = true }).Workability);
        _scene.Book.Write(new AgentRecord("thymol", Refused: true));
        Against("thymol", August, Ground.Refused, "You have ruled it out");
    }

    [Fact]
    public void For_StripsThatWouldStayIntoTheCluster_AreRuledOut() =>
        Against("amitraz-strips", August with { Start = new DateOnly(2026, 9, 20) }, Ground.Cluster, "The bees cluster from about 1 Nov 2026, before it would be over on 15 Nov 2026");

    /// <summary>Common practice, no source: nobody takes a clustered colony apart, and a brood break needs brood to break.</summary>
    [Theory]
    [InlineData("requeening")]
    [InlineData("queen-caging")]
    [InlineData("splitting")]
    [InlineData("brood-comb-removal")]
    [InlineData("trapping-comb")]
    public void For_WinterCluster_WhatTakesTheHiveApartIsRuledOut(string agent)
    {
        Against(agent, August with { Clustered = true }, Ground.Cluster, "The hive is taken apart comb by comb");
        Assert.DoesNotContain(Offer(agent, August).Against, reason => reason.Ground == Ground.Cluster);
        Against("queen-caging", August with { Brood = BroodState.None }, Ground.Brood, "Nothing to break without brood.");
    }

    [Fact]
    public void For_EveryOfferOfAcidVapour_ShowsItsCautionFirst() =>
        Assert.StartsWith("Never breathe the vapour", Offer("oxalic-acid-vapour", August).Mind[0], StringComparison.Ordinal);

    [Fact]
    public void FirstDay_AfterTheInterval_IsTheFirstWorkable()
    {
        var use = _scene.Use("formic-acid-short", Day.AddDays(-20), 7);
        _scene.Book.Write(new ControlEnded(use.Control, Day.AddDays(-13)));
        var agent = Controls.Find("formic-acid-short")!;
        Situation At(DateOnly day) => August with { Start = day, Courses = _scene.Book.State.CoursesOf(_scene.Colonies[0]) };

        Assert.Equal(new DateOnly(2026, 8, 18), ControlChoices.FirstDay(agent, At, Controls, Day, 40));
        Assert.Null(ControlChoices.FirstDay(agent, At, Controls, Day, 5));
    }

    [Fact]
    public void Of_BookOfAnApiary_TakesFreshInspectionsAndTheMostDemandingColony()
    {
        var apiary = _scene.Book.State.Apiaries[_scene.Apiary];
        _scene.Book.Write(new NormalsRecord(_scene.Apiary, Highs, Lows));
        _scene.Book.Write(new InspectionRecord(_scene.Colonies[0], Day.AddDays(-40), FramesOfBrood: 0, SupersOn: true));
        _scene.Book.Write(new InspectionRecord(_scene.Colonies[0], Day.AddDays(-3), FramesOfBrood: 7, SupersOn: false));
        var one = Situations.Of(apiary, [_scene.Colonies[0]], _scene.Book.State, TestBook.Knowledge, Day);
        Assert.Equal((false, BroodState.Some, 7d), (one.SupersOn, one.Brood, one.BroodFrames));
        Assert.NotNull(one.Temperatures);

        var two = Situations.Of(apiary, [_scene.Colonies[0], _scene.Colonies[1]], _scene.Book.State, TestBook.Knowledge, Day);
        Assert.Equal((null, BroodState.Some, null), (two.SupersOn, two.Brood, two.BroodFrames));

        _scene.Book.Write(new InspectionRecord(_scene.Colonies[1], Day.AddDays(-2), FramesOfBrood: 3, SupersOn: true));
        var three = Situations.Of(apiary, [_scene.Colonies[0], _scene.Colonies[1]], _scene.Book.State, TestBook.Knowledge, Day);
        Assert.Equal((true, 3d), (three.SupersOn, three.BroodFrames));
        Assert.True(three.ClusterFrom > Day);
    }

    [Fact]
    public void Read_ForecastFile_TakesGoodRowsAndNamesTheRest()
    {
        const string Csv = "Date;Min;Max;Rain\n2026-08-01;14;24.5;0\n2026-08-02;25;14;0\n2026-08-03;57 F;75 F;0\n2026-08-01;1;2;0\n02/08/2026;1;2;0\n2026-08-04;13;23;\n";

        var file = TemperatureImport.Read(new MemoryStream(Encoding.UTF8.GetBytes(Csv)));

        Assert.Equal([new DateOnly(2026, 8, 1), new DateOnly(2026, 8, 4)], file.Days.Keys.Order());
        Assert.Equal(24.5, file.Days[Day].High);
        Assert.Equal([3, 4, 5, 6], file.Rejected.Select(r => r.Row));
        Assert.Contains("swap them", file.Rejected[0].Problem.Fix, StringComparison.Ordinal);
        Assert.Contains("degrees Celsius", file.Rejected[1].Problem.Fix, StringComparison.Ordinal);
        Assert.Contains("twice", file.Rejected[2].Problem.Fix, StringComparison.Ordinal);
    }

    [Fact]
    public void Read_FileWithoutAColumn_SaysWhichColumnsItHas() =>
        Assert.Contains("The column 'low' is missing", Assert.Throws<ImportFormatException>(() =>
            TemperatureImport.Read(new MemoryStream(Encoding.UTF8.GetBytes("day,high\n2026-08-01,20\n")))).Message, StringComparison.Ordinal);

    private ControlOffer Offer(string agent, Situation situation) => ControlChoices.For(Controls.Find(agent)!, situation, Controls);

    private void Against(string agent, Situation situation, Ground ground, string text) =>
        Assert.Contains(Offer(agent, situation).Against, r => r.Ground == ground && r.Text.Contains(text, StringComparison.Ordinal));

    private void Asks(string agent, Situation situation, Ground ground, string text) =>
        Assert.Contains(Offer(agent, situation).Missing, r => r.Ground == ground && r.Text.Contains(text, StringComparison.Ordinal));
}
