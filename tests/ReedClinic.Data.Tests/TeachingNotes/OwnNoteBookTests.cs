using ReedClinic.Data.Bench;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.TeachingNotes;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.TeachingNotes;

public sealed class OwnNoteBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly OwnNoteWords Corners = new("Corners", "In {reeds}, look at {place}. {blade}", "https://example.org/corners", [new("tip-corners-thick")]);

    [Theory, OnBothEngines]
    public async Task A_note_belongs_to_the_studio_and_of_two_teachers_the_second_sees_what_stands(ClinicEngine engine)
    {
        var book = new OwnNoteBook(await databases.FreshAsync(engine), TimeProvider.System);
        var colleague = new Actor(new AccountId(NewId()), null, IsTeacher: true, IsOwner: false);
        var operation = Operation();
        var made = Done(await book.BeginAsync(Teacher, Corners, operation, Ct));
        Assert.Equal(made.Id, Done(await book.BeginAsync(Teacher, Corners, operation, Ct)).Id);

        Done(await book.WriteAsync(colleague, made.Id, Corners with { Title = "Hers" }, made.Version, Operation(), Ct));
        var late = await book.WriteAsync(Teacher, made.Id, Corners with { Title = "His" }, made.Version, Operation(), Ct);
        var stale = await book.RetireAsync(Teacher, made.Id, Corners with { Title = "His" }, true, made.Version, Operation(), Ct);

        var theirs = Assert.IsType<Outcome<OwnNoteView>.Conflict>(late).Theirs;
        Assert.Equal("Hers", theirs.Title);
        Assert.IsType<Outcome<OwnNoteView>.Conflict>(stale);
        Assert.Equal("Hers", Assert.Single(await book.AllAsync(colleague, Ct)).Title);
        var retired = Done(await book.RetireAsync(Teacher, made.Id, Corners with { Title = "Ours" }, true, theirs.Version, Operation(), Ct));
        Assert.Equal(("Ours", true), (retired.Title, retired.RetiredAt is not null));
        Assert.Equal(retired.ToString(), Done(await book.RetireAsync(colleague, made.Id, Corners with { Title = "Ours" }, true, theirs.Version, Operation(), Ct)).ToString());
        Assert.IsType<Outcome<OwnNoteView>.Conflict>(await book.RetireAsync(colleague, made.Id, Corners with { Title = "Ours" }, false, theirs.Version, Operation(), Ct));
        Assert.Equal("Text", Assert.Single(Assert.IsType<Outcome<OwnNoteView>.Refused>(
            await book.RetireAsync(Teacher, made.Id, Corners with { Text = "{nobody}" }, false, retired.Version, Operation(), Ct)).Problems).Field);
        Assert.NotNull((await book.FindAsync(Teacher, made.Id, Ct))!.RetiredAt);
        Assert.Equal("Text", Assert.Single(Assert.IsType<Outcome<OwnNoteView>.Refused>(
            await book.BeginAsync(Teacher, Corners with { Text = "{nobody}" }, Operation(), Ct)).Problems).Field);
    }

    [Theory, OnBothEngines]
    public async Task The_same_form_with_other_words_is_no_repetition(ClinicEngine engine)
    {
        var book = new OwnNoteBook(await databases.FreshAsync(engine), TimeProvider.System);
        var (begun, written) = (Operation(), Operation());
        var made = Done(await book.BeginAsync(Teacher, Corners, begun, Ct));

        var other = await book.BeginAsync(Teacher, Corners with { Text = "Other words." }, begun, Ct);
        Assert.Equal(Corners.Text, Assert.IsType<Outcome<OwnNoteView>.Conflict>(other).Theirs.Text);
        Assert.Single(await book.AllAsync(Teacher, Ct));
        var second = Done(await book.WriteAsync(Teacher, made.Id, Corners with { Text = "Second words." }, made.Version, written, Ct));
        Assert.Equal(second.Version, Done(await book.WriteAsync(Teacher, made.Id, Corners with { Text = "Second words." }, made.Version, written, Ct)).Version);
        var third = await book.WriteAsync(Teacher, made.Id, Corners with { Text = "Third words." }, made.Version, written, Ct);
        Assert.Equal("Second words.", Assert.IsType<Outcome<OwnNoteView>.Conflict>(third).Theirs.Text);
    }

    [Theory, OnBothEngines]
    public async Task A_note_is_deleted_by_whoever_saw_it_as_it_stands_and_a_letter_keeps_its_words(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var (book, letters) = (new OwnNoteBook(db, TimeProvider.System), new LetterBook(db, TimeProvider.System, db.Outbox));
        var (student, batch) = await BatchAsync(db);
        var made = Done(await book.BeginAsync(Teacher, Corners, Operation(), Ct));
        var view = (await letters.ReadAsync(Teacher, batch.Code, Ct))!;
        Done(await letters.SaveAsync(Teacher, batch.Code, Edit("In reeds one and two."), view.Version, Operation(), Ct));
        var changed = Done(await book.WriteAsync(Teacher, made.Id, Corners with { Title = "Hers" }, made.Version, Operation(), Ct));

        Assert.IsType<Outcome<OwnNoteId>.NotFound>(await book.DeleteAsync(student, made.Id, changed.Version, Operation(), Ct));
        Assert.IsType<Outcome<OwnNoteId>.Conflict>(await book.DeleteAsync(Teacher, made.Id, made.Version, Operation(), Ct));
        var operation = Operation();
        Done(await book.DeleteAsync(Teacher, made.Id, changed.Version, operation, Ct));
        Done(await book.DeleteAsync(Teacher, made.Id, changed.Version, operation, Ct));

        Assert.IsType<Outcome<OwnNoteId>.NotFound>(await book.DeleteAsync(Teacher, made.Id, changed.Version, Operation(), Ct));
        Assert.Empty(await book.AllAsync(Teacher, Ct));
        Assert.Empty(await book.OfferAsync(Teacher, batch.Code, Ct));
        Assert.Equal("In reeds one and two.", (await letters.ReadAsync(Teacher, batch.Code, Ct))!.Draft.Blocks.Single(block => block.Key == "closing").Text);
    }

    [Theory, OnBothEngines]
    public async Task A_letter_waits_for_its_fields_and_keeps_its_words_whatever_becomes_of_the_note(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var (book, letters) = (new OwnNoteBook(db, TimeProvider.System), new LetterBook(db, TimeProvider.System, db.Outbox));
        var (student, batch) = await BatchAsync(db);
        var made = Done(await book.BeginAsync(Teacher, Corners, Operation(), Ct));
        var offer = Assert.Single(await book.OfferAsync(Teacher, batch.Code, Ct));
        Assert.Equal("In reeds one and two, look at the corners of the tip. {blade}\n\nhttps://example.org/corners", offer.Text);
        Assert.True(offer.IsCommon);
        Assert.Empty(await book.OfferAsync(student, batch.Code, Ct));

        var view = (await letters.ReadAsync(Teacher, batch.Code, Ct))!;
        view = Done(await letters.SaveAsync(Teacher, batch.Code, Edit(offer.Text), view.Version, Operation(), Ct));
        var gap = Assert.Single(view.Gaps, gap => gap.Kind == GapKind.UnfilledField);
        Assert.IsType<Outcome<LetterView>.Refused>(await letters.WaiveAsync(Teacher, batch.Code, gap.Key, "never mind", Operation(), Ct));
        foreach (var other in view.Gaps.Where(other => other != gap))
        {
            view = Done(await letters.WaiveAsync(Teacher, batch.Code, other.Key, "next time", Operation(), Ct));
        }

        var refused = await letters.SendAsync(Teacher, batch.Code, view.Mark, Operation(), Ct);
        Assert.Equal(gap.Key, Assert.Single(Assert.IsType<Outcome<LetterView>.Refused>(refused).Problems).Field);

        var words = offer.Text.Replace("{blade}", "Both blades.", StringComparison.Ordinal);
        view = Done(await letters.SaveAsync(Teacher, batch.Code, Edit(words), view.Version, Operation(), Ct));
        Assert.Empty(view.Gaps);
        Done(await letters.SendAsync(Teacher, batch.Code, view.Mark, Operation(), Ct));
        var changed = Done(await book.WriteAsync(Teacher, made.Id, Corners with { Text = "Other words.", Link = null }, made.Version, Operation(), Ct));
        Done(await book.RetireAsync(Teacher, made.Id, Corners with { Text = "Other words.", Link = null }, true, changed.Version, Operation(), Ct));

        var sent = (await new LetterBoxBook(db).ReadAsync(student, batch.Code, Ct))!;
        Assert.Equal(words, sent.Letter.Blocks.Single(block => block.Key == "closing").Text);
        Assert.Empty(await book.OfferAsync(Teacher, batch.Code, Ct));
    }

    [Theory, OnBothEngines]
    public async Task When_its_writer_is_erased_a_note_stays_without_a_name(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new GuardianScene(db);
        var account = Done(await scene.Book<AccountRegister>().AdmitAsync(
            new NewAccount("Edda", GuardianScene.NewEmail("Edda"), GuardianScene.Password), Role.Teacher, Operation(), Ct));
        var edda = (await scene.Book<AccountBook>().ActorFor(account, Ct))! with { IsFresh = true };
        var book = scene.Book<OwnNoteBook>();
        var made = Done(await book.BeginAsync(edda, Corners, Operation(), Ct));
        Assert.Equal("Edda", (await book.FindAsync(Teacher, made.Id, Ct))!.By);

        Done(await scene.Book<PrivacyBook>().EraseAsync(edda, null, "erase", Operation(), Ct));

        var stays = (await book.FindAsync(Teacher, made.Id, Ct))!;
        Assert.Equal(("Corners", null), (stays.Title, stays.By));
    }

    private static Dictionary<string, string> Edit(string text) => new() { ["closing"] = text };

    private static async Task<(Actor Student, Batch Batch)> BatchAsync(TestDatabase db)
    {
        var intake = new IntakeScene(db);
        var student = await intake.StudentAsync();
        var batch = (await intake.BatchAsync(student, reeds: 2)).Batch;
        var fine = new ReedArrival(Presence.Here, Fitness: Fitness.Fit);
        Done(await intake.Arrival.RecordAsync(Teacher, batch.Id, new(batch.Reeds.ToDictionary(reed => reed.Id, _ => fine), null), batch.Version, Operation(), Ct));
        foreach (var reed in batch.Reeds)
        {
            var found = Done(Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners)));
            Done(await new BenchBook(db, TimeProvider.System).RecordAsync(Teacher, reed.Id, found, Operation(), Ct));
        }

        return (student, batch);
    }
}
