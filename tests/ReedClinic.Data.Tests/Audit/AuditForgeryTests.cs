using System.Globalization;
using System.Security.Cryptography;
using System.Text;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using static ReedClinic.Data.Tests.Audit.AuditChainTests;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Audit;

/// <summary>Whoever knows how a link is hashed, and hashes anew what they forged, is found out all the same: OWASP ASVS 5.0, 16.4.2.</summary>
public sealed class AuditForgeryTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_forged_link_with_a_hash_of_its_own_is_found_at_the_next(ClinicEngine engine)
    {
        var db = await OpenAsync(engine, 4);
        await RewriteAsync(db, 2, link => $"{link.Sequence}|{link.At.ToUnixTimeMilliseconds()}|{AuditEvent.SignedIn}|{link.Who}|{link.Whom}|{link.What}|{link.Before}", "SignedIn");

        Assert.Equal(3, (await Chain(db).VerifyAsync(Ct)).Broken);
    }

    [Theory, OnBothEngines]
    public async Task A_place_that_was_left_out_is_found_though_every_hash_is_right(ClinicEngine engine)
    {
        var db = await OpenAsync(engine, 3);
        await RunAsync(db, """UPDATE "AuditChain" SET "Sequence" = 7 WHERE "Sequence" = 3""");
        await RewriteAsync(db, 7, link => $"{link.Sequence}|{link.At.ToUnixTimeMilliseconds()}|{link.Event}|{link.Who}|{link.Whom}|{link.What}|{link.Before}", "LetterSent");

        Assert.Equal(3, (await Chain(db).VerifyAsync(Ct)).Broken);
    }

    [Theory, OnBothEngines]
    public async Task A_moment_finer_than_any_that_is_written_is_found(ClinicEngine engine)
    {
        var db = await OpenAsync(engine, 3);
        await RunAsync(db, engine == ClinicEngine.Postgres
            ? """UPDATE "AuditChain" SET "At" = "At" + interval '1 microsecond' WHERE "Sequence" = 2"""
            : """UPDATE "AuditChain" SET "At" = "At" || '001' WHERE "Sequence" = 2""");

        Assert.Equal(2, (await Chain(db).VerifyAsync(Ct)).Broken);
    }

    private async Task<TestDatabase> OpenAsync(ClinicEngine engine, int links)
    {
        var db = await databases.FreshAsync(engine);
        await FillAsync(db, links);
        await DropGuardsAsync(db);
        Assert.Null((await Chain(db).VerifyAsync(Ct)).Broken);
        return db;
    }

    // How a link is hashed, written down here once more: its place, its millisecond, what happened, who, whom, what, and the hash before.
    private static async Task RewriteAsync(TestDatabase db, long at, Func<AuditEntry, FormattableString> words, string happened)
    {
        await using var context = db.CreateDbContext();
        var link = await context.Set<AuditEntry>().AsNoTracking().SingleAsync(entry => entry.Sequence == at, Ct);
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(words(link).ToString(CultureInfo.InvariantCulture))));
        await context.Database.ExecuteSqlAsync($"""UPDATE "AuditChain" SET "Event" = {happened}, "Hash" = {hash} WHERE "Sequence" = {at}""", Ct);
    }
}
