namespace Foundress.Accounts;

/// <summary>What came of a try to sign in.</summary>
public enum SignInResult
{
    /// <summary>Signed in.</summary>
    Let,

    /// <summary>The password, the passkey or the link was not right.</summary>
    Wrong,

    /// <summary>There is no such person.</summary>
    Unknown,

    /// <summary>Too many wrong tries; the account waits.</summary>
    Waiting,

    /// <summary>A calendar address was made, and one there was before taken off.</summary>
    Made,

    /// <summary>A calendar address was taken off.</summary>
    Off,
}
