using System.Net;
using System.Text.Json;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Microsoft.Extensions.Hosting;
using OpenTelemetry.Trace;
using ReedClinic.Data;
using ReedClinic.Data.Upkeep;
using ReedClinic.Web.Shared.Insight;
using ReedClinic.Web.Tests.Background;
using ReedClinic.Web.Tests.Hosting;
using Serilog;

namespace ReedClinic.Web.Tests.Insight;

/// <summary>The reference on the page about a trouble leads to the log, and to the trace where traces are told.</summary>
public sealed class ReferenceTests
{
    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public async Task The_reference_on_the_page_is_the_trace_on_the_line_of_the_log_and_no_visitor_chooses_it(bool told)
    {
        await using var sink = await OtlpSink.OpenAsync();
        await using var host = new StumblingHost(told ? sink.Address : null);
        using var owner = await host.SignedIn(await host.OpenStudio());
        owner.DefaultRequestHeaders.Add("traceparent", "00-5eed0000000000000000000000005eed-5eed000000005eed-00");
        var (status, page, _) = await owner.See("/studio/upkeep");

        Assert.Equal(HttpStatusCode.InternalServerError, status);
        var reference = Regex.Match(page, "<code>([0-9a-f]{32})</code>").Groups[1].Value;
        Assert.NotEqual("5eed0000000000000000000000005eed", reference);
        await TroubledHost.UntilAsync(() => host.Log.Any(line => Of(line, "@l") == "Error" && Of(line, "@tr") == reference)); // it may come after the answer
        if (told)
        {
            Assert.True(host.Services.GetRequiredService<TracerProvider>().ForceFlush());
            Assert.True(sink.Bytes().AsSpan().IndexOf(Convert.FromHexString(reference)) >= 0);
            Assert.DoesNotContain("Wendeline", sink.All("/v1/traces"), StringComparison.Ordinal);
        }
    }

    private static string? Of(JsonElement line, string name) => line.TryGetProperty(name, out var value) ? value.GetString() : null;

    // A page breaks in it.
    private sealed class StumblingHost(string? collector) : ClinicHost
    {
        private readonly List<string> _lines = [];

        public IReadOnlyList<JsonElement> Log
        {
            get
            {
                lock (_lines)
                {
                    return [.. _lines.Select(line => JsonDocument.Parse(line).RootElement)];
                }
            }
        }

        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.UseSetting(InsightSettings.Address, collector ?? "");
            builder.ConfigureTestServices(services =>
            {
                // A logger of its own: the static one is whichever host’s was made last.
                services.AddSerilog((provider, log) => log.WriteTo.Sink(new Heard(provider.GetRequiredService<IHostEnvironment>(), Hear)), preserveStaticLogger: true);
                services.Replace(ServiceDescriptor.Singleton(new UpkeepReader(new Broken(), null!, null!, TimeProvider.System)));
            });
        }

        private void Hear(string line)
        {
            lock (_lines)
            {
                _lines.Add(line);
            }
        }
    }

    private sealed class Broken : IDbContextFactory<ClinicDb>
    {
        public ClinicDb CreateDbContext() => throw new InvalidOperationException("Wendeline's records broke");
    }
}
