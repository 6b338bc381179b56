using Foundress.Book.Forecasts;

namespace Foundress.Web.Forecasts;

/// <summary>The forecast of an apiary as a page may show it now.</summary>
/// <param name="Stage">How things stand.</param>
/// <param name="Course">The forecast; null while there is none. Before <see cref="ForecastStage.Ready"/> it is one made earlier.</param>
/// <param name="Done">Parts of the new one that are done.</param>
/// <param name="Of">Parts there are; 0 while that is not known.</param>
/// <param name="Problem">Why it could not be worked out; null when it could.</param>
public sealed record ForecastView(ForecastStage Stage, ApiaryCourse? Course, int Done = 0, int Of = 0, string? Problem = null)
{
    /// <summary>Whether the forecast shown was made from an earlier state of the book or on an earlier day.</summary>
    public bool IsEarlier => Course is not null && Stage != ForecastStage.Ready;

    /// <summary>Whether a new one is on its way.</summary>
    public bool IsComing => Stage is ForecastStage.Waiting or ForecastStage.Starting or ForecastStage.Working;
}
