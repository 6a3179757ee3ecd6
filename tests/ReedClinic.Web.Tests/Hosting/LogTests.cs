using System.Globalization;
using System.Text;
using System.Text.Json;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using ReedClinic.Data;
using ReedClinic.Web.Shared.Hosting;
using Serilog.Core;
using Serilog.Events;

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>What stands in the log, and what doesn't (OWASP ASVS 5.0, 16.2.5 and 16.4.1).</summary>
public sealed class LogTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public void A_value_with_line_breaks_and_quotes_stays_one_value_of_one_line()
    {
        var written = new StringWriter(CultureInfo.InvariantCulture);
        using (var log = new Serilog.LoggerConfiguration().WriteTo.Sink(new Heard(host.Services.GetRequiredService<IHostEnvironment>(), written.WriteLine)).CreateLogger())
        {
            foreach (var vector in HostileTexts.All)
            {
                log.Error(new InvalidOperationException(vector.Text), "Said {Words}", vector.Text);
            }
        }

        var lines = written.ToString().TrimEnd().Split('\n');
        Assert.Equal(HostileTexts.All.Count, lines.Length);
        Assert.All(lines, line =>
        {
            using var read = JsonDocument.Parse(Encoding.UTF8.GetBytes(line)); // as the stream writes it
            Assert.Equal("Error", read.RootElement.GetProperty("@l").GetString());
            Assert.False(read.RootElement.TryGetProperty("forged", out _));
        });
    }

    [Fact]
    public void The_database_never_tells_values_to_the_log() =>
        Assert.False(host.Services.GetRequiredService<IServiceScopeFactory>().CreateScope().ServiceProvider.GetRequiredService<ClinicDb>()
            .GetService<IDbContextOptions>().FindExtension<CoreOptionsExtension>()!.IsSensitiveDataLoggingEnabled);
}

/// <summary>Hears every event as the program would write it.</summary>
/// <param name="environment">Where the program runs.</param>
/// <param name="say">Takes a line.</param>
public sealed class Heard(IHostEnvironment environment, Action<string> say) : ILogEventSink
{
    private readonly Serilog.Formatting.ITextFormatter _writer = LogSetup.Writer(environment);

    public void Emit(LogEvent logEvent)
    {
        using var line = new StringWriter(CultureInfo.InvariantCulture);
        _writer.Format(logEvent, line);
        say(line.ToString().TrimEnd('\r', '\n'));
    }
}
