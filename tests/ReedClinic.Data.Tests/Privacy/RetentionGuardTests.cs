using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Privacy;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Privacy;

/// <summary>What the round that lets things go must leave, and what it must not: OWASP ASVS 5.0, 14.2.7.</summary>
public sealed class RetentionGuardTests(TestDatabases databases) : CaretakerScene, IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Whoever_works_here_stays_however_long_they_are_away_and_keeps_the_sign_in_when_their_reeds_go(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var (teacher, sends) = (new AccountId(NewId()), new AccountId(NewId()));
        await TeachesAsync(db, teacher);
        await TeachesAsync(db, sends);
        await JoinAsync(db, await StudentAsync(db, "sends@harbour.example"), sends);

        Clock.SetUtcNow(Clock.GetUtcNow().AddYears(Studio.UsualKeepYears));
        Assert.Equal((1, 0), Told(await Caretaker(db).RoundAsync(Ct)));
        Assert.Equal(["sends@harbour.example"], await SendAsync(db));
        Clock.Advance(RetentionRules.Notice);
        Assert.Equal((0, 1), Told(await Caretaker(db).RoundAsync(Ct)));

        await using var context = db.CreateDbContext();
        Assert.Equal(2, await context.Users.CountAsync(Ct));
        Assert.Equal(0, await context.Set<Student>().CountAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task While_a_parcel_is_at_the_studio_nobody_is_told_that_their_records_go(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var batch = (await scene.Intake.BatchAsync(await scene.StudentAsync("Wim Ode", AgeAnswer.OldEnough))).Batch;
        Clock.SetUtcNow(TimeProvider.System.GetUtcNow().AddYears(Studio.UsualKeepYears + 1));
        await using var context = db.CreateDbContext();

        await context.Set<Batch>().ExecuteUpdateAsync(row => row.SetProperty(one => one.Stage, Stage.Here), Ct);
        Assert.Equal((0, 0), Told(await Caretaker(db).RoundAsync(Ct)));
        await context.Set<Batch>().ExecuteUpdateAsync(row => row.SetProperty(one => one.Stage, Stage.Home), Ct);

        Assert.Equal((1, 0), Told(await Caretaker(db).RoundAsync(Ct)));
        Assert.NotNull(batch);
    }

    [Theory, OnBothEngines]
    public async Task A_mail_that_is_being_sent_is_not_given_up_and_an_erased_person_is_forgotten_with_the_last_back_up(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using var context = db.CreateDbContext();
        var now = Clock.GetUtcNow();
        var later = now + RetentionRules.UnsentMail;
        context.Add(new Job { Id = NewId(), Kind = JobKind.Mail, Payload = "to first@harbour.example", MadeAt = now, DueAt = now, LeasedUntil = later.AddMinutes(1) });
        context.Add(new ErasedPerson { Person = NewId(), ErasedAt = now, BackupsGoneAt = later.AddDays(1) });
        await context.SaveChangesAsync(Ct);

        Clock.SetUtcNow(later);
        await Caretaker(db).RoundAsync(Ct);
        Assert.Null((await context.Set<Job>().AsNoTracking().SingleAsync(job => job.Kind == JobKind.Mail, Ct)).GaveUpAt);
        Assert.Equal(1, await context.Set<ErasedPerson>().CountAsync(Ct));
        Clock.Advance(TimeSpan.FromDays(1));
        await Caretaker(db).RoundAsync(Ct);

        Assert.Equal(0, await context.Set<ErasedPerson>().CountAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task What_is_half_typed_at_the_bench_goes_in_its_time_and_what_is_left_of_a_student_who_is_gone_at_once(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var batch = (await scene.Intake.BatchAsync(await scene.StudentAsync("Wim Ode", AgeAnswer.OldEnough))).Batch;
        var (gone, now) = (new StudentId(NewId()), Clock.GetUtcNow());
        await using var context = db.CreateDbContext();
        var draft = BenchDraft.For(batch.Reeds[0].Id, Teacher.Account);
        draft.Keep("half typed", now);
        var note = new StaffNote(gone);
        note.Write("likes a long tip", Teacher.Account, now);
        context.AddRange(draft, note, new Ticket(new TicketId(NewId()), TicketPurpose.Guardian, new string('a', Ticket.HashLength), "una@harbour.example", now, TimeSpan.FromDays(400)) { Student = gone });
        await context.SaveChangesAsync(Ct);

        await Caretaker(db).RoundAsync(Ct);
        Assert.Equal((1, 0, 0), await LeftAsync());
        Clock.Advance(RetentionRules.UntouchedDraft);
        await Caretaker(db).RoundAsync(Ct);

        Assert.Equal((0, 0, 0), await LeftAsync());

        async Task<(int Drafts, int Notes, int Tickets)> LeftAsync() =>
            (await context.Set<BenchDraft>().CountAsync(Ct), await context.Set<StaffNote>().CountAsync(Ct), await context.Set<Ticket>().CountAsync(ticket => ticket.Student == gone, Ct));
    }

    private static async Task TeachesAsync(TestDatabase db, AccountId account)
    {
        await using var context = db.CreateDbContext();
        await SignInOfAsync(context, account);
        context.Add(new IdentityUserRole<Guid> { UserId = account.Value, RoleId = (await context.Roles.SingleAsync(role => role.Name == nameof(Role.Teacher), Ct)).Id });
        await context.SaveChangesAsync(Ct);
        (await context.Users.SingleAsync(user => user.Id == account.Value, Ct)).Email = $"{account.Value:N}@harbour.example";
        await context.SaveChangesAsync(Ct);
    }
}
