using System.Net;

namespace Foundress.Server.Security;

/// <summary>From where the server can be reached, and under which name.</summary>
public sealed record Reach
{
    /// <summary>The options that belong here and take a value.</summary>
    internal static readonly IReadOnlyList<string> Options = ["--address", "--listen", "--certificate", "--key", "--name", "--proxy"];

    /// <summary>This computer only, as when nothing is asked for.</summary>
    public static readonly Reach ThisComputer = new();

    /// <summary>The address listened at; null for this computer's own.</summary>
    public IPAddress? Listen { get; init; }

    /// <summary>The file of the certificate; null when there is none.</summary>
    public string? Certificate { get; init; }

    /// <summary>The file of its key, when that is not in the same file.</summary>
    public string? Key { get; init; }

    /// <summary>The name people open it under, for example <c>bees.example.org</c>; null for this computer's own.</summary>
    public string? Name { get; init; }

    /// <summary>The reverse proxy that stands in front; null when there is none.</summary>
    public IPAddress? Proxy { get; init; }

    /// <summary>Whether accounts are insisted on.</summary>
    public bool Accounts { get; init; }

    /// <summary>Whether other computers can connect.</summary>
    public bool IsBeyondThisComputer => Listen is not null && !IPAddress.IsLoopback(Listen);

    /// <summary>Where the one who asks has it open, for links that are to be opened elsewhere.</summary>
    internal Uri SiteOf(HttpRequest request) => new(Name is null ? $"{request.Scheme}://{request.Host}/" : $"https://{request.Host}/");

    /// <summary>Takes an option in.</summary>
    /// <param name="option">One of <see cref="Options"/>.</param>
    /// <param name="value">Its value, not empty.</param>
    /// <param name="problem">What is wrong with the value; null when nothing is.</param>
    internal Reach With(string option, string value, out string? problem)
    {
        problem = null;
        switch (option)
        {
            case "--certificate":
                problem = File.Exists(value) ? null : $"--certificate: there is no file '{value}'. Give a PEM file with the certificate and those it was signed by, or a PFX file.";
                return this with { Certificate = value };
            case "--key":
                problem = File.Exists(value) ? null : $"--key: there is no file '{value}'. Give the PEM file with the key of the certificate.";
                return this with { Key = value };
            case "--name":
                problem = Uri.CheckHostName(value) is UriHostNameType.Dns && value.Equals(value.Trim('.'), StringComparison.Ordinal)
                    ? null : $"--name: '{value}' is not a name. Give the one people type into the browser, without https:// and without a port, for example bees.example.org.";
                return this with { Name = value.ToLowerInvariant() };
            case "--proxy":
                if (!IPAddress.TryParse(value, out var proxy))
                    problem = $"--proxy: '{value}' is not an address. Give the one the proxy connects from, for example 127.0.0.1.";
                return this with { Proxy = proxy };
            default:
                if (value == "localhost")
                    return this with { Listen = null };
                if (!IPAddress.TryParse(value.Trim('[', ']'), out var address))
                    problem = $"{option}: '{value}' is not an address. Give localhost, one of this computer's addresses, or 0.0.0.0 for all of them.";
                return this with { Listen = address };
        }
    }

    /// <summary>What keeps the server from being reached as was asked; null when nothing does.</summary>
    /// <param name="hasAccounts">Whether the data folder has accounts.</param>
    internal string? Problem(bool hasAccounts)
    {
        if (Key is not null && Certificate is null)
            return "--key: a key without its certificate. Give the certificate with --certificate FILE.";
        if (!hasAccounts && (IsBeyondThisComputer || Proxy is not null))
        {
            return (IsBeyondThisComputer ? $"--listen: '{Listen}' can be reached from other computers" : "--proxy: through a proxy the book can be reached from other computers")
                + ", and this book has no accounts, so anyone could read and write it. Make the first keeper's: foundress account add NAME --keeper --administrator. Other computers then need HTTPS, by --certificate FILE or a reverse proxy: docs/club-server.md shows both.";
        }

        if (IsBeyondThisComputer && Certificate is null && Proxy is null)
        {
            return $"--listen: '{Listen}' can be reached from other computers, and without HTTPS passwords could be read on the way and phones would not work offline. Give a certificate with --certificate FILE, or stand a reverse proxy in front and name it with --proxy ADDRESS: docs/club-server.md shows both.";
        }

        return Name is null && (IsBeyondThisComputer || Proxy is not null)
            ? "--name: is missing. Give the name people open the server under, for example --name bees.example.org: passkeys are bound to it, and no other name is answered."
            : null;
    }
}
