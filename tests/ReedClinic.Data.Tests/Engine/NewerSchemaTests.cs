using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;

namespace ReedClinic.Data.Tests.Engine;

/// <summary>Records that a newer build has changed are refused by this one: what it would write there was never tried.</summary>
public sealed class NewerSchemaTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData(ClinicEngine.Sqlite, false)]
    [InlineData(ClinicEngine.Sqlite, true)]
    [InlineData(ClinicEngine.Postgres, false)]
    [InlineData(ClinicEngine.Postgres, true)]
    public async Task A_newer_schema_is_refused_with_what_to_do_and_nothing_is_touched(ClinicEngine engine, bool behind)
    {
        var db = await databases.FreshAsync(engine);
        await db.MakeNewerAsync(behind, Ct);
        var before = await db.AllAsync(Ct);
        var schema = db.Services.GetRequiredService<ClinicSchema>();
        var changing = false;

        var refused = await Assert.ThrowsAsync<NewerSchemaException>(() => schema.MigrateAsync(Ct, _ =>
        {
            changing = true;
            return Task.CompletedTask;
        }));

        Assert.Contains(NewerRecords.Migration, refused.Message, StringComparison.Ordinal);
        Assert.Contains("restore the back-up", refused.Message, StringComparison.Ordinal);
        Assert.False(changing);
        Assert.Equal(before, await db.AllAsync(Ct));
        await Assert.ThrowsAsync<NewerSchemaException>(() => schema.RefuseNewerAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_check_says_so_too_and_looks_no_further(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await db.MakeNewerAsync(behind: false, Ct);

        var found = await db.Services.GetRequiredService<StudioCheck>().LookAsync(Ct);

        Assert.Contains(found, finding => finding.Name == "database-ahead" && finding.Words.Contains(NewerRecords.Migration, StringComparison.Ordinal));
        Assert.DoesNotContain(found, finding => finding.Name == "no-owner");
    }

    [Theory, OnBothEngines]
    public async Task A_database_of_this_build_or_without_tables_is_not_refused(ClinicEngine engine)
    {
        await (await databases.FreshAsync(engine)).Services.GetRequiredService<ClinicSchema>().RefuseNewerAsync(Ct);
        var bare = await databases.BareAsync(engine);
        await bare.MigrateAsync(Ct);
        await using var context = bare.CreateDbContext();
        Assert.Empty(await context.Database.GetPendingMigrationsAsync(Ct));
    }
}
