namespace Foundress.Storage.Work;

/// <summary>
/// What makes a piece of work the same as another: whoever asks for it again gets the result of the first. The work is a pure
/// function of its input, so a new input or a new model is new work.
/// </summary>
/// <param name="Operation">The operation.</param>
/// <param name="Apiary">The apiary.</param>
/// <param name="InputHash">A hash over everything the result depends on.</param>
/// <param name="ModelVersion">The version of the model that works it out.</param>
public readonly record struct WorkKey(string Operation, Guid Apiary, string InputHash, string ModelVersion);
