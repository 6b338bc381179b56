using Foundress.Book.Calibrating;

namespace Foundress.Cli.Output;

/// <summary>The interval of an example jar by what is known of its bees; null where the counted jars differ too much for one scoop.</summary>
internal sealed record GainOutput(int Mites, IntervalOutput AsSaid, IntervalOutput? AsTaught, IntervalOutput? AfterMore, IntervalOutput IfCounted)
{
    internal static GainOutput Of(CountingGain gain) => new(
        gain.Mites, IntervalOutput.Of(gain.AsSaid), gain.AsTaught is { } taught ? IntervalOutput.Of(taught) : null,
        gain.AfterMore is { } more ? IntervalOutput.Of(more) : null, IntervalOutput.Of(gain.IfCounted));
}
