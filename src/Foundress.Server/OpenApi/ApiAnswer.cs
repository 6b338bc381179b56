namespace Foundress.Server.OpenApi;

/// <summary>An answer an address may give.</summary>
/// <param name="Status">The HTTP status.</param>
/// <param name="Words">When it is given, in one sentence.</param>
/// <param name="MediaTypes">What the body may be; empty for the form of RFC 9457, or when the code tells.</param>
internal sealed record ApiAnswer(int Status, string Words, params string[] MediaTypes);
