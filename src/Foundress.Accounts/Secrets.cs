using System.Buffers.Text;
using System.Security.Cryptography;
using System.Text;

namespace Foundress.Accounts;

/// <summary>
/// Secrets that a program makes and a program gives back: links and device credentials. They are random and long enough
/// that a fast hash keeps them safe; passwords, which people choose, are hashed slowly by ASP.NET Core Identity.
/// </summary>
public static class Secrets
{
    private const int Bytes = 32;

    /// <summary>A new secret of 256 random bits in 43 letters that go into an address.</summary>
    public static string New() => Base64Url.EncodeToString(RandomNumberGenerator.GetBytes(Bytes));

    /// <summary>What is kept of a secret: its SHA-256 in hexadecimal.</summary>
    public static string Hash(string secret) => Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(secret)));
}
