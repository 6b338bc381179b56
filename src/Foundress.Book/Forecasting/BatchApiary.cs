using Foundress.Book.Importing;

namespace Foundress.Book.Forecasting;

/// <summary>An apiary of a batch while its rows are gathered.</summary>
internal sealed class BatchApiary(string name)
{
    private readonly Dictionary<string, BatchColony> _colonies = new(StringComparer.Ordinal);

    public string Name { get; } = name;

    public double? Latitude { get; set; }

    public double? Altitude { get; set; }

    /// <summary>Controls given to every colony.</summary>
    public List<ForecastControl> Controls { get; } = [];

    public List<(string ColonyKey, BatchTarget Target)> Targets { get; } = [];

    public bool Holds(string colony) => _colonies.ContainsKey(NameField.Key(colony));

    public BatchColony Colony(string name)
    {
        var key = NameField.Key(name);
        if (!_colonies.TryGetValue(key, out var colony))
            _colonies[key] = colony = new BatchColony(name.Trim());
        return colony;
    }

    /// <summary>The colonies by name, so that the order of rows does not matter.</summary>
    public (string[] Keys, ForecastColony[] Colonies) Done()
    {
        string[] keys = [.. _colonies.Keys.Order(StringComparer.Ordinal)];
        return (keys, [.. keys.Select(key => _colonies[key].Done(Controls))]);
    }
}
