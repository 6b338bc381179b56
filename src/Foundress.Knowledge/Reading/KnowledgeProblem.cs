namespace Foundress.Knowledge;

/// <summary>One thing wrong in a data file.</summary>
/// <param name="File">The file's name, such as <c>lines.json</c>.</param>
/// <param name="Place">Where in the file, as a JSON Pointer (RFC 6901); empty for the file as a whole.</param>
/// <param name="Message">What is wrong and what to do about it.</param>
public sealed record KnowledgeProblem(string File, string Place, string Message)
{
    /// <summary>For example <c>lines.json#/policies/0/rows/1/act: "source" is missing: …</c>.</summary>
    public override string ToString() => $"{File}#{Place}: {Message}";
}
