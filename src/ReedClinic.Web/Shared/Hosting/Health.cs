using Microsoft.AspNetCore.Diagnostics.HealthChecks;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using ReedClinic.Data.Engine;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>Two questions a watcher may ask: is the process alive, and can it do its work.</summary>
public static class Health
{
    /// <summary>A check with this tag counts for <c>/health/ready</c>.</summary>
    public const string Ready = "ready";

    /// <summary>Where both are asked; also over plain http, which a watcher on the same machine speaks.</summary>
    public const string Path = "/health";

    /// <summary>Registers the checks.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddHealth(this WebApplicationBuilder builder) =>
        builder.Services.AddHealthChecks().AddCheck<DatabaseCheck>("database", tags: [Ready]);

    /// <summary><c>/health/live</c> asks nothing but the process; <c>/health/ready</c> asks everything it needs.</summary>
    /// <param name="app">The application.</param>
    public static void MapHealth(this WebApplication app)
    {
        app.MapHealthChecks($"{Path}/live", new HealthCheckOptions { Predicate = _ => false }).AllowAnonymous();
        app.MapHealthChecks($"{Path}/ready", new HealthCheckOptions { Predicate = check => check.Tags.Contains(Ready) }).AllowAnonymous();
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
