namespace Foundress.Book.Reporting;

/// <summary>All jars of one apiary, day and method added up.</summary>
/// <param name="On">The day.</param>
/// <param name="Method">The counting method's name.</param>
/// <param name="Jars">How many jars.</param>
/// <param name="Mites">Mites in all of them.</param>
/// <param name="Bees">Bees in all of them.</param>
/// <param name="Level">Mites per 100 bees over all of them.</param>
/// <param name="Lower">Lower end of the interval of the apiary's level; null for a single jar's total, which says nothing of other colonies.</param>
/// <param name="Upper">Upper end of that interval.</param>
/// <param name="Over">How many of the jars stand above the line.</param>
/// <param name="Unclear">How many are unclear.</param>
/// <param name="Below">How many stand below it.</param>
public sealed record DayTotal(
    DateOnly On,
    string Method,
    int Jars,
    int Mites,
    double Bees,
    double Level,
    double? Lower,
    double? Upper,
    int Over,
    int Unclear,
    int Below);
