namespace Foundress.Server.OpenApi;

/// <summary>A field of an address's query.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Words">What it does and what holds without it.</param>
/// <param name="Pattern">A regular expression of its form; null for any text.</param>
internal sealed record ApiQuery(string Name, string Words, string? Pattern = null);
