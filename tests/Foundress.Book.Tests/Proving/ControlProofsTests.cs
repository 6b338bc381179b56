using System.Globalization;
using Foundress.Book.Journal;
using Foundress.Book.Proving;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;
using Foundress.Science.Verifying;

namespace Foundress.Book.Tests.Proving;

public sealed class ControlProofsTests
{
    private static readonly DateOnly Start = new(2026, 5, 1);
    private static readonly DateOnly End = Start.AddDays(56);
    private readonly TestBook _book = new();
    private readonly ApiaryId _apiary;
    private readonly ColonyId[] _colonies;

    public ControlProofsTests()
    {
        _apiary = _book.Apiary("Orchard");
        _colonies = [.. Enumerable.Range(1, 10).Select(n => _book.Colony(_apiary, $"{n}", new DateOnly(2025, 4, 1)))];
    }

    [Fact]
    public void Of_JarsBeforeAndAfter_ArePairedAndJudged()
    {
        Use(before: 30, after: 0);

        var proof = Only();
        Assert.Equal(8, proof.Colonies.Count(c => c.Why is null));
        Assert.Equal((Verdict.Worked, Correction.None, ProofState.Done), (proof.Verdict, proof.Correction, proof.Due!.State));
        Assert.Equal(0.95, proof.Test!.Target, 1e-12);
        Assert.False(proof.ResistanceSignal);
        Assert.Empty(proof.NextGroups);
        Assert.StartsWith("Amitraz strips took away ", proof.Sentence, StringComparison.Ordinal);
        Assert.EndsWith("It worked (95 % is what it should reach).", proof.Sentence, StringComparison.Ordinal);
        Assert.Equal(proof.Plain, proof.Outcome);
    }

