using Microsoft.AspNetCore.Hosting;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;
using ReedClinic.Web.Shared.Insight;
using ReedClinic.Web.Tests.Circuits;

namespace ReedClinic.Web.Tests.Insight;

/// <summary>A studio that tells a collector.</summary>
/// <param name="collector">Where it listens.</param>
internal sealed class WatchedHost(string collector) : CircuitHost
{
    private readonly string _secrets = Directory.CreateTempSubdirectory("reedclinic-secrets-").FullName;

    /// <summary>Reads how the machine stands and tells everything now.</summary>
    public async Task TellAllAsync()
    {
        await Services.GetServices<IHostedService>().OfType<InsightWorker>().Single().TryAsync(TestContext.Current.CancellationToken);
        Assert.True(Services.GetRequiredService<MeterProvider>().ForceFlush());
        Assert.True(Services.GetRequiredService<TracerProvider>().ForceFlush());
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Directory.Delete(_secrets, recursive: true);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        base.ConfigureWebHost(builder);
        File.WriteAllText(Path.Combine(_secrets, "Insight__Headers"), "collector-key=from-a-file");
        builder.UseSetting("Secrets:Folder", _secrets);
        builder.UseSetting(InsightSettings.Address, collector);
    }
}
