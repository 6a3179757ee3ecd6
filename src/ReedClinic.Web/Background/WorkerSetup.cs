using Microsoft.Extensions.Diagnostics.HealthChecks;

namespace ReedClinic.Web.Background;

/// <summary>The work behind the pages.</summary>
public static class WorkerSetup
{
    /// <summary>Adds every worker. None of them ever stops the site.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddWorkers(this WebApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        builder.Services.AddSingleton<WorkerStandings>();
        builder.Services.Configure<HostOptions>(host => host.BackgroundServiceExceptionBehavior = BackgroundServiceExceptionBehavior.Ignore);
        builder.Services.AddHostedService<MailWorker>().AddHostedService<AuditWorker>().AddHostedService<RecordsWorker>().AddHostedService<WireWorker>().AddHostedService<SoundWorker>();
        builder.Services.AddSingleton<FirstTurn>();
    }

    /// <summary>Takes the first turn as soon as the process answers.</summary>
    /// <param name="app">The application.</param>
    public static void TakeFirstTurn(this WebApplication app)
    {
        ArgumentNullException.ThrowIfNull(app);
        var turn = app.Services.GetRequiredService<FirstTurn>();
        app.Lifetime.ApplicationStarted.Register(() => _ = turn.TakeAsync(app.Lifetime.ApplicationStopping));
    }
}

/// <summary>Does the work behind the pages go on?</summary>
/// <param name="standings">How it goes.</param>
public sealed class WorkersCheck(WorkerStandings standings) : IHealthCheck
{
    /// <inheritdoc />
    public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        Task.FromResult(standings.Stumbling.Select(one => one.Work).ToList() is { Count: > 0 } failing
            ? HealthCheckResult.Unhealthy($"It fails and is tried again: {string.Join(", ", failing)}.")
            : HealthCheckResult.Healthy());
}
