namespace Foundress.Science.Sampling;

/// <summary>How many colonies to sample in an operation of several apiaries.</summary>
/// <param name="Low">The fewest the rule allows, over the whole operation.</param>
/// <param name="High">The most the rule asks for, over the whole operation.</param>
/// <param name="PerApiary"><paramref name="High"/> shared out, in the order the apiaries were given.</param>
public sealed record OperationSample(SampleSize Low, SampleSize High, IReadOnlyList<SampleSize> PerApiary);
