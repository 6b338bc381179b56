using Foundress.Book.Controls;
using Foundress.Book.Jobs;

namespace Foundress.Book.Forecasts.Exchange;

/// <summary>The forecast of an apiary as a job: a <see cref="ForecastRequest"/> in, one step for each colony, an <see cref="ApiaryCourse"/> out.</summary>
public sealed class ForecastJob : IBookJob
{
    /// <summary>The job's name.</summary>
    public const string Called = "forecast";

    /// <inheritdoc/>
    public string Name => Called;

    /// <inheritdoc/>
    public bool ComesFirst => false;

    /// <inheritdoc/>
    public IEnumerable<JobStep> Run(JobSetting setting, string input)
    {
        ArgumentNullException.ThrowIfNull(setting);
        var request = ForecastJson.ReadRequest(input);
        if (!setting.State.Apiaries.TryGetValue(request.Apiary, out var apiary))
            throw new ArgumentException($"Apiary {request.Apiary} is not in the book.", nameof(input));
        var options = new ForecastOptions
        {
            Particles = request.Particles,
            RecordDays = request.RecordDays,
            Ahead = request.Ahead,
            Seed = request.Seed,
            Only = request.Only,
            Suppose = Supposed(setting, request),
        };
        var forecaster = new ApiaryForecaster(setting.State, setting.Seasons.Knowledge, setting.Culture, setting.Seasons);
        return forecaster.Steps(apiary, request.Today, options)
            .Select(step => new JobStep(step.Done, step.Of, Output: step.Course is { } course ? ForecastJson.Write(course) : null));
    }

    private static Supposition? Supposed(JobSetting setting, ForecastRequest request) => request switch
    {
        { Agent: null } => null,
        { From: not { } } => throw new ArgumentException($"The day on which '{request.Agent}' would begin is missing.", nameof(request)),
        { Agent: { } agent, From: { } from } => new Supposition(
            ControlList.Of(setting.State, setting.Seasons.Knowledge).Find(agent)
                ?? throw new ArgumentException($"'{agent}' is not a control this book knows.", nameof(request)),
            from),
    };
}
