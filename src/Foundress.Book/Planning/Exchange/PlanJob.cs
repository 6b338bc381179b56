using Foundress.Book.Jobs;

namespace Foundress.Book.Planning.Exchange;

/// <summary>The search for plans as a job: a <see cref="PlanRequest"/> in, many steps with what is being done as their note, <see cref="ControlPlans"/> out.</summary>
public sealed class PlanJob : IBookJob
{
    /// <summary>The job's name.</summary>
    public const string Called = "plans";

    /// <inheritdoc/>
    public string Name => Called;

    /// <inheritdoc/>
    public bool ComesFirst => true;

    /// <inheritdoc/>
    public IEnumerable<JobStep> Run(JobSetting setting, string input)
    {
        ArgumentNullException.ThrowIfNull(setting);
        var request = PlanJson.ReadRequest(input);
        if (!setting.State.Apiaries.TryGetValue(request.Apiary, out var apiary))
            throw new ArgumentException($"Apiary {request.Apiary} is not in the book.", nameof(input));
        return new ControlPlanner(setting.State, setting.Seasons.Knowledge, setting.Culture, setting.Seasons)
            .Steps(apiary, request.Today, request.Options)
            .Select(step => new JobStep(step.Done, step.Of, step.Doing, step.Plans is { } plans ? PlanJson.Write(plans) : null));
    }
}
