namespace Foundress.Accounts;

/// <summary>How somebody tried to sign in.</summary>
public enum SignInWay
{
    /// <summary>With name and password.</summary>
    Password,

    /// <summary>With a passkey.</summary>
    Passkey,

    /// <summary>With a one-time link.</summary>
    Link,

    /// <summary>With the secret address of a calendar program, which reads what is due and nothing else.</summary>
    Calendar,
}
