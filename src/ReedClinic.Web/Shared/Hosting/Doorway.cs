using System.Net;
using Microsoft.AspNetCore.Http.HttpResults;
using Microsoft.AspNetCore.HttpOverrides;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>
/// Which way a visitor may come in. Pages are given out over https: either the program speaks it itself, or a proxy that
/// the settings name says that it did. By plain http only to a browser on this machine, where the settings allow it.
/// </summary>
public static class Doorway
{
    /// <summary><c>true</c>: <c>http://localhost</c> is let in. What a browser calls its own machine never crosses a network.</summary>
    public const string PlainHttpOnLoopback = "Web:PlainHttpOnLoopback";

    /// <summary>The addresses and networks of proxies whose forwarded headers are believed, with commas; nobody's by default.</summary>
    public const string Proxies = "Web:Proxies";

    /// <summary>Reads whom to believe.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddDoorway(this WebApplicationBuilder builder)
    {
        var proxies = ProxiesIn(builder.Configuration[Proxies]);

        // Afterwards, so that the framework's own switch, which believes everybody, can't widen this.
        builder.Services.PostConfigure<ForwardedHeadersOptions>(options =>
        {
            options.ForwardedHeaders = ForwardedHeaders.XForwardedFor | ForwardedHeaders.XForwardedProto;
            options.ForwardLimit = 1;
            options.KnownProxies.Clear();
            options.KnownIPNetworks.Clear();
            foreach (var network in proxies)
            {
                options.KnownIPNetworks.Add(network);
            }

            // An empty list would mean everybody.
            if (proxies.Count == 0)
            {
                options.ForwardedHeaders = ForwardedHeaders.None;
            }
        });
    }

    /// <summary>Turns away who came by plain http, except the watcher that asks for the program's health.</summary>
    /// <param name="app">The application.</param>
    public static void UseDoorway(this WebApplication app)
    {
        var open = app.Environment.IsDevelopment();
        var loopback = app.Configuration.PlainHttpAllowed();
        app.Use((context, next) =>
            open || context.Request.IsHttps || context.Request.Path.StartsWithSegments(Health.Path, StringComparison.Ordinal) || (loopback && IsThisMachine(context.Request))
                ? next(context)
                : TurnAwayAsync(context));
    }

    /// <summary>A cookie that travels over https alone, and says so in its name, unless plain http is let in too.</summary>
    /// <param name="cookie">The cookie.</param>
    /// <param name="name">Its name.</param>
    /// <param name="builder">The host that is being built.</param>
    public static void Keep(this CookieBuilder cookie, string name, WebApplicationBuilder builder)
    {
        var plain = builder.Environment.IsDevelopment() || builder.Configuration.PlainHttpAllowed();
        cookie.Name = plain ? name : "__Host-" + name;
        cookie.SecurePolicy = plain ? CookieSecurePolicy.SameAsRequest : CookieSecurePolicy.Always;
        cookie.HttpOnly = true;
    }

    /// <summary>Whether the settings let plain http in from this machine.</summary>
    /// <param name="configuration">The settings.</param>
    /// <returns>True if so.</returns>
    public static bool PlainHttpAllowed(this IConfiguration configuration) => configuration.GetValue<bool>(PlainHttpOnLoopback);

    // What the browser has in its address line. In a container the connection itself comes from the engine, not from here.
    // A proxy may write its own idea of an address there: whoever came through one, as a header tells, is somewhere else.
    private static bool IsThisMachine(HttpRequest request) =>
        !request.Headers.Keys.Any(name =>
            name.StartsWith("X-Forwarded-", StringComparison.OrdinalIgnoreCase) || name.StartsWith("X-Original-", StringComparison.OrdinalIgnoreCase)
            || name.Equals("Forwarded", StringComparison.OrdinalIgnoreCase) || name.Equals("Via", StringComparison.OrdinalIgnoreCase))
        && (string.Equals(request.Host.Host, "localhost", StringComparison.OrdinalIgnoreCase)
            || (IPAddress.TryParse(request.Host.Host, out var address) && IPAddress.IsLoopback(address)));

    private static Task TurnAwayAsync(HttpContext context)
    {
        // This address and plain http don't go together here: RFC 9110, 15.5.20.
        context.Response.StatusCode = StatusCodes.Status421MisdirectedRequest;
        return new RazorComponentResult<PlainHttpNote> { StatusCode = StatusCodes.Status421MisdirectedRequest }.ExecuteAsync(context);
    }

    private static List<System.Net.IPNetwork> ProxiesIn(string? setting) =>
    [
        .. (setting ?? "").Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Select(text =>
            System.Net.IPNetwork.TryParse(text, out var network) ? network
            : IPAddress.TryParse(text, out var address) ? new System.Net.IPNetwork(address, address.GetAddressBytes().Length * 8)
            : throw new InvalidOperationException($"{Proxies} names '{text}', which is neither an address nor a network such as 192.0.2.0/24.")),
    ];
}
