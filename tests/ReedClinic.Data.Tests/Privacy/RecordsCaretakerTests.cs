using Microsoft.AspNetCore.DataProtection;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging.Abstractions;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>Nothing is kept past its time: OWASP ASVS 5.0, 14.2.7.</summary>
public sealed class RecordsCaretakerTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private readonly FakeTimeProvider _clock = new(new DateTimeOffset(2026, 3, 2, 9, 0, 0, TimeSpan.Zero));

    [Theory, OnBothEngines]
    public async Task What_is_over_goes_and_what_is_not_stays(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var student = await StudentAsync(db, null);
        var account = new AccountId(NewId());
        await Kept.FillAsync(db, student, account, _clock.GetUtcNow());
        _clock.Advance(RetentionRules.UntouchedDraft - TimeSpan.FromDays(1));
        await Kept.FillAsync(db, student, account, _clock.GetUtcNow());
        _clock.Advance(TimeSpan.FromMinutes(1));
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

        _clock.Advance(TimeSpan.FromDays(1));
        var round = await caretaker.RoundAsync(Ct);

        await using var after = db.CreateDbContext();
        Assert.Equal(1, round.Rows);
        Assert.Equal(1, await after.Set<IntakeDraft>().CountAsync(Ct));
        Assert.Equal(0, await Kept.PastTheirTimeAsync(_clock.GetUtcNow(), after));
    }

    [Theory, OnBothEngines]
    public async Task The_last_session_of_an_account_stays_as_the_sign_that_somebody_was_here(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var account = new AccountId(NewId());
        await LiveAsync(db, account);
        _clock.Advance(TimeSpan.FromDays(1));
        await LiveAsync(db, account);
        _clock.Advance(TimeSpan.FromDays(400));

        await Caretaker(db).RoundAsync(Ct);

        await using var context = db.CreateDbContext();
        Assert.Equal(new DateTimeOffset(2026, 3, 3, 9, 0, 0, TimeSpan.Zero), (await context.Set<Session>().SingleAsync(Ct)).SeenAt);
    }

    [Theory, OnBothEngines]
    public async Task A_quiet_student_is_told_a_month_before_and_let_go_of_and_one_who_comes_by_stays(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var quiet = await StudentAsync(db, "quiet@harbour.example");
        var back = await StudentAsync(db, "back@harbour.example");
        var backAccount = new AccountId(NewId());
        await JoinAsync(db, back, backAccount);

        _clock.SetUtcNow(_clock.GetUtcNow().AddYears(Studio.UsualKeepYears) - RetentionRules.Notice - TimeSpan.FromDays(1));
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        _clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal((2, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.Equal(["back@harbour.example", "quiet@harbour.example"], await SendAsync(db));
        await LiveAsync(db, backAccount);
        _clock.Advance(RetentionRules.Notice);
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
        _clock.SetUtcNow(_clock.GetUtcNow().AddYears(Studio.UsualKeepYears) - RetentionRules.Notice);
        Assert.Equal((1, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.Equal(["rosa@harbour.example"], await SendAsync(db));
        _clock.Advance(TimeSpan.FromDays(1));
        await LiveAsync(db, guardian);

        _clock.Advance(RetentionRules.Notice);
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
    }

    [Theory, OnBothEngines]
    public async Task Who_cannot_be_told_goes_thirty_days_later_than_the_rest(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var board = new JobBoard(db, _clock);
        await StudentAsync(db, null); // without an address
        await StudentAsync(db, "quiet@harbour.example"); // who will refuse the mail
        await StudentAsync(db, "pia@harbour.example", AgeAnswer.Younger); // whose guardian never answered
        _clock.SetUtcNow(_clock.GetUtcNow().AddYears(Studio.UsualKeepYears) - RetentionRules.Notice);

        Assert.Equal((1, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.True(await board.FailedAsync((await board.ClaimAsync(JobKind.Mail, Ct))!, "refused", forEver: true, Ct));
        for (var day = 0; day < 2 * (int)RetentionRules.Notice.TotalDays - 1; day += 1)
        {
            _clock.Advance(TimeSpan.FromDays(1));
            if (day % 10 == 0)
            {
                Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
            }
        }

        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        _clock.Advance(TimeSpan.FromDays(1));
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
        _clock.SetUtcNow(_clock.GetUtcNow().AddYears(Studio.UsualKeepYears + 1));

        Assert.Equal((1, 0), Told(await Caretaker(db).RoundAsync(Ct)));
    }

    [Theory, OnBothEngines]
    public async Task A_guardian_who_never_answers_is_forgotten_thirty_days_after_the_link(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        var asked = await StudentAsync(db, null, AgeAnswer.Younger);
        await WardAsync(db, "rosa@harbour.example");
        await using var context = db.CreateDbContext();
        var now = _clock.GetUtcNow();
        var link = TimeSpan.FromDays(7);
        context.Add(new Guardianship(new GuardianshipId(NewId()), asked, "Una", "una@harbour.example", now));
        context.Add(new Ticket(new TicketId(NewId()), TicketPurpose.Guardian, Convert.ToHexStringLower(NewId().ToByteArray()), "una@harbour.example", now, link) { Student = asked });
        (await context.Set<Student>().SingleAsync(student => student.Id == asked, Ct)).Follow(Consent.Asked);
        await context.SaveChangesAsync(Ct);

        _clock.Advance(link + RetentionRules.UnansweredGuardian - TimeSpan.FromDays(1));
        await caretaker.RoundAsync(Ct);
        Assert.Equal(2, await context.Set<Guardianship>().CountAsync(Ct));
        _clock.Advance(TimeSpan.FromDays(1));
        await caretaker.RoundAsync(Ct);

        Assert.Equal("rosa@harbour.example", (await context.Set<Guardianship>().AsNoTracking().SingleAsync(Ct)).Email);
        Assert.Equal(Consent.NotAsked, (await context.Set<Student>().AsNoTracking().SingleAsync(student => student.Id == asked, Ct)).Consent);
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

        _clock.SetUtcNow(_clock.GetUtcNow().AddYears(Studio.UsualKeepYears) - RetentionRules.Notice - TimeSpan.FromDays(1));
        await LiveAsync(db, stays);
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        _clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal((1, 0), Told(await caretaker.RoundAsync(Ct)));
        Assert.Equal(["una@harbour.example"], await SendAsync(db));
        _clock.Advance(RetentionRules.Notice);
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
        _clock.SetUtcNow(_clock.GetUtcNow().AddYears(Studio.UsualKeepYears));
        Assert.Equal((1, 0), Told(await caretaker.RoundAsync(Ct)));
        _clock.Advance(TimeSpan.FromDays(10));
        Assert.Single(await SendAsync(db));

        _clock.Advance(RetentionRules.Notice - TimeSpan.FromDays(1));
        Assert.Equal((0, 0), Told(await caretaker.RoundAsync(Ct)));
        _clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal((0, 1), Told(await caretaker.RoundAsync(Ct)));
    }

    [Theory, OnBothEngines]
    public async Task A_mail_that_is_given_up_or_never_sent_forgets_its_address(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var caretaker = Caretaker(db);
        await using (var context = db.CreateDbContext())
        {
            var now = _clock.GetUtcNow();
            context.Add(new Job { Id = NewId(), Kind = JobKind.Mail, Payload = "to first@harbour.example", MadeAt = now, DueAt = now });
            context.Add(new Job { Id = NewId(), Kind = JobKind.Mail, Payload = "to second@harbour.example", MadeAt = now, DueAt = now });
            await context.SaveChangesAsync(Ct);
        }

        var board = new JobBoard(db, _clock);
        Assert.True(await board.FailedAsync((await board.ClaimAsync(JobKind.Mail, Ct))!, "refused", forEver: true, Ct));
        Assert.Equal([0, 1], await FullAsync());
        _clock.Advance(RetentionRules.UnsentMail - TimeSpan.FromDays(1));
        await caretaker.RoundAsync(Ct);
        Assert.Equal([0, 1], await FullAsync());
        _clock.Advance(TimeSpan.FromDays(1));
        await caretaker.RoundAsync(Ct);
        Assert.Equal([0, 0], await FullAsync());
        Assert.Null(await board.ClaimAsync(JobKind.Mail, Ct));
        _clock.Advance(RetentionRules.EndedJob);
        await caretaker.RoundAsync(Ct);
        Assert.Empty(await FullAsync());

        async Task<IEnumerable<int>> FullAsync()
        {
            await using var context = db.CreateDbContext();
            return (await context.Set<Job>().Where(job => job.Kind == JobKind.Mail).ToListAsync(Ct)).Select(job => job.Payload.Length > 0 ? 1 : 0).Order();
        }
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
        _clock.SetUtcNow(_clock.GetUtcNow().AddYears(Studio.UsualKeepYears));
        var now = _clock.GetUtcNow();
        await using var context = db.CreateDbContext();
        context.Add(new Job { Id = NewId(), Kind = JobKind.Sweep, Once = FormattableString.Invariant($"letting-go:{first.Value}:{now.UtcDateTime:yyyy-MM-dd}"), MadeAt = now, DueAt = now });
        await context.SaveChangesAsync(Ct);

        Assert.Equal((1, 0), Told(await Caretaker(db).RoundAsync(Ct)));
        Assert.Equal(["second@harbour.example"], await SendAsync(db));
    }

    [Theory, OnBothEngines]
    public async Task What_was_left_of_somebody_who_is_gone_goes_with_the_next_round(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var (gone, now) = (new AccountId(NewId()), _clock.GetUtcNow());
        await using var context = db.CreateDbContext();
        context.Add(new Session(new SessionId(NewId()), gone, SignInWay.Password, false, "Firefox", now));
        context.Add(new Guardianship(new GuardianshipId(NewId()), new StudentId(gone.Value), "Rosa", "rosa@harbour.example", now));
        context.Add(new ErasedPerson { Person = gone.Value, ErasedAt = now, BackupsGoneAt = now.AddDays(35) });
        context.Add(new Pseudonym { Person = gone.Value, Mask = NewId() });
        await context.SaveChangesAsync(Ct);
        _clock.Advance(TimeSpan.FromDays(1));

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
        _clock.Advance(TimeSpan.FromDays(1));
        await caretaker.AskForRoundAsync(Ct);

        await using var context = db.CreateDbContext();
        Assert.Equal(2, await context.Set<Job>().CountAsync(job => job.Kind == JobKind.Retention, Ct));
    }

    private async Task ComesByAsync(TestDatabase db, AccountId account)
    {
        await using var context = db.CreateDbContext();
        await SignInOfAsync(context, account);
        await context.SaveChangesAsync(Ct);
        _clock.SetUtcNow(_clock.GetUtcNow().AddYears(Studio.UsualKeepYears));
        await Caretaker(db).RoundAsync(Ct);
        await SendAsync(db);
        _clock.Advance(RetentionRules.Notice);

        for (var at = 1; ; at++)
        {
            var between = new InterruptedDatabases(db, at, other => other.Add(new Session(new SessionId(NewId()), account, SignInWay.Password, false, "Firefox", _clock.GetUtcNow())));
            var letGo = (await Caretaker(db, between).RoundAsync(Ct)).LetGo;
            Assert.Equal(between.WasThere ? 0 : 1, letGo);
            if (!between.WasThere)
            {
                Assert.True(at > 3); // it was there at each moment before
                break;
            }

            await context.Set<Session>().ExecuteDeleteAsync(Ct);
        }
    }

    private static (int Told, int LetGo) Told(RetentionRound round) => (round.Told, round.LetGo);

    private Outbox Outbox(TestDatabase db) => new(db.Services.GetRequiredService<IDataProtectionProvider>(), _clock);

    private RecordsCaretaker Caretaker(TestDatabase db, IDbContextFactory<ClinicDb>? databases = null) =>
        new(databases ?? db, _clock, Outbox(db), db.Services.GetRequiredService<AuditChain>(), new PrivacySettings(35), NullLogger<RecordsCaretaker>.Instance);

    // Sends what waits, and says to whom.
    private async Task<IEnumerable<string>> SendAsync(TestDatabase db)
    {
        var board = new JobBoard(db, _clock);
        var sent = new List<string>();
        while (await board.ClaimAsync(JobKind.Mail, Ct) is { } job)
        {
            sent.Add(Outbox(db).Open(job)!.To);
            Assert.True(await board.DoneAsync(job, Ct));
        }

        return sent.Order(StringComparer.Ordinal);
    }

    private async Task<StudentId> StudentAsync(TestDatabase db, string? email, AgeAnswer age = AgeAnswer.OldEnough)
    {
        await using var context = db.CreateDbContext();
        var student = new Student(new StudentId(Guid.CreateVersion7(_clock.GetUtcNow())), "Ines");
        student.WriteTo(email);
        student.SayAge(age);
        context.Add(student);
        await context.SaveChangesAsync(Ct);
        return student.Id;
    }

    // A younger student whose guardian has agreed.
    private async Task<AccountId> WardAsync(TestDatabase db, string guardianEmail)
    {
        var (now, account) = (_clock.GetUtcNow(), new AccountId(NewId()));
        await using var context = db.CreateDbContext();
        var student = new Student(new StudentId(Guid.CreateVersion7(now)), "Pia");
        student.SayAge(AgeAnswer.Younger);
        student.Follow(Consent.Given);
        var guardianship = new Guardianship(new GuardianshipId(NewId()), student.Id, "Rosa", guardianEmail, now);
        guardianship.Give(account, now);
        context.AddRange(student, guardianship);
        await SignInOfAsync(context, account);
        await context.SaveChangesAsync(Ct);
        return account;
    }

    private static async Task JoinAsync(TestDatabase db, StudentId id, AccountId account)
    {
        await using var context = db.CreateDbContext();
        (await context.Set<Student>().SingleAsync(student => student.Id == id, Ct)).JoinAccount(account);
        await context.SaveChangesAsync(Ct);
    }

    private async Task LiveAsync(TestDatabase db, AccountId account)
    {
        await using var context = db.CreateDbContext();
        await SignInOfAsync(context, account);
        context.Add(new Session(new SessionId(NewId()), account, SignInWay.Password, false, "Firefox", _clock.GetUtcNow()));
        await context.SaveChangesAsync(Ct);
    }

    internal static async Task SignInOfAsync(ClinicDb context, AccountId account)
    {
        if (!await context.Users.AnyAsync(user => user.Id == account.Value, Ct))
        {
            context.Add(new ClinicAccount { Id = account.Value, UserName = account.Value.ToString(), DisplayName = "Ines" });
        }
    }
}
