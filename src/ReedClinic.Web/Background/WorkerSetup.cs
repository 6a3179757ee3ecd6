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
