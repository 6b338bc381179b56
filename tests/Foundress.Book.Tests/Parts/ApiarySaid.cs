using System.Globalization;
using Foundress.Book.Dues;
using Foundress.Book.Journal;
using Foundress.Book.Seasons;

namespace Foundress.Book.Tests.Parts;

/// <summary>What a book says of one apiary, as text, so that a part can be held against the whole.</summary>
internal static class ApiarySaid
{
    public static string Of(Ledger ledger, ApiaryId id, DateOnly today)
    {
        var state = ledger.State;
        var strips = new SeasonStrips(state, TestBook.Knowledge, CultureInfo.InvariantCulture);
        var season = new SeasonOverview(state, TestBook.Knowledge, strips).Of(state.Apiaries[id], today);
        var dues = new DueItems(state, TestBook.Knowledge, strips).On(today).Where(item => item.Apiary == id)
            .Select(item => $"{item.Key}|{item.Time}|{item.From}|{item.To}|{item.Text}|{string.Join(',', item.Colonies)}");
        var jars = state.JarsIn(id).Select(one => $"{one.Colony.Name} {one.Jar.Facts.On} {one.Jar.Facts.Mites}");
        return string.Join('\n', [season.Sentence, $"{season.Urgency}", .. state.ColoniesIn(id, today).Select(colony => colony.Name), .. jars, .. dues]);
    }
}
