using System.Diagnostics;
using System.Globalization;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Npgsql;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.People;
using ReedClinic.KillDriver;

namespace ReedClinic.Web.Tests.Published;

/// <summary>
/// The published app is killed with signal 9 at random moments while it brings a database of the first schema up to date. The
/// next start has to finish, within half a minute where nothing else runs (<c>tests/faults.sh</c>), and nothing may be lacking.
/// </summary>
public sealed class MigrationKillTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private const string RoundsGivenBy = "REEDCLINIC_MIGRATION_KILLS";
    private const string LogGivenBy = "REEDCLINIC_FAULT_LOG";
    private const string Begins = "The records are about to get a newer schema";
    private const int QuickRounds = 2;
    private const int LongestMigration = 1_200;
    private static readonly TimeSpan HalfAMinute = TimeSpan.FromSeconds(30);
    private static readonly TimeSpan WhereOthersRun = TimeSpan.FromMinutes(3);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task A_start_after_one_that_was_killed_while_the_schema_changed_finishes_it(ClinicEngine engine)
    {
        var isLong = int.TryParse(Environment.GetEnvironmentVariable(RoundsGivenBy), CultureInfo.InvariantCulture, out var given);
        var rounds = isLong ? given : QuickRounds;
        var (chance, slowest, within, backups) = (new Random(20261126), TimeSpan.Zero, 0, Directory.CreateTempSubdirectory("reedclinic-killed-"));
        for (var round = 0; round < rounds; round++)
        {
            var db = await databases.BareAsync(engine);
            await RestoreAsync(db);
            var settings = db.Settings.ToDictionary(pair => pair.Key.Replace(":", "__", StringComparison.Ordinal), pair => pair.Value!);
            settings["Backups__Folder"] = backups.FullName;
            within += await KillAsync(settings, chance.Next(LongestMigration)) ? 1 : 0;

            var began = Stopwatch.GetTimestamp();
            await using var app = await RunningApp.StartAsync(await PublishedApp.FolderAsync(), settings, Ct);
            var took = Stopwatch.GetElapsedTime(began);
            slowest = took > slowest ? took : slowest;
            await using var context = db.CreateDbContext();
            Assert.Empty(await context.Database.GetPendingMigrationsAsync(Ct));
            Assert.Equal((6, 4), (await context.Users.CountAsync(Ct), await context.Set<Student>().CountAsync(Ct)));
            Assert.Equal(9, (await context.Set<BenchEntry>().ToListAsync(Ct)).GroupBy(entry => entry.ReedId).Count(reed => BenchLog.Fold(reed).LastSequence == reed.Count()));
        }

        if (Environment.GetEnvironmentVariable(LogGivenBy) is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, string.Create(CultureInfo.InvariantCulture, $"migration engine={engine} kills={rounds} before-the-end={within} slowest-next-start-ms={slowest.TotalMilliseconds:0}\n"), Ct);
        }

        backups.Delete(recursive: true);
        Assert.True(slowest < (isLong ? HalfAMinute : WhereOthersRun), $"The slowest took {slowest}.");
    }

    // True when it was killed before it was open.
    private static async Task<bool> KillAsync(Dictionary<string, string> settings, int milliseconds)
    {
        using var process = Process.Start(new ProcessStartInfo("dotnet", [Path.Combine(await PublishedApp.FolderAsync(), "ReedClinic.Web.dll")])
        {
            RedirectStandardOutput = true,
            RedirectStandardError = true,
            Environment = { ["ASPNETCORE_URLS"] = "http://127.0.0.1:0", ["ASPNETCORE_ENVIRONMENT"] = "Production" },
        }.With(settings))!;
        _ = process.StandardError.ReadToEndAsync(Ct);
        while (await process.StandardOutput.ReadLineAsync(Ct) is { } line && !line.StartsWith(Begins, StringComparison.Ordinal))
        {
        }

        var rest = process.StandardOutput.ReadToEndAsync(Ct);
        await Task.Delay(milliseconds, Ct);
        process.Kill();
        await process.WaitForExitAsync(Ct);
        return !(await rest).Contains("ReedClinic is open at", StringComparison.Ordinal);
    }

    private static async Task RestoreAsync(TestDatabase database)
    {
        var folder = Path.Combine(PublishedApp.Top(), "tests", "fixtures", "first-schema");
        if (database.Engine == ClinicEngine.Sqlite)
        {
            File.Copy(Path.Combine(folder, "sqlite.db"), new SqliteConnectionStringBuilder(database.Connection).DataSource);
            return;
        }

        await using var connection = new NpgsqlConnection(database.Connection + ";Pooling=False"); // the dump sets its own search path
        await connection.OpenAsync(Ct);
        await using var command = connection.CreateCommand();
#pragma warning disable CA2100 // a file of this repository
        command.CommandText = await File.ReadAllTextAsync(Path.Combine(folder, "postgres.sql"), Ct);
#pragma warning restore CA2100
        await command.ExecuteNonQueryAsync(Ct);
    }
}

internal static class StartSettings
{
    public static ProcessStartInfo With(this ProcessStartInfo start, IEnumerable<KeyValuePair<string, string>> settings)
    {
        foreach (var (name, value) in settings)
        {
            start.Environment[name] = value;
        }

        return start;
    }
}
