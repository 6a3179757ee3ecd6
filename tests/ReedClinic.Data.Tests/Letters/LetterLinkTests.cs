using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Tests.Recordings;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Recordings;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

/// <summary>
/// A private link opens one letter and nothing else, while its time lasts and everybody who has to agrees. OWASP ASVS 5.0: 7.2.3
/// (128 bits of entropy at least, here 256), 8.3.1, 8.3.2 (changes of rights count at once).
/// </summary>
public sealed class LetterLinkTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_link_opens_the_letter_that_was_sent_and_its_secret_is_told_once_and_kept_nowhere(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var batch = await scene.SentAsync(await scene.GrownAsync());
        var operation = Operation();

        var made = Done(await scene.Links.MakeAsync(Teacher, batch.Code, 7, operation, Ct));
        var again = Done(await scene.Links.MakeAsync(Teacher, batch.Code, 7, operation, Ct));
        var read = (await scene.Links.ReadAsync(made.Secret, Ct))!;

        Assert.Equal(43, made.Secret!.Length); // 32 bytes as RFC 4648 base 64 for addresses, without padding
        Assert.Equal((made.Id, null), (again.Id, again.Secret));
        Assert.Equal(batch.Code.ToString(), read.Sent.Letter.Code);
        Assert.Equal("Portugal", read.Sent.Country);
        Assert.Equal(scene.Clock.GetUtcNow().AddDays(7), read.ExpiresAt, TimeSpan.FromMilliseconds(1));
        Assert.DoesNotContain(made.Secret, made.ToString(), StringComparison.Ordinal);
        await using var db = scene.Database.CreateDbContext();
        var row = await db.Set<LetterLink>().SingleAsync(link => link.Id == made.Id, Ct);
        Assert.Equal(Convert.ToHexStringLower(System.Security.Cryptography.SHA256.HashData(System.Text.Encoding.UTF8.GetBytes(made.Secret))), row.SecretHash);
        Assert.Empty(await EveryColumn.HoldingAsync(db, made.Secret, Ct));
        Assert.Equal(["LetterLinks.SecretHash"], await EveryColumn.HoldingAsync(db, row.SecretHash, Ct));
        Assert.DoesNotContain(await scene.People.MailsAsync(), mail => made.Secret == mail.Secret || (mail.Path ?? "").Contains(made.Secret, StringComparison.Ordinal));
    }

    [Theory, OnBothEngines]
    public async Task After_a_correction_it_opens_the_letter_as_it_was_sent_last(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var batch = await scene.SentAsync(await scene.GrownAsync());
        var made = await scene.MadeAsync(batch);
        var letter = (await scene.People.Book<LetterBook>().ReadAsync(Teacher, batch.Code, Ct))!;
        var corrections = scene.People.Book<LetterCorrectionBook>();

        Done(await corrections.BeginAsync(Teacher, batch.Code, letter.Version, Operation(), Ct));
        Assert.Null((await scene.Links.ReadAsync(made.Secret, Ct))!.Sent.WhatChanged);
        Done(await corrections.SayAsync(Teacher, batch.Code, null, "The day was wrong.", Operation(), Ct));
        Done(await corrections.SendAsync(Teacher, batch.Code, letter.Mark, "The day was wrong.", Operation(), Ct));

        Assert.Equal("The day was wrong.", (await scene.Links.ReadAsync(made.Secret, Ct))!.Sent.WhatChanged);
    }

    [Theory, OnBothEngines]
    public async Task One_that_is_made_up_cut_short_over_or_closed_opens_nothing(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var batch = await scene.SentAsync(await scene.GrownAsync());
        var (week, month) = (await scene.MadeAsync(batch, 7), await scene.MadeAsync(batch));
        var later = scene.Clock.GetUtcNow().AddDays(7);

        Assert.Null(await scene.Links.ReadAsync(null, Ct));
        Assert.Null(await scene.Links.ReadAsync(new string('x', 43), Ct));
        Assert.Null(await scene.Links.ReadAsync(week.Secret![..42], Ct));
        Assert.Null(await scene.Links.ReadAsync(week.Secret + "x", Ct));
        scene.Clock.SetUtcNow(later.AddSeconds(-1));
        Assert.NotNull(await scene.Links.ReadAsync(week.Secret, Ct));
        scene.Clock.SetUtcNow(later);
        Assert.Null(await scene.Links.ReadAsync(week.Secret, Ct));

        Assert.NotNull(await scene.Links.ReadAsync(month.Secret, Ct));
        Assert.Equal(month.Id, Done(await scene.Links.CloseAsync(Teacher, batch.Code, month.Id, Ct)));
        Assert.Null(await scene.Links.ReadAsync(month.Secret, Ct));
        Done(await scene.Links.CloseAsync(Teacher, batch.Code, month.Id, Ct)); // closed is closed
        Assert.All((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links, link => Assert.False(link.IsOpen));
    }

    [Theory, OnBothEngines]
    public async Task When_a_guardian_takes_consent_back_a_younger_students_links_are_over_at_once(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.People.StudentAsync();
        var guardian = await scene.People.AgreedAsync(student);
        var batch = await scene.SentAsync(student);
        var made = await scene.MadeAsync(batch);
        Assert.NotNull(await scene.Links.ReadAsync(made.Secret, Ct));
        Assert.True((await scene.Links.OfAsync(Teacher, batch.Code, Ct)) is { MayOpen: true, ForGuardian: true });

        Done(await scene.People.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));

        Assert.Null(await scene.Links.ReadAsync(made.Secret, Ct));
        Assert.False((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.MayOpen);
        Assert.NotEmpty(Assert.IsType<Outcome<MadeLetterLink>.Refused>(await scene.Links.MakeAsync(Teacher, batch.Code, 30, Operation(), Ct)).Problems);
    }

    [Theory, OnBothEngines]
    public async Task When_the_students_sign_in_is_closed_links_are_over_at_once(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.GrownAsync();
        var made = await scene.MadeAsync(await scene.SentAsync(student));
        Assert.NotNull(await scene.Links.ReadAsync(made.Secret, Ct));

        await scene.ChangeAsync(async db => (await db.Users.SingleAsync(user => user.Id == student.Account.Value, Ct)).DisabledAt = scene.Clock.GetUtcNow());

        Assert.Null(await scene.Links.ReadAsync(made.Secret, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Of_an_erased_student_no_link_is_left(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.FreshAsync(engine));
        var student = await scene.GrownAsync();
        var batch = await scene.SentAsync(student);
        var made = await scene.MadeAsync(batch);
        foreach (var stage in new[] { Stage.OnItsWayHome, Stage.Home })
        {
            Done(await scene.People.Book<DeskBook>().MoveOnAsync(Teacher, batch.Id, stage, Operation(), Ct));
        }

        Done(await scene.People.Book<PrivacyBook>().EraseAsync(student with { IsFresh = true }, null, "erase", Operation(), Ct));

        Assert.Null(await scene.Links.ReadAsync(made.Secret, Ct));
        await using var db = scene.Database.CreateDbContext();
        Assert.Empty(await db.Set<LetterLink>().ToListAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task It_gives_the_sounds_that_the_letter_plays_and_no_other(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.GrownAsync();
        var (batch, other) = (await scene.CameAsync(student), await scene.CameAsync(student));
        var recordings = new RecordingScene(scene.Database);
        var (one, two) = (batch.Reeds[0].Id, batch.Reeds[1].Id);
        var came = await recordings.SendAsync(Teacher, one, RecordingKind.ArrivalSound, SoundFiles.Mp3(4));
        var goes = await recordings.SendAsync(Teacher, one, RecordingKind.FinalSound, SoundFiles.Mp3(5));
        var said = await recordings.SendAsync(Teacher, two, RecordingKind.VoiceMemo, SoundFiles.Mp3(6));
        var unsaid = await recordings.SendAsync(Teacher, two, RecordingKind.VoiceMemo, SoundFiles.Mp3(7));
        var alone = await recordings.SendAsync(Teacher, two, RecordingKind.ArrivalSound, SoundFiles.Mp3(8));
        var others = await recordings.SendAsync(Teacher, other.Reeds[0].Id, RecordingKind.VoiceMemo, SoundFiles.Mp3(9));
        await scene.ChangeAsync(db => db.Set<Recording>().Where(row => row.Id == said.Id || row.Id == others.Id).ExecuteUpdateAsync(rows => rows.SetProperty(row => row.InLetter, true), Ct));
        await scene.SendAsync(batch);
        await scene.SendAsync(other);
        var made = await scene.MadeAsync(batch);

        var read = (await scene.Links.ReadAsync(made.Secret, Ct))!;

        Assert.Equal([came.Id, goes.Id, said.Id], read.Recordings.Select(recording => recording.Id));
        Assert.DoesNotContain(read.Recordings, recording => recording.MayRemove);
        Assert.Equal(goes.Id, (await scene.Links.OpenAsync(made.Secret, goes.Id, Ct))!.View.Id);
        foreach (var no in new[] { unsaid, alone, others })
        {
            Assert.Null(await scene.Links.OpenAsync(made.Secret, no.Id, Ct));
        }

        Done(await scene.Links.CloseAsync(Teacher, batch.Code, made.Id, Ct));
        Assert.Null(await scene.Links.OpenAsync(made.Secret, goes.Id, Ct));
    }

    [Theory, OnBothEngines]
    public async Task What_was_added_after_the_sending_plays_only_once_a_correction_brings_it(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var recordings = new RecordingScene(scene.Database);
        var batch = await scene.CameAsync(await scene.GrownAsync());
        var (one, two) = (batch.Reeds[0].Id, batch.Reeds[1].Id);
        var came = await recordings.SendAsync(Teacher, one, RecordingKind.ArrivalSound, SoundFiles.Mp3(4));
        var goes = await recordings.SendAsync(Teacher, one, RecordingKind.FinalSound, SoundFiles.Mp3(5));
        var alone = await recordings.SendAsync(Teacher, two, RecordingKind.ArrivalSound, SoundFiles.Mp3(6));
        await scene.SendAsync(batch);
        var made = await scene.MadeAsync(batch);
        var another = await recordings.SendAsync(Teacher, one, RecordingKind.FinalSound, SoundFiles.Mp3(7));
        var paired = await recordings.SendAsync(Teacher, two, RecordingKind.FinalSound, SoundFiles.Mp3(8));

        Assert.Equal([came.Id, goes.Id], await HeardAsync());
        Assert.NotNull(await scene.Links.OpenAsync(made.Secret, goes.Id, Ct));
        foreach (var no in new[] { another, alone, paired })
        {
            Assert.Null(await scene.Links.OpenAsync(made.Secret, no.Id, Ct));
        }

        await scene.CorrectAsync(batch, "The reed sounds otherwise now.");
        Assert.Equal([came.Id, another.Id, alone.Id, paired.Id], await HeardAsync());
        Assert.Null(await scene.Links.OpenAsync(made.Secret, goes.Id, Ct));

        async Task<IEnumerable<RecordingId>> HeardAsync() => (await scene.Links.ReadAsync(made.Secret, Ct))!.Recordings.Select(recording => recording.Id);
    }

    [Theory, OnBothEngines]
    public async Task That_it_was_opened_is_seen_and_noted_the_first_time_and_its_secret_never(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.FreshAsync(engine));
        var batch = await scene.SentAsync(await scene.GrownAsync());
        var made = await scene.MadeAsync(batch);
        var first = scene.Clock.GetUtcNow();

        await Task.WhenAll(Enumerable.Range(0, 6).Select(_ => scene.Links.ReadAsync(made.Secret, Ct)));
        scene.Clock.Advance(TimeSpan.FromSeconds(59));
        await scene.Links.ReadAsync(made.Secret, Ct);
        Assert.Equal(first, Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links).LastOpenedAt!.Value, TimeSpan.FromMilliseconds(1));
        scene.Clock.Advance(TimeSpan.FromSeconds(2));
        await scene.Links.ReadAsync(made.Secret, Ct);
        Assert.Equal(first.AddSeconds(61), Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links).LastOpenedAt!.Value, TimeSpan.FromMilliseconds(1));

        Done(await scene.Links.CloseAsync(Teacher, batch.Code, made.Id, Ct));
        await using var db = scene.Database.CreateDbContext();
        var noted = await db.Set<AuditNote>().Where(note => note.What == made.Id.Value).ToListAsync(Ct);
        Assert.Equal([AuditEvent.LetterLinkMade, AuditEvent.LetterLinkOpened, AuditEvent.LetterLinkClosed], noted.Select(note => note.Event).Order());
    }

    [Theory, OnBothEngines]
    public async Task It_is_made_for_a_sent_letter_for_one_of_three_times_and_not_without_end(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var student = await scene.GrownAsync();
        var unsent = (await scene.People.Intake.BatchAsync(student, reeds: 1)).Batch;
        var batch = await scene.SentAsync(student);

        Assert.IsType<Outcome<MadeLetterLink>.NotFound>(await scene.Links.MakeAsync(Teacher, unsent.Code, 30, Operation(), Ct));
        Assert.Null(await scene.Links.OfAsync(Teacher, unsent.Code, Ct));
        Assert.IsType<Outcome<MadeLetterLink>.NotFound>(await scene.Links.MakeAsync(student, batch.Code, 30, Operation(), Ct));
        Assert.Equal("Days", Assert.Single(Assert.IsType<Outcome<MadeLetterLink>.Refused>(await scene.Links.MakeAsync(Teacher, batch.Code, 3650, Operation(), Ct)).Problems).Field);
        for (var made = 0; made < LetterLink.MostOpen; made++)
        {
            await scene.MadeAsync(batch, 90);
        }

        Assert.IsType<Outcome<MadeLetterLink>.Refused>(await scene.Links.MakeAsync(Teacher, batch.Code, 90, Operation(), Ct));
        Assert.IsType<Outcome<LetterLinkId>.NotFound>(await scene.Links.CloseAsync(Teacher, unsent.Code, (await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links[0].Id, Ct));
    }

    [Theory, OnBothEngines]
    public async Task One_form_that_is_sent_many_times_at_once_makes_one_link(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.OpenAsync(engine));
        var batch = await scene.SentAsync(await scene.GrownAsync());
        var operation = Operation();

        var made = await Task.WhenAll(Enumerable.Range(0, 8).Select(async _ => Done(await scene.Links.MakeAsync(Teacher, batch.Code, 30, operation, Ct))));

        Assert.Single(made.Select(one => one.Id).Distinct());
        Assert.NotNull(await scene.Links.ReadAsync(Assert.Single(made, one => one.Secret is not null).Secret, Ct));
        Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links);
    }

    [Theory, OnBothEngines]
    public async Task A_month_after_its_end_it_goes(ClinicEngine engine)
    {
        var scene = new SentLetterScene(await databases.FreshAsync(engine));
        var batch = await scene.SentAsync(await scene.GrownAsync());
        var (over, closed, open) = (await scene.MadeAsync(batch, 7), await scene.MadeAsync(batch, 90), await scene.MadeAsync(batch, 90));
        Done(await scene.Links.CloseAsync(Teacher, batch.Code, closed.Id, Ct));
        var caretaker = ActivatorUtilities.CreateInstance<RecordsCaretaker>(scene.Database.Services, scene.Clock);

        scene.Clock.Advance(TimeSpan.FromDays(36));
        await caretaker.RoundAsync(Ct);
        Assert.Equal(new HashSet<LetterLinkId> { open.Id, over.Id }, (await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links.Select(link => link.Id).ToHashSet());
        scene.Clock.Advance(TimeSpan.FromDays(2));
        await caretaker.RoundAsync(Ct);

        Assert.Equal(open.Id, Assert.Single((await scene.Links.OfAsync(Teacher, batch.Code, Ct))!.Links).Id);
    }
}
