using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.Data.Demo;
using ReedClinic.KillDriver;

namespace ReedClinic.Browser.Tests.Two;

/// <summary>Two processes of the demo studio: one database with the keys in it, one folder of files, one way in.</summary>
internal sealed class TwoProcesses : IAsyncDisposable
{
    /// <summary>The cookie by which the proxy knows at which process somebody is.</summary>
    private const string Way = "reedclinic-way";

    private readonly int[] _ports = [Ports.Free(), Ports.Free()];
    private readonly RunningApp?[] _apps = [null, null];
    private readonly string[] _ways;
    private readonly Dictionary<string, string> _settings;
    private readonly string _folder;
    private Caddy? _proxy;

    private TwoProcesses(Dictionary<string, string> settings, string folder) =>
        (_settings, _folder, _ways) = (settings, folder, [.. _ports.Select(WayTo)]);

    /// <summary>Where people come in.</summary>
    public Uri Site => _proxy!.Site;

    /// <summary>What the proxy has written.</summary>
    public string ProxySaid => _proxy!.Said;

    /// <summary>Starts the first process and the proxy; the second is still away, so that everybody comes to the first.</summary>
    public static async Task<TwoProcesses> StartAsync(TestDatabase db, CancellationToken ct)
    {
        await using (var scope = db.Services.CreateAsyncScope())
        {
            await scope.ServiceProvider.GetRequiredService<DemoStudio>().SeedAsync(ct);
        }

        var settings = db.Settings.ToDictionary(pair => pair.Key.Replace(":", "__", StringComparison.Ordinal), pair => pair.Value!);
        settings["ASPNETCORE_ENVIRONMENT"] = "Development"; // the demo's people sign in by their password alone
        settings["Mail__Folder"] = db.MediaFolder + "-mail";
        var folder = Environment.GetEnvironmentVariable(PublishedApp.GivenBy) is { Length: > 0 } given ? given : Path.GetDirectoryName(typeof(Program).Assembly.Location)!;
        var two = new TwoProcesses(settings, folder);
        await two.StartAsync(0, ct);
        two._proxy = await Caddy.StartAsync(two._ports, ct);
        return two;
    }

    /// <summary>Starts one, and waits until it is ready.</summary>
    public async Task StartAsync(int which, CancellationToken ct) => _apps[which] = await RunningApp.StartAsync(
        _folder,
        new Dictionary<string, string>(_settings) { ["ASPNETCORE_URLS"] = string.Create(CultureInfo.InvariantCulture, $"http://127.0.0.1:{_ports[which]}") },
        ct);

    /// <summary>Kills one: signal 9.</summary>
    public async Task KillAsync(int which)
    {
        await _apps[which]!.KillAsync();
        _apps[which] = null;
    }

    /// <summary>Whoever comes in this window is at this process from now on, as the proxy's cookie says.</summary>
    /// <param name="visitor">The window.</param>
    /// <param name="which">The process, which is ready.</param>
    public async Task PutAsync(Visitor visitor, int which)
    {
        do
        {
            await visitor.Page.Context.ClearCookiesAsync(new() { Name = Way });
            await visitor.Page.GotoAsync("/health/ready");
        }
        while (await WhereAsync(visitor) != which);
    }

    /// <summary>At which process somebody is; less than 0 when nobody can tell.</summary>
    public async Task<int> WhereAsync(Visitor visitor)
    {
        var cookies = await visitor.Page.Context.CookiesAsync([Site.ToString()]);
        return Array.IndexOf(_ways, cookies.SingleOrDefault(cookie => cookie.Name == Way)?.Value ?? "");
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        if (_proxy is not null)
        {
            await _proxy.DisposeAsync();
        }

        foreach (var app in _apps.OfType<RunningApp>())
        {
            await app.DisposeAsync();
        }
    }

    // How Caddy calls a process in its cookie: HMAC-SHA-256 of the place, with the key of the setting, which is empty.
    private static string WayTo(int port) =>
        Convert.ToHexStringLower(HMACSHA256.HashData(Array.Empty<byte>(), Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"127.0.0.1:{port}"))));
}
