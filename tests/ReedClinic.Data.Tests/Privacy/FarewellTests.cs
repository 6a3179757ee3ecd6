using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Privacy;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>Nobody's records are kept past their time, and nobody's go unannounced who can be told: OWASP ASVS 5.0, 14.2.7.</summary>
public sealed class FarewellTests(TestDatabases databases) : CaretakerScene, IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task A_quiet_student_is_told_a_month_before_and_let_go_of_and_one_who_comes_by_stays(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var quiet = await StudentAsync(db, "quiet@harbour.example");
        var back = await StudentAsync(db, "back@harbour.example");
        var backAccount = new AccountId(NewId());
        await JoinAsync(db, back, backAccount);

        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears) - RetentionRules.Notice - TimeSpan.FromDays(1));
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        Clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal((2, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.Equal(["back@harbour.example", "quiet@harbour.example"], await SendAsync(db));
        await LiveAsync(db, backAccount);
        Clock.Advance(RetentionRules.Notice);
        Assert.Equal((0, 1), Told(await caretaker.RoundAsync(Ct)));

        await using var context = db.CreateDbContext();
        Assert.Equal(back, (await context.Set<Student>().SingleAsync(Ct)).Id);
        Assert.Equal(quiet.Value, (await context.Set<ErasedPerson>().SingleAsync(Ct)).Person);
        Assert.Equal(quiet.Value, (await context.Set<AuditNote>().SingleAsync(note => note.Event == AuditEvent.LetGo, Ct)).Whom);
        var mails = (await context.Set<Job>().Where(job => job.Kind == JobKind.Mail && job.DoneAt == null).ToListAsync(Ct)).Select(job => Outbox(db).Open(job)!).ToList();
        Assert.Equal(["quiet@harbour.example"], mails.Where(mail => mail.Kind == MailKind.Erased).Select(mail => mail.To));
    }

    [Theory, OnBothEngines]
    public async Task A_younger_students_records_stay_when_the_guardian_who_was_told_comes_by(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var guardian = await WardAsync(db, "rosa@harbour.example");
        await LiveAsync(db, guardian);
        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears) - RetentionRules.Notice);
        Assert.Equal((1, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.Equal(["rosa@harbour.example"], await SendAsync(db));
        Clock.Advance(TimeSpan.FromDays(1));
        await LiveAsync(db, guardian);

        Clock.Advance(RetentionRules.Notice);
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
    }

    [Theory, OnBothEngines]
    public async Task When_a_younger_students_records_go_the_guardian_is_told_of_the_student_and_not_of_themselves(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var guardian = await WardAsync(db, "rosa@harbour.example");
        await LiveAsync(db, guardian);
        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears) - RetentionRules.Notice);
        await caretaker.RoundAsync(Ct);
        await SendAsync(db);

        Clock.Advance(RetentionRules.Notice);
        Assert.Equal(1, (await caretaker.RoundAsync(Ct)).LetGo);

        await using var context = db.CreateDbContext();
        var mails = (await context.Set<Job>().Where(job => job.Kind == JobKind.Mail && job.DoneAt == null).ToListAsync(Ct)).Select(job => Outbox(db).Open(job)!).ToList();
        Assert.DoesNotContain(mails, mail => mail.Kind == MailKind.Erased);
        Assert.Equal(("rosa@harbour.example", "Pia"), Assert.Single(mails.Where(mail => mail.Kind == MailKind.WardErased).Select(mail => (mail.To, mail.Ward))));
    }

    [Theory, OnBothEngines]
    public async Task A_guardian_who_was_closed_long_ago_answers_for_nobody_after_the_next_round(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var guardian = await WardAsync(db, "rosa@harbour.example");
        await using var context = db.CreateDbContext();
        await context.Users.Where(user => user.Id == guardian.Value).ExecuteUpdateAsync(row => row.SetProperty(user => user.DisabledAt, Clock.GetUtcNow()), Ct);

        await Caretaker(db).RoundAsync(Ct);

        Assert.Equal(Consent.NotAsked, (await context.Set<Student>().SingleAsync(Ct)).Consent);
        Assert.Empty(await context.Set<Guardianship>().ToListAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task Who_cannot_be_told_goes_thirty_days_later_than_the_rest(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var board = new JobBoard(db, Clock);
        await StudentAsync(db, null); // without an address
        await StudentAsync(db, "quiet@harbour.example"); // who will refuse the mail
        await StudentAsync(db, "pia@harbour.example", AgeAnswer.Younger); // whose guardian never answered
        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears) - RetentionRules.Notice);

        Assert.Equal((1, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.True(await board.FailedAsync((await board.ClaimAsync(JobKind.Mail, Ct))!, "refused", forEver: true, Ct));
        for (var day = 0; day < 2 * (int)RetentionRules.Notice.TotalDays - 1; day += 1)
        {
            Clock.Advance(TimeSpan.FromDays(1));
            if (day % 10 == 0)
            {
                Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
            }
        }

        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        Clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal((0, 3), Told(await caretaker.RoundAsync(Ct)));

        await using var context = db.CreateDbContext();
        Assert.False(await context.Set<Student>().AnyAsync(Ct));
        Assert.False(await context.Set<Job>().AnyAsync(job => job.Kind == JobKind.Mail && job.DoneAt == null && job.GaveUpAt == null, Ct)); // none is written to
    }

    [Theory, OnBothEngines]
    public async Task Who_was_never_tried_is_told_first_however_late(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await StudentAsync(db, "quiet@harbour.example");
        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears + 1));

        Assert.Equal((1, 0), Told(await Caretaker(db).RoundAsync(Ct)));
    }

    [Theory, OnBothEngines]
    public async Task A_guardian_who_answers_for_nobody_any_more_is_told_and_let_go_of(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var (gone, stays) = (new AccountId(NewId()), await WardAsync(db, "rosa@harbour.example"));
        await LiveAsync(db, gone);
        await LiveAsync(db, stays);
        await using var context = db.CreateDbContext();
        (await context.Users.SingleAsync(user => user.Id == gone.Value, Ct)).Email = "una@harbour.example";
        await context.SaveChangesAsync(Ct);

        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears) - RetentionRules.Notice - TimeSpan.FromDays(1));
        await LiveAsync(db, stays);
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        Clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal((1, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.Equal(["una@harbour.example"], await SendAsync(db));
        Clock.Advance(RetentionRules.Notice);
        Assert.Equal((0, 1), Told(await caretaker.RoundAsync(Ct)));

        Assert.Equal([stays.Value], await context.Users.Select(user => user.Id).ToListAsync(Ct));
        Assert.Equal(gone.Value, (await context.Set<ErasedPerson>().SingleAsync(Ct)).Person);
    }

    [Theory, OnBothEngines]
    public async Task Such_a_guardian_who_comes_by_at_any_moment_of_the_round_stays(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var account = new AccountId(NewId());
        await LiveAsync(db, account);
        await using (var context = db.CreateDbContext())
        {
            (await context.Users.SingleAsync(Ct)).Email = "una@harbour.example";
            await context.SaveChangesAsync(Ct);
        }

        await ComesByAsync(db, account);
    }

    [Theory, OnBothEngines]
    public async Task The_month_runs_from_when_the_mail_was_sent(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        await StudentAsync(db, "quiet@harbour.example");
        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears));
        Assert.Equal((1, 0), Told(await caretaker.RoundAsync(Ct)));
        Clock.Advance(TimeSpan.FromDays(10));
        Assert.Single(await SendAsync(db));

        Clock.Advance(RetentionRules.Notice - TimeSpan.FromDays(1));
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        Clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal((0, 1), Told(await caretaker.RoundAsync(Ct)));
    }

    [Theory, OnBothEngines]
    public async Task Who_comes_by_at_any_moment_of_the_round_stays(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var account = new AccountId(NewId());
        await JoinAsync(db, await StudentAsync(db, "quiet@harbour.example"), account);
        await ComesByAsync(db, account);
    }

    [Theory, OnBothEngines]
    public async Task A_guardian_who_comes_by_at_any_moment_of_the_round_keeps_the_records(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await ComesByAsync(db, await WardAsync(db, "rosa@harbour.example"));
    }

    [Theory, OnBothEngines]
    public async Task One_person_who_fails_keeps_nobody_waiting(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var first = await StudentAsync(db, "first@harbour.example");
        await StudentAsync(db, "second@harbour.example");
        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears));
        var now = Clock.GetUtcNow();
        await using var context = db.CreateDbContext();
        context.Add(new Job { Id = NewId(), Kind = JobKind.Sweep, Once = FormattableString.Invariant($"letting-go:{first.Value}:{now.UtcDateTime:yyyy-MM-dd}"), MadeAt = now, DueAt = now });
        await context.SaveChangesAsync(Ct);

        Assert.Equal((1, 0), Told(await Caretaker(db).RoundAsync(Ct)));
        Assert.Equal(["second@harbour.example"], await SendAsync(db));
    }
}
