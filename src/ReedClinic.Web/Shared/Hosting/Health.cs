using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using ReedClinic.Data.Engine;
using ReedClinic.Web.Background;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>Three questions a watcher may ask: is the process alive, can it serve pages, and does the work behind them go on.</summary>
public static class Health
{
    /// <summary>A check with this tag counts for <c>/health/ready</c>.</summary>
    public const string Ready = "ready";

    /// <summary>A check with this tag counts for <c>/health/work</c>.</summary>
    public const string Work = "work";

    /// <summary>Where they are asked; also over plain http, which a watcher on the same machine speaks.</summary>
    public const string Path = "/health";

    /// <summary>Registers the checks.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddHealth(this WebApplicationBuilder builder) =>
        builder.Services.AddHealthChecks().AddCheck<DatabaseCheck>("database", tags: [Ready]).AddCheck<FirstTurnCheck>("first-turn", tags: [Ready]).AddCheck<WorkersCheck>("workers", tags: [Work]);

    /// <summary>
    /// <c>/health/live</c> asks nothing but the process; <c>/health/ready</c> asks everything a page needs; <c>/health/work</c> asks the
    /// work behind the pages: where that fails, pages are given out all the same, and nobody should lead visitors elsewhere.
    /// </summary>
    /// <param name="app">The application.</param>
    public static void MapHealth(this WebApplication app)
    {
        app.MapHealthChecks($"{Path}/live", new HealthCheckOptions { Predicate = _ => false }).AllowAnonymous();
        var ready = new HealthCheckOptions { Predicate = check => check.Tags.Contains(Ready) };
        ready.ResultStatusCodes[HealthStatus.Degraded] = StatusCodes.Status503ServiceUnavailable; // it has only just started: no failure, and not yet ready
        app.MapHealthChecks($"{Path}/ready", ready).AllowAnonymous();
        app.MapHealthChecks($"{Path}/work", new HealthCheckOptions { Predicate = check => check.Tags.Contains(Work) }).AllowAnonymous();
    }
}

/// <summary>Can the database be reached, and is it this build's?</summary>
/// <param name="schema">The schema of this build.</param>
public sealed class DatabaseCheck(ClinicSchema schema) : IHealthCheck
{
    /// <inheritdoc />
    public async Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        await schema.IsReadyAsync(cancellationToken).ConfigureAwait(false)
            ? HealthCheckResult.Healthy()
            : HealthCheckResult.Unhealthy("The database can't be reached, or lacks a migration.");
}
