using Foundress.Book.Choosing;
using Foundress.Knowledge;
using Foundress.Science.Dynamics;
using Foundress.Science.Planning;

namespace Foundress.Book.Planning;

/// <summary>A control on a day, as the search sees it.</summary>
/// <param name="Offer">What the rules say of it, with nothing of a plan before it.</param>
/// <param name="Candidate">The same in numbers.</param>
/// <param name="Kill">What it kills, in days of the colonies' course; null for what works through bees and brood.</param>
/// <param name="NeedsBroodless">Workable only where a control before it has ended the brood.</param>
/// <param name="NeedsBrood">Not workable where a control before it has ended the brood.</param>
/// <param name="NeedsOtherFirst">Workable only after a control of another group.</param>
internal sealed record PlanUse(ControlOffer Offer, PlanCandidate Candidate, ControlEffect? Kill, bool NeedsBroodless, bool NeedsBrood, bool NeedsOtherFirst)
{
    internal ControlAgent Agent => Offer.Agent;

    internal DateOnly Start => Offer.Start;

    internal DateOnly End => Offer.End;

    /// <summary>Whether it works through bees and brood.</summary>
    internal bool IsHusbandry => Agent.Model.Action != ControlAction.Kill;
}
