using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.Rules;
using Foundress.Book.Tests.Controls;
using Foundress.Knowledge;
using Record = Foundress.Book.Records.Record;

namespace Foundress.Book.Tests.Rules;

public sealed class ControlRulesTests
{
    private static readonly DateOnly Day = new(2026, 7, 20);
    private readonly ControlScene _scene = new();

    public static TheoryData<string, Func<ControlRecord, ControlRecord>, string> Impossible => new()
    {
        { "start", r => r with { Start = TestBook.Today.AddDays(1), PlannedEnd = null }, "2026-08-21" },
        { "plannedEnd", r => r with { PlannedEnd = Day.AddDays(-1) }, "2026-07-19" },
        { "plannedEnd", r => r with { PlannedEnd = Day.AddYears(2) }, "2028-07-20" },
        { "colonies", r => r with { Colonies = [] }, "0" },
        { "colonies", r => r with { Colonies = [new ColonyId(new Guid(1, 2, 3, new byte[8]))] }, "00000001-0002-0003-0000-000000000000" },
        { "colonies", r => r with { Colonies = [r.Colonies[0], r.Colonies[0]] }, "2" },
        { "agent", r => r with { Agent = " " }, " " },
        { "withdrawalDays", r => r with { WithdrawalDays = -1 }, "-1" },
        { "quantity", r => r with { Quantity = "-50 mL" }, "-50 mL" },
        { "quantity", r => r with { Quantity = "0" }, "0" },
        { "airHigh", r => r with { AirHigh = 99 }, "99" },
        { "airLow", r => r with { AirLow = 20, AirHigh = 10 }, "20" },
        { "airLow", r => r with { AirLow = double.NaN }, "NaN" },
        { "batch", r => r with { Batch = new string('x', 101) }, "101" },
        { "reasonJars", r => r with { ReasonJars = [new EntryId(new Guid(1, 2, 3, new byte[8]))] }, "00000001-0002-0003-0000-000000000000" },
    };

