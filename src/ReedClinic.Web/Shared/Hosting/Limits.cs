namespace ReedClinic.Web.Shared.Hosting;

/// <summary>What the server takes before it says no.</summary>
public static class Limits
{
    /// <summary>The longest body of a plain form: generous for words, small for anything else.</summary>
    public const long FormBytes = 1_000_000;

    /// <summary>Bounds on connections and bodies; no server name in the headers.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddLimits(this WebApplicationBuilder builder) =>
        builder.WebHost.ConfigureKestrel(server =>
        {
            server.AddServerHeader = false;
            server.Limits.MaxConcurrentConnections = 2_000;
            server.Limits.MaxConcurrentUpgradedConnections = 1_000;
            server.Limits.MaxRequestBodySize = FormBytes;
        });
}
