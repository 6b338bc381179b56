namespace Foundress.Knowledge;

/// <summary>Something that is looked up by its kebab-case name.</summary>
public interface IHasId
{
    /// <summary>Kebab-case name, unique in its catalog.</summary>
    string Id { get; }
}
