namespace Foundress.Book.Journal;

/// <summary>The operations a single keeper's device and server know by name.</summary>
public static class Operations
{
    /// <summary>The keeper's own book.</summary>
    public const string Home = "home";

    /// <summary>The invented demonstration: kept apart from every real book, and the only one that may be erased.</summary>
    public const string Demo = "demo";
}
