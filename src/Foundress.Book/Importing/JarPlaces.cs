using Foundress.Book.Journal;
using Foundress.Book.Records;
using Foundress.Book.State;
using Foundress.Book.Wording;

namespace Foundress.Book.Importing;

/// <summary>Finds the apiary and colony a row names, among those of the book and those the file itself brings in.</summary>
internal sealed class JarPlaces
{
    private readonly Ledger _book;
    private readonly BookState _state;
    private readonly string _operation;
    private readonly Dictionary<string, List<ApiaryId>> _apiaries = new(StringComparer.Ordinal);
    private readonly Dictionary<string, List<Colony>> _colonies = new(StringComparer.Ordinal);
    private readonly HashSet<ApiaryId> _madeApiaries = [];
    private readonly HashSet<ColonyId> _madeColonies = [];

    internal JarPlaces(Ledger book, string operation)
    {
        (_book, _state, _operation) = (book, book.State, operation);
        foreach (var apiary in _state.Apiaries.Values)
            Listed(_apiaries, apiary.Name).Add(apiary.Id);
        foreach (var colony in _state.Colonies.Values)
            Listed(_colonies, colony.Name).Add(colony);
    }

    internal int NewApiaries => _madeApiaries.Count;

    internal int NewColonies => _madeColonies.Count;

    /// <summary>Finds a row's place. Nothing is made yet: the row may still be refused.</summary>
    internal JarPlace Find(string apiaryName, string colonyName, DateOnly day)
    {
        var place = new JarPlace(default, apiaryName, default, colonyName);
        if (!_apiaries.TryGetValue(NameField.Key(apiaryName), out var apiaries))
        {
            var fresh = ApiaryNamed(apiaryName);
            if (!_state.Apiaries.ContainsKey(fresh) && _book.Contains(EntryOf(fresh)) && !_madeApiaries.Contains(fresh))
                return place with { Problem = new FieldProblem(JarColumns.Apiary, apiaryName, ImportTexts.ApiaryStruck) };
            apiaries = [fresh];
        }

        if (apiaries.Count > 1)
            return place with { Problem = new FieldProblem(JarColumns.Apiary, apiaryName, ImportTexts.ApiaryAmbiguous) };
        place = place with { Apiary = apiaries[0] };

        var namesakes = _colonies.TryGetValue(NameField.Key(colonyName), out var listed) ? listed : [];
        var here = namesakes.Where(colony => colony.ApiaryOn(day) == place.Apiary).ToArray();
        var alive = here.Where(colony => colony.End is null || colony.End.On >= day).ToArray();
        if (alive.Length > 1)
            return place with { Problem = new FieldProblem(JarColumns.Colony, colonyName, ImportTexts.FormatColonyAmbiguous(apiaryName)) };
        if (alive.Length == 1)
            return place with { Colony = alive[0].Id };
        if (here.Length > 0)
            return place with { Problem = Ended(colonyName, here[0]) };
        if (namesakes.FirstOrDefault(colony => colony.Stays.Any(stay => stay.Apiary == place.Apiary)) is { } moved)
            return place with { Problem = Elsewhere(colonyName, apiaryName, moved, day) };

        var made = ColonyNamed(place.Apiary, colonyName);
        if (!_state.Colonies.ContainsKey(made) && _book.Contains(EntryOf(made)) && !_madeColonies.Contains(made))
            return place with { Problem = new FieldProblem(JarColumns.Colony, colonyName, ImportTexts.ColonyStruck) };
        return place with { Colony = made };
    }

    /// <summary>The records a place needs that neither the book nor an earlier row has.</summary>
    internal IEnumerable<NewRecord> Settle(JarPlace place)
    {
        if (!_state.Apiaries.ContainsKey(place.Apiary) && _madeApiaries.Add(place.Apiary))
            yield return new NewRecord(EntryOf(place.Apiary), new ApiaryRecord(place.Apiary, place.ApiaryName));
        if (!_state.Colonies.ContainsKey(place.Colony) && _madeColonies.Add(place.Colony))
            yield return new NewRecord(EntryOf(place.Colony), new ColonyRecord(place.Colony, place.ColonyName, place.Apiary));
    }

    private static FieldProblem Ended(string name, Colony colony) => new(JarColumns.Colony, name, ImportTexts.FormatColonyEnded(Say.Day(colony.End!.On)));

    private FieldProblem Elsewhere(string name, string apiaryName, Colony colony, DateOnly day) => new(
        JarColumns.Colony, name,
        _state.Apiaries.TryGetValue(colony.ApiaryOn(day), out var there)
            ? ImportTexts.FormatColonyElsewhere(Say.Day(day), there.Name, apiaryName)
            : ImportTexts.FormatColonySomewhereElse(Say.Day(day), apiaryName));

    private ApiaryId ApiaryNamed(string name) => new(NamedIds.Of("imported apiary", _operation, NameField.Key(name)));

    private ColonyId ColonyNamed(ApiaryId apiary, string name) =>
        new(NamedIds.Of("imported colony", _operation, apiary.ToString(), NameField.Key(name)));

    private static EntryId EntryOf(ApiaryId apiary) => new(NamedIds.Of("entry of apiary", apiary.ToString()));

    private static EntryId EntryOf(ColonyId colony) => new(NamedIds.Of("entry of colony", colony.ToString()));

    private static List<T> Listed<T>(Dictionary<string, List<T>> lists, string name)
    {
        var key = NameField.Key(name);
        if (!lists.TryGetValue(key, out var list))
            lists[key] = list = [];
        return list;
    }
}