    [Theory]
    [MemberData(nameof(Impossible))]
    public void Check_WhatCannotHaveHappened_IsAnErrorThatNamesFieldAndValue(string field, Func<ControlRecord, ControlRecord> spoil, string given)
    {
        var problem = Assert.Single(Check(spoil(Use("thymol", 28))), p => p.Gravity == Gravity.Error);

        Assert.Equal((field, given), (problem.Field, problem.Given));
        Assert.EndsWith(".", problem.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("50 mL")]
    [InlineData("0,5 strips")]
    [InlineData("two pads")]
    [InlineData("- see the label")]
    public void Check_QuantityInWords_IsKeptAsWritten(string quantity) => Assert.Empty(Check(Use("thymol", 28) with { Quantity = quantity }));

    [Fact]
    public void Check_OrdinaryUse_HasNoProblem() => Assert.Empty(Check(Use("thymol", 28) with { AirHigh = 24, AirLow = 14 }));

    [Fact]
    public void Check_UnknownControl_IsDoubtedAndMayBeKept() => Doubted(Use("garlic", 5), "agent", "'garlic' is not among the known controls");

    [Theory]
    [InlineData("formic-acid-short", 34, "warmer than 29.5 °C")]
    [InlineData("formic-acid-short", 8, "colder than 10 °C")]
    [InlineData("oxalic-acid-trickle", 22, "warmer than 15 °C")]
    public void Check_OutsideTheTemperatures_IsDoubted(string agent, double high, string message)
    {
        var record = Use(agent, agent == "formic-acid-short" ? 7 : 0) with { AirHigh = high };

        Assert.All(Check(record), p => Assert.Equal(Gravity.Doubt, p.Gravity));
        Assert.Contains(Check(record), p => p.Field == "airHigh" && p.Message.Contains(message, StringComparison.Ordinal));
    }

    /// <summary>UK notice: not with supers on. With no jurisdiction the label is asked for; where labels allow it nothing is said.</summary>
    [Fact]
    public void Check_SupersOn_GoesByTheRuleOfTheJurisdiction()
    {
        _scene.Book.Write(new InspectionRecord(_scene.Colonies[0], Day.AddDays(-5), SupersOn: true));
        Doubted(Use("amitraz-strips", 56), "agent", "Read the label");

        _scene.Book.Write(new PolicyRecord(Jurisdiction: Jurisdiction.UnitedKingdom));
        Doubted(Use("amitraz-strips", 56), "agent", "Not in a honey flow or with supers on.");

        _scene.Book.Write(new PolicyRecord(Jurisdiction: Jurisdiction.UnitedStates));
        Assert.Empty(Check(Use("formic-acid-short", 7)));
        Assert.Empty(Check(Use("drone-comb-removal", 24)));
    }

    [Fact]
    public void Check_SupersSeenLongAgo_SaysNothing()
    {
        _scene.Book.Write(new InspectionRecord(_scene.Colonies[0], Day.AddDays(-40), SupersOn: true));

        Assert.Empty(Check(Use("amitraz-strips", 56)));
    }

    [Fact]
    public void Check_TricklingWithBrood_IsDoubted()
    {
        _scene.Book.Write(new InspectionRecord(_scene.Colonies[0], Day.AddDays(-5), FramesOfBees: 10, FramesOfBrood: 4));

        Doubted(Use("oxalic-acid-trickle", 0), "agent", "had 4 frames of brood on 15 Jul 2026");
    }

    [Fact]
    public void Check_OverlappingCourseOfOneGroup_IsDoubted()
    {
        _scene.Use("tau-fluvalinate-strips", Day.AddDays(-20), 42);

        Doubted(Use("flumethrin-strips", 42), "start", "at work then, of the same kind: pyrethroids (group 3A)");
        Assert.Empty(Check(Use("thymol", 28)));
    }

    [Fact]
    public void Check_SameGroupAsLastTimeAndTooSoon_IsDoubted()
    {
        var use = _scene.Use("amitraz-strips", Day.AddDays(-100), 56);
        _scene.Book.Write(new ControlEnded(use.Control, Day.AddDays(-44)));

        var problems = Check(Use("amitraz-strips", 56));
        Assert.All(problems, p => Assert.Equal(Gravity.Doubt, p.Gravity));
        Assert.Contains(problems, p => p.Message.Contains("44 days before", StringComparison.Ordinal));
        Assert.Contains(problems, p => p.Message.Contains("of the same group: amitraz (group 19)", StringComparison.Ordinal));
    }

    [Fact]
    public void Check_CorrectionOfTheSameUse_DoesNotOverlapItself()
    {
        var use = _scene.Use("amitraz-strips", Day, 56);

        Assert.Empty(Check(use with { Batch = "A7" }));
    }

    [Fact]
    public void Check_UnusualLength_IsDoubted() => Doubted(Use("amitraz-strips", 120), "plannedEnd", "120 days is not usual");

    [Fact]
    public void Check_DeadColony_IsDoubted()
    {
        _scene.Book.Write(new ColonyDied(_scene.Colonies[0], Day.AddDays(-3)));

        Doubted(Use("thymol", 28), "start", "died on 17 Jul 2026");
    }

    [Fact]
    public void Check_EndBeforeStart_IsAnError()
    {
        var use = _scene.Use("thymol", Day, 28);

        Assert.Equal("on", Assert.Single(Check(new ControlEnded(use.Control, Day.AddDays(-1)))).Field);
        Assert.Contains("before the planned end", Assert.Single(Check(new ControlEnded(use.Control, Day.AddDays(20)))).Message, StringComparison.Ordinal);
        Assert.Empty(Check(new ControlEnded(use.Control, Day.AddDays(28))));
    }

    [Fact]
    public void Check_StoppedEarlyWithoutAReason_IsAnError()
    {
        var use = _scene.Use("thymol", Day, 28);

        Assert.Equal("reason", Assert.Single(Check(new ControlEnded(use.Control, Day.AddDays(9), ControlEnding.StoppedEarly))).Field);
        Assert.Empty(Check(new ControlEnded(use.Control, Day.AddDays(9), ControlEnding.StoppedEarly, Reason: "too hot")));
    }

    [Fact]
    public void Check_EndOfWhatNeverWas_IsAnError()
    {
        var use = _scene.Use("thymol", Day, 28, _scene.Colonies[0]);

        Assert.Equal("control", Assert.Single(Check(new ControlEnded(_scene.NewControl(), Day))).Field);
        Assert.Equal("colonies", Assert.Single(Check(new ControlEnded(use.Control, Day.AddDays(28), Colonies: [_scene.Colonies[1]]))).Field);
    }

    [Fact]
    public void Check_EndedTwice_IsDoubted()
    {
        var use = _scene.Use("thymol", Day, 28);
        _scene.Book.Write(new ControlEnded(use.Control, Day.AddDays(27), ControlEnding.Partial, Reason: "fell out"));

        Assert.Contains("already says", Assert.Single(Check(new ControlEnded(use.Control, Day.AddDays(28)))).Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("agent", "My Thymol", "title", null, null)]
    [InlineData("like", "my-thymol", "title", null, null)]
    [InlineData("title", "my-thymol", null, "thymol", null)]
    [InlineData("like", "thymol", null, "thymol", null)]
    [InlineData("days", "thymol", null, null, 0)]
    public void Check_BadOwnControl_IsAnError(string field, string agent, string? title, string? like, int? days) =>
        Assert.Contains(Check(new AgentRecord(agent, title, like, Days: days)), p => p.Field == field && p.Gravity == Gravity.Error);

    [Fact]
    public void Check_LabelWiderThanPublished_IsDoubted()
    {
        Assert.Equal(Gravity.Doubt, Assert.Single(Check(new AgentRecord("formic-acid-short", Warmest: 40))).Gravity);
        Assert.Equal("coldest", Assert.Single(Check(new AgentRecord("thymol", Coldest: 31, Warmest: 20))).Field);
        Assert.Empty(Check(new AgentRecord("formic-acid-short", Warmest: 25)));
    }

    [Fact]
    public void Check_Normals_NeedTwelveMonthsInOrder()
    {
        double[] highs = [.. Enumerable.Repeat(20d, 12)];
        double[] lows = [.. Enumerable.Repeat(10d, 12)];
        Assert.Empty(Check(new NormalsRecord(_scene.Apiary, highs, lows)));
        Assert.Equal("highs", Assert.Single(Check(new NormalsRecord(_scene.Apiary, highs[..11], lows))).Field);
        Assert.Equal(12, Check(new NormalsRecord(_scene.Apiary, lows, highs)).Count);
    }

    [Fact]
    public void Check_UnknownGear_IsAnError() => Assert.Equal("gear", Assert.Single(Check(new PolicyRecord(Gear: ["goggles", "tea"]))).Field);

    private ControlRecord Use(string agent, int days) => new(_scene.NewControl(), agent, Day, [_scene.Colonies[0]], Day.AddDays(days));

    private void Doubted(ControlRecord record, string field, string message)
    {
        var problem = Assert.Single(Check(record));
        Assert.Equal((Gravity.Doubt, field), (problem.Gravity, problem.Field));
        Assert.Contains(message, problem.Message, StringComparison.Ordinal);
    }

    private IReadOnlyList<Problem> Check(Record record) => RecordRules.Check(record, _scene.Book.State, TestBook.Knowledge, TestBook.Today);
}
