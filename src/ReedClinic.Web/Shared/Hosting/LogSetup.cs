using System.Globalization;
using System.Text.RegularExpressions;
using Serilog;
using Serilog.Core;
using Serilog.Events;
using Serilog.Formatting;
using Serilog.Formatting.Compact;
using Serilog.Formatting.Display;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>The log: one line an event, with the trace that a reference number on a page leads to.</summary>
public static partial class LogSetup
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
            .Enrich.With<OwnWords>()
            .WriteTo.Console(writer, standardErrorFromLevel: LogEventLevel.Verbose));
    }

    // One-time secrets stand in addresses. Of a request's path only what can be a word of the program's own is kept.
    private sealed class OwnWords : ILogEventEnricher
    {
        private const string Path = "RequestPath";

        public void Enrich(LogEvent logEvent, ILogEventPropertyFactory propertyFactory)
        {
            if (logEvent.Properties.TryGetValue(Path, out var value))
            {
                var kept = value is ScalarValue { Value: string path } ? string.Join('/', path.Split('/').Select(part => OwnWord().IsMatch(part) ? part : "*")) : "*";
                logEvent.AddOrUpdateProperty(new LogEventProperty(Path, new ScalarValue(kept)));
            }
        }
    }

    [GeneratedRegex(@"^[a-z_-]{0,20}\z")]
    private static partial Regex OwnWord();
}
