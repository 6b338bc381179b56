using Foundress.Science;
using Foundress.Science.Estimation;
using Foundress.Science.Judging;

namespace Foundress.Book.Judging;

/// <summary>Where a jar stands, without the words: enough for a mark on a strip.</summary>
/// <param name="Level">Mites counted per 100 bees, on the method's own scale.</param>
/// <param name="Interval">Its interval.</param>
/// <param name="Standing">The three-way judgement; null when not judged.</param>
public readonly record struct JarStanding(MiteLevel Level, LevelInterval Interval, Standing? Standing);
