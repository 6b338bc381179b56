namespace Foundress.Knowledge;

/// <summary>What one reading of all files found: the problems, and every figure and source with its place.</summary>
internal sealed class ReadingLog
{
    public List<KnowledgeProblem> Problems { get; } = [];

    public List<(string Path, Figure Figure)> Figures { get; } = [];

    public List<(string Path, Source Source)> Sources { get; } = [];
}
