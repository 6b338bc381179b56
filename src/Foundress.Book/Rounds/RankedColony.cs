using Foundress.Book.Judging;
using Foundress.Book.State;
using Foundress.Science;
using Foundress.Science.Estimation;

namespace Foundress.Book.Rounds;

/// <summary>A sampled colony in a round's result.</summary>
/// <param name="Colony">The colony.</param>
/// <param name="Jar">Its jar; the latest where it has several in the round.</param>
/// <param name="Reading">What that jar tells on its own.</param>
/// <param name="Shrunk">Its level once the other colonies of the apiary are taken into account: a single high or low count is drawn towards the rest. Null when there is nothing to compare with.</param>
/// <param name="ShrunkOver">The chance, so judged, that it is over the line.</param>
public sealed record RankedColony(Colony Colony, Jar Jar, JarReading Reading, LevelInterval? Shrunk, Chance? ShrunkOver);
