using System.Diagnostics;
using Microsoft.Extensions.DependencyInjection.Extensions;
using OpenTelemetry;
using OpenTelemetry.Context.Propagation;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;
using ReedClinic.Web.Shared.Circuits;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Shared.Insight;

/// <summary>Seeing inside: figures and traces by OTLP, for whoever watches the machine. Off until <see cref="InsightSettings.Address"/> names a collector.</summary>
public static class InsightSetup
{
    private const int ExportMilliseconds = 5_000;

    // Of the framework's own: requests, connections, circuits and what happens on them, and the machine under them.
    private static readonly string[] Meters =
    [
        InsightFigures.Name, "Microsoft.AspNetCore.Hosting", "Microsoft.AspNetCore.Server.Kestrel",
        "Microsoft.AspNetCore.Components", "Microsoft.AspNetCore.Components.Lifecycle", "Microsoft.AspNetCore.Components.Server.Circuits", "System.Runtime",
    ];

    /// <summary>Adds it.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddInsight(this WebApplicationBuilder builder)
    {
        ArgumentNullException.ThrowIfNull(builder);
        var settings = InsightSettings.Read(builder.Configuration);
        builder.Services.AddSingleton<InsightFigures>();
        builder.Services.Replace(ServiceDescriptor.Singleton<DistributedContextPropagator, OwnTraces>());
        if (settings.Otlp is null)
        {
            return;
        }

        // The library reads headers anew where it is told of any other; this one it takes for what the framework has read.
        Sdk.SetDefaultTextMapPropagator(new TraceContextPropagator());
        builder.Services.AddHostedService<InsightWorker>();
        builder.Services.AddOpenTelemetry()
            .ConfigureResource(about => about.Clear().AddService("reedclinic", serviceVersion: typeof(InsightSetup).Assembly.GetName().Version?.ToString(3)).AddTelemetrySdk())
            .WithTracing(traces => traces
                .SetSampler(new AlwaysOnSampler())
                .AddSource(InsightFigures.Name, "Microsoft.AspNetCore.Components")
                .AddAspNetCoreInstrumentation(web => web.Filter = IsToldOf)
                .AddProcessor<InsightLabels>()
                .AddOtlpExporter(to => Lead(to, settings, "v1/traces")))
            .WithMetrics(figures => figures
                .AddMeter(Meters)
                .AddView(_ => new MetricStreamConfiguration { TagKeys = [.. InsightLabels.Known] })
                .AddOtlpExporter(to => Lead(to, settings, "v1/metrics")));
    }

    // A watcher's questions say nothing, and a circuit's socket lasts for hours.
    private static bool IsToldOf(HttpContext context) =>
        !context.Request.Path.StartsWithSegments(Health.Path, StringComparison.Ordinal)
        && !context.Request.Path.StartsWithSegments(CircuitDoor.Path, StringComparison.OrdinalIgnoreCase);

    private static void Lead(OtlpExporterOptions to, InsightSettings settings, string signal)
    {
        to.Protocol = OtlpExportProtocol.HttpProtobuf;
        to.Endpoint = new Uri(settings.Otlp!, signal);
        to.Headers = settings.Headers;
        to.TimeoutMilliseconds = ExportMilliseconds;
    }
}
