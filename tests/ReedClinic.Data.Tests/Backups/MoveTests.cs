using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Tests.Recordings;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Backups;

/// <summary>A studio that grew out of its file goes on with a server, and lacks nothing.</summary>
public sealed class MoveTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Fact]
    public async Task Every_row_and_file_of_SQLite_comes_to_PostgreSQL_and_new_rows_follow()
    {
        await using var scene = new BackupScene();
        var (db, server) = (await databases.FreshAsync(ClinicEngine.Sqlite), await databases.FreshAsync(ClinicEngine.Postgres));
        await BackupScene.FillAsync(db);
        while (await db.Services.GetRequiredService<AuditChain>().SealAsync(Ct) > 0)
        {
        }

        var cookie = BackupScene.Seal(db, "who I am");
        var (folder, _) = await scene.MakeAsync(db);

        await scene.RestoreAsync(server, folder);

        Assert.Equal(await BackupScene.SumsAsync(db), await BackupScene.SumsAsync(server));
        Assert.Equal("who I am", BackupScene.Unseal(server, cookie));
        Assert.Equal(new RecordingScene(db).Lying, new RecordingScene(server).Lying);
        Assert.Null((await server.Services.GetRequiredService<AuditChain>().VerifyAsync(Ct)).Broken);
        await using var context = server.CreateDbContext();
        var account = await context.Users.FirstAsync(Ct);
        context.UserClaims.Add(new IdentityUserClaim<Guid> { UserId = account.Id, ClaimType = "a", ClaimValue = "b" });
        context.DataProtectionKeys.Add(new() { FriendlyName = "new", Xml = "<key/>" });
        await context.SaveChangesAsync(Ct);
        await Assert.ThrowsAsync<Npgsql.PostgresException>(() => context.Set<AuditEntry>().ExecuteDeleteAsync(Ct)); // it is still only ever added to
    }

    [Fact]
    public async Task It_is_refused_where_a_studio_is_already()
    {
        await using var scene = new BackupScene();
        var (db, server) = (await databases.FreshAsync(ClinicEngine.Sqlite), await databases.FreshAsync(ClinicEngine.Postgres));
        await BackupScene.FillAsync(db);
        await BackupScene.FillAsync(server);
        var before = await BackupScene.SumsAsync(server);
        var (folder, _) = await scene.MakeAsync(db);

        var trouble = await Assert.ThrowsAsync<BackupTroubleException>(() => scene.RestoreAsync(server, folder));

        Assert.Contains("There is a studio in this PostgreSQL database already", trouble.Message, StringComparison.Ordinal);
        Assert.Equal(before, await BackupScene.SumsAsync(server));
        Assert.Equal(2, new RecordingScene(server).Lying.Count);
    }

    [Fact]
    public async Task The_way_from_PostgreSQL_to_SQLite_is_refused_in_words()
    {
        await using var scene = new BackupScene();
        var (db, server) = (await databases.FreshAsync(ClinicEngine.Sqlite), await databases.FreshAsync(ClinicEngine.Postgres));
        await BackupScene.FillAsync(server, demo: false);
        var (folder, _) = await scene.MakeAsync(server);

        var trouble = await Assert.ThrowsAsync<BackupTroubleException>(() => scene.RestoreAsync(db, folder));

        Assert.Contains("the settings say SQLite", trouble.Message, StringComparison.Ordinal);
    }
}
