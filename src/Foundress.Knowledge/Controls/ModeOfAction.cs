namespace Foundress.Knowledge;

/// <summary>A group of active ingredients that work in the same way on the mite, so that mites resistant to one may resist all.</summary>
/// <param name="Id">The group's number in the classification of the Insecticide Resistance Action Committee in lower case, such as <c>3a</c>, or a name of ours where none is assigned.</param>
/// <param name="Title">The group as people know it, such as "pyrethroids (group 3A)".</param>
/// <param name="Rotates">True when two courses of the group should not follow each other.</param>
/// <param name="Text">Why, in plain words.</param>
/// <param name="Source">Where the grouping comes from.</param>
public sealed record ModeOfAction(string Id, string Title, bool Rotates, string Text, Source Source) : IHasId;
