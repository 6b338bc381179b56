namespace Foundress.Server.Security;

/// <summary>What somebody must be to use an address, where there are accounts.</summary>
internal enum Access
{
    /// <summary>Anybody: it tells nothing that was recorded.</summary>
    Public,

    /// <summary>Somebody who is known, signed in or by their enrolled device.</summary>
    Known,

    /// <summary>Somebody who has signed in: a device that was lost must not change an account.</summary>
    SignedIn,

    /// <summary>A reader, helper or keeper of the operation, signed in or by their device.</summary>
    Read,

    /// <summary>A helper or keeper of the operation, signed in or by their device.</summary>
    Write,

    /// <summary>A keeper of the operation who has signed in.</summary>
    Manage,

    /// <summary>An administrator of the server who has signed in.</summary>
    Administer,
}
