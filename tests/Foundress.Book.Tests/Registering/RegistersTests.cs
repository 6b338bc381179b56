using System.Globalization;
using Foundress.Book.Records;
using Foundress.Book.Registering;
using Foundress.Book.Tests.Controls;

namespace Foundress.Book.Tests.Registering;

public sealed class RegistersTests
{
    private static readonly DateOnly Today = TestBook.Today;
    private readonly ControlScene _scene = new();

    // Article 108(2) of Regulation (EU) 2019/6 asks for: date of first administration, name, quantity, name and address of the
    // supplier, proof of acquisition, identification of the animals, prescriber where applicable, withdrawal period even if zero,
    // duration (from memory).
    [Fact]
    public void Of_AUse_HasEveryFieldTheRegulationAsksFor()
    {
        var jar = _scene.Book.Jar(_scene.Colonies[0], Today.AddDays(-31), 12);
        var record = new ControlRecord(
            _scene.NewControl(), "formic-acid-long", Today.AddDays(-30), _scene.Colonies, Today.AddDays(-16), "Pads", "1 pad", "B7", "Shop, Street 1", "invoice 12", "Ann", "Dr. Who", 0,
            [jar.Id], "over the line", 12, 24, "dry", "none");
        _scene.Book.Write(record);
        _scene.Book.Write(new ControlEnded(record.Control, Today.AddDays(-16)));

        var row = Assert.Single(Register().Rows);
        Assert.Equal(RegisterState.Holds, row.State);
        Assert.Equal((Today.AddDays(-16), 15), (row.End, row.Days));
        Assert.Equal(["1", "2", "3"], row.Colonies);
        Assert.Equal(["Orchard"], row.Apiaries);
        Assert.Equal((0, Today.AddDays(-15)), (row.WithdrawalDays, row.WithdrawalOver));
        Assert.Equal("Pads|1 pad|B7|Shop, Street 1|invoice 12|Dr. Who|Ann", string.Join('|', row.Facts.Product, row.Facts.Quantity, row.Facts.Batch, row.Facts.Supplier, row.Facts.ProofOfPurchase, row.Facts.Prescriber, row.Facts.By));
        Assert.StartsWith("1 jar of 20 Jul 2026: 12 mites in 300 bees, 4.0 per 100.", row.Reason, StringComparison.Ordinal);
        Assert.True(row.IsSubstance);
        Assert.NotEmpty(row.Outcome);
    }

    [Fact]
    public void Of_StruckAndPutRight_StayVisibleWithTheReason()
    {
        var wrong = _scene.Use("thymol", Today.AddDays(-40), 28);
        _scene.Book.Write(wrong with { Batch = "right" });
        var slip = _scene.Book.Write(new ControlRecord(_scene.NewControl(), "thymol", Today.AddDays(-5), [_scene.Colonies[0]]));
        _scene.Book.Strike(slip, "wrong hive");

        var rows = Register().Rows;
        Assert.Equal([RegisterState.Replaced, RegisterState.Holds, RegisterState.Struck], rows.Select(row => row.State));
        Assert.Equal("right", rows[1].Facts.Batch);
        Assert.Equal("wrong hive", rows[2].Struck!.Reason);
        Assert.Equal("tester", rows[2].Struck!.By);
        Assert.Empty(rows[2].Outcome);
    }

    [Fact]
    public void Of_StruckEnd_IsShownStruckAndTheUseIsOpenAgain()
    {
        var use = _scene.Use("thymol", Today.AddDays(-40), 28);
        var end = _scene.Book.Write(new ControlEnded(use.Control, Today.AddDays(-12)));
        Assert.NotNull(Assert.Single(Register().Rows).End);
        _scene.Book.Strike(end, "not out yet");
        var row = Assert.Single(Register().Rows);
        Assert.Null(row.End);
        Assert.Equal("not out yet", Assert.Single(row.Ends).Struck!.Reason);
    }

    [Fact]
    public void Of_Filters_TakeWhatWasAtWorkThere()
    {
        var other = _scene.Book.Apiary("Hill");
        var far = _scene.Book.Colony(other, "H", new DateOnly(2025, 4, 1));
        _scene.Use("thymol", Today.AddDays(-40), 28);
        _scene.Use("drone-comb-removal", Today.AddDays(-100), 24);
        _scene.Book.Write(new ControlRecord(_scene.NewControl(), "garlic", Today.AddDays(-3), [far], Today.AddDays(-3)));

        Assert.Equal(3, Register().Rows.Count);
        Assert.Equal("garlic", Assert.Single(Register(new(Apiary: other)).Rows).Control);
        Assert.Equal("thymol", Assert.Single(Register(new(Agent: "thymol")).Rows).Facts.Agent);
        Assert.Equal(2, Register(new(SubstancesOnly: true)).Rows.Count);
        // Nobody said that the thymol is out: it is still at work today.
        Assert.Equal(["thymol", "garlic"], Register(new(From: Today.AddDays(-5), SubstancesOnly: true)).Rows.Select(row => row.Facts.Agent));
        Assert.Equal(["drone-comb-removal", "thymol"], Register(new(To: Today.AddDays(-30))).Rows.Select(row => row.Facts.Agent));
        Assert.Empty(Register(new(To: Today.AddDays(-200))).Rows);
    }

    private Register Register(RegisterFilter? filter = null) =>
        new Registers(_scene.Book.Ledger.Entries, _scene.Book.State, TestBook.Knowledge, Today, CultureInfo.InvariantCulture).Of(filter ?? new());
}
