using System.Globalization;
using System.Net;
using System.Net.Sockets;
using System.Threading.RateLimiting;
using Foundress.Book.Wording;
using Foundress.Server.Accounts;
using Foundress.Server.Problems;
using Microsoft.AspNetCore.RateLimiting;
using Microsoft.Net.Http.Headers;

namespace Foundress.Server.Security;

/// <summary>How often one may knock. A club's members may all come from one address on the evening they sign up.</summary>
/// <param name="EntrancePerFiveMinutes">Tries to sign in or to use a link, by the address they come from.</param>
/// <param name="ExchangePerMinute">Requests for a book's records, by person.</param>
public sealed record RateLimits(int EntrancePerFiveMinutes = 60, int ExchangePerMinute = 1_200)
{
    internal void Apply(RateLimiterOptions options)
    {
        options.GlobalLimiter = PartitionedRateLimiter.Create<HttpContext, string>(http => AccessRules.Of(http.GetEndpoint())?.Pace switch
        {
            Pace.Entrance => Window("address " + Source(http.Connection.RemoteIpAddress), EntrancePerFiveMinutes, TimeSpan.FromMinutes(5)),
            Pace.Exchange => Window("person " + Caller.Of(http)?.Person, ExchangePerMinute, TimeSpan.FromMinutes(1)),
            _ => RateLimitPartition.GetNoLimiter(""),
        });
        options.OnRejected = static (context, _) =>
        {
            var wait = context.Lease.TryGetMetadata(MetadataName.RetryAfter, out var after) ? after : TimeSpan.FromMinutes(1);
            var seconds = Math.Ceiling(wait.TotalSeconds);
            context.HttpContext.Response.Headers[HeaderNames.RetryAfter] = seconds.ToString(CultureInfo.InvariantCulture);
            return new ValueTask(ProblemAnswer.WriteAsync(
                context.HttpContext, StatusCodes.Status429TooManyRequests,
                Plural.Pick(seconds, AccessTexts.FormatTooMany(seconds))));
        };
    }

    private static RateLimitPartition<string> Window(string key, int most, TimeSpan length) => RateLimitPartition.GetFixedWindowLimiter(
        key, _ => new FixedWindowRateLimiterOptions { PermitLimit = most, Window = length, QueueLimit = 0 });

    // One household has one IPv4 address, and a whole half of an IPv6 one to choose from.
    private static string Source(IPAddress? address)
    {
        if (address is null)
            return "";
        if (address.IsIPv4MappedToIPv6)
            address = address.MapToIPv4();
        if (address.AddressFamily != AddressFamily.InterNetworkV6)
            return address.ToString();
        var bytes = address.GetAddressBytes();
        Array.Clear(bytes, 8, 8);
        return new IPAddress(bytes).ToString();
    }
}
