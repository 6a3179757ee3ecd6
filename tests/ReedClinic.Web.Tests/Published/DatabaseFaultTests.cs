using System.Globalization;
using System.Net;
using Microsoft.Data.Sqlite;
using ReedClinic.KillDriver;

namespace ReedClinic.Web.Tests.Published;

/// <summary>
/// The published app while its database is started anew, killed, away, held still or full. <c>tests/faults.sh</c> runs the same
/// with more rounds. Wanted: nothing that was acknowledged is lost, nothing is doubled, nobody waits longer than ten seconds
/// once the database is back, and the app needs no new start.
/// </summary>
public sealed class DatabaseFaultTests
{
    private const string RoundsGivenBy = "REEDCLINIC_DATABASE_FAULTS";
    private const string SecondsGivenBy = "REEDCLINIC_DATABASE_AWAY";
    private const string LogGivenBy = "REEDCLINIC_FAULT_LOG";
    private static readonly TimeSpan Stall = TimeSpan.FromSeconds(10);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("fast")]
    [InlineData("immediate")]
    [InlineData("kill")]
    public async Task A_database_that_is_started_anew_under_three_writers_loses_and_doubles_nothing(string how)
    {
        await using var server = await OwnPostgres.MakeAsync();
        await using var studio = await OpenAsync(server, await MakeAsync(server));
        var rounds = Number(RoundsGivenBy) ?? 1;
        for (var round = 0; round < rounds; round++)
        {
            await studio.Faults.DuringAsync(async () =>
            {
                await (how == "kill" ? server.KillAsync() : server.StopAsync(how));
                await server.StartAsync();
            }, "", Ct);
        }

        var found = await studio.Faults.CompareAsync(Ct);
        await SayAsync($"database fault={how} times={rounds} acknowledged={studio.Faults.Acknowledged} lost={found.Lost} duplicates={found.Duplicates} strangers={found.Strangers} refused={studio.Faults.Refused.Count} longest-wait-ms={studio.Faults.LongestWait.TotalMilliseconds:0}");
        Assert.True(found.Clean, found.ToString());
        Assert.Empty(studio.Faults.Refused); // whoever was writing waited a moment, and noticed nothing else
        Assert.Equal(HttpStatusCode.OK, (await studio.Faults.HealthAsync("ready", Ct)).Status);
    }

    [Fact]
    public async Task A_database_that_is_away_is_told_of_in_a_sentence_and_the_app_goes_on_when_it_is_back()
    {
        await using var server = await OwnPostgres.MakeAsync();
        await using var studio = await OpenAsync(server, await MakeAsync(server));
        var seconds = Number(SecondsGivenBy) ?? 10;
        (HttpStatusCode Status, TimeSpan After) live = default, ready = default, told = default;
        await studio.Faults.DuringAsync(async () =>
        {
            await server.StopAsync("fast");
            var until = Task.Delay(TimeSpan.FromSeconds(seconds), Ct);
            (live, ready, told) = (await studio.Faults.HealthAsync("live", Ct), await studio.Faults.HealthAsync("ready", Ct), await studio.Faults.OnceAsync("", Ct));
            await until;
            await server.StartAsync();
        }, "", Ct);

        var found = await studio.Faults.CompareAsync(Ct);
        await SayAsync($"database fault=away seconds={seconds} acknowledged={studio.Faults.Acknowledged} lost={found.Lost} duplicates={found.Duplicates} strangers={found.Strangers} told-after-ms={told.After.TotalMilliseconds:0} live-ms={live.After.TotalMilliseconds:0} longest-wait-ms={studio.Faults.LongestWait.TotalMilliseconds:0}");
        Assert.True(found.Clean, found.ToString());
        Assert.Equal((HttpStatusCode.OK, HttpStatusCode.ServiceUnavailable, HttpStatusCode.ServiceUnavailable), (live.Status, ready.Status, told.Status));
        Assert.NotEmpty(studio.Faults.Refused);
        Assert.All(studio.Faults.Refused, answer => Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.Status));
    }

    [Fact]
    public async Task A_wire_to_the_database_that_is_held_still_holds_nothing_else()
    {
        await using var server = await OwnPostgres.MakeAsync();
        using var wire = new StallingWire(server.Port);
        await using var studio = await OpenAsync(server, await MakeAsync(server), wire.Port);
        var slowest = TimeSpan.Zero;
        await studio.Faults.DuringAsync(async () =>
        {
            wire.Hold();
            var until = Task.Delay(Stall / 2, Ct);
            while (!until.IsCompleted)
            {
                var (status, after) = await studio.Faults.HealthAsync("live", Ct);
                Assert.Equal(HttpStatusCode.OK, status);
                slowest = after > slowest ? after : slowest;
                await Task.WhenAny(until, Task.Delay(100, Ct));
            }

            wire.LetGo();
        }, "", Ct);

        var found = await studio.Faults.CompareAsync(Ct);
        await SayAsync($"database fault=still seconds={Stall.TotalSeconds / 2:0} acknowledged={studio.Faults.Acknowledged} lost={found.Lost} duplicates={found.Duplicates} strangers={found.Strangers} refused={studio.Faults.Refused.Count} slowest-live-ms={slowest.TotalMilliseconds:0} longest-wait-ms={studio.Faults.LongestWait.TotalMilliseconds:0}");
        Assert.True(found.Clean, found.ToString());
        Assert.All(studio.Faults.Refused, answer => Assert.Equal(HttpStatusCode.ServiceUnavailable, answer.Status));
    }

    [Theory]
    [MemberData(nameof(WhereADiskCanBeMade))]
    public async Task A_full_disk_is_told_of_at_once_what_is_there_can_be_read_and_room_is_all_it_takes(ClinicEngine engine)
    {
        var disk = Directory.CreateTempSubdirectory("reedclinic-disk-");
        await RunAsync("mount", "-t", "tmpfs", "-o", "size=24m", "tmpfs", disk.FullName);
        OwnPostgres? server = null;
        try
        {
            string connection;
            if (engine == ClinicEngine.Postgres)
            {
                server = await OwnPostgres.MakeAsync();
                await RunAsync("chown", "postgres", disk.FullName);
                await server.SayAsync($"CREATE TABLESPACE small LOCATION '{disk.FullName}'");
                await server.SayAsync("CREATE DATABASE small TABLESPACE small");
                connection = server.Connection("small");
            }
            else
            {
                connection = $"Data Source={Path.Combine(disk.FullName, "small.db")}";
            }

            await FullAsync(engine, disk.FullName, connection);
        }
        finally
        {
            SqliteConnection.ClearAllPools();
            if (server is not null)
            {
                await server.DisposeAsync();
            }

            await RunAsync("umount", "--lazy", disk.FullName);
            disk.Delete();
        }
    }

    /// <summary>Only root may make a disk of a given size.</summary>
    public static TheoryData<ClinicEngine> WhereADiskCanBeMade => Environment.UserName == "root" ? [ClinicEngine.Sqlite, ClinicEngine.Postgres] : [];

    private static async Task FullAsync(ClinicEngine engine, string disk, string connection)
    {
        await using var studio = await OpenAsync(engine, await Scene.MakeAsync(engine.ToString().ToLowerInvariant(), connection, Ct), connection);
        var words = new string('w', 1_500);
        var filler = Path.Combine(disk, "filler");
        await FillAsync(filler);
        (HttpStatusCode Status, TimeSpan After) answer;
        var before = 0;
        do
        {
            answer = await studio.Faults.OnceAsync(words, Ct);
            Assert.True(before++ < 2_000, "The disk never became full.");
        }
        while (answer.Status == HttpStatusCode.Created);

        var page = await PageAsync(studio);
        var again = await studio.Faults.OnceAsync(words, Ct);
        File.Delete(filler);
        var after = await studio.Faults.OnceAsync("there is room again", Ct);

        var found = await studio.Faults.CompareAsync(Ct);
        await SayAsync($"database fault=full engine={engine} acknowledged={studio.Faults.Acknowledged} lost={found.Lost} duplicates={found.Duplicates} strangers={found.Strangers} told-after-ms={answer.After.TotalMilliseconds:0} again-ms={again.After.TotalMilliseconds:0}");
        Assert.Equal((HttpStatusCode.InsufficientStorage, HttpStatusCode.Created), (answer.Status, after.Status));
        Assert.Contains(again.Status, new[] { HttpStatusCode.InsufficientStorage, HttpStatusCode.Created }); // the next one may need a page less
        Assert.Contains("entry 1 ", page, StringComparison.Ordinal);
        Assert.True(found.Clean, found.ToString());
    }

    // A page that breaks says why in the program's log.
    private static async Task<string> PageAsync(OpenStudio studio)
    {
        try
        {
            return await studio.Faults.PageAsync(Ct);
        }
        catch (InvalidOperationException broke)
        {
            throw new InvalidOperationException($"{broke.Message}: {string.Join('\n', studio.App.Logged.TakeLast(30))}", broke);
        }
    }

    // Takes what is left of the disk but for a little.
    private static async Task FillAsync(string filler)
    {
        var free = new DriveInfo(Path.GetDirectoryName(filler)!).AvailableFreeSpace - (600 * 1024);
        await using var file = new FileStream(filler, FileMode.Create);
        var block = new byte[64 * 1024];
        for (var written = 0L; written + block.Length < free; written += block.Length)
        {
            await file.WriteAsync(block, Ct);
        }
    }

    private static async Task<Scene> MakeAsync(OwnPostgres server)
    {
        await server.SayAsync("CREATE DATABASE clinic");
        return await Scene.MakeAsync("postgres", server.Connection("clinic"), Ct);
    }

    private static Task<OpenStudio> OpenAsync(OwnPostgres server, Scene scene, int? port = null) =>
        OpenAsync(ClinicEngine.Postgres, scene, server.Connection("clinic", port));

    private static async Task<OpenStudio> OpenAsync(ClinicEngine engine, Scene scene, string connection)
    {
        var settings = new Dictionary<string, string>(scene.Settings) { ["Database__Engine"] = engine.ToString(), ["ConnectionStrings__Clinic"] = connection };
        var app = await RunningApp.StartAsync(await PublishedApp.FolderAsync(), settings, Ct);
        await app.UntilReadyAsync(Ct); // so that what isn't ready behind a fault isn't so for having only just started
        var faults = new DatabaseFaults(scene, app);
        await faults.OpenAsync(Ct);
        return new OpenStudio(scene, app, faults);
    }

    private static async Task RunAsync(string what, params string[] arguments)
    {
        using var process = System.Diagnostics.Process.Start(what, arguments);
        await process.WaitForExitAsync(Ct);
        Assert.Equal(0, process.ExitCode);
    }

    private static async Task SayAsync(FormattableString line)
    {
        if (Environment.GetEnvironmentVariable(LogGivenBy) is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, line.ToString(CultureInfo.InvariantCulture) + "\n", Ct);
        }
    }

    private static int? Number(string variable) =>
        int.TryParse(Environment.GetEnvironmentVariable(variable), CultureInfo.InvariantCulture, out var number) ? number : null;

    private sealed record OpenStudio(Scene Scene, RunningApp App, DatabaseFaults Faults) : IAsyncDisposable
    {
        public async ValueTask DisposeAsync()
        {
            Faults.Dispose();
            await App.DisposeAsync();
            await Scene.DisposeAsync();
        }
    }
}
