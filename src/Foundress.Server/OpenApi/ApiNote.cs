namespace Foundress.Server.OpenApi;

/// <summary>What the published description says of an address.</summary>
/// <param name="Method">The HTTP method.</param>
/// <param name="Path">The address.</param>
/// <param name="Name">A name for programs, unique.</param>
/// <param name="Group">The group it stands in.</param>
/// <param name="Words">What it does.</param>
/// <param name="Query">The fields of its query.</param>
/// <param name="Answers">Its answers.</param>
internal sealed record ApiNote(string Method, string Path, string Name, string Group, string Words, ApiQuery[] Query, params ApiAnswer[] Answers);
