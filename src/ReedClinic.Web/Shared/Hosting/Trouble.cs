using System.Diagnostics;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>When something breaks: a calm page with a reference, and the same reference in the log.</summary>
public static class Trouble
{
    /// <summary>The reference of this request: the trace id that stands on its log lines.</summary>
    /// <param name="context">The request, when there is one.</param>
    /// <returns>Hexadecimal characters to read out or paste.</returns>
    public static string Reference(HttpContext? context) =>
        Activity.Current?.TraceId.ToHexString() ?? context?.TraceIdentifier ?? ActivityTraceId.CreateRandom().ToHexString();

    /// <summary>An exception leads to <c>/trouble</c>; what went wrong stays in the log.</summary>
    /// <param name="app">The application.</param>
    public static void UseReferenceOnTrouble(this WebApplication app) =>
        app.UseExceptionHandler("/trouble", createScopeForErrors: true);
}
