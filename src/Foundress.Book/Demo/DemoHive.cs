using Foundress.Book.Journal;

namespace Foundress.Book.Demo;

/// <summary>What the inventor knows of a colony and the book does not: its true level.</summary>
internal sealed class DemoHive(ColonyId id, string name, double start, double growth)
{
    internal ColonyId Id => id;

    internal string Name => name;

    /// <summary>Mites per 100 bees on <see cref="AsOf"/>.</summary>
    internal double Level { get; private set; } = start;

    internal DateOnly AsOf { get; set; }

    internal bool Lives { get; set; } = true;

    /// <summary>Moves the level on to a day: slow decline in winter, growth while there is brood, fastest as the colony shrinks.</summary>
    internal void MoveTo(DateOnly day)
    {
        for (; AsOf < day; AsOf = AsOf.AddDays(1))
        {
            var daily = AsOf.Month switch
            {
                >= 11 or <= 2 => -0.0025,
                3 => 0.004,
                >= 4 and <= 6 => 0.012,
                7 or 8 => 0.021,
                _ => 0.014,
            };
            Level = Math.Min(40, Level * Math.Exp(daily * (daily > 0 ? growth : 1)));
        }
    }

    internal void Control(double efficacy) => Level *= 1 - efficacy;
}
