using System.Diagnostics;
using Npgsql;

[assembly: AssemblyFixture(typeof(ReedClinic.Tests.Engines.PostgresServer))]

namespace ReedClinic.Tests.Engines;

/// <summary>One PostgreSQL server per run: the one that the environment names, or a throw-away cluster.</summary>
public sealed class PostgresServer : IAsyncDisposable
{
    /// <summary>A connection string to a server that may be filled with databases.</summary>
    public const string GivenBy = "REEDCLINIC_TEST_POSTGRES";

    // PostgreSQL refuses to run as root. The shell that owns the cluster waits for the end of its input, so the
    // cluster goes away with the test run even when that is killed.
    private const string Cluster = """
        set -u
        dir=$(mktemp -d /tmp/reedclinic-pg.XXXXXX) || exit 1
        trap 'rm -rf "$dir"' EXIT
        "$1/initdb" --pgdata="$dir/data" --username=reedclinic --auth=trust --encoding=UTF8 --locale=C.UTF-8 --no-sync \
          < /dev/null > "$dir/log" 2>&1 || { cat "$dir/log" >&2; exit 1; }
        "$1/pg_ctl" start --wait --silent --pgdata="$dir/data" --log="$dir/log" --options="-c listen_addresses='' \
          -c unix_socket_directories='$dir' -c fsync=off -c synchronous_commit=off -c full_page_writes=off -c max_connections=200" \
          < /dev/null || { cat "$dir/log" >&2; exit 1; }
        echo "$dir"
        cat > /dev/null
        "$1/pg_ctl" stop --mode=immediate --silent --pgdata="$dir/data"
        """;

    private readonly SemaphoreSlim _once = new(1);
    private Process? _owner;
    private string? _connection;

    /// <summary>A connection string to the server's own database; starts the server when nobody has.</summary>
    public async Task<string> ConnectionAsync(CancellationToken ct)
    {
        await _once.WaitAsync(ct);
        try
        {
            return _connection ??= Environment.GetEnvironmentVariable(GivenBy) is { Length: > 0 } given
                ? given
                : await StartAsync(ct);
        }
        finally
        {
            _once.Release();
        }
    }

    /// <summary>The server's connection string with another database.</summary>
    public async Task<string> ConnectionAsync(string database, CancellationToken ct) =>
        new NpgsqlConnectionStringBuilder(await ConnectionAsync(ct)) { Database = database, MaxPoolSize = 30 }.ToString();

    /// <summary>Runs a statement on the server's own database.</summary>
    public async Task ExecuteAsync(string sql, CancellationToken ct)
    {
        await using var connection = new NpgsqlConnection(
            new NpgsqlConnectionStringBuilder(await ConnectionAsync(ct)) { Pooling = false }.ToString());
        await connection.OpenAsync(ct);
        await using var command = new NpgsqlCommand(sql, connection);
        await command.ExecuteNonQueryAsync(ct);
    }

    public async ValueTask DisposeAsync()
    {
        if (_owner is not null)
        {
            NpgsqlConnection.ClearAllPools();
            _owner.StandardInput.Close();
            await _owner.WaitForExitAsync();
            _owner.Dispose();
        }

        _once.Dispose();
    }

    private async Task<string> StartAsync(CancellationToken ct)
    {
        string[] shell = ["bash", "-c", Cluster, "cluster", Programs()];
        string[] words = Environment.UserName == "root" ? ["runuser", "-u", "postgres", "--", .. shell] : shell;
        _owner = Process.Start(new ProcessStartInfo(words[0], words[1..])
        {
            WorkingDirectory = "/",
            RedirectStandardInput = true,
            RedirectStandardOutput = true,
            RedirectStandardError = true,
        })!;
        var folder = await _owner.StandardOutput.ReadLineAsync(ct);
        return string.IsNullOrEmpty(folder)
            ? throw new InvalidOperationException("PostgreSQL did not start: " + await _owner.StandardError.ReadToEndAsync(ct))
            : $"Host={folder};Username=reedclinic;Database=postgres";
    }

    private static string Programs()
    {
        var versions = Directory.Exists("/usr/lib/postgresql") ? Directory.GetDirectories("/usr/lib/postgresql") : [];
        string[] places =
        [
            .. versions.OrderByDescending(folder => folder, StringComparer.Ordinal).Select(folder => Path.Combine(folder, "bin")),
            .. (Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator),
        ];
        return places.FirstOrDefault(place => File.Exists(Path.Combine(place, "initdb")))
            ?? throw new InvalidOperationException(
                $"These tests need PostgreSQL 15 or later: install it (Debian: apt-get install postgresql), or set {GivenBy} to a connection string.");
    }
}
