using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Foundress.Server.Security;

/// <summary>Reads the certificate of the server from its files.</summary>
internal static class ServerCertificate
{
    /// <summary>The certificate, and those it was signed by that the file holds too.</summary>
    /// <exception cref="CertificateException">It cannot be read, or lacks its key.</exception>
    public static (X509Certificate2 Own, X509Certificate2Collection Chain) Read(string file, string? key)
    {
        try
        {
            var chain = new X509Certificate2Collection();
            if (X509Certificate2.GetCertContentType(file) == X509ContentType.Pfx)
            {
                // What the file is sealed with is often nothing; a password on the command line would be seen by everybody on this computer.
                var all = X509CertificateLoader.LoadPkcs12CollectionFromFile(file, null);
                chain.AddRange(all);
                return (all.FirstOrDefault(one => one.HasPrivateKey) ?? throw new CertificateException($"--certificate: '{file}' holds no key. Give a file with the key in it."), chain);
            }

            chain.ImportFromPemFile(file);
            using var own = X509Certificate2.CreateFromPemFile(file, key ?? file);
            // Through PKCS #12, since some systems cannot serve a key that lives in memory only.
            return (X509CertificateLoader.LoadPkcs12(own.Export(X509ContentType.Pkcs12), null), chain);
        }
        catch (Exception error) when (error is CryptographicException or IOException or UnauthorizedAccessException or ArgumentException)
        {
            throw new CertificateException(
                $"--certificate: '{file}'{(key is null ? "" : $" with the key '{key}'")} cannot be used: {error.Message} Give PEM files of the certificate and of its key without a password, or a PFX file without one.", error);
        }
    }
}
