using System.Text.Json.Nodes;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Domain.Intake;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

/// <summary>Whose mail about a letter brings the letter: nobody's who hasn't chosen so, and only to an address that is theirs.</summary>
public sealed class LetterFileTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task No_letter_goes_by_mail_until_its_reader_chooses_so_and_none_after_they_take_it_back(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.FreshAsync(engine));
        var student = await scene.GrownAsync();
        var batch = await scene.SentAsync(student);
        var (job, mail) = await scene.NewsAsync(batch);

        Assert.Equal(new LetterFileChoice(false, true, true, false), await scene.Files.ReadAsync(student, Ct));
        Assert.Equal(LetterParcel.Empty, await scene.Courier.PackAsync(job, mail, Ct));

        Assert.True(Done(await scene.Files.ChooseAsync(student, true, Operation(), Ct)));
        var letter = (await scene.Courier.PackAsync(job, mail, Ct)).Letter!;
        Assert.Equal((batch.Code.ToString(), 1, "Portugal"), (letter.Letter.Code, letter.Ordinal, letter.Country));
        Assert.Equal(job.Payload, (await scene.NewsAsync(batch)).Job.Payload);

        Assert.False(Done(await scene.Files.ChooseAsync(student, false, Operation(), Ct)));
        Assert.Equal(LetterParcel.Empty, await scene.Courier.PackAsync(job, mail, Ct));
        Assert.False((await scene.Files.ReadAsync(student, Ct))!.Wanted);
        await using var db = scene.Database.CreateDbContext();
        var noted = await db.Set<AuditNote>().Where(note => note.Who == student.Account.Value).OrderBy(note => note.Id).Select(note => note.Event).ToListAsync(Ct);
        Assert.Equal([AuditEvent.LetterFilesOn, AuditEvent.LetterFilesOff], noted.Where(what => what is AuditEvent.LetterFilesOn or AuditEvent.LetterFilesOff));
    }

    [Theory, OnBothEngines]
    public async Task A_form_that_is_sent_again_chooses_once_and_what_is_chosen_already_is_noted_once(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.FreshAsync(engine));
        var student = await scene.GrownAsync();
        var operation = Operation();

        Done(await scene.Files.ChooseAsync(student, true, operation, Ct));
        Done(await scene.Files.ChooseAsync(student, false, Operation(), Ct));
        Assert.False(Done(await scene.Files.ChooseAsync(student, true, operation, Ct))); // it was done, and taken back since
        await Task.WhenAll(Enumerable.Range(0, 4).Select(async _ => Done(await scene.Files.ChooseAsync(student, true, Operation(), Ct))));

        Assert.True((await scene.Files.ReadAsync(student, Ct))!.Wanted);
        await using var db = scene.Database.CreateDbContext();
        Assert.Equal(2, await db.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.LetterFilesOn && note.Who == student.Account.Value, Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_mail_about_a_correction_brings_the_corrected_letter_and_so_does_one_that_waited(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.GrownAsync();
        var batch = await scene.SentAsync(student);
        Done(await scene.Files.ChooseAsync(student, true, Operation(), Ct));
        var waited = await scene.NewsAsync(batch);

        await scene.CorrectAsync(batch, "The day was wrong.");

        var corrected = (await scene.MailsAboutAsync(batch)).Single(mail => mail.Mail.What == Mail.Corrected);
        foreach (var (job, mail) in new[] { waited, corrected })
        {
            var letter = (await scene.Courier.PackAsync(job, mail, Ct)).Letter!;
            Assert.Equal((2, "The day was wrong."), (letter.Ordinal, letter.WhatChanged));
            Assert.NotNull(letter.Replaces);
        }
    }

    [Theory, OnBothEngines]
    public async Task Of_a_younger_student_the_guardian_chooses_and_what_the_student_chose_counts_for_nothing(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.People.StudentAsync();
        var guardian = await scene.People.AgreedAsync(student);
        var batch = await scene.SentAsync(student);
        var (job, mail) = await scene.NewsAsync(batch);

        Done(await scene.Files.ChooseAsync(student, true, Operation(), Ct));
        Assert.False((await scene.Files.ReadAsync(student, Ct))!.ForOwn);
        Assert.Equal(LetterParcel.Empty, await scene.Courier.PackAsync(job, mail, Ct));

        Done(await scene.Files.ChooseAsync(guardian, true, Operation(), Ct));
        Assert.Equal(new LetterFileChoice(true, true, false, true), await scene.Files.ReadAsync(guardian, Ct));
        Assert.Equal(batch.Code.ToString(), (await scene.Courier.PackAsync(job, mail, Ct)).Letter!.Letter.Code);
        var ownAddress = (await scene.People.Book<SignInBook>().ReadAsync(student, Ct))!.Email;
        Assert.Null((await scene.Courier.PackAsync(job, mail with { To = ownAddress }, Ct)).Letter);

        await scene.ChangeAsync(async db => (await db.Users.SingleAsync(user => user.Id == guardian.Account.Value, Ct)).DisabledAt = scene.Clock.GetUtcNow());
        Assert.Null((await scene.Courier.PackAsync(job, mail, Ct)).Letter);
        await scene.ChangeAsync(async db => (await db.Users.SingleAsync(user => user.Id == guardian.Account.Value, Ct)).DisabledAt = null);
        Assert.NotNull((await scene.Courier.PackAsync(job, mail, Ct)).Letter);

        Done(await scene.People.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));
        Assert.Equal(LetterParcel.Empty, await scene.Courier.PackAsync(job, mail, Ct));
    }

    [Theory, OnBothEngines]
    public async Task It_goes_to_an_address_that_was_shown_to_be_theirs_and_is_theirs_now_and_to_no_closed_account(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.GrownAsync();
        Done(await scene.Files.ChooseAsync(student, true, Operation(), Ct));
        var (job, mail) = await scene.NewsAsync(await scene.SentAsync(student));
        var theirs = await scene.SentAsync(await scene.GrownAsync());
        await GoesAsync(true, mail);
        await GoesAsync(false, mail with { To = "elsewhere@harbour.example" });
        await GoesAsync(false, mail with { Path = $"/letters/{theirs.Code}" });
        await GoesAsync(false, mail with { About = theirs.Student.Value });
        await GoesAsync(false, mail with { Kind = MailKind.Notice });

        await ChangedAsync(account => account.EmailConfirmed = false, account => account.EmailConfirmed = true);
        await ChangedAsync(account => account.DisabledAt = scene.Clock.GetUtcNow(), account => account.DisabledAt = null);
        await ChangedAsync(account => account.Email = "elsewhere@harbour.example", account => account.Email = mail.To);

        async Task GoesAsync(bool goes, Mail about) => Assert.Equal(goes, (await scene.Courier.PackAsync(job, about, Ct)).Letter is not null);

        async Task ChangedAsync(Action<ClinicAccount> change, Action<ClinicAccount> back)
        {
            await scene.ChangeAsync(async db => change(await db.Users.SingleAsync(user => user.Id == student.Account.Value, Ct)));
            await GoesAsync(false, mail);
            await scene.ChangeAsync(async db => back(await db.Users.SingleAsync(user => user.Id == student.Account.Value, Ct)));
            await GoesAsync(true, mail);
        }
    }

    [Theory, OnBothEngines]
    public async Task Whoever_has_not_shown_that_the_address_is_theirs_cannot_choose_it_and_can_always_choose_against_it(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.BegunAsync(byHand: true);

        Assert.Equal("Wanted", Assert.Single(GuardianScene.Refused(await scene.Files.ChooseAsync(student, true, Operation(), Ct))).Field);
        Assert.False(Done(await scene.Files.ChooseAsync(student, false, Operation(), Ct)));
        Assert.Equal(new LetterFileChoice(false, false, true, false), await scene.Files.ReadAsync(student, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Who_reads_by_a_link_alone_and_chose_so_gets_both(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.BegunAsync();
        Done(await scene.Files.ChooseAsync(student, true, Operation(), Ct));
        var batch = await scene.SentAsync(student);
        var (job, mail) = await scene.NewsAsync(batch);

        var parcel = await scene.Courier.PackAsync(job, mail, Ct);

        Assert.NotNull(await scene.Links.ReadAsync(parcel.Secret, Ct));
        Assert.Equal(batch.Code.ToString(), parcel.Letter!.Letter.Code);
    }

    [Theory, OnBothEngines]
    public async Task The_choice_is_in_the_copy_of_ones_records_and_goes_with_erasing_and_no_letter_goes_after_it(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.FreshAsync(engine));
        var student = await scene.GrownAsync() with { IsFresh = true };
        Done(await scene.Files.ChooseAsync(student, true, Operation(), Ct));
        var batch = await scene.SentAsync(student);
        var (job, mail) = await scene.NewsAsync(batch);
        foreach (var stage in new[] { Stage.OnItsWayHome, Stage.Home })
        {
            Done(await scene.People.Book<DeskBook>().MoveOnAsync(Teacher, batch.Id, stage, Operation(), Ct));
        }

        var copy = Done(await scene.People.Book<PrivacyBook>().ExportAsync(student, null, Operation(), Ct));
        Assert.Equal("Portugal", Assert.Single(copy.Letters).Country);
        Assert.True(((JsonObject)copy.About[nameof(ClinicAccount)]![0]!)[nameof(ClinicAccount.LetterFilesByMail)]!.GetValue<bool>());

        Done(await scene.People.Book<PrivacyBook>().EraseAsync(student, null, "erase", Operation(), Ct));

        Assert.Equal(LetterParcel.Empty, await scene.Courier.PackAsync(job, mail, Ct));
        await using var db = scene.Database.CreateDbContext();
        Assert.False(await db.Users.AnyAsync(user => user.LetterFilesByMail, Ct));
    }
}
