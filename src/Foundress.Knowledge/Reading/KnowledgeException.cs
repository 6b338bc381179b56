namespace Foundress.Knowledge;

/// <summary>The data files cannot be used as they are, or a name is not in them. The message lists every problem found, with its place and the fix.</summary>
public sealed class KnowledgeException : Exception
{
    /// <summary>An exception with a general message.</summary>
    public KnowledgeException()
        : this("The knowledge files cannot be used.")
    {
    }

    /// <summary>An exception with its own message and no list of problems.</summary>
    public KnowledgeException(string message)
        : base(message)
    {
    }

    /// <summary>An exception caused by another.</summary>
    public KnowledgeException(string message, Exception innerException)
        : base(message, innerException)
    {
    }

    /// <summary>An exception that lists problems in the files.</summary>
    public KnowledgeException(IReadOnlyList<KnowledgeProblem> problems)
        : base($"The knowledge files have {problems.Count} problem(s):{Environment.NewLine}{string.Join(Environment.NewLine, problems)}") =>
        Problems = problems;

    /// <summary>Every problem found; empty when the message is not about the content of a file.</summary>
    public IReadOnlyList<KnowledgeProblem> Problems { get; } = [];
}