    [Fact]
    public void Of_EffectReduced_SignalsResistanceAndOtherGroups()
    {
        Use(before: 30, after: 12);

        var proof = Only();
        Assert.Equal(Verdict.Failed, proof.Verdict);
        Assert.True(proof.ResistanceSignal);
        Assert.DoesNotContain(proof.NextGroups, mode => mode.Id == "19");
        Assert.Contains(proof.NextGroups, mode => mode.Id == "3a");
        Assert.Contains("Resistance is possible", proof.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain("resistant", proof.Sentence, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Dietemann et al. 2013, J Apic Res 52(1): the follow-up comes at least 14 days after the end.</summary>
    [Theory]
    [InlineData(6, false)]
    [InlineData(16, true)]
    public void Of_EffectReducedInJarsTakenEarly_IsNoSignal(int days, bool signals)
    {
        var use = new ControlRecord(new ControlId(_book.Ids.Next()), "oxalic-acid-trickle", Start, _colonies[..8], Start);
        foreach (var colony in _colonies[..8])
        {
            _book.Jar(colony, Start.AddDays(-2), 30);
            _book.Jar(colony, Start.AddDays(days), 28);
        }

        _book.Write(use);
        _book.Write(new ControlEnded(use.Control, Start));
        var proof = Proofs(Start.AddDays(20)).Of(_book.State.Controls[use.Control]);
        Assert.Equal((Verdict.Failed, signals), (proof.Verdict, proof.ResistanceSignal));
        Assert.Equal(!signals, proof.Doubts.Any(doubt => doubt.Contains("may still have been at work", StringComparison.Ordinal)));
    }

    [Fact]
    public void Of_StoppedEarly_IsNoSignalAndNotReckonedWith()
    {
        var use = Begin(_colonies[..8], 30);
        _book.Write(new ControlEnded(use.Control, Start.AddDays(45), ControlEnding.StoppedEarly, [_colonies[0]], "fell out"));
        _book.Write(new ControlEnded(use.Control, End, Colonies: _colonies[1..8]));
        After(_colonies[..8], 12);

        var proof = Only();
        Assert.False(proof.ResistanceSignal);
        Assert.Equal(Verdict.Failed, proof.Verdict);
        Assert.Contains("stopped early", proof.Colonies[0].Why, StringComparison.Ordinal);
        Assert.NotNull(proof.Colonies[0].Outcome!.Efficacy);
        Assert.Contains(proof.Doubts, doubt => doubt.Contains("got it only in part", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_UntreatedColoniesBeside_CorrectTheEfficacy()
    {
        Use(before: 30, after: 3);
        foreach (var colony in _colonies[8..])
        {
            _book.Jar(colony, Start.AddDays(-2), 30);
            _book.Jar(colony, End.AddDays(3), 90);
        }

        var proof = Only();
        Assert.Equal(Correction.UntreatedColonies, proof.Correction);
        Assert.True(proof.Outcome.Efficacy!.Median > proof.Plain.Efficacy!.Median + 0.03);
        Assert.Equal(PointEfficacy.HendersonTilton(30, 3, 30, 90).Share!.Value, proof.Outcome.Efficacy.Median, 0.02);
    }

    [Fact]
    public void Of_ForecastOfWhatWouldHaveBeen_StandsInForUntreatedColonies()
    {
        Use(before: 30, after: 3);

        var proof = Assert.Single(Proofs(forecast: _ => new GrowthForecast(3, 0.3)).All());
        Assert.Equal(Correction.Forecast, proof.Correction);
        Assert.Equal(1 - ((1 - proof.Plain.Efficacy!.Median) / 3), proof.Outcome.Efficacy!.Median, 0.005);
    }

    [Fact]
    public void Of_NoMiteBefore_IsRefusedNotAHundred()
    {
        Use(before: 0, after: 0);

        var proof = Only();
        Assert.Equal(EfficacyRefusal.NoMitesBefore, proof.Outcome.Refusal);
        Assert.Null(proof.Verdict);
        Assert.Contains("nothing to measure", proof.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_FewMitesBefore_CannotTell()
    {
        Use(before: 2, after: 0);

        var proof = Only();
        Assert.Equal(Verdict.CannotTell, proof.Verdict);
        Assert.Null(proof.MoreJars.Value);
        Assert.Contains("Only 16 mites were counted before", proof.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Of_TooFewColonies_CannotTellAndSaysWhatWould()
    {
        var use = Begin(_colonies[..2], 14);
        _book.Write(new ControlEnded(use.Control, End));
        After(_colonies[..2], 1);

        var proof = Only();
        Assert.Equal(Verdict.CannotTell, proof.Verdict);
        Assert.NotNull(proof.MoreJars.Value!.ColoniesNextTime);
    }

    [Fact]
    public void Of_JarsThatDoNotBelong_AreLeftOut()
    {
        var use = Begin(_colonies[..4], 0, jars: false);
        _book.Write(new ControlEnded(use.Control, End));
        _book.Jar(_colonies[0], Start.AddDays(-60), 30);
        _book.Jar(_colonies[0], End.AddDays(3), 1);
        _book.Jar(_colonies[1], Start.AddDays(-2), 30);
        _book.Jar(_colonies[1], End.AddDays(3), 1, method: "sugar-shake");
        _book.Jar(_colonies[2], Start.AddDays(-2), 30);
        _book.Jar(_colonies[2], End.AddDays(60), 9);
        _book.Jar(_colonies[3], Start.AddDays(-2), 30);
        _book.Write(new ControlRecord(new ControlId(_book.Ids.Next()), "oxalic-acid-trickle", End.AddDays(1), [_colonies[3]], End.AddDays(1)));
        _book.Jar(_colonies[3], End.AddDays(4), 0);

        var proof = Proofs(End.AddDays(70)).Of(_book.State.Controls[use.Control]);
        Assert.All(proof.Colonies, colony => Assert.NotNull(colony.Why));
        Assert.Contains("No jar in the 21 days before", proof.Colonies[0].Why, StringComparison.Ordinal);
        Assert.All(proof.Colonies.Skip(1).SkipLast(1), colony => Assert.Contains("No jar after it", colony.Why, StringComparison.Ordinal));
        Assert.StartsWith($"Another control began on {Say.Day(End.AddDays(1))}", proof.Colonies[^1].Why, StringComparison.Ordinal);
        Assert.Equal(EfficacyRefusal.NoPairs, proof.Outcome.Refusal);
    }

    [Fact]
    public void Of_NeighbourOverTheLine_RaisesSuspicionOfReinvasion()
    {
        Use(before: 30, after: 12);
        _book.Jar(_colonies[9], Start.AddDays(30), 40);

        var proof = Only();
        Assert.True(proof.ReinvasionSuspected);
        Assert.Contains(proof.Doubts, doubt => doubt.Contains("Neighbours over the line stand in the same apiary (10)", StringComparison.Ordinal));
    }

    [Fact]
    public void Of_StillAtWork_IsWaiting()
    {
        Begin(_colonies[..8], 30);

        var proof = Assert.Single(Proofs(Start.AddDays(10)).All());
        Assert.Equal((ProofState.Waiting, End, End.AddDays(7)), (proof.Due!.State, proof.Due.From, proof.Due.To));
        Assert.Null(proof.Verdict);
    }

    /// <summary>Dietemann et al. 2013: count again at least 14 days after the end, so that mites under cappings have come out.</summary>
    [Theory]
    [InlineData("oxalic-acid-trickle", 0, 5, 14)]
    [InlineData("oxalic-acid-trickle", 0, 0, 0)]
    [InlineData("formic-acid-short", 7, 5, 0)]
    [InlineData("amitraz-strips", 56, 5, 0)]
    public void Due_ShortControlThatSparesBrood_WaitsForTheSealedPeriod(string agent, int days, double frames, int wait)
    {
        var use = new ControlRecord(new ControlId(_book.Ids.Next()), agent, Start, _colonies[..2], Start.AddDays(days));
        _book.Write(new InspectionRecord(_colonies[0], Start.AddDays(-3), FramesOfBees: 10, FramesOfBrood: frames));
        _book.Write(use);
        _book.Write(new ControlEnded(use.Control, Start.AddDays(days)));

        var due = Proofs(Start.AddDays(days + wait + 8)).DueOf(_book.State.Controls[use.Control])!;
        Assert.Equal((Start.AddDays(days + wait), Start.AddDays(days + wait + 7), ProofState.Overdue), (due.From, due.To, due.State));
    }

    [Fact]
    public void Of_ControlThatIsNotKnown_HasNoTarget()
    {
        var use = new ControlRecord(new ControlId(_book.Ids.Next()), "garlic", Start, _colonies[..8], Start.AddDays(5));
        foreach (var colony in _colonies[..8])
            _book.Jar(colony, Start, 20);
        _book.Write(use);
        _book.Write(new ControlEnded(use.Control, Start.AddDays(5)));
        foreach (var colony in _colonies[..8])
            _book.Jar(colony, Start.AddDays(20), 19);

        var proof = Only();
        Assert.Null(proof.Verdict);
        Assert.NotNull(proof.Outcome.Efficacy);
        Assert.Contains("not among the known controls", proof.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void For_Dues_FollowTheControlToItsProof()
    {
        var use = Begin(_colonies[..8], 30, withdrawal: 20);
        Assert.Contains(ControlDues.For(_book.State, TestBook.Knowledge, End.AddDays(2)), due => due is { Kind: ControlDueKind.TakeOut, Overdue: true } && due.From == End);

        _book.Write(new ControlEnded(use.Control, End));
        var dues = ControlDues.For(_book.State, TestBook.Knowledge, End.AddDays(2));
        Assert.Equal([ControlDueKind.Prove, ControlDueKind.SupersBack, ControlDueKind.WithdrawalOver], dues.Select(due => due.Kind));
        Assert.Equal([End.AddDays(7), End.AddDays(14), End.AddDays(20)], dues.Select(due => due.To));

        After(_colonies[..8], 0);
        Assert.DoesNotContain(ControlDues.For(_book.State, TestBook.Knowledge, End.AddDays(5)), due => due.Kind == ControlDueKind.Prove);
    }

    private ControlRecord Begin(ColonyId[] colonies, int mites, bool jars = true, int? withdrawal = null)
    {
        var use = new ControlRecord(new ControlId(_book.Ids.Next()), "amitraz-strips", Start, colonies, End, WithdrawalDays: withdrawal);
        foreach (var colony in jars ? colonies : [])
            _book.Jar(colony, Start.AddDays(-2), mites);
        _book.Write(use);
        return use;
    }

    private void Use(int before, int after)
    {
        var use = Begin(_colonies[..8], before);
        _book.Write(new ControlEnded(use.Control, End));
        After(_colonies[..8], after);
    }

    private void After(ColonyId[] colonies, int mites)
    {
        foreach (var colony in colonies)
            _book.Jar(colony, End.AddDays(3), mites);
    }

    private ControlProof Only() => Assert.Single(Proofs().All());

    private ControlProofs Proofs(DateOnly? today = null, Func<Control, GrowthForecast?>? forecast = null) =>
        new(_book.State, TestBook.Knowledge, today ?? End.AddDays(10), CultureInfo.InvariantCulture, forecast);
}
