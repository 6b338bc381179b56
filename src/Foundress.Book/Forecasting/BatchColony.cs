namespace Foundress.Book.Forecasting;

/// <summary>A colony of a batch while its rows are gathered.</summary>
internal sealed class BatchColony(string name)
{
    public string Name { get; } = name;

    public List<ForecastJar> Jars { get; } = [];

    public List<ForecastInspection> Inspections { get; } = [];

    public List<ForecastControl> Controls { get; } = [];

    public ForecastColony Done(IEnumerable<ForecastControl> ofApiary) => new(Name, Jars, Inspections, [.. Controls, .. ofApiary]);
}
