using System.Diagnostics;
using OpenTelemetry;

namespace ReedClinic.Web.Shared.Insight;

/// <summary>
/// What may stand beside a figure or a span: names that the program's own text holds, numbers, and nothing that anybody typed.
/// A label that isn't listed here goes nowhere, whoever adds it.
/// </summary>
public sealed class InsightLabels : BaseProcessor<Activity>
{
    /// <summary>The labels that are let out. The addresses of pages aren't: they hold codes and one-time secrets; a route does not.</summary>
    public static IReadOnlyList<string> Known { get; } =
    [
        "http.request.method", "http.response.status_code", "http.route", "url.scheme", "network.protocol.version", "error.type",
        "aspnetcore.components.type", "aspnetcore.components.attribute.name", "code.function.name",
        "gc.heap.generation", "dotnet.gc.heap.generation", "cpu.mode",
        InsightFigures.Work, InsightFigures.Outcome, InsightFigures.Place,
    ];

    /// <inheritdoc />
    public override void OnEnd(Activity data)
    {
        ArgumentNullException.ThrowIfNull(data);
        foreach (var tag in data.TagObjects.Where(tag => !Known.Contains(tag.Key)).ToList())
        {
            data.SetTag(tag.Key, null);
        }

        if (data.Kind == ActivityKind.Server)
        {
            data.DisplayName = $"{data.GetTagItem("http.request.method")} {data.GetTagItem("http.route") ?? "(no page)"}";
        }

        data.TraceStateString = null;
        if (data.Status == ActivityStatusCode.Error)
        {
            data.SetStatus(ActivityStatusCode.Error); // what an exception said may hold what somebody typed
        }
    }
}
