using Foundress.Book.Journal;
using Foundress.Book.State;
using Foundress.Knowledge;

namespace Foundress.Book.Changes;

/// <summary>Gathers an apiary's jars into visits.</summary>
public static class ApiaryVisits
{
    /// <summary>The visits of an apiary on one scale of counting, by day. Jars stay with the apiary where they were taken.</summary>
    /// <param name="apiary">The apiary.</param>
    /// <param name="state">The book.</param>
    /// <param name="knowledge">The known methods.</param>
    /// <param name="scale">Id of the scale; levels of other scales are never compared with it.</param>
    public static IReadOnlyList<ApiaryVisit> Of(ApiaryId apiary, BookState state, KnowledgeBase knowledge, string scale) =>
        [.. state.JarsIn(apiary)
            .Where(one => ScaleOf(one.Jar, knowledge) == scale)
            .GroupBy(one => (one.Jar.Facts.Round, Day: one.Jar.Facts.Round is null ? one.Jar.Facts.On : default, one.Jar.Facts.Method))
            .Select(group => new ApiaryVisit(
                apiary,
                group.Max(one => one.Jar.Facts.On),
                group.Key.Method,
                group.Key.Round,
                [.. group.GroupBy(one => one.Colony.Id).Select(colony => KeyValuePair.Create(colony.Key, (IReadOnlyList<Jar>)[.. colony.Select(one => one.Jar)]))]))
            .OrderBy(visit => visit.On)];

    /// <summary>Id of the scale a jar was counted on; none for a method that is not known, or not of a jar.</summary>
    public static string? ScaleOf(Jar jar, KnowledgeBase knowledge) =>
        knowledge.Methods.TryGet(jar.Facts.Method, out var method) && method.IsJar ? method.ScaleId : null;
}
