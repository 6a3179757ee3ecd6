using Microsoft.AspNetCore.Diagnostics.HealthChecks;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>Two questions a watcher may ask: is the process alive, and can it do its work.</summary>
public static class Health
{
    /// <summary>A check with this tag counts for <c>/health/ready</c>.</summary>
    public const string Ready = "ready";

    /// <summary>Registers the checks.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddHealth(this WebApplicationBuilder builder) =>
        builder.Services.AddHealthChecks();

    /// <summary><c>/health/live</c> asks nothing but the process; <c>/health/ready</c> asks everything it needs.</summary>
    /// <param name="app">The application.</param>
    public static void MapHealth(this WebApplication app)
    {
        app.MapHealthChecks("/health/live", new HealthCheckOptions { Predicate = _ => false }).AllowAnonymous();
        app.MapHealthChecks("/health/ready", new HealthCheckOptions { Predicate = check => check.Tags.Contains(Ready) }).AllowAnonymous();
    }
}
