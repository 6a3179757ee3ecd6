using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Privacy;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>Nothing is kept past its time: OWASP ASVS 5.0, 14.2.7.</summary>
public sealed class RecordsCaretakerTests(TestDatabases databases) : CaretakerScene, IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task What_is_over_goes_and_what_is_not_stays(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var student = await StudentAsync(db, null);
        var account = new AccountId(NewId());
        await Kept.FillAsync(db, student, account, Clock.GetUtcNow());
        Clock.Advance(RetentionRules.UntouchedDraft - TimeSpan.FromDays(1));
        await Kept.FillAsync(db, student, account, Clock.GetUtcNow());
        Clock.Advance(TimeSpan.FromMinutes(1));
        await LiveAsync(db, account);
        await caretaker.RoundAsync(Ct);
        await using (var context = db.CreateDbContext())
        {
            Assert.Equal(2, await context.Set<IntakeDraft>().CountAsync(Ct)); // one day is missing
            Assert.Equal(1, await context.Set<Ticket>().CountAsync(Ct));
            Assert.Equal(2, await context.Set<Session>().CountAsync(Ct));
            Assert.Equal(1, await context.Set<DoneOperation>().CountAsync(Ct));
            Assert.Equal(1, await context.Set<Job>().CountAsync(job => job.Kind == JobKind.Mail, Ct));
        }

        Clock.Advance(TimeSpan.FromDays(1));
        var round = await caretaker.RoundAsync(Ct);

        await using var after = db.CreateDbContext();
        Assert.Equal(1, round.Rows);
        Assert.Equal(1, await after.Set<IntakeDraft>().CountAsync(Ct));
        Assert.Equal(0, await Kept.PastTheirTimeAsync(Clock.GetUtcNow(), after));
    }

    [Theory, OnBothEngines]
    public async Task The_last_session_of_an_account_stays_as_the_sign_that_somebody_was_here(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var account = new AccountId(NewId());
        await LiveAsync(db, account);
        Clock.Advance(TimeSpan.FromDays(1));
        await LiveAsync(db, account);
        Clock.Advance(TimeSpan.FromDays(400));

        await Caretaker(db).RoundAsync(Ct);

        await using var context = db.CreateDbContext();
        Assert.Equal(new DateTimeOffset(2026, 3, 3, 9, 0, 0, TimeSpan.Zero), (await context.Set<Session>().SingleAsync(Ct)).SeenAt);
    }

    [Theory, OnBothEngines]
    public async Task A_guardian_who_never_answers_or_says_no_is_forgotten_thirty_days_after_the_link(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var asked = await StudentAsync(db, null, AgeAnswer.Younger);
        await WardAsync(db, "rosa@harbour.example");
        await using var context = db.CreateDbContext();
        var now = Clock.GetUtcNow();
        var link = TimeSpan.FromDays(7);
        context.Add(new Guardianship(new GuardianshipId(NewId()), asked, "Una", "una@harbour.example", now));
        context.Add(new Ticket(new TicketId(NewId()), TicketPurpose.Guardian, Convert.ToHexStringLower(NewId().ToByteArray()), "una@harbour.example", now, link) { Student = asked });
        (await context.Set<Student>().SingleAsync(student => student.Id == asked, Ct)).Follow(Consent.Asked);
        var refused = await StudentAsync(db, null, AgeAnswer.Younger);
        var no = new Guardianship(new GuardianshipId(NewId()), refused, "Liv", "liv@harbour.example", now);
        no.Decline(now);
        context.Add(no);
        (await context.Set<Student>().SingleAsync(student => student.Id == refused, Ct)).Follow(no.Stands);
        context.Add(new Ticket(new TicketId(NewId()), TicketPurpose.Guardian, Convert.ToHexStringLower(NewId().ToByteArray()), "liv@harbour.example", now, link) { Student = refused });
        await context.SaveChangesAsync(Ct);

        Clock.Advance(link + RetentionRules.UnansweredGuardian - TimeSpan.FromDays(1));
        await caretaker.RoundAsync(Ct);
        Assert.Equal(3, await context.Set<Guardianship>().CountAsync(Ct));
        Clock.Advance(TimeSpan.FromDays(1));
        await caretaker.RoundAsync(Ct);

        Assert.Equal(Consent.NotAsked, (await context.Set<Student>().AsNoTracking().SingleAsync(student => student.Id == refused, Ct)).Consent);
        Assert.Equal("rosa@harbour.example", (await context.Set<Guardianship>().AsNoTracking().SingleAsync(Ct)).Email);
        Assert.Equal(Consent.NotAsked, (await context.Set<Student>().AsNoTracking().SingleAsync(student => student.Id == asked, Ct)).Consent);
    }

    [Theory, OnBothEngines]
    public async Task A_mail_that_is_given_up_or_never_sent_forgets_its_address(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        await using (var context = db.CreateDbContext())
        {
            var now = Clock.GetUtcNow();
            context.Add(new Job { Id = NewId(), Kind = JobKind.Mail, Payload = "to first@harbour.example", MadeAt = now, DueAt = now });
            context.Add(new Job { Id = NewId(), Kind = JobKind.Mail, Payload = "to second@harbour.example", MadeAt = now, DueAt = now });
            await context.SaveChangesAsync(Ct);
        }

        var board = new JobBoard(db, Clock);
        Assert.True(await board.FailedAsync((await board.ClaimAsync(JobKind.Mail, Ct))!, "refused", forEver: true, Ct));
        Assert.Equal([0, 1], await FullAsync());
        Clock.Advance(RetentionRules.UnsentMail - TimeSpan.FromDays(1));
        await caretaker.RoundAsync(Ct);
        Assert.Equal([0, 1], await FullAsync());
        Clock.Advance(TimeSpan.FromDays(1));
        await caretaker.RoundAsync(Ct);
        Assert.Equal([0, 0], await FullAsync());
        Assert.Null(await board.ClaimAsync(JobKind.Mail, Ct));
        Clock.Advance(RetentionRules.EndedJob);
        await caretaker.RoundAsync(Ct);
        Assert.Empty(await FullAsync());

        async Task<IEnumerable<int>> FullAsync()
        {
            await using var context = db.CreateDbContext();
            return (await context.Set<Job>().Where(job => job.Kind == JobKind.Mail).ToListAsync(Ct)).Select(job => job.Payload.Length > 0 ? 1 : 0).Order();
        }
    }

    [Theory, OnBothEngines]
    public async Task What_was_left_of_somebody_who_is_gone_goes_with_the_next_round(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var (gone, now) = (new AccountId(NewId()), Clock.GetUtcNow());
        await using var context = db.CreateDbContext();
        context.Add(new Session(new SessionId(NewId()), gone, SignInWay.Password, false, "Firefox", now));
        context.Add(new Guardianship(new GuardianshipId(NewId()), new StudentId(gone.Value), "Rosa", "rosa@harbour.example", now));
        context.Add(new ErasedPerson { Person = gone.Value, ErasedAt = now, BackupsGoneAt = now.AddDays(35) });
        context.Add(new Pseudonym { Person = gone.Value, Mask = NewId() });
        await context.SaveChangesAsync(Ct);
        Clock.Advance(TimeSpan.FromDays(1));

        Assert.Equal(3, (await Caretaker(db).RoundAsync(Ct)).Rows);

        context.Add(new AuditNote { Id = NewId(), At = now, Event = AuditEvent.LinkUsed, Whom = gone.Value });
        await context.SaveChangesAsync(Ct);
        await db.Services.GetRequiredService<AuditChain>().SealAsync(Ct);
        Assert.Null((await context.Set<AuditEntry>().SingleAsync(Ct)).Whom);
        Assert.False(await context.Set<Pseudonym>().AsNoTracking().AnyAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_round_is_asked_for_once_a_day(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        await caretaker.AskForRoundAsync(Ct);
        await caretaker.AskForRoundAsync(Ct);
        Clock.Advance(TimeSpan.FromDays(1));
        await caretaker.AskForRoundAsync(Ct);

        await using var context = db.CreateDbContext();
        Assert.Equal(2, await context.Set<Job>().CountAsync(job => job.Kind == JobKind.Retention, Ct));
    }
}
