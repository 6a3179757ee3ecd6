using System.Diagnostics;
using System.Globalization;
using ReedClinic.KillDriver;

namespace ReedClinic.Containers.Tests.Deploy;

/// <summary>docker-compose.yml of this repository, as a project of its own with secrets of its own on a free port.</summary>
public sealed class Compose : IAsyncDisposable
{
    /// <summary>Every service of the file that stays.</summary>
    public static readonly string[] Services = ["database", "web"];

    /// <summary>The same with the proxy that speaks https.</summary>
    public static readonly string[] ServicesWithProxy = [.. Services, "proxy"];

    private static readonly TimeSpan Patience = TimeSpan.FromMinutes(3);

    private readonly DirectoryInfo _secrets = Directory.CreateTempSubdirectory("reedclinic-secrets-");
    private readonly string _port = FreePort();
    private readonly string _httpPort = FreePort();
    private readonly string _httpsPort = FreePort();

    /// <summary>Makes its folder, with an empty file to stand for <c>.env</c>.</summary>
    public Compose() => File.WriteAllText(NoSettings, "");

    /// <summary>Where the web container writes mails instead of sending them.</summary>
    public const string MailFolder = "/tmp/mail";

    /// <summary>What the engine knows this project by.</summary>
    public string Project { get; } = string.Create(CultureInfo.InvariantCulture, $"reedclinic-test-{Environment.ProcessId}");

    /// <summary>Where a person on this machine opens it.</summary>
    public Uri Home => new($"http://localhost:{_port}");

    /// <summary>Where somebody from elsewhere comes in by plain http.</summary>
    public Uri Front => new($"http://localhost:{_httpPort}");

    /// <summary>Where the proxy speaks https.</summary>
    public Uri Site => new($"https://localhost:{_httpsPort}");

    /// <summary>The random password that was made for this project.</summary>
    public string Password => File.ReadAllText(Path.Combine(_secrets.FullName, "database-password"));

    /// <summary>What the mail server would want to hear.</summary>
    public const string MailPassword = "low-water-at-noon-and-a-swell-from-the-west";

    /// <summary>Makes the secrets, as a person would who follows the file.</summary>
    public async Task MakeSecretsAsync(CancellationToken ct)
    {
        await RunAsync(ct, Path.Combine(PublishedApp.Top(), "deploy", "make-secrets.sh"), _secrets.FullName);
        await File.WriteAllTextAsync(Path.Combine(_secrets.FullName, "mail-password"), MailPassword + "\n", ct);
    }

    /// <summary>Builds what isn't built, starts everything, and waits until the engine finds it healthy.</summary>
    public async Task UpAsync(CancellationToken ct)
    {
        await ComposeAsync(ct, "up", "--build", "--detach");
        await HealthyAsync(ct, Services);
    }

    /// <summary>The same with the proxy.</summary>
    public async Task UpWithProxyAsync(CancellationToken ct)
    {
        await ComposeAsync(ct, "--profile", "https", "up", "--build", "--detach");
        await HealthyAsync(ct, ServicesWithProxy);
    }

    /// <summary>One of the program's own commands, as a person types it.</summary>
    public Task<string> ToolsAsync(CancellationToken ct, params string[] words) => ComposeAsync(ct, ["run", "--rm", "-T", "tools", .. words]);

    /// <summary>Waits until the engine's own health checks have passed for every service.</summary>
    public async Task HealthyAsync(CancellationToken ct, params string[] services)
    {
        using var timer = new PeriodicTimer(TimeSpan.FromMilliseconds(250));
        var since = Stopwatch.StartNew();
        foreach (var service in services)
        {
            var state = "";
            do
            {
                Assert.True(since.Elapsed < Patience, $"{service} is {state}: " + await ComposeAsync(ct, "logs", "--no-color"));
                await timer.WaitForNextTickAsync(ct);
                state = await InspectAsync(service, "{{.State.Health.Status}}", ct);
            }
            while (state != "healthy");
        }
    }

    /// <summary>Something the engine knows about a service's container.</summary>
    public async Task<string> InspectAsync(string service, string format, CancellationToken ct)
    {
        var container = (await ComposeAsync(ct, "ps", "--quiet", service)).Trim();
        return (await RunAsync(ct, "docker", "inspect", "--format", format, container)).Trim();
    }

    /// <summary>A command of docker-compose in this project, without the settings that a studio here may have in <c>.env</c>.</summary>
    public Task<string> ComposeAsync(CancellationToken ct, params string[] words) => RunAsync(ct, ["docker-compose", "--env-file", NoSettings, .. words]);

    /// <summary>Any command, with this project's settings; its output, or a failure that shows it.</summary>
    public async Task<string> RunAsync(CancellationToken ct, params string[] words)
    {
        var start = new ProcessStartInfo(words[0], words[1..])
        {
            WorkingDirectory = PublishedApp.Top(),
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["COMPOSE_PROJECT_NAME"] = Project;
        start.Environment["WEB_IMAGE"] = "reedclinic-web-test"; // a studio's own image keeps its name
        start.Environment["SECRETS_FOLDER"] = _secrets.FullName;
        start.Environment["WEB_PORT"] = _port;
        start.Environment["TOOLS_IMAGE"] = "reedclinic-tools-test";
        start.Environment["PROXY_IMAGE"] = "reedclinic-proxy-test";
        start.Environment["HTTP_PORT"] = $"127.0.0.1:{_httpPort}";
        start.Environment["HTTPS_PORT"] = $"127.0.0.1:{_httpsPort}";
        start.Environment["MAIL_FOLDER"] = MailFolder;
        using var process = Process.Start(start)!;
        var said = await Task.WhenAll(process.StandardOutput.ReadToEndAsync(ct), process.StandardError.ReadToEndAsync(ct));
        await process.WaitForExitAsync(ct);
        Assert.True(process.ExitCode == 0, $"{string.Join(' ', words)} ended with {process.ExitCode}: {said[1]}{said[0]}");
        return said[0];
    }

    /// <summary>Takes down whatever of it is left, with its volumes.</summary>
    public async ValueTask DisposeAsync()
    {
        await ComposeAsync(CancellationToken.None, "--profile", "https", "--profile", "tools", "down", "--volumes", "--remove-orphans");
        _secrets.Delete(recursive: true);
    }

    private string NoSettings => Path.Combine(_secrets.FullName, "no-settings.env");

    private static string FreePort() => Ports.Free().ToString(CultureInfo.InvariantCulture);
}
