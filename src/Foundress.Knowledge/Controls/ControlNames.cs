using System.Text;

namespace Foundress.Knowledge;

/// <summary>How names of controls are compared.</summary>
public static class ControlNames
{
    /// <summary>The letters and digits of a name in lower case, so that spelling by capital, hyphen or space does not matter.</summary>
    public static string Plain(string name)
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
