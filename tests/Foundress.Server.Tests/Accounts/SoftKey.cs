using System.Buffers.Binary;
using System.Buffers.Text;
using System.Formats.Cbor;
using System.Security.Cryptography;
using System.Text;
using System.Text.Json;

namespace Foundress.Server.Tests.Accounts;

/// <summary>A security key in software: makes a P-256 key and answers challenges as WebAuthn level 3 lays down (§6.1, §6.5, §7).</summary>
internal sealed class SoftKey(string domain, string origin) : IDisposable
{
    private const byte UserPresent = 0x01;
    private const byte UserVerified = 0x04;
    private const byte HasCredential = 0x40;

    private readonly ECDsa _key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
    private readonly byte[] _id = RandomNumberGenerator.GetBytes(32);
    private string _user = "";
    private uint _count;

    public string Domain { get; set; } = domain;

    public string Origin { get; set; } = origin;

    /// <summary>Whether it makes sure of its owner, by a finger or a number.</summary>
    public bool Verifies { get; set; } = true;

    /// <summary>Answers the options for a new passkey.</summary>
    public string Create(JsonElement options)
    {
        _user = options.GetProperty("user").GetProperty("id").GetString()!;
        var client = ClientData("webauthn.create", options);
        var attestation = new CborWriter();
        attestation.WriteStartMap(3);
        attestation.WriteTextString("fmt");
        attestation.WriteTextString("none");
        attestation.WriteTextString("attStmt");
        attestation.WriteStartMap(0);
        attestation.WriteEndMap();
        attestation.WriteTextString("authData");
        attestation.WriteByteString([.. Head(HasCredential), .. new byte[16], 0, (byte)_id.Length, .. _id, .. PublicKey()]);
        attestation.WriteEndMap();
        return Credential(new { clientDataJSON = Text(client), attestationObject = Text(attestation.Encode()), transports = new[] { "internal" } });
    }

    /// <summary>Answers a challenge.</summary>
    public string Get(JsonElement options)
    {
        var client = ClientData("webauthn.get", options);
        _count++;
        var data = Head(0);
        var signature = _key.SignData([.. data, .. SHA256.HashData(client)], HashAlgorithmName.SHA256, DSASignatureFormat.Rfc3279DerSequence);
        return Credential(new { clientDataJSON = Text(client), authenticatorData = Text(data), signature = Text(signature), userHandle = _user });
    }

    public void Dispose() => _key.Dispose();

    private string Credential(object response) => JsonSerializer.Serialize(
        new { id = Text(_id), rawId = Text(_id), type = "public-key", authenticatorAttachment = "platform", clientExtensionResults = new { }, response });

    private byte[] ClientData(string type, JsonElement options) => Encoding.UTF8.GetBytes(JsonSerializer.Serialize(
        new { type, challenge = options.GetProperty("challenge").GetString(), origin = Origin, crossOrigin = false }));

    private byte[] Head(byte more)
    {
        var count = new byte[4];
        BinaryPrimitives.WriteUInt32BigEndian(count, _count);
        return [.. SHA256.HashData(Encoding.UTF8.GetBytes(Domain)), (byte)(UserPresent | more | (Verifies ? UserVerified : 0)), .. count];
    }

    // A COSE key (RFC 9053 §7.1): elliptic curve, ES256, P-256, x, y.
    private byte[] PublicKey()
    {
        var point = _key.ExportParameters(false).Q;
        var writer = new CborWriter();
        writer.WriteStartMap(5);
        foreach (var (label, value) in new[] { (1, 2), (3, -7), (-1, 1) })
        {
            writer.WriteInt32(label);
            writer.WriteInt32(value);
        }

        writer.WriteInt32(-2);
        writer.WriteByteString(point.X!);
        writer.WriteInt32(-3);
        writer.WriteByteString(point.Y!);
        writer.WriteEndMap();
        return writer.Encode();
    }

    private static string Text(byte[] bytes) => Base64Url.EncodeToString(bytes);
}
