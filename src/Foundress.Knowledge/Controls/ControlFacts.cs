namespace Foundress.Knowledge;

/// <summary>Everything known of controls.</summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
/// <param name="Agents">The controls, by active ingredient and form.</param>
/// <param name="Modes">Modes of action.</param>
/// <param name="Gear">What a keeper may need for one.</param>
/// <param name="Proof">How it is proven that one worked.</param>
/// <param name="Planning">How plans of controls are searched.</param>
public sealed record ControlFacts(Catalog<ControlAgent> Agents, Catalog<ModeOfAction> Modes, Catalog<Gear> Gear, ProofRules Proof, PlanRules Planning)
{
    /// <summary>The controls a name in a file may mean: by id, title or alias, in English or the language of this knowledge, whatever the capitals, spaces and hyphens.</summary>
    /// <param name="name">For example <c>Oxalic acid</c>.</param>
    /// <returns>One when it is plain, several when the name leaves the form open, none when it is not known. In the order of the data.</returns>
    public IReadOnlyList<ControlAgent> Named(string name)
    {
        var wanted = ControlNames.Plain(name);
        if (wanted.Length == 0)
            return [];
        var exact = Agents.Where(agent => ControlNames.Plain(agent.Id) == wanted || ControlNames.Plain(agent.Title) == wanted || ControlNames.Plain(agent.EnglishTitle) == wanted).ToArray();
        return exact.Length > 0 ? exact : [.. Agents.Where(agent => agent.Aliases.Any(alias => ControlNames.Plain(alias) == wanted))];
    }
}
