using Foundress.Book.Histories;
using Foundress.Book.Journal;
using Foundress.Book.Records;

namespace Foundress.Book.Tests.Histories;

public sealed class SupersessionsTests
{
    private static readonly DateOnly June = new(2026, 6, 1);

    private readonly TestBook _ada = new("ada's phone", 1);
    private readonly TestBook _ben = new("ben's phone", 2);

    [Fact]
    public void Among_TwoPhonesChangeOneFieldOffline_TellsWhatByWhomAndWhen()
    {
        var colony = _ada.Colony(_ada.Apiary("Orchard"), "1");
        var first = _ada.Write(new ColonyRecord(colony, Name: "1a", Note: "calm"));
        _ben.Time.Advance(TimeSpan.FromHours(1));
        var second = _ben.Write(new ColonyRecord(colony, Name: "1b"));
        Meet();
        var found = Supersessions.Among(_ada.State.EntriesOf(colony), _ada.State);
        Assert.Equal(new Superseded("name", "1b", second, OtherDevice: true), Assert.Single(found[first.Id]));
        Assert.DoesNotContain(second.Id, found.Keys);
        Assert.Equal("1b", _ada.State.Colonies[colony].Name);
        // The note was not touched and still holds.
        Assert.Equal("calm", _ben.State.Colonies[colony].Note);
        Assert.Equal(found.Keys, Supersessions.Among(_ben.State.EntriesOf(colony).Reverse(), _ben.State).Keys);
    }

    [Fact]
    public void Among_TwoEndsOfOneColony_TheLaterReplacesTheEarlier()
    {
        var colony = _ada.Colony(_ada.Apiary("Orchard"), "1");
        var first = _ada.Write(new ColonyDied(colony, June, "robbed"));
        _ben.Time.Advance(TimeSpan.FromHours(1));
        var second = _ben.Write(new ColoniesUnited(colony, new ColonyId(_ben.Ids.Next()), June.AddDays(3)));
        Meet();
        var said = Assert.Single(Supersessions.Among(_ben.State.EntriesOf(colony), _ben.State)[first.Id]);
        Assert.Equal((null, second), (said.Field, said.By));
    }

    [Fact]
    public void Among_LaterOneStruck_TheEarlierHoldsAgain()
    {
        var apiary = _ada.Apiary("Orchard");
        _ada.Strike(_ada.Write(new ApiaryRecord(apiary, "Heath")));
        Assert.Empty(Supersessions.Among(_ada.Ledger.Entries, _ada.State));
        Assert.Equal("Orchard", _ada.State.Apiaries[apiary].Name);
    }

    [Fact]
    public void Among_SameValueAgainOrOtherSubject_NothingIsSuperseded()
    {
        var apiary = _ada.Apiary("Orchard");
        _ada.Write(new ApiaryRecord(apiary, "Orchard"));
        _ada.Apiary("Heath");
        _ada.Jar(_ada.Colony(apiary, "1"), June, 3);
        _ada.Jar(_ada.Colony(apiary, "2"), June, 4);
        Assert.Empty(Supersessions.Among(_ada.Ledger.Entries, _ada.State));
    }

    private void Meet()
    {
        _ada.Ledger.Add([.. _ben.Ledger.Entries]);
        _ben.Ledger.Add([.. _ada.Ledger.Entries]);
    }
}
