namespace Foundress.Reports.Drawing;

/// <summary>What counted jars teach of a scoop, ready to be drawn. All numbers are bees, finite and above 0.</summary>
/// <param name="Title">What the picture is called.</param>
/// <param name="Sentence">What it says, in words.</param>
/// <param name="Counted">Bees of each counted jar.</param>
/// <param name="Said">What the measure is said to hold.</param>
/// <param name="Usual">The usual jar, learnt.</param>
/// <param name="Lower">Lower end of the next jar's interval.</param>
/// <param name="Upper">Upper end of the next jar's interval.</param>
public sealed record ScoopPicture(string Title, string Sentence, IReadOnlyList<int> Counted, double Said, double Usual, double Lower, double Upper);
