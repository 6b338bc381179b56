namespace Foundress.Book.Reporting;

/// <summary>What the book says of one stretch of time, ready to be written as text, JSON or a printable page.</summary>
/// <param name="Operation">The operation's name.</param>
/// <param name="From">First day covered.</param>
/// <param name="To">Last day covered.</param>
/// <param name="Invented">Whether the records are an invented demonstration.</param>
/// <param name="Confidence">Confidence of every interval, for example 0.95.</param>
/// <param name="Lines">The lines jars were judged by, in words, with their source.</param>
/// <param name="Apiaries">The apiaries by name.</param>
/// <param name="Notes">Assumptions and warnings that apply to the whole report.</param>
public sealed record SeasonReport(
    string Operation,
    DateOnly From,
    DateOnly To,
    bool Invented,
    double Confidence,
    string Lines,
    IReadOnlyList<ApiaryReport> Apiaries,
    IReadOnlyList<string> Notes);
