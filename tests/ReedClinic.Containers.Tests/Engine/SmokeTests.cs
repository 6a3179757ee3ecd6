using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Containers.Tests.Running;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Demo;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.KillDriver;

namespace ReedClinic.Containers.Tests.Engine;

/// <summary>The storage on a PostgreSQL that nobody tuned. Every other data test runs on the quick local cluster.</summary>
public sealed class SmokeTests(PostgresContainer postgres)
{
    private const int OldestSupported = 15;
    private const int Rounds = 2;
    private const int Seed = 20261125;

    private static readonly Actor Teacher = new(new AccountId(Guid.Empty), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Migrations_bring_an_empty_database_to_this_builds_schema_and_may_be_repeated()
    {
        await using var db = await postgres.BareAsync(Ct);
        var schema = db.Services.GetRequiredService<ClinicSchema>();
        Assert.False(await schema.IsReadyAsync(Ct));

        await db.MigrateAsync(Ct);
        await db.MigrateAsync(Ct);

        Assert.True(await schema.IsReadyAsync(Ct));
        await using var context = db.CreateDbContext();
        Assert.Equal(3, await context.Roles.CountAsync(Ct));
        var version = await context.Database.SqlQueryRaw<string>("SELECT current_setting('server_version_num') AS \"Value\"").SingleAsync(Ct);
        Assert.InRange(int.Parse(version, System.Globalization.CultureInfo.InvariantCulture) / 10_000, OldestSupported, 99);
    }

    [Fact]
    public async Task A_book_of_each_area_writes_and_reads()
    {
        await using var db = await postgres.BareAsync(Ct);
        await db.MigrateAsync(Ct);
        await using var scope = db.Services.CreateAsyncScope();
        var services = scope.ServiceProvider;
        await services.GetRequiredService<DemoStudio>().SeedAsync(Ct); // through the same Books as people use

        Assert.Equal("Lantern Quay Reeds", (await services.GetRequiredService<StudioBook>().Read(Ct))?.Name);
        Assert.Equal("Ines Calder", Assert.Single(await services.GetRequiredService<StudentBook>().FindAsync(Teacher, "ines", Ct)).Name);

        var batches = await services.GetRequiredService<DeskBook>().AllAsync(Teacher, Ct);
        Assert.Equal([Stage.OnItsWay, Stage.AtTheBench, Stage.LetterSent, Stage.Home], batches.Select(batch => batch.Stage));

        var atBench = await services.GetRequiredService<BenchBook>().FindBatchAsync(Teacher, batches[1].Code, Ct);
        var bench = await services.GetRequiredService<BenchBook>().FindAsync(Teacher, atBench!.Batch.Reeds[0].Id, Ct);
        Assert.True(bench!.Log.LastSequence > 0);

        Assert.NotNull((await services.GetRequiredService<CommonThreadBook>().FindAsync(Teacher, batches[2].Code, Ct))!.Chosen);
        Assert.NotEmpty((await services.GetRequiredService<LetterBook>().ReadAsync(Teacher, batches[2].Code, Ct))!.Versions);
    }

    [Fact]
    public async Task Nothing_acknowledged_is_lost_or_doubled_when_the_app_is_killed()
    {
        await using var db = await postgres.BareAsync(Ct);
        await using var scene = await Scene.MakeAsync("postgres", db.Connection, Ct);
        using var kills = new KillRounds(await PublishedApp.FolderAsync(), scene, Seed);
        for (var round = 0; round < Rounds; round++)
        {
            Assert.Equal(new Comparison(0, 0, 0), await kills.RunAsync(Ct));
        }

        Assert.Equal(new Comparison(0, 0, 0), await kills.SettleAsync(Ct));
        Assert.True(kills.Acknowledged >= Rounds);
    }
}
