using System.Buffers.Binary;
using System.Security.Cryptography;
using System.Text;

namespace Foundress.Storage.Postgres;

/// <summary>
/// Numbers of the advisory locks. Every version of the program must agree on them. They hold within one database, which is
/// Foundress's own.
/// </summary>
internal static class PostgresLocks
{
    /// <summary>Held while tables are made or changed.</summary>
    public const long Setup = 0x466E_6472_0000_0001;

    /// <summary>Held while the tables of accounts are made or changed, or a server makes itself ready to use them.</summary>
    public const long AccountsSetup = 0x466E_6472_0000_0002;

    /// <summary>Held by a transaction that looks at accounts before it changes them.</summary>
    public const long Accounts = 0x466E_6472_0000_0003;

    /// <summary>Held by a transaction that adds to an operation. Two operations with one number only wait for each other.</summary>
    public static long Append(string operation) =>
        BinaryPrimitives.ReadInt64BigEndian(SHA256.HashData(Encoding.UTF8.GetBytes("foundress append " + operation)));
}
