using System.Net;
using Microsoft.AspNetCore.HttpOverrides;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Foundress.Server.Security;

/// <summary>Where the server listens, and what stands in front of it.</summary>
internal static class ListenAt
{
    /// <exception cref="CertificateException">The certificate cannot be used.</exception>
    public static void Apply(KestrelServerOptions kestrel, ServerOptions options)
    {
        var reach = options.Reach;
        var certificate = reach.Certificate is { } file ? ServerCertificate.Read(file, reach.Key) : default;
        void Secure(ListenOptions listen)
        {
            if (certificate.Own is not null)
                listen.UseHttps(https => (https.ServerCertificate, https.ServerCertificateChain) = (certificate.Own, certificate.Chain));
        }

        if (reach.Listen is { } address)
            kestrel.Listen(address, options.Port, Secure);
        else if (options.Port == 0)
            kestrel.Listen(IPAddress.Loopback, 0, Secure);
        else
            kestrel.ListenLocalhost(options.Port, Secure);
    }

    /// <summary>What a named proxy is believed: where a request came from, and that it came by HTTPS. The name it must pass on unchanged.</summary>
    public static ForwardedHeadersOptions Behind(IPAddress proxy)
    {
        var options = new ForwardedHeadersOptions { ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto, ForwardLimit = 1 };
        options.KnownIPNetworks.Clear();
        options.KnownProxies.Clear();
        options.KnownProxies.Add(proxy);
        // A server that listens on both kinds of address sees an IPv4 proxy like this.
        options.KnownProxies.Add(proxy.MapToIPv6());
        return options;
    }
}
