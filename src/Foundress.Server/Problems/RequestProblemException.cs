namespace Foundress.Server.Problems;

/// <summary>A request cannot be answered as it was made; the message names the field and the fix.</summary>
public sealed class RequestProblemException : Exception
{
    /// <summary>An error with the HTTP status to answer with.</summary>
    public RequestProblemException(int status, string message)
        : base(message) => Status = status;

    /// <summary>An error with a message only.</summary>
    public RequestProblemException(string message)
        : base(message)
    {
    }

    /// <summary>An error with a message and its cause.</summary>
    public RequestProblemException(string message, Exception inner)
        : base(message, inner)
    {
    }

    /// <summary>An error without further detail.</summary>
    public RequestProblemException()
        : base(ProblemTexts.AsItWasMade)
    {
    }

    /// <summary>The HTTP status to answer with.</summary>
    public int Status { get; } = StatusCodes.Status400BadRequest;
}
