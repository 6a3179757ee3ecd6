using System.Collections.Concurrent;
using System.Net;
using System.Text;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;

namespace ReedClinic.Web.Tests.Insight;

/// <summary>
/// A collector in this process: it takes what OTLP sends over HTTP (OpenTelemetry Protocol 1.x: POST of protobuf to /v1/traces and
/// /v1/metrics) and keeps the bytes. Strings stand in protobuf as they are, in UTF-8, so a test can look for them.
/// </summary>
internal sealed class OtlpSink : IAsyncDisposable
{
    private readonly WebApplication _app;

    private OtlpSink(WebApplication app) => _app = app;

    /// <summary>What came: where to, with which type and key, and the bytes.</summary>
    public ConcurrentQueue<(string Path, string? Type, string? Key, byte[] Body)> Came { get; } = new();

    /// <summary>Where it listens.</summary>
    public string Address => _app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()!.Addresses.Single();

    public static async Task<OtlpSink> OpenAsync()
    {
        var builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        builder.WebHost.UseKestrel(server => server.Listen(IPAddress.Loopback, 0));
        var app = builder.Build();
        var sink = new OtlpSink(app);
        app.Run(sink.TakeAsync);
        await app.StartAsync(TestContext.Current.CancellationToken);
        return sink;
    }

    /// <summary>All that came to an address.</summary>
    public string All(string path) => string.Concat(Came.Where(one => one.Path == path).Select(one => Encoding.UTF8.GetString(one.Body)));

    /// <summary>All bytes that came.</summary>
    public byte[] Bytes() => [.. Came.SelectMany(one => one.Body)];

    public ValueTask DisposeAsync() => _app.DisposeAsync();

    private async Task TakeAsync(HttpContext context)
    {
        using var body = new MemoryStream();
        await context.Request.Body.CopyToAsync(body);
        Came.Enqueue((context.Request.Path, context.Request.ContentType, context.Request.Headers["collector-key"], body.ToArray()));
        context.Response.ContentType = "application/x-protobuf";
    }
}
