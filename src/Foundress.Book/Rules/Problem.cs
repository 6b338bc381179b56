namespace Foundress.Book.Rules;

/// <summary>One thing wrong with a record: which field, what was given, and what to do about it.</summary>
/// <param name="Gravity">Whether the record may be kept all the same.</param>
/// <param name="Field">The field, by its name in the record's JSON form.</param>
/// <param name="Given">What was given, as text; empty when nothing was.</param>
/// <param name="Message">What is wrong, naming the value, and how to put it right: whole sentences.</param>
public sealed record Problem(Gravity Gravity, string Field, string Given, string Message)
{
    /// <summary>The field and the message, for logs and the command line.</summary>
    public override string ToString() => $"{Field}: {Message}";
}
