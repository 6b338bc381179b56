namespace Foundress.Book.Planning;

/// <summary>What a plan is shown for.</summary>
public enum PlanVirtue
{
    /// <summary>Nothing is done: what the others are held against.</summary>
    Nothing,

    /// <summary>The fewest controls.</summary>
    Fewest,

    /// <summary>The least hazard for people, bees and comb.</summary>
    Gentlest,

    /// <summary>The least work.</summary>
    LeastWork,

    /// <summary>The least cost, by the keeper's own figures.</summary>
    Cheapest,

    /// <summary>Another way: none of the controls of the one with the fewest.</summary>
    Another,

    /// <summary>The lowest chance of standing over the line.</summary>
    Surest,

    /// <summary>The best without chemicals.</summary>
    NonChemical,
}
