using System.Diagnostics;
using System.Globalization;

namespace ReedClinic.KillDriver;

/// <summary>A PostgreSQL server of one's own that may be stopped, killed and started again; what it acknowledges is kept even then.</summary>
public sealed class OwnPostgres : IAsyncDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("reedclinic-own-pg-");
    private readonly int _port = Ports.Free();

    /// <summary>Where a database of this name is reached.</summary>
    /// <param name="name">Its name.</param>
    /// <param name="port">The port of something between, if any.</param>
    public string Connection(string name, int? port = null) =>
        string.Create(CultureInfo.InvariantCulture, $"Host=127.0.0.1;Port={port ?? _port};Username=reedclinic;Database={name}");

    /// <summary>The server's own port.</summary>
    public int Port => _port;

    /// <summary>Makes the cluster and starts it.</summary>
    public static async Task<OwnPostgres> MakeAsync()
    {
        var server = new OwnPostgres();
        if (Environment.UserName == "root")
        {
            await RunAsync("chown", "postgres", server._folder.FullName).ConfigureAwait(false);
        }

        await AsServerAsync("initdb", $"--pgdata={server.Data}", "--username=reedclinic", "--auth=trust", "--encoding=UTF8", "--locale=C.UTF-8", "--no-sync").ConfigureAwait(false);
        await server.StartAsync().ConfigureAwait(false);
        return server;
    }

    /// <summary>Starts it and waits until it answers.</summary>
    public Task StartAsync() => AsServerAsync(
        "pg_ctl", "start", "--wait", "--silent", $"--pgdata={Data}", $"--log={Data}/server.log",
        string.Create(CultureInfo.InvariantCulture, $"--options=-c listen_addresses=127.0.0.1 -c port={_port} -c unix_socket_directories='' -c max_connections=60"));

    /// <summary>Stops it.</summary>
    /// <param name="mode">fast or immediate.</param>
    public Task StopAsync(string mode) => AsServerAsync("pg_ctl", "stop", "--wait", "--silent", $"--mode={mode}", $"--pgdata={Data}");

    /// <summary>Kills its first process with signal 9 and waits until the others have gone too.</summary>
    public async Task KillAsync()
    {
        var first = int.Parse((await File.ReadAllLinesAsync(Path.Combine(Data, "postmaster.pid")).ConfigureAwait(false))[0], CultureInfo.InvariantCulture);
        var others = Children(first);
        using (var process = Process.GetProcessById(first))
        {
            process.Kill();
            await process.WaitForExitAsync().ConfigureAwait(false);
        }

        foreach (var other in others)
        {
            while (Directory.Exists($"/proc/{other}"))
            {
                await Task.Delay(10).ConfigureAwait(false);
            }
        }
    }

    /// <summary>Runs one statement.</summary>
    public Task SayAsync(string sql) => AsServerAsync("psql", "--host=127.0.0.1", string.Create(CultureInfo.InvariantCulture, $"--port={_port}"), "--username=reedclinic", "--dbname=postgres", "--quiet", "--set=ON_ERROR_STOP=1", $"--command={sql}");

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        if (File.Exists(Path.Combine(Data, "postmaster.pid")))
        {
            await StopAsync("immediate").ConfigureAwait(false);
        }

        _folder.Delete(recursive: true);
    }

    /// <summary>Runs something to its end.</summary>
    internal static async Task RunAsync(string what, params string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo(what, arguments) { WorkingDirectory = "/", RedirectStandardError = true })!;
        var said = await process.StandardError.ReadToEndAsync().ConfigureAwait(false);
        await process.WaitForExitAsync().ConfigureAwait(false);
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{what} {string.Join(' ', arguments)} failed: {said}");
        }
    }

    private string Data => Path.Combine(_folder.FullName, "data");

    // PostgreSQL refuses to run as root. (Its log takes what the server itself writes, so no pipe stays open.)
    private static Task AsServerAsync(string tool, params string[] arguments)
    {
        var program = Directory.Exists("/usr/lib/postgresql")
            ? Directory.GetDirectories("/usr/lib/postgresql").OrderDescending(StringComparer.Ordinal).Select(folder => Path.Combine(folder, "bin", tool)).First(File.Exists)
            : tool;
        return Environment.UserName == "root"
            ? RunQuietlyAsync("runuser", ["-u", "postgres", "--", program, .. arguments])
            : RunQuietlyAsync(program, arguments);
    }

    // The server keeps what pg_ctl had open, so nothing may be read from it to its end.
    private static async Task RunQuietlyAsync(string what, string[] arguments)
    {
        using var process = Process.Start(new ProcessStartInfo("bash", ["-c", "exec \"$@\" > /dev/null 2>&1 < /dev/null", "quiet", what, .. arguments]) { WorkingDirectory = "/" })!;
        await process.WaitForExitAsync().ConfigureAwait(false);
        if (process.ExitCode != 0)
        {
            throw new InvalidOperationException($"{what} {string.Join(' ', arguments)} ended with {process.ExitCode}.");
        }
    }

    private static List<int> Children(int parent) =>
    [
        .. from folder in Directory.GetDirectories("/proc")
            let id = int.TryParse(Path.GetFileName(folder), CultureInfo.InvariantCulture, out var number) ? number : 0
            where id > 0 && IsChild(folder, parent)
            select id,
    ];

    private static bool IsChild(string folder, int parent)
    {
        try
        {
            var stat = File.ReadAllText(Path.Combine(folder, "stat"));
            return int.Parse(stat[(stat.LastIndexOf(')') + 2)..].Split(' ')[1], CultureInfo.InvariantCulture) == parent;
        }
        catch (IOException)
        {
            return false;
        }
    }
}
