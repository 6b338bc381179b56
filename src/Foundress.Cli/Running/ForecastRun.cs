using System.Collections.Concurrent;
using Foundress.Book.Forecasting;
using Foundress.Knowledge;

namespace Foundress.Cli.Running;

/// <summary>Foretells the apiaries of a batch side by side; what comes out does not depend on how many processors there are.</summary>
internal static class ForecastRun
{
    internal static IReadOnlyDictionary<int, JarForecast> Foretell(ForecastBatch batch, int particles, ulong seed, CancellationToken cancellation)
    {
        var knowledge = KnowledgeBase.Load();
        var results = new ConcurrentDictionary<int, JarForecast>();
        Parallel.ForEach(
            batch.ApiaryKeys,
            new ParallelOptions { CancellationToken = cancellation, MaxDegreeOfParallelism = Environment.ProcessorCount },
            () => new ApiaryForecast(knowledge, particles),
            (key, _, forecast) =>
            {
                foreach (var (target, found) in batch.Foretell(key, forecast, seed))
                    results[target.Row] = found;
                return forecast;
            },
            _ => { });
        return results;
    }
}
