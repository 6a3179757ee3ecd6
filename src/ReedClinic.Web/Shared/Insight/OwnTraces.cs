using System.Diagnostics;

namespace ReedClinic.Web.Shared.Insight;

/// <summary>
/// Every request begins a trace of its own, whatever its headers say. A visitor's <c>traceparent</c> would choose the reference on
/// the page about a trouble, and <c>tracestate</c> and <c>baggage</c> would carry a stranger's words to wherever traces go (W3C Trace
/// Context, section 5: what comes from outside may be harmful).
/// </summary>
public sealed class OwnTraces : DistributedContextPropagator
{
    /// <inheritdoc />
    public override IReadOnlyCollection<string> Fields => [];

    /// <inheritdoc />
    public override void Inject(Activity? activity, object? carrier, PropagatorSetterCallback? setter)
    {
        // Nobody who is asked needs to know.
    }

    /// <inheritdoc />
    public override void ExtractTraceIdAndState(object? carrier, PropagatorGetterCallback? getter, out string? traceId, out string? traceState) =>
        (traceId, traceState) = (null, null);

    /// <inheritdoc />
    public override IEnumerable<KeyValuePair<string, string?>>? ExtractBaggage(object? carrier, PropagatorGetterCallback? getter) => null;
}
