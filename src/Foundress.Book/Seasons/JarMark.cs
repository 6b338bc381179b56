using Foundress.Book.Journal;
using Foundress.Science.Judging;

namespace Foundress.Book.Seasons;

/// <summary>One jar on a strip: a point with its interval.</summary>
/// <param name="Jar">The jar.</param>
/// <param name="Colony">The colony.</param>
/// <param name="ColonyName">The colony's name.</param>
/// <param name="On">The day it was taken.</param>
/// <param name="Level">Mites counted per 100 bees, on the method's own scale.</param>
/// <param name="Lower">Lower end of the interval.</param>
/// <param name="Upper">Upper end of the interval.</param>
/// <param name="Standing">Where it stands to the line then in force; null when its method is on another scale than the line.</param>
/// <param name="Mites">Mites counted.</param>
/// <param name="Bees">Bees in the jar.</param>
/// <param name="Method">Name of the counting method.</param>
public sealed record JarMark(
    EntryId Jar,
    ColonyId Colony,
    string ColonyName,
    DateOnly On,
    double Level,
    double Lower,
    double Upper,
    Standing? Standing,
    int Mites,
    double Bees,
    string Method);
