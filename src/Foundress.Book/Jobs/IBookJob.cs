namespace Foundress.Book.Jobs;

/// <summary>
/// A long computation on a book, in a form that can be handed to another place to be done: JSON in, steps of progress, JSON
/// out. The phone does it away from its screen, and between two frames of the screen where it cannot.
/// </summary>
/// <remarks>
/// An implementation keeps nothing from one run to the next and takes all it needs from its setting and its input, so that
/// it gives the same answer wherever it is done.
/// </remarks>
public interface IBookJob
{
    /// <summary>Its name, by which it is asked for.</summary>
    string Name { get; }

    /// <summary>Whether somebody waits for it: jobs that make things ready by themselves stand back at their steps until it is done.</summary>
    bool ComesFirst { get; }

    /// <summary>Does it step by step; the last step carries the answer.</summary>
    /// <param name="setting">The book and what it is read with.</param>
    /// <param name="input">What is asked, as JSON of a form that is the job's own.</param>
    /// <returns>Steps, each made when it is asked for: whoever does the job may show how far it is, and stop it, between two of them.</returns>
    /// <exception cref="ArgumentException">The input cannot be read or names something that is not in the book; the message says what.</exception>
    IEnumerable<JobStep> Run(JobSetting setting, string input);
}
