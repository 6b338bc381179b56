using System.Text.Json;
using Foundress.Book.Jobs;
using Foundress.Book.Journal;

namespace Foundress.Book.Proving.Exchange;

/// <summary>What would have become of the mites without a control, as a job: the control's id in, a <see cref="GrowthAnswer"/> out.</summary>
public sealed class GrowthJob : IBookJob
{
    /// <summary>The job's name.</summary>
    public const string Called = "growth";

    /// <inheritdoc/>
    public string Name => Called;

    /// <inheritdoc/>
    public bool ComesFirst => true;

    /// <summary>Reads an answer.</summary>
    /// <exception cref="ArgumentException">The text is not one.</exception>
    public static GrowthAnswer Read(string json) => JobJson.Read(json, GrowthContext.Default.GrowthAnswer, "no growth");

    /// <inheritdoc/>
    public IEnumerable<JobStep> Run(JobSetting setting, string input)
    {
        ArgumentNullException.ThrowIfNull(setting);
        if (!Guid.TryParse(input, out var id) || !setting.Ledger.State.Controls.TryGetValue(new ControlId(id), out var control))
            throw new ArgumentException($"Control '{input}' is not in the book.", nameof(input));
        return Steps();

        IEnumerable<JobStep> Steps()
        {
            yield return new JobStep(0, 1);
            var found = new GrowthForecaster(setting.Ledger.Entries, setting.Ledger.State, setting.Seasons.Knowledge).Of(control);
            yield return new JobStep(1, 1, Output: JsonSerializer.Serialize(new GrowthAnswer(found?.Growth, found?.LogSpread), GrowthContext.Default.GrowthAnswer));
        }
    }
}
