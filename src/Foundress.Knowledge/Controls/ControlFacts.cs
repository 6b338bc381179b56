using System.Text;

namespace Foundress.Knowledge;

/// <summary>Everything known of controls.</summary>
/// <remarks>Safe for concurrent use: immutable.</remarks>
/// <param name="Agents">The controls, by active ingredient and form.</param>
/// <param name="Modes">Modes of action.</param>
/// <param name="Gear">What a keeper may need for one.</param>
/// <param name="Proof">How it is proven that one worked.</param>
public sealed record ControlFacts(Catalog<ControlAgent> Agents, Catalog<ModeOfAction> Modes, Catalog<Gear> Gear, ProofRules Proof)
{
    /// <summary>The controls a name in a file may mean: by id, title or alias, whatever the capitals, spaces and hyphens.</summary>
    /// <param name="name">For example <c>Oxalic acid</c>.</param>
    /// <returns>One when it is plain, several when the name leaves the form open, none when it is not known. In the order of the data.</returns>
    public IReadOnlyList<ControlAgent> Named(string name)
    {
        var wanted = Plain(name);
        if (wanted.Length == 0)
            return [];
        var exact = Agents.Where(agent => Plain(agent.Id) == wanted || Plain(agent.Title) == wanted).ToArray();
        return exact.Length > 0 ? exact : [.. Agents.Where(agent => agent.Aliases.Any(alias => Plain(alias) == wanted))];
    }

    /// <summary>The letters and digits of a name in lower case, so that spelling by hyphen or space does not matter.</summary>
    internal static string Plain(string name)
    {
        var plain = new StringBuilder(name.Length);
        foreach (var c in name)
        {
            if (char.IsLetterOrDigit(c))
                plain.Append(char.ToLowerInvariant(c));
        }

        return plain.ToString();
    }
}
