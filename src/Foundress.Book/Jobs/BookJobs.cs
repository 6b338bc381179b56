using Foundress.Book.Forecasts.Exchange;
using Foundress.Book.Planning.Exchange;
using Foundress.Book.Proving.Exchange;

namespace Foundress.Book.Jobs;

/// <summary>Every job there is.</summary>
public static class BookJobs
{
    private static readonly IBookJob[] All = [new ForecastJob(), new PlanJob(), new GrowthJob()];

    /// <summary>The job of a name.</summary>
    /// <exception cref="ArgumentException">There is none.</exception>
    public static IBookJob Find(string name) =>
        Array.Find(All, job => job.Name == name)
        ?? throw new ArgumentException($"There is no job '{name}'; there are: {string.Join(", ", All.Select(job => job.Name))}.", nameof(name));
}
