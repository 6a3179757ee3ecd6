using System.Data.Common;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Npgsql;

namespace ReedClinic.Data.Tests.People;

/// <summary>Where there is no room for anything new, what is there can be read by whoever is signed in, however long they have been.</summary>
public sealed class SessionOnAFullDiskTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Somebody_who_reads_on_stays_who_they_are(ClinicEngine engine)
    {
        var disk = new FullDisk();
        var scene = new SignInScene(await databases.FreshAsync(engine, disk));
        var session = (await scene.InAsync(await scene.AccountAsync("runa@harbour.example"))).Session!.Value;
        scene.Time.Advance(TimeSpan.FromMinutes(3));
        disk.Trouble = engine == ClinicEngine.Sqlite ? new SqliteException("database or disk is full", 13) : new PostgresException("could not extend file", "ERROR", "ERROR", PostgresErrorCodes.DiskFull);

        Assert.NotNull(await scene.WhoAsync(session));
        Assert.True(disk.WasMet);
    }

    [Theory, OnBothEngines]
    public async Task Any_other_trouble_is_told(ClinicEngine engine)
    {
        var disk = new FullDisk();
        var scene = new SignInScene(await databases.FreshAsync(engine, disk));
        var session = (await scene.InAsync(await scene.AccountAsync("runa@harbour.example"))).Session!.Value;
        scene.Time.Advance(TimeSpan.FromMinutes(3));
        disk.Trouble = new InvalidOperationException("something else");

        await Assert.ThrowsAnyAsync<InvalidOperationException>(() => scene.WhoAsync(session));
    }

    private sealed class FullDisk : DbCommandInterceptor
    {
        public Exception? Trouble { get; set; }

        public bool WasMet { get; private set; }

        public override ValueTask<InterceptionResult<int>> NonQueryExecutingAsync(
            DbCommand command, CommandEventData eventData, InterceptionResult<int> result, CancellationToken cancellationToken = default)
        {
            WasMet |= Trouble is not null;
            return Trouble is null ? ValueTask.FromResult(result) : throw Trouble;
        }
    }
}
