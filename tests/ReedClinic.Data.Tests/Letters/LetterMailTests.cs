using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

/// <summary>A mail about a letter that waits while its reader’s address changes.</summary>
public sealed class LetterMailTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_failing_mail_that_somebody_tries_now_goes_to_the_address_of_today(ClinicEngine engine)
    {
        var (scene, mails, board) = await FailingAsync(engine);
        Assert.False((await mails.LookAsync(Teacher, scene.Code, Ct))!.IsForFormerAddress);
        await MovesAsync(scene, "ines.new@example.org");
        Assert.True((await mails.LookAsync(Teacher, scene.Code, Ct))!.IsForFormerAddress);

        var tried = Done(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct));

        Assert.Equal((LetterMailState.Waiting, 0, false), (tried.State, tried.Tries, tried.IsForFormerAddress));
        var mail = scene.Db.Outbox.Open((await board.ClaimAsync(JobKind.Mail, Ct))!)!;
        Assert.Equal(("ines.new@example.org", $"/letters/{scene.Code}"), (mail.To, mail.Path));
        Assert.Null(await board.ClaimAsync(JobKind.Mail, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_failing_mail_whose_reader_has_the_same_address_keeps_the_count_of_its_tries(ClinicEngine engine)
    {
        var (scene, mails, board) = await FailingAsync(engine);
        await MovesAsync(scene, "Ines@example.org");

        Assert.Equal(1, Done(await mails.AgainAsync(Teacher, scene.Code, Operation(), Ct)).Tries);
        Assert.Equal("ines@example.org", scene.Db.Outbox.Open((await board.ClaimAsync(JobKind.Mail, Ct))!)!.To);
    }

    private async Task<(LetterScene Scene, LetterMailBook Mails, JobBoard Board)> FailingAsync(ClinicEngine engine)
    {
        var scene = await LetterScene.OfAsync(await databases.OpenAsync(engine));
        await scene.HasAddressAsync();
        await scene.SentAsync();
        var board = new JobBoard(scene.Db, TimeProvider.System);
        Assert.True(await board.FailedAsync((await board.ClaimAsync(JobKind.Mail, Ct))!, "The mail server took too long.", forEver: false, Ct));
        return (scene, new LetterMailBook(scene.Db, TimeProvider.System, scene.Db.Outbox), board);
    }

    private static async Task MovesAsync(LetterScene scene, string address)
    {
        await using var db = scene.Db.CreateDbContext();
        await db.Set<Student>().Where(row => row.Id == scene.Batch.Student).ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Email, address), Ct);
    }
}
