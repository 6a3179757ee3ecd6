using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Guardians;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.Tests.Engine;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Guardians.GuardianScene;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Guardians;

/// <summary>When a guardian takes consent back, it is over at once: OWASP ASVS 5.0, 8.3.2.</summary>
public sealed class WithdrawalTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Nobody_works_on_the_reeds_any_more_and_they_can_still_go_home(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var scene = new GuardianScene(db);
        var (student, guardian, batch) = await BatchAsync(scene);
        var reed = batch.Reeds[0].Id;
        var note = Done(await scene.Book<BenchBook>().RecordAsync(Teacher, reed, Value(Note.Of("thin")), Operation(), Ct));
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));
        var letter = (await scene.Book<LetterBook>().ReadAsync(Teacher, batch.Code, Ct))!;

        Assert.NotEmpty(Refused(await scene.Book<BenchBook>().RecordAsync(Teacher, reed, Value(Note.Of("more")), Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<BenchBook>().CorrectAsync(Teacher, reed, note.Tail, Value(Note.Of("other")), Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<BenchBook>().UndoAsync(Teacher, reed, null, Operation(), Ct)));
        Assert.False(await scene.Book<BenchDraftBook>().KeepAsync(Teacher, reed, "half typed", Ct));
        Assert.NotEmpty(Refused(await scene.Book<CommonThreadBook>().ChooseAsync(Teacher, batch.Code, new ThreadChoice(LessonWords: "Corners."), Guid.Empty, Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<ArrivalBook>().RecordAsync(Teacher, batch.Id, new SeenParcel(new Dictionary<ReedId, ReedArrival>(), "wet"), batch.Version, Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<LetterBook>().SaveAsync(Teacher, batch.Code, new Dictionary<string, string>(), letter.Version, Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<LetterBook>().AnswerAsync(Teacher, batch.Code, batch.Questions[0].Id, "Yes.", Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<LetterBook>().SendAsync(Teacher, batch.Code, letter.Mark, Operation(), Ct)));

        var home = Done(await scene.Book<DeskBook>().MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, Operation(), Ct));
        Assert.Equal(Stage.OnItsWayHome, home.Batch.Stage);
    }

    [Theory, OnBothEngines]
    public async Task The_student_is_signed_out_and_reads_but_writes_nothing(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var scene = new GuardianScene(db);
        var (student, guardian, batch) = await BatchAsync(scene);
        var draft = await scene.Intake.DraftAsync(student, Form());
        var sessions = scene.Book<SessionRegister>();
        var session = (await sessions.BeginAsync(student.Account, SignInWay.Password, "Firefox", null, Ct))!.Value;

        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));

        Assert.Null(await sessions.WhoAsync(session, acting: true, Ct));
        Assert.NotEmpty(Refused(await scene.Intake.Intake.StartAsync(student, Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Intake.Intake.SaveAsync(student, draft.Id, Form(2), draft.Version, Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Intake.Intake.SubmitAsync(student, draft.Id, Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<StudentBook>().DescribeAsync(student, new StudentDetails(null, null, null, "Malta"), default, Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<GuardianBook>().AskAsync(student, "Somebody else", NewEmail("else"), Operation(), Ct)));
        Assert.NotNull(await scene.Book<DeskBook>().BatchAsync(student, batch.Code, Ct));
    }

    [Theory, OnBothEngines]
    public async Task It_needs_a_fresh_sign_in_is_done_once_and_can_be_given_again(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var (student, guardian, batch) = await BatchAsync(scene);
        var ward = student.Student!.Value;
        var operation = Operation();

        var stale = await scene.Book<WardBook>().WithdrawAsync(guardian with { IsFresh = false }, ward, operation, Ct);
        Assert.Equal(FreshSignIn.Field, Assert.Single(Refused(stale)).Field);
        Assert.NotNull(await scene.Book<DeskBook>().BatchAsync((await scene.Book<AccountBook>().ActorFor(guardian.Account, Ct))!, batch.Code, Ct));

        Assert.Equal(Consent.Withdrawn, Done(await scene.Book<WardBook>().WithdrawAsync(guardian, ward, operation, Ct)).Consent);
        Assert.Null(await scene.Book<DeskBook>().BatchAsync((await scene.Book<AccountBook>().ActorFor(guardian.Account, Ct))!, batch.Code, Ct));

        Assert.Equal(Consent.Given, Done(await scene.Book<WardBook>().GiveAgainAsync(guardian, ward, Operation(), Ct)).Consent);
        Assert.Equal(Consent.Given, Done(await scene.Book<WardBook>().WithdrawAsync(guardian, ward, operation, Ct)).Consent); // the first answer was given long ago
        Done(await scene.Book<BenchBook>().RecordAsync(Teacher, batch.Reeds[0].Id, Value(Note.Of("again")), Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task No_correction_of_the_age_is_a_way_past_it_and_nobody_corrects_it_unnoticed(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (student, guardian, batch) = await BatchAsync(scene);
        var (ward, fresh) = (student.Student!.Value, Teacher with { IsFresh = true });
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, ward, Operation(), Ct));
        var told = (await scene.MailsAsync()).Count;

        Assert.Equal(FreshSignIn.Field, Assert.Single(Refused(await scene.Book<StudentBook>().CorrectAgeAsync(Teacher, ward, AgeAnswer.OldEnough, Operation(), Ct))).Field);
        Done(await scene.Book<StudentBook>().CorrectAgeAsync(fresh, ward, AgeAnswer.OldEnough, Operation(), Ct));
        Assert.Null(await scene.Book<WardBook>().ReadAsync(guardian, ward, Ct));
        Assert.Empty((await scene.Book<AccountBook>().ActorFor(guardian.Account, Ct))!.Wards);
        var again = Done(await scene.Book<StudentBook>().CorrectAgeAsync(fresh, ward, AgeAnswer.Younger, Operation(), Ct));

        Assert.Equal(Consent.Withdrawn, again.Consent);
        Assert.NotEmpty(Refused(await scene.Book<GuardianBook>().AskAsync(student, "Somebody else", NewEmail("else"), Operation(), Ct)));
        Assert.NotEmpty(Refused(await scene.Book<BenchBook>().RecordAsync(Teacher, batch.Reeds[0].Id, Value(Note.Of("more")), Operation(), Ct)));
        var mails = (await scene.MailsAsync()).Skip(told).ToList();
        await using var context = db.CreateDbContext();
        string[] both = [(await context.Set<Guardianship>().SingleAsync(Ct)).Email, (await context.Set<Student>().SingleAsync(Ct)).Email!];
        Assert.Equal([.. both, .. both], mails.Select(mail => mail.To));
        Assert.Equal([MailKind.FoundOldEnough, MailKind.FoundOldEnough, MailKind.FoundYounger, MailKind.FoundYounger], mails.Select(mail => mail.Kind));
        Assert.Equal(Consent.Given, Done(await scene.Book<WardBook>().GiveAgainAsync(guardian, ward, Operation(), Ct)).Consent);
    }

    [Theory, OnBothEngines]
    public async Task When_the_guardian_has_themselves_erased_another_can_be_asked_and_nothing_goes_on_before(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (student, guardian, batch) = await BatchAsync(scene);
        var draft = await scene.Intake.DraftAsync(student, Form());
        Assert.Contains("Take your consent back first", Assert.Single(Refused(await scene.Book<PrivacyBook>().EraseAsync(guardian, null, "erase", Operation(), Ct))).Message, StringComparison.Ordinal);
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));
        Done(await scene.Book<PrivacyBook>().EraseAsync(guardian, null, "erase", Operation(), Ct));

        Assert.Equal(IntakeBook.GuardianField, Assert.Single(Refused(await scene.Intake.Intake.SubmitAsync(student, draft.Id, Operation(), Ct))).Field);
        Assert.NotEmpty(Refused(await scene.Book<BenchBook>().RecordAsync(Teacher, batch.Reeds[0].Id, Value(Note.Of("more")), Operation(), Ct)));
        var letter = (await scene.Book<LetterBook>().ReadAsync(Teacher, batch.Code, Ct))!;
        Assert.NotEmpty(Refused(await scene.Book<LetterBook>().SaveAsync(Teacher, batch.Code, new Dictionary<string, string>(), letter.Version, Operation(), Ct)));

        await scene.AgreedAsync(student, "Another Kestrel");
        Done(await scene.Book<BenchBook>().RecordAsync(Teacher, batch.Reeds[0].Id, Value(Note.Of("again")), Operation(), Ct));
        Done(await scene.Intake.Intake.SubmitAsync(student, draft.Id, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_mail_that_waits_goes_with_its_receiver(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (student, guardian, _) = await BatchAsync(scene);
        Done(await scene.Book<WardBook>().WithdrawAsync(guardian, student.Student!.Value, Operation(), Ct));
        await using var context = db.CreateDbContext();
        var (own, theirs) = ((await context.Set<Student>().SingleAsync(Ct)).Email!, (await context.Set<Guardianship>().SingleAsync(Ct)).Email);
        var studio = new Studio("Quay Reeds", new AccountId(NewId()), TimeProvider.System.GetUtcNow());
        context.Add(studio);
        await context.SaveChangesAsync(Ct);
        await scene.Book<SignUpBook>().AskAsync(theirs, Operation(), Ct);
        Assert.Contains(await scene.MailsAsync(), mail => mail.Kind == MailKind.HaveAccount && mail.To == theirs);

        Done(await scene.Book<PrivacyBook>().EraseAsync(guardian, null, "erase", Operation(), Ct));
        Assert.DoesNotContain(await scene.MailsAsync(), mail => mail.To == theirs && mail.Kind is not (MailKind.GuardianAsked or MailKind.Erased));
        Assert.Contains(await scene.MailsAsync(), mail => mail.Kind == MailKind.GuardianAnswered && mail.To == own);
        Done(await scene.Book<PrivacyBook>().EraseAsync(student with { IsFresh = true }, null, "erase", Operation(), Ct));
        Assert.DoesNotContain(await scene.MailsAsync(), mail => mail.Kind != MailKind.Erased && (mail.To == own || mail.To == theirs)); // but the last one, that it was done
    }

    [Theory, OnBothEngines]
    public async Task It_stands_also_when_the_student_is_saved_at_the_same_moment(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var scene = new GuardianScene(db);
        var (student, guardian, _) = await BatchAsync(scene);
        var ward = student.Student!.Value;
        var hand = Quicker(db, ward, "Malta");

        var view = Done(await new WardBook(hand, TimeProvider.System, db.Outbox).WithdrawAsync(guardian, ward, Operation(), Ct));

        Assert.True(hand.WasThere);
        Assert.Equal(Consent.Withdrawn, view.Consent);
        await using var context = db.CreateDbContext();
        var stands = await context.Set<Student>().SingleAsync(person => person.Id == ward, Ct);
        Assert.Equal((Consent.Withdrawn, "Malta"), (stands.Consent, stands.Country));
    }

    [Theory, OnBothEngines]
    public async Task A_guardian_agrees_also_when_the_student_is_saved_at_the_same_moment(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var scene = new GuardianScene(db);
        var student = await scene.StudentAsync();
        var ward = student.Student!.Value;
        var email = NewEmail("guardian");
        var hand = Quicker(db, ward, "Norway");
        var book = new GuardianBook(
            hand, TimeProvider.System, new AccountRegister(hand, TimeProvider.System, scene.Book<IPasswordHasher<ClinicAccount>>(), scene.Book<ILookupNormalizer>()), db.Outbox);

        Done(await scene.Book<GuardianBook>().AskAsync(student, "Rosa", email, Operation(), Ct));
        var account = Done(await book.AgreeNewAsync(await scene.SecretForAsync(email), "Rosa", Password, Operation(), Ct));

        Assert.True(hand.WasThere);
        await using var context = db.CreateDbContext();
        Assert.Equal(Consent.Given, (await context.Set<Student>().SingleAsync(person => person.Id == ward, Ct)).Consent);
        Assert.Equal(account, (await context.Set<Guardianship>().SingleAsync(row => row.Student == ward, Ct)).Account);
    }

    [Theory, OnBothEngines]
    public async Task A_batch_is_not_announced_when_consent_is_taken_back_at_the_same_moment(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var scene = new GuardianScene(db);
        var (student, _, _) = await BatchAsync(scene);
        var draft = await scene.Intake.DraftAsync(student, Form()); // it says of the student what stands already
        var hand = new QuickerHand(
            db,
            context => context.ChangeTracker.Entries<Batch>().Any(),
            other => other.Set<Student>().Single(person => person.Id == student.Student).Follow(Consent.Withdrawn));

        var refused = Refused(await new IntakeBook(hand, TimeProvider.System).SubmitAsync(student, draft.Id, Operation(), Ct));

        Assert.True(hand.WasThere);
        Assert.Equal(IntakeBook.GuardianField, Assert.Single(refused).Field);
        await using var context = db.CreateDbContext();
        Assert.Equal(1, await context.Set<Batch>().CountAsync(batch => batch.Student == student.Student, Ct));
    }

    [Theory, OnBothEngines]
    public async Task Mail_about_a_younger_student_goes_to_the_guardian_and_an_adult_gets_their_own(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (_, guardian, batch) = await BatchAsync(scene);
        var adult = await scene.StudentAsync("Wim Ode", AgeAnswer.OldEnough);
        var other = (await scene.Intake.BatchAsync(adult)).Batch;
        await using var context = db.CreateDbContext();
        var guardianEmail = (await context.Set<Guardianship>().SingleAsync(row => row.Account == guardian.Account, Ct)).Email;
        var adultEmail = (await scene.Book<StudentBook>().MeAsync(adult, Ct))!.Email;

        await SendLetterAsync(scene, batch.Code);
        Done(await scene.Book<DeskBook>().MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, Operation(), Ct));
        Done(await scene.Book<DeskBook>().MoveOnAsync(Teacher, other.Id, Stage.OnItsWayHome, Operation(), Ct));

        var news = (await scene.MailsAsync()).Where(mail => mail.Kind == MailKind.News).ToList();
        Assert.Equal([guardianEmail, guardianEmail, adultEmail], news.Select(mail => mail.To));
        Assert.Equal([$"/letters/{batch.Code}", $"/batches/{batch.Code}", $"/batches/{other.Code}"], news.Select(mail => mail.Path));
        Assert.All(news, mail => Assert.Null(mail.Secret));
    }

    [Theory, OnBothEngines]
    public async Task Mail_about_a_younger_student_follows_the_guardian_to_a_changed_address(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var (student, guardian, batch) = await BatchAsync(scene);
        var email = NewEmail("Moved");
        Done(await scene.Book<SignInBook>().AskForEmailAsync(guardian, email, Operation(), Ct));
        var secret = (await scene.MailsAsync()).Single(mail => mail.Kind == MailKind.NewEmail).Secret;
        Done(await scene.Book<SignInBook>().ConfirmEmailAsync(guardian, secret, Operation(), Ct));

        Done(await scene.Book<DeskBook>().MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, Operation(), Ct));

        Assert.Equal(email, (await scene.MailsAsync()).Single(mail => mail.Kind == MailKind.News).To);
        await using var context = db.CreateDbContext();
        Assert.Equal(Folding.OfEmail(email), (await context.Set<Guardianship>().SingleAsync(row => row.Student == student.Student, Ct)).FoldedEmail);
    }

    [Theory, OnBothEngines]
    public async Task A_letter_calls_a_younger_student_by_the_first_name_and_an_adult_by_theirs(ClinicEngine engine)
    {
        var scene = new GuardianScene(await databases.OpenAsync(engine));
        var (_, _, batch) = await BatchAsync(scene, "Pia Kestrel");
        var adult = await scene.StudentAsync("Wim Ode", AgeAnswer.OldEnough);
        var other = (await scene.Intake.BatchAsync(adult)).Batch;

        Assert.Equal("Pia", (await scene.Book<LetterBook>().ReadAsync(Teacher, batch.Code, Ct))!.Draft.StudentName);
        Assert.Equal("Wim Ode", (await scene.Book<LetterBook>().ReadAsync(Teacher, other.Code, Ct))!.Draft.StudentName);
    }

    private static async Task<(Actor Student, Actor Guardian, Batch Batch)> BatchAsync(GuardianScene scene, string name = "Pia Kestrel")
    {
        var student = await scene.StudentAsync(name);
        var guardian = await scene.AgreedAsync(student);
        return (student, guardian, (await scene.Intake.BatchAsync(student)).Batch);
    }

    // Somebody saves the student while a Book is about to.
    private static QuickerHand Quicker(TestDatabase db, StudentId ward, string country) => new(
        db,
        context => context.ChangeTracker.Entries<Student>().Any(),
        other =>
        {
            var student = other.Set<Student>().Single(person => person.Id == ward);
            student.Describe(student.Instrument, student.TunesTo, student.Scrape, country);
        });

    private static async Task SendLetterAsync(GuardianScene scene, BatchCode code)
    {
        var letters = scene.Book<LetterBook>();
        var view = (await letters.ReadAsync(Teacher, code, Ct))!;
        foreach (var gap in view.Gaps)
        {
            view = Done(await letters.WaiveAsync(Teacher, code, gap.Key, "next time", Operation(), Ct));
        }

        Done(await letters.SendAsync(Teacher, code, view.Mark, Operation(), Ct));
    }

    private static T Value<T>(Outcome<T> outcome) => Done(outcome);
}
