namespace Foundress.Accounts;

/// <summary>A try to sign in, as keepers are shown it.</summary>
/// <param name="At">When.</param>
/// <param name="Name">Who; null when nobody is called that.</param>
/// <param name="Way">How.</param>
/// <param name="Result">What came of it.</param>
/// <param name="Network">The network it came from.</param>
public sealed record SeenSignIn(DateTimeOffset At, string? Name, SignInWay Way, SignInResult Result, string Network);
