namespace Foundress.Storage.Work;

/// <summary>Work that a worker has for a time. When that is over without a result, another worker may have it.</summary>
/// <param name="Number">Its place in the order it was asked for.</param>
/// <param name="Token">Proves that the worker is the one who has it.</param>
/// <param name="Key">What makes it the same as another.</param>
/// <param name="Input">What the worker needs.</param>
/// <param name="Attempt">The how-manieth attempt this is, from 1.</param>
public sealed record WorkLease(long Number, Guid Token, WorkKey Key, string Input, int Attempt);
