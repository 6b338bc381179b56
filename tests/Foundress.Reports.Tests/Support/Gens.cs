using CsCheck;
using Foundress.Book.Journal;
using Foundress.Book.Seasons;
using Foundress.Science.Judging;

namespace Foundress.Reports.Tests.Support;

/// <summary>Any valid strip: awkward names, empty lists, levels from 0 to far off the scale, spans that reach outside.</summary>
internal static class Gens
{
    public static readonly Gen<string> Name = Gen.OneOf(
        Gen.OneOf("", "<b>\"&'", "]]>", "\u0001\u001b[31m", "\ud800", "Ünïcode 🐝", "a\nb", "<script>alert('x')</script>", "<!--"),
        Gen.String);

    public static readonly Gen<SeasonStrip> Strip =
        from start in Gen.Int[new DateOnly(1990, 1, 1).DayNumber, new DateOnly(2100, 1, 1).DayNumber]
        from length in Gen.Int[0, 800]
        from apiary in Name
        from sentence in Name
        from today in Gen.Int[-30, length + 30]
        from jars in Jar(start, length).List[0, 60]
        from dues in Due(start, length).List[0, 15]
        from lines in Line(start, length).List[0, 5]
        from phases in Phase(start, length).List[0, 6]
        select new SeasonStrip(
            apiary, DateOnly.FromDayNumber(start), DateOnly.FromDayNumber(start + length), DateOnly.FromDayNumber(start + today), sentence,
            phases, lines, jars, dues);

    private static readonly Gen<double> Level = Gen.OneOf(Gen.Const(0d), Gen.Double[0, 25], Gen.Double[0, 1e6]);

    private static Gen<JarMark> Jar(int start, int length) =>
        from id in Gen.Int
        from name in Name
        from day in Gen.Int[0, length]
        from levels in Level.Array[3]
        from standing in Gen.Int[0, 3]
        from mites in Gen.Int[0, 5000]
        from bees in Gen.Double[1, 1000]
        from method in Name
        let sorted = levels.Order().ToArray()
        select new JarMark(
            Invented.JarId(id), new ColonyId(Guid.Empty), name, DateOnly.FromDayNumber(start + day), sorted[1], sorted[0], sorted[2],
            standing == 3 ? null : (Standing)standing, mites, bees, method);

    private static Gen<DueMark> Due(int start, int length) =>
        from day in Gen.Int[0, length]
        from before in Gen.Int[0, 400]
        from after in Gen.Int[0, 400]
        from text in Name
        from state in Gen.Int[0, 3]
        select new DueMark(
            DateOnly.FromDayNumber(start + day), DateOnly.FromDayNumber(start + day - before), DateOnly.FromDayNumber(start + day + after),
            text, state is 1 or 3, state is 2 or 3);

    private static Gen<LineStep> Line(int start, int length) =>
        from span in Span(start, length)
        from act in Level
        from watch in Gen.OneOf(Gen.Const((double?)null), Level.Select(level => (double?)level))
        select new LineStep(span.From, span.To, watch, act);

    private static Gen<PhaseSpan> Phase(int start, int length) =>
        from span in Span(start, length)
        from phase in Gen.Int[0, 4]
        select new PhaseSpan((SeasonPhase)phase, span.From, span.To.AddDays(1));

    private static Gen<(DateOnly From, DateOnly To)> Span(int start, int length) =>
        from first in Gen.Int[-400, length + 100]
        from days in Gen.Int[0, 500]
        select (DateOnly.FromDayNumber(start + first), DateOnly.FromDayNumber(start + first + days));
}
