using System.Collections.Concurrent;
using System.Diagnostics;
using System.Globalization;
using System.Net;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.KillDriver;

namespace ReedClinic.Browser.Tests.Two;

/// <summary>The proxy of <c>deploy/systemd/Caddyfile</c>, on free ports and with a certificate authority of its own.</summary>
internal sealed class Caddy : IAsyncDisposable
{
    /// <summary>Names the program, where a shell wouldn't find it.</summary>
    private const string GivenBy = "REEDCLINIC_TEST_CADDY";

    private readonly TemporaryFolder _folder = new();
    private readonly ConcurrentQueue<string> _said = new();
    private readonly Process _process;

    private Caddy(Process process, TemporaryFolder folder, Uri site) => (_process, _folder, Site) = (process, folder, site);

    /// <summary>Where it speaks https.</summary>
    public Uri Site { get; }

    /// <summary>Everything it has written.</summary>
    public string Said => string.Join('\n', _said);

    /// <summary>Starts it before some processes, and waits until one of them answers through it.</summary>
    /// <param name="ports">Where they listen, or will.</param>
    /// <param name="ct">Gives up.</param>
    public static async Task<Caddy> StartAsync(IEnumerable<int> ports, CancellationToken ct)
    {
        var (folder, https) = (new TemporaryFolder(), Ports.Free());
        var file = Path.Combine(PublishedApp.Top(), "deploy", "systemd", "Caddyfile");
        var start = new ProcessStartInfo(
            Environment.GetEnvironmentVariable(GivenBy) is { Length: > 0 } given ? given : "caddy", ["run", "--config", file, "--adapter", "caddyfile"])
        {
            RedirectStandardError = true,
        };
        start.Environment["SITE_NAME"] = "localhost";
        start.Environment["HTTPS_PORT"] = https.ToString(CultureInfo.InvariantCulture);
        start.Environment["HTTP_PORT"] = Ports.Free().ToString(CultureInfo.InvariantCulture);
        start.Environment["REEDCLINIC_AT"] = string.Join(' ', ports.Select(port => string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{port}")));
        start.Environment["XDG_DATA_HOME"] = folder.Path;
        start.Environment["XDG_CONFIG_HOME"] = folder.Path;
        var caddy = new Caddy(Process.Start(start)!, folder, new Uri(string.Create(CultureInfo.InvariantCulture, $"https://localhost:{https}")));
        caddy._process.ErrorDataReceived += (_, line) => caddy._said.Enqueue(line.Data ?? "");
        caddy._process.BeginErrorReadLine();
        await caddy.AnswersAsync(ct);
        return caddy;
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            await _process.WaitForExitAsync();
        }

        _process.Dispose();
        _folder.Dispose();
    }

    private async Task AnswersAsync(CancellationToken ct)
    {
        using var watcher = new HttpClient(new HttpClientHandler { ServerCertificateCustomValidationCallback = HttpClientHandler.DangerousAcceptAnyServerCertificateValidator }) { BaseAddress = Site };
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(100));
        while (await tick.WaitForNextTickAsync(ct))
        {
            Assert.False(_process.HasExited, Said);
            try
            {
                using var answer = await watcher.GetAsync(new Uri("/health/ready", UriKind.Relative), ct);
                if (answer.StatusCode == HttpStatusCode.OK)
                {
                    return;
                }
            }
            catch (HttpRequestException)
            {
                // Not yet.
            }
        }
    }
}
