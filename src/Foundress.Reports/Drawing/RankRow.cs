using Foundress.Book.Journal;
using Foundress.Science.Judging;

namespace Foundress.Reports.Drawing;

/// <summary>One colony in a ranking. Levels are in mites per 100 bees.</summary>
/// <param name="Name">The colony's name.</param>
/// <param name="Level">Its level.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
/// <param name="Standing">Where it stands to the line.</param>
/// <param name="Jar">The jar, for a link; null when the row is not one jar's.</param>
public sealed record RankRow(string Name, double Level, double Lower, double Upper, Standing? Standing, EntryId? Jar = null);
