using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Demo;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Data.Tests.Demo;

public sealed class DemoStudioTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly Actor Teacher = new(new AccountId(Guid.Empty), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task The_demo_shows_batches_in_different_states_and_a_fault_that_faded(ClinicEngine engine)
    {
        var db = await SeededAsync(engine);
        await using var context = db.CreateDbContext();
        var batches = await context.Set<Batch>().OrderBy(batch => batch.SubmittedAt).ToListAsync(Ct);
        Assert.Equal(4, batches.Count);
        Assert.Equal(Stage.OnItsWay, batches[3].Stage);
        Assert.Equal(Stage.AtTheBench, batches[2].Stage);
        Assert.Equal(Stage.LetterSent, batches[1].Stage);
        Assert.Equal(Stage.Home, batches[0].Stage);
        Assert.All(batches, batch => Assert.True(batch.SubmittedAt < TimeProvider.System.GetUtcNow()));

        var autumn = (await new CommonThreadBook(db, TimeProvider.System).FindAsync(Teacher, batches[1].Code, Ct))!;
        var corners = new FindingKindId("tip-corners-thick");
        var before = autumn.Before(corners, FindingCharacter.Fault);
        Assert.Equal((3, 3), (before.Found, before.Looked));
        Assert.Equal((0, 3), Count(autumn.InBatch, corners));
        Assert.Equal((3, 3), Count(autumn.InBatch, new FindingKindId("tip-not-separate")));
        Assert.Equal(new FindingKindId("tip-not-separate"), autumn.Chosen?.LessonKind);
        Assert.Equal(6, await context.Set<Verdict>().CountAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_demo_is_seeded_once_and_never_among_other_people(ClinicEngine engine)
    {
        var db = await SeededAsync(engine);
        await using var scope = db.Services.CreateAsyncScope();
        var demo = scope.ServiceProvider.GetRequiredService<DemoStudio>();
        await demo.SeedAsync(Ct);
        await using var context = db.CreateDbContext();
        Assert.Equal(6, await context.Users.CountAsync(Ct));
        Assert.Equal(6, (await demo.SignInsAsync(Ct)).Count);

        var lived = await databases.FreshAsync(engine);
        await using (var writing = lived.CreateDbContext())
        {
            writing.Add(new Student(new StudentId(Guid.CreateVersion7(TimeProvider.System.GetUtcNow())), "Somebody real"));
            await writing.SaveChangesAsync(Ct);
        }

        await using var livedScope = lived.Services.CreateAsyncScope();
        await livedScope.ServiceProvider.GetRequiredService<DemoStudio>().SeedAsync(Ct);
        await using var after = lived.CreateDbContext();
        Assert.False(await after.Users.AnyAsync(Ct));
    }

    private static (int Found, int Looked) Count(FindingSheet sheet, FindingKindId kind)
    {
        var tally = sheet.Count(kind, FindingCharacter.Fault);
        return (tally.Found, tally.Looked);
    }

    private async Task<TestDatabase> SeededAsync(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using var scope = db.Services.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<DemoStudio>().SeedAsync(Ct);
        return db;
    }
}
