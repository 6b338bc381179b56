namespace Foundress.Storage.Work;

/// <summary>Work to be done.</summary>
/// <param name="Key">What makes it the same as another.</param>
/// <param name="Input">What the worker needs, in a form of its own.</param>
public sealed record WorkItem(WorkKey Key, string Input);
