using System.Globalization;
using Serilog;
using Serilog.Events;
using Serilog.Formatting;
using Serilog.Formatting.Compact;
using Serilog.Formatting.Display;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>The log: one line an event, with the trace that a reference number on a page leads to.</summary>
public static class LogSetup
{
    private const string Line = "{Timestamp:yyyy-MM-ddTHH:mm:ss.fffZ} {Level:u3} {TraceId} {SourceContext} {Message:lj}{NewLine}{Exception}";

    /// <summary>
    /// How one event is written: as a line to read in Development, elsewhere as a line of JSON, in which a value with line
    /// breaks and quotes stays a value.
    /// </summary>
    /// <param name="environment">Where the program runs.</param>
    /// <returns>What writes a line.</returns>
    public static ITextFormatter Writer(IHostEnvironment environment) => environment.IsDevelopment()
        ? new MessageTemplateTextFormatter(Line, CultureInfo.InvariantCulture)
        : new RenderedCompactJsonFormatter();

    /// <summary>Logs to standard error, so that standard output carries announcements and nothing else.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddStudioLog(this WebApplicationBuilder builder)
    {
        var level = Enum.TryParse<LogEventLevel>(builder.Configuration["Logging:Detail"], out var asked) ? asked : LogEventLevel.Information;
        var writer = Writer(builder.Environment);
        builder.Services.AddSerilog(log => log
            .MinimumLevel.Is(level)
            .MinimumLevel.Override("Microsoft", LogEventLevel.Warning)
            .MinimumLevel.Override("Microsoft.Hosting.Lifetime", LogEventLevel.Information)
            .WriteTo.Console(writer, standardErrorFromLevel: LogEventLevel.Verbose));
    }
}
