using System.Collections.Concurrent;
using System.Diagnostics;

namespace ReedClinic.KillDriver;

/// <summary>A published app in a process of its own, on a free port.</summary>
public sealed class RunningApp : IAsyncDisposable
{
    private const string Open = "ReedClinic is open at ";

    private readonly Process _process;
    private readonly ConcurrentQueue<string> _said = new();
    private readonly ConcurrentQueue<string> _logged = new();
    private readonly TaskCompletionSource<Uri> _address = new(TaskCreationOptions.RunContinuationsAsynchronously);

    private RunningApp(Process process) => _process = process;

    /// <summary>Where it listens.</summary>
    public Uri Address { get; private set; } = null!;

    /// <summary>How long processors have worked for it so far.</summary>
    public TimeSpan Worked
    {
        get
        {
            _process.Refresh();
            return _process.TotalProcessorTime;
        }
    }

    /// <summary>Every line it has written to standard output and standard error so far.</summary>
    public IReadOnlyList<string> Said => [.. _said];

    /// <summary>Every line it has written to standard error so far: the log. All of it, once the app has ended.</summary>
    public IReadOnlyList<string> Logged => [.. _logged];

    /// <summary>Starts the app and waits until it says where it is open.</summary>
    /// <param name="folder">Where it was published to.</param>
    /// <param name="settings">Environment variables, such as <c>ASPNETCORE_ENVIRONMENT</c>.</param>
    /// <param name="ct">Gives up.</param>
    public static async Task<RunningApp> StartAsync(string folder, IReadOnlyDictionary<string, string> settings, CancellationToken ct)
    {
        var start = new ProcessStartInfo("dotnet", [Path.Combine(Path.GetFullPath(folder), "ReedClinic.Web.dll")])
        {
            WorkingDirectory = folder,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        };
        start.Environment["ASPNETCORE_URLS"] = "http://127.0.0.1:0";
        start.Environment.Remove("ASPNETCORE_ENVIRONMENT");
        start.Environment.Remove("DOTNET_ENVIRONMENT");

        // The driver speaks plain http and says that it came over https, as a reverse proxy would.
        start.Environment["Web__Proxies"] = "127.0.0.1";
        start.Environment["Writes__Burst"] = "1000000"; // rounds write faster than anybody at work
        start.Environment["DOTNET_TieredPGO"] = "0"; // a short life: no time to profile in
        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        var app = new RunningApp(Process.Start(start)!);
        await app.OpenedAsync(ct).ConfigureAwait(false);
        return app;
    }

    /// <summary>Kills the process at once (signal 9): nothing in it runs any more. One that had ended by itself is a failure.</summary>
    public async Task KillAsync()
    {
        if (_process.HasExited)
        {
            throw new InvalidOperationException(
                $"The app had ended by itself (code {_process.ExitCode}) before it was killed: " + string.Join('\n', _said.TakeLast(20)));
        }

        _process.Kill();
        await _process.WaitForExitAsync().ConfigureAwait(false);
    }

    /// <summary>Waits until it says that it is ready: it answers a little earlier, while it takes its first turn.</summary>
    public async Task UntilReadyAsync(CancellationToken ct)
    {
        using var watcher = new HttpClient { BaseAddress = Address };
        while (true)
        {
            using var answer = await watcher.GetAsync(new Uri("/health/ready", UriKind.Relative), ct);
            if (answer.IsSuccessStatusCode)
            {
                return;
            }

            await Task.Delay(50, ct);
        }
    }

    /// <inheritdoc />
    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            await KillAsync().ConfigureAwait(false);
        }

        _process.Dispose();
    }

    private async Task OpenedAsync(CancellationToken ct)
    {
        _process.OutputDataReceived += (_, line) => Hear(line.Data);
        _process.ErrorDataReceived += (_, line) =>
        {
            if (line.Data is { } logged)
            {
                _logged.Enqueue(logged);
            }

            Hear(line.Data);
        };
        _process.EnableRaisingEvents = true;
        _process.Exited += (_, _) =>
        {
            _process.WaitForExit(); // until its last line is heard
            _address.TrySetException(new InvalidOperationException(
                $"The app ended before it was open (code {_process.ExitCode}): " + string.Join('\n', _said.TakeLast(20))));
        };
        _process.BeginOutputReadLine();
        _process.BeginErrorReadLine();
        Address = await _address.Task.WaitAsync(TimeSpan.FromMinutes(5), ct).ConfigureAwait(false);
    }

    private void Hear(string? line)
    {
        if (line is null)
        {
            return;
        }

        _said.Enqueue(line);
        if (line.StartsWith(Open, StringComparison.Ordinal))
        {
            _address.TrySetResult(new Uri(line[Open.Length..].Trim()));
        }
    }
}
