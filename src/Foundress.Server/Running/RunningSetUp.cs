namespace Foundress.Server.Running;

/// <summary>Puts together what the server needs to be run as a service.</summary>
internal static class RunningSetUp
{
    public static void AddRunning(this IServiceCollection services, RunningOptions options)
    {
        services.AddMetrics();
        services.AddSingleton<ServerMeters>();
        services.AddSingleton<ReadyCheck>();
        services.AddHostedService<BackupDuty>();
        services.AddTelemetry(options);
    }

    public static void UseRunning(this IApplicationBuilder app, RunningOptions options)
    {
        if (options.Log == LogForm.Json)
            app.UseMiddleware<RequestLog>();
        app.UseMiddleware<LateErrors>();
    }
}
