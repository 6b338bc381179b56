using Foundress.Book.Journal;

namespace Foundress.Book.Records;

/// <summary>
/// A sampling round was planned: which colonies were drawn, by which rule and from which seed, so that anyone can
/// repeat the draw.
/// </summary>
/// <param name="Round">The round.</param>
/// <param name="On">The day the jars are due.</param>
/// <param name="Purpose">Why the round is done, in the keeper's words.</param>
/// <param name="Method">Id of the counting method, from the knowledge files.</param>
/// <param name="Rule">How many colonies were taken and why, as shown to the keeper.</param>
/// <param name="Seed">The seed the draw was made from, as decimal digits.</param>
/// <param name="Draws">What was drawn in each apiary.</param>
public sealed record RoundRecord(
    RoundId Round,
    DateOnly On,
    string Purpose,
    string Method,
    string Rule,
    string Seed,
    IReadOnlyList<ApiaryDraw> Draws) : Record;
