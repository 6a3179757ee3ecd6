using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Audit;
using ReedClinic.Web.Background;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Tests.Audit;

public sealed class AuditCommandTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task The_command_says_in_words_whether_the_chain_holds_and_ends_so(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using (var context = db.CreateDbContext())
        {
            var now = DateTimeOffset.FromUnixTimeMilliseconds(1_772_442_000_000);
            context.AddRange(Enumerable.Range(0, 3).Select(i => new AuditNote { Id = Guid.CreateVersion7(now.AddSeconds(i)), At = now.AddSeconds(i), Event = AuditEvent.SignedIn }));
            await context.SaveChangesAsync(Ct);
            await db.Services.GetRequiredService<AuditChain>().SealAsync(Ct);
        }

        var (sound, well) = await RunAsync(db);
        await using (var context = db.CreateDbContext())
        {
            await context.Database.ExecuteSqlRawAsync(
                engine == ClinicEngine.Sqlite ? """DROP TRIGGER "AuditChain_stays" """ : """ALTER TABLE "AuditChain" DISABLE TRIGGER ALL""", Ct);
            await context.Database.ExecuteSqlRawAsync("""UPDATE "AuditChain" SET "Event" = 'SignedOut' WHERE "Sequence" = 2""", Ct);
        }

        var (broken, told) = await RunAsync(db);

        Assert.Equal(0, sound);
        Assert.Contains("The audit holds: 3 links", well, StringComparison.Ordinal);
        Assert.Equal(1, broken);
        Assert.Contains("broken at link 2", told, StringComparison.Ordinal);
    }

    private static async Task<(int Code, string Words)> RunAsync(TestDatabase db)
    {
        await using var words = new StringWriter();
        var code = await AuditCommand.RunAsync([.. db.Settings.Select(setting => $"--{setting.Key}={setting.Value}")], new Announcement(words));
        return (code, words.ToString());
    }
}
