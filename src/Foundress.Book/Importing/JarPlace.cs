using Foundress.Book.Journal;

namespace Foundress.Book.Importing;

/// <summary>Where a row's jar belongs.</summary>
/// <param name="Apiary">The apiary.</param>
/// <param name="ApiaryName">Its name as the row gives it.</param>
/// <param name="Colony">The colony.</param>
/// <param name="ColonyName">Its name as the row gives it.</param>
/// <param name="Problem">Why the jar belongs nowhere; null when it does.</param>
internal readonly record struct JarPlace(ApiaryId Apiary, string ApiaryName, ColonyId Colony, string ColonyName, FieldProblem? Problem = null);
