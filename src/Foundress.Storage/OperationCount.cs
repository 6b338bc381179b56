namespace Foundress.Storage;

/// <summary>An operation in the store and how much it holds.</summary>
/// <param name="Operation">The operation.</param>
/// <param name="Entries">The number of its entries.</param>
public readonly record struct OperationCount(string Operation, long Entries);
