using Foundress.Accounts;

namespace Foundress.Server.Accounts;

/// <summary>Forgets old sign-ins once a day, of a server that runs on for months.</summary>
internal sealed partial class SignInDuty(SignInLog signIns, TimeProvider time, ILogger<SignInDuty> log) : BackgroundService
{
    internal static readonly TimeSpan Every = TimeSpan.FromDays(1);

    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        using var timer = new PeriodicTimer(Every, time);
        while (await timer.WaitForNextTickAsync(stoppingToken))
        {
            try
            {
                await signIns.PruneAsync(stoppingToken);
            }
            catch (Exception error) when (error is not OperationCanceledException)
            {
                // Nothing hangs on the day, and the server must not end by it.
                LogFailed(AccountsTrouble.Of(error)?.Fault.ToString() ?? error.GetType().Name);
            }
        }
    }

    [LoggerMessage(40, LogLevel.Warning, "Old sign-ins could not be forgotten: {Fault}. It is tried again tomorrow.")]
    private partial void LogFailed(string fault);
}
