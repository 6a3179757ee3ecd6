using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Tests.Engine;

[System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
public sealed class StudioCheckTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task What_is_not_settled_in_the_studio_is_found_until_it_is(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        Assert.Contains("no-owner", await FoundAsync(db));
        var owner = new ClinicAccount { Id = NewId(), UserName = "mara@harbour.example", Email = "mara@harbour.example", NormalizedUserName = "MARA", DisplayName = "Mara" };
        await SaveAsync(db, context =>
        {
            context.Add(owner);
            context.UserRoles.Add(new IdentityUserRole<Guid> { UserId = owner.Id, RoleId = context.Roles.Single(role => role.Name == nameof(Role.Owner)).Id });
            context.Add(new Studio("Quay Reeds", new AccountId(owner.Id), TimeProvider.System.GetUtcNow()));
        });

        Assert.Superset(new HashSet<string> { "consent-age", "second-step" }, new HashSet<string>(await FoundAsync(db)));
        await SaveAsync(db, context =>
        {
            context.Set<Studio>().Single().Admit(signUpOpen: true, 16);
            context.Users.Single().CodeSince = TimeProvider.System.GetUtcNow();
        });
        Assert.DoesNotContain(await FoundAsync(db), name => name is "no-owner" or "consent-age" or "second-step" or "demo-accounts");

        await SaveAsync(db, context => context.Add(new ClinicAccount { Id = NewId(), UserName = "d", NormalizedUserName = "D", Email = "edda@lanternquay.example", DisplayName = "Edda" }));
        Assert.Contains("demo-accounts", await FoundAsync(db));
    }

    [Fact]
    public async Task A_superuser_is_found_on_PostgreSQL()
    {
        var db = await databases.FreshAsync(ClinicEngine.Postgres);
        Assert.Contains("postgres-superuser", await FoundAsync(db));
    }

    [Fact]
    public async Task A_database_file_that_everybody_can_read_is_found()
    {
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        await using var context = db.CreateDbContext();
        var file = new Microsoft.Data.Sqlite.SqliteConnectionStringBuilder(context.Database.GetConnectionString()).DataSource;

        File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite);
        Assert.DoesNotContain("file-readable", await FoundAsync(db));
        File.SetUnixFileMode(file, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.OtherRead);
        Assert.Contains("file-readable", await FoundAsync(db));
    }

    private static async Task<IEnumerable<string>> FoundAsync(TestDatabase db) => (await new StudioCheck(db).LookAsync(Ct)).Select(finding => finding.Name);

    private static Guid NewId() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());

    private static async Task SaveAsync(TestDatabase db, Action<ClinicDb> change)
    {
        await using var context = db.CreateDbContext();
        change(context);
        await context.SaveChangesAsync(Ct);
    }
}
