using System.Globalization;
using System.Text.Json;

namespace Foundress.Server.Running;

/// <summary>Asks the server on this computer whether it is ready: for containers and watchdogs that bring no program of their own.</summary>
internal static class HealthProbe
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(10);

    /// <summary>Asks and tells.</summary>
    /// <returns><see cref="ServerExit.Done"/> when it is ready, otherwise <see cref="ServerExit.NotReady"/>.</returns>
    public static async Task<int> RunAsync(int port, TextWriter output, TextWriter errors)
    {
        // The certificate bears the server's public name, not this computer's; nothing secret is asked or told.
        using var handler = new HttpClientHandler { ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator, UseProxy = false };
        using var caller = new HttpClient(handler) { Timeout = Patience };
        var why = "";
        foreach (var scheme in new[] { "http", "https" })
        {
            var place = string.Create(CultureInfo.InvariantCulture, $"{scheme}://localhost:{port}/health/ready");
            try
            {
                using var answer = await caller.GetAsync(place);
                if (answer.IsSuccessStatusCode)
                {
                    await output.WriteLineAsync("ready");
                    return ServerExit.Done;
                }

                why = await ReasonAsync(answer);
                break;
            }
            catch (HttpRequestException error)
            {
                why = why.Length == 0 ? $"Nothing answers at {place}: {error.Message}" : why;
            }
            catch (TaskCanceledException)
            {
                why = $"No answer from {place} within {Patience.TotalSeconds:0} seconds.";
                break;
            }
        }

        await errors.WriteLineAsync(why);
        return ServerExit.NotReady;
    }

    private static async Task<string> ReasonAsync(HttpResponseMessage answer)
    {
        try
        {
            using var problem = JsonDocument.Parse(await answer.Content.ReadAsStringAsync());
            return problem.RootElement.GetProperty("detail").GetString()!;
        }
        catch (Exception error) when (error is JsonException or KeyNotFoundException or InvalidOperationException)
        {
            return $"The answer was {(int)answer.StatusCode}; it does not come from Foundress.";
        }
    }
}
