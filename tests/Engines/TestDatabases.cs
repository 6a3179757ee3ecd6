using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;

namespace ReedClinic.Tests.Engines;

/// <summary>The databases of one test class. README.md beside this file says how to use it.</summary>
public sealed class TestDatabases(PostgresServer postgres) : IAsyncLifetime
{
    private static readonly SemaphoreSlim OneAtATime = new(1);
    private static readonly DirectoryInfo Folder = MakeFolder();
    private static string? _sqliteTemplate;
    private static string? _postgresTemplate;
    private static int _count;

    private readonly Dictionary<ClinicEngine, TestDatabase> _shared = [];
    private readonly List<TestDatabase> _all = [];

    /// <summary>The database that the tests of this class share on this engine.</summary>
    public async Task<TestDatabase> OpenAsync(ClinicEngine engine)
    {
        if (!_shared.TryGetValue(engine, out var database))
        {
            _shared[engine] = database = await FreshAsync(engine);
        }

        return database;
    }

    /// <summary>A migrated, empty database that nobody else uses.</summary>
    /// <param name="engine">Which engine.</param>
    /// <param name="between">What stands between the program and the database.</param>
    public Task<TestDatabase> FreshAsync(ClinicEngine engine, params IInterceptor[] between) =>
        AddAsync(engine, ct => engine == ClinicEngine.Sqlite ? CopySqliteAsync(ct) : ClonePostgresAsync(ct), between);

    /// <summary>A database without any table. For SQLite the file isn't there yet.</summary>
    public Task<TestDatabase> BareAsync(ClinicEngine engine) => AddAsync(engine, async ct =>
    {
        var name = NextName();
        if (engine == ClinicEngine.Sqlite)
        {
            return $"Data Source={Path.Combine(Folder.FullName, name + ".db")}";
        }

        await postgres.ExecuteAsync($"CREATE DATABASE \"{name}\"", ct);
        return await postgres.ConnectionAsync(name, ct);
    });

    private async Task<TestDatabase> AddAsync(ClinicEngine engine, Func<CancellationToken, Task<string>> make, params IInterceptor[] between)
    {
        var ct = TestContext.Current.CancellationToken;
        await OneAtATime.WaitAsync(ct);
        try
        {
            var database = new TestDatabase(engine, await make(ct), between);
            _all.Add(database);
            return database;
        }
        finally
        {
            OneAtATime.Release();
        }
    }

    public ValueTask InitializeAsync() => default;

    public async ValueTask DisposeAsync()
    {
        foreach (var database in _all.ToList())
        {
            await DropAsync(database);
        }
    }

    /// <summary>Takes a database away before the class ends: for a test that needs very many.</summary>
    public async Task DropAsync(TestDatabase database)
    {
        _all.Remove(database);
        await database.DisposeAsync();
        if (database.Engine == ClinicEngine.Sqlite)
        {
            await using (var pooled = new SqliteConnection(database.Connection))
            {
                SqliteConnection.ClearPool(pooled);
            }

            File.Delete(new SqliteConnectionStringBuilder(database.Connection).DataSource);
            return;
        }

        await using (var pooled = new NpgsqlConnection(database.Connection))
        {
            NpgsqlConnection.ClearPool(pooled);
        }

        await postgres.ExecuteAsync($"DROP DATABASE \"{new NpgsqlConnectionStringBuilder(database.Connection).Database}\" WITH (FORCE)", CancellationToken.None);
    }

    private static async Task<string> CopySqliteAsync(CancellationToken ct)
    {
        _sqliteTemplate ??= await MakeSqliteTemplateAsync(ct);
        var file = Path.Combine(Folder.FullName, NextName() + ".db");
        File.Copy(_sqliteTemplate, file);
        return $"Data Source={file}";
    }

    private static async Task<string> MakeSqliteTemplateAsync(CancellationToken ct)
    {
        var file = Path.Combine(Folder.FullName, "template.db");
        await using var template = new TestDatabase(ClinicEngine.Sqlite, $"Data Source={file};Pooling=False");
        await template.MigrateAsync(ct);
        return file;
    }

    private async Task<string> ClonePostgresAsync(CancellationToken ct)
    {
        _postgresTemplate ??= await MakePostgresTemplateAsync(ct);
        var name = NextName();
        await postgres.ExecuteAsync($"CREATE DATABASE \"{name}\" TEMPLATE \"{_postgresTemplate}\"", ct);
        return await postgres.ConnectionAsync(name, ct);
    }

    private async Task<string> MakePostgresTemplateAsync(CancellationToken ct)
    {
        var name = "template_of_" + NextName();
        await postgres.ExecuteAsync($"CREATE DATABASE \"{name}\"", ct);
        await using var template = new TestDatabase(
            ClinicEngine.Postgres, await postgres.ConnectionAsync(name, ct) + ";Pooling=False");
        await template.MigrateAsync(ct);
        return name;
    }

    private static string NextName() =>
        string.Create(CultureInfo.InvariantCulture, $"test_{Environment.ProcessId}_{Interlocked.Increment(ref _count)}");

    private static DirectoryInfo MakeFolder()
    {
        var folder = Directory.CreateTempSubdirectory("reedclinic-tests-");
        AppDomain.CurrentDomain.ProcessExit += (_, _) =>
        {
            SqliteConnection.ClearAllPools();
            folder.Delete(recursive: true);
        };
        return folder;
    }
}
