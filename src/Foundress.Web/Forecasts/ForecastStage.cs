namespace Foundress.Web.Forecasts;

/// <summary>How things stand with the forecast of an apiary.</summary>
public enum ForecastStage
{
    /// <summary>Nobody wants it.</summary>
    Idle,

    /// <summary>It waits for its turn.</summary>
    Waiting,

    /// <summary>The place where it is worked out is being made ready.</summary>
    Starting,

    /// <summary>It is being worked out.</summary>
    Working,

    /// <summary>It is there, made from the book as it stands today.</summary>
    Ready,

    /// <summary>The keeper stopped it.</summary>
    Stopped,

    /// <summary>It could not be worked out.</summary>
    Failed,

    /// <summary>It would hold up the page, so that it waits for the keeper to ask.</summary>
    ToBeAsked,
}
