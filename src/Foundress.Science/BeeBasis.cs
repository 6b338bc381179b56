namespace Foundress.Science;

/// <summary>How the number of bees in a jar is known.</summary>
public enum BeeBasis
{
    /// <summary>Every bee was counted: the number is exact.</summary>
    Counted,

    /// <summary>The bees were weighed and the weight divided by a weight per bee.</summary>
    Weighed,

    /// <summary>A measure of bees was taken as its usual number ("a half cup").</summary>
    Assumed,
}
