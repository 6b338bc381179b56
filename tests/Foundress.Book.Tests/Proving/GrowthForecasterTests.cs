using System.Globalization;
using Foundress.Book.Forecasts;
using Foundress.Book.Proving;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Tests.Controls;

namespace Foundress.Book.Tests.Proving;

public sealed class GrowthForecasterTests
{
    private static readonly ForecastOptions Few = new() { Particles = 400 };
    private readonly ControlScene _scene = new();

    // Growth with full brood is 0.020 to 0.025 a day (Martin 1998; Calatayud & Verdú 1993, both from memory): 1.49 to 1.65 in 20 days. Brood and crowding leave a band around it.
    [Fact]
    public void Of_SummerWithBrood_GrowsAboutAsPublished()
    {
        var control = Used(new DateOnly(2026, 6, 20));
        var growth = new GrowthForecaster(_scene.Book.Ledger.Entries, _scene.Book.State, TestBook.Knowledge, Few).Of(control)!.Value;
        Assert.InRange(growth.Growth, 1.15, 2.2);
        Assert.InRange(growth.LogSpread, 0.01, 2);
    }

    [Fact]
    public void Of_JarsAfter_ChangeNothing()
    {
        var control = Used(new DateOnly(2026, 6, 20));
        var before = new GrowthForecaster(_scene.Book.Ledger.Entries, _scene.Book.State, TestBook.Knowledge, Few).Of(control);
        _scene.Book.Jar(_scene.Colonies[0], new DateOnly(2026, 7, 20), 200);
        Assert.Equal(before, new GrowthForecaster(_scene.Book.Ledger.Entries, _scene.Book.State, TestBook.Knowledge, Few).Of(control));
    }

    [Fact]
    public void Of_NoJars_IsNothing()
    {
        _scene.Use("formic-acid-long", new DateOnly(2026, 6, 20), 14);
        Assert.Null(new GrowthForecaster(_scene.Book.Ledger.Entries, _scene.Book.State, TestBook.Knowledge, Few).Of(Assert.Single(_scene.Book.State.Controls.Values)));
    }

    [Fact]
    public void Of_UsedByTheProof_CorrectsAndSaysSo()
    {
        var control = Used(new DateOnly(2026, 6, 20));
        var state = _scene.Book.State;
        var proof = new ControlProofs(state, TestBook.Knowledge, TestBook.Today, CultureInfo.InvariantCulture, new GrowthForecaster(_scene.Book.Ledger.Entries, state, TestBook.Knowledge, Few).Of).Of(control);
        Assert.Equal(Correction.Forecast, proof.Correction);
        Assert.True(proof.Outcome.Efficacy!.Median > proof.Plain.Efficacy!.Median);
    }

    private Control Used(DateOnly start)
    {
        foreach (var colony in _scene.Colonies)
        {
            _scene.Book.Write(new InspectionRecord(colony, start.AddDays(-3), 10, 6));
            _scene.Book.Jar(colony, start.AddDays(-2), 18);
        }

        var use = _scene.Use("formic-acid-long", start, 14);
        _scene.Book.Write(new ControlEnded(use.Control, start.AddDays(14)));
        foreach (var colony in _scene.Colonies)
            _scene.Book.Jar(colony, start.AddDays(18), 3);
        return _scene.Book.State.Controls[use.Control];
    }
}
