using Foundress.Book.Choosing;

namespace Foundress.Book.Planning;

/// <summary>What the keeper says of the colonies while choosing, without writing an inspection down. It holds as long as an inspection would.</summary>
/// <param name="On">The day it is said of.</param>
/// <param name="SupersOn">Whether supers are on; null for what the book says.</param>
/// <param name="Brood">Whether there is sealed brood; null for what the book says.</param>
/// <param name="Clustered">Whether the bees sit in the winter cluster; null for what the book says, or the season.</param>
public sealed record SaidOfColonies(DateOnly On, bool? SupersOn = null, BroodState? Brood = null, bool? Clustered = null)
{
    /// <summary>Whether it still holds on a day.</summary>
    /// <param name="day">The day.</param>
    public bool HoldsOn(DateOnly day) => day >= On && day <= On.AddDays(Situations.FreshDays);
}
