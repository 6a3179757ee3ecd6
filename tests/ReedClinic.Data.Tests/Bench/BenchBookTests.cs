using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.People;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Tests.Bench;

public sealed class BenchBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task Every_kind_of_entry_comes_back_as_it_was_said(ClinicEngine engine)
    {
        var (book, reed, db) = await BenchAsync(engine);
        var finding = await Say(book, reed, Studio.Value(Finding.Of(
            new FindingKindId("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners, Blades.Upper, Sides.Left),
            FindingShape.Comparison, Relation.ThickerThan, new Place(Zone.TipCentre, Blades.Upper),
            KnownBy.Light | KnownBy.Finger, Certainty.Suspected, Arose.SeenLaterAlreadyThere, "The left one.")));
        var risk = await Say(book, reed, Studio.Value(Risk.Of("The corner may tear.", Zone.TipCorners)));
        var pitch = Studio.Value(SaidPitch.Read("B♭ +10", new Tuning(new Hertz(442))));
        var said = Sayings(finding.Root, risk.Root, pitch);
        foreach (var entry in said)
        {
            await Say(book, reed, entry);
        }

        var log = (await book.FindAsync(Studio.Ada, reed, Ct))!.Log;

        Assert.Equal([EntryKind.Finding, EntryKind.Risk, .. said.Select(entry => entry.Kind)], log.History.Select(line => line.Entry.Kind));
        Assert.Equal(Enumerable.Range(1, 16), log.History.Select(line => line.Entry.Sequence));
        Assert.Equal(Told([finding.Now!, risk.Now!, .. said]), Told(log.History.Select(line => line.Entry)));
        Assert.Equal(pitch, log.Live<Domain.Bench.Test>().First().Now.Pitch);
        Assert.True(log.IsParked);
        Assert.All(log.History, line => Assert.Equal(Studio.Ada.Account, line.Entry.RecordedBy));
        await AssertSheetIsAsRebuilt(db, reed);
    }

    [Theory, OnBothEngines]
    public async Task A_length_that_no_reed_of_the_batchs_instrument_has_is_refused_beside_its_field(ClinicEngine engine)
    {
        var (book, reed, db) = await BenchAsync(engine);
        await using (var rows = db.CreateDbContext())
        {
            await rows.Set<Batch>().ExecuteUpdateAsync(batch => batch.SetProperty(row => row.Instrument, Instrument.CorAnglais), Ct);
        }

        var outcome = await book.RecordAsync(
            Studio.Ada, reed, Studio.Value(Domain.Bench.Test.Of(TestKind.Length, millimetres: 70.5m)), Studio.Operation(), Ct);

        var refused = Assert.IsType<Outcome<BenchFact>.Refused>(outcome);
        Assert.Equal("Millimetres", Assert.Single(refused.Problems).Field);
        Assert.Empty((await book.FindAsync(Studio.Ada, reed, Ct))!.Log.History);
        await Say(book, reed, Studio.Value(Domain.Bench.Test.Of(TestKind.Length, millimetres: 56.5m)));
    }

    [Theory, OnBothEngines]
    public async Task The_same_operation_twice_writes_once_and_gives_the_first_answer(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var operation = Studio.Operation();

        var first = Studio.Value(await book.RecordAsync(Studio.Ada, reed, Studio.Note("once"), operation, Ct));
        var again = Studio.Value(await book.RecordAsync(Studio.Ada, reed, Studio.Note("once"), operation, Ct));

        Assert.Equal(first.Root, again.Root);
        Assert.Single((await book.FindAsync(Studio.Ada, reed, Ct))!.Log.History);
    }

    [Theory, OnBothEngines]
    public async Task Twenty_entries_at_once_by_two_teachers_all_stand_in_one_unbroken_order(ClinicEngine engine)
    {
        var (book, reed, db) = await BenchAsync(engine);
        var twice = Studio.Operation();

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 20).Select(n => Task.Run(() => book.RecordAsync(
            n % 2 == 0 ? Studio.Ada : Studio.Ben,
            reed,
            n % 3 == 0 ? Studio.Found("tip-thick") : Studio.Note($"remark {n}"),
            n < 2 ? twice : Studio.Operation(),
            Ct))));

        var log = (await book.FindAsync(Studio.Ada, reed, Ct))!.Log;
        Assert.All(outcomes, outcome => Assert.IsType<Outcome<BenchFact>.Done>(outcome));
        Assert.Equal(Enumerable.Range(1, 19), log.History.Select(line => line.Entry.Sequence));
        await AssertSheetIsAsRebuilt(db, reed);
    }

    [Theory, OnBothEngines]
    public async Task A_correction_on_an_old_wording_is_a_conflict_that_shows_what_stands_and_writes_nothing(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var seen = await Say(book, reed, Studio.Note("thik"));
        Studio.Value(await book.CorrectAsync(Studio.Ben, reed, seen.Tail, Studio.Note("thick"), Studio.Operation(), Ct));

        var outcome = await book.CorrectAsync(Studio.Ada, reed, seen.Tail, Studio.Note("too thick"), Studio.Operation(), Ct);

        var theirs = Assert.IsType<Outcome<BenchFact>.Conflict>(outcome).Theirs;
        Assert.Equal("thick", Assert.IsType<Note>(theirs.Now).Words);
        Assert.Equal(2, (await book.FindAsync(Studio.Ada, reed, Ct))!.Log.History.Count);

        Studio.Value(await book.CorrectAsync(Studio.Ada, reed, theirs.Tail, Studio.Note("too thick"), Studio.Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task What_was_misheard_is_said_better_as_another_kind_in_its_own_place_and_the_sheet_follows(ClinicEngine engine)
    {
        var (book, reed, db) = await BenchAsync(engine);
        var note = await Say(book, reed, Studio.Note("tip is thik"));
        await Say(book, reed, Studio.Note("later"));

        var better = Studio.Value(await book.CorrectAsync(Studio.Ada, reed, note.Tail, Studio.Found("tip-thick"), Studio.Operation(), Ct));

        Assert.Equal((note.Root, 1, EntryKind.Finding), (better.Root, better.Sequence, better.Kind));
        Assert.True(Assert.Single(await SheetAsync(db, reed)).Found);
        await AssertSheetIsAsRebuilt(db, reed);
        Studio.Value(await book.UndoAsync(Studio.Ada, reed, better.Tail, Studio.Operation(), Ct));
        Assert.Empty(await SheetAsync(db, reed));
        Assert.Equal(["tip is thik", "later"], (await book.FindAsync(Studio.Ada, reed, Ct))!.Log.Live<Note>().Select(said => said.Now.Words));
    }

    [Theory, OnBothEngines]
    public async Task Of_two_corrections_at_once_one_stands_and_the_other_is_told(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var seen = await Say(book, reed, Studio.Note("thik"));

        var outcomes = await Task.WhenAll(Enumerable.Range(0, 6).Select(n => Task.Run(() => book.CorrectAsync(
            Studio.Ada, reed, seen.Tail, Studio.Note($"wording {n}"), Studio.Operation(), Ct))));

        Assert.Single(outcomes.OfType<Outcome<BenchFact>.Done>());
        Assert.Equal(5, outcomes.OfType<Outcome<BenchFact>.Conflict>().Count());
    }

    [Theory, OnBothEngines]
    public async Task Undo_takes_back_the_last_wording_of_the_teacher_who_asks_and_the_sheet_follows(ClinicEngine engine)
    {
        var (book, reed, db) = await BenchAsync(engine);
        await Say(book, reed, Studio.Missing("tip-thick"));
        var found = await Say(book, reed, Studio.Found("tip-thick"));
        Studio.Value(await book.RecordAsync(Studio.Ben, reed, Studio.Note("mine"), Studio.Operation(), Ct));
        Assert.True(Assert.Single(await SheetAsync(db, reed)).Found);

        var undone = Studio.Value(await book.UndoAsync(Studio.Ada, reed, found.Tail, Studio.Operation(), Ct));

        Assert.Equal(found.Root, undone.Root);
        Assert.Equal(FactState.TakenBack, undone.State);
        Assert.False(Assert.Single(await SheetAsync(db, reed)).Found);
        Assert.IsType<Outcome<BenchFact>.Conflict>(await book.UndoAsync(Studio.Ada, reed, found.Tail, Studio.Operation(), Ct));
        Studio.Value(await book.UndoAsync(Studio.Ada, reed, null, Studio.Operation(), Ct));
        Assert.Empty(await SheetAsync(db, reed));
        Assert.IsType<Outcome<BenchFact>.NotFound>(await book.UndoAsync(Studio.Ada, reed, null, Studio.Operation(), Ct));
        Assert.Single((await book.FindAsync(Studio.Ada, reed, Ct))!.Log.Live<Note>());
    }

    [Theory, OnBothEngines]
    public async Task An_entry_about_something_that_is_not_there_is_refused(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var note = await Say(book, reed, Studio.Note("no finding"));

        var ended = await book.RecordAsync(
            Studio.Ada, reed, Studio.Value(FindingEnded.Of(note.Root, FindingEnding.Gone)), Studio.Operation(), Ct);
        var word = await book.CorrectAsync(
            Studio.Ada, reed, note.Tail, Studio.Value(CauseJudged.Of(new CauseId("tip-thick"), CauseAnswer.Open)), Studio.Operation(), Ct);

        Assert.Equal(nameof(FindingEnded.FindingId), Assert.Single(Assert.IsType<Outcome<BenchFact>.Refused>(ended).Problems).Field);
        Assert.IsType<Outcome<BenchFact>.Refused>(word);
    }

    [Theory, OnBothEngines]
    public async Task Only_those_who_work_here_read_and_write_and_only_on_a_reed_that_is_there(ClinicEngine engine)
    {
        var (book, reed, _) = await BenchAsync(engine);
        var fact = await Say(book, reed, Studio.Note("ours"));
        var nowhere = new ReedId(Studio.NewGuid());

        Assert.IsType<Outcome<BenchFact>.NotFound>(
            await book.RecordAsync(Studio.Stranger, reed, Studio.Note("x"), Studio.Operation(), Ct));
        Assert.IsType<Outcome<BenchFact>.NotFound>(
            await book.CorrectAsync(Studio.Stranger, reed, fact.Tail, Studio.Note("x"), Studio.Operation(), Ct));
        Assert.IsType<Outcome<BenchFact>.NotFound>(await book.UndoAsync(Studio.Stranger, reed, null, Studio.Operation(), Ct));
        Assert.Null(await book.FindAsync(Studio.Stranger, reed, Ct));
        Assert.IsType<Outcome<BenchFact>.NotFound>(
            await book.RecordAsync(Studio.Ada, nowhere, Studio.Note("x"), Studio.Operation(), Ct));
        Assert.Null(await book.FindAsync(Studio.Ada, nowhere, Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_first_entry_takes_the_batch_to_the_bench_and_the_view_shows_batch_questions_and_names(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        var studio = new Studio(db);
        var batch = await studio.BatchAsync(await studio.StudentAsync("Mara"), reeds: 2);
        var book = new BenchBook(db, TimeProvider.System);
        await AccountAsync(db, "Ada");
        await Say(book, batch.Reeds[1].Id, Studio.Note("first"));

        var view = (await book.FindAsync(Studio.Ada, batch.Reeds[1].Id, Ct))!;
        var all = (await book.FindBatchAsync(Studio.Ada, batch.Code, Ct))!;

        Assert.Equal(Stage.AtTheBench, view.Batch.Stage);
        Assert.Equal("Mara", view.Student.Name);
        Assert.Equal(2, view.Reed.Number);
        Assert.Equal("Does it need playing in?", Assert.Single(view.Questions).Text);
        Assert.Equal("Ada", view.NameOf(Studio.Ada.Account));
        Assert.Equal([0, 1], all.Reeds.Select(row => row.Log.History.Count));
        Assert.Null(await book.FindBatchAsync(Studio.Stranger, batch.Code, Ct));
    }

    [Theory, OnBothEngines]
    public async Task The_database_itself_refuses_a_second_entry_in_the_same_place_or_over_the_same_wording(ClinicEngine engine)
    {
        var (book, reed, db) = await BenchAsync(engine);
        var fact = await Say(book, reed, Studio.Note("one"));
        Studio.Value(await book.CorrectAsync(Studio.Ada, reed, fact.Tail, Studio.Note("two"), Studio.Operation(), Ct));

        foreach (var (sequence, supersedes, operation) in new (int, EntryId?, OperationId)[]
        {
            (1, null, Studio.Operation()),
            (3, fact.Root, Studio.Operation()),
            (3, null, fact.Now!.OperationId),
        })
        {
            await using var context = db.CreateDbContext();
            context.Add(Studio.Note("smuggled").StampedWith(new EntryStamp(
                new EntryId(Studio.NewGuid()), reed, sequence, operation, TimeProvider.System.GetUtcNow(), Studio.Ada.Account, supersedes)));
            var clash = await Assert.ThrowsAsync<DbUpdateException>(() => context.SaveChangesAsync(Ct));
            Assert.True(clash.IsUniqueClash());
        }
    }

    private static BenchEntry[] Sayings(EntryId finding, EntryId risk, SaidPitch pitch) =>
    [
        Studio.Value(Domain.Bench.Test.Of(TestKind.Crow, 3, pitch, "thin")),
        Studio.Missing("tip-cracked"),
        Studio.Value(FindingEnded.Of(finding, FindingEnding.Better, "nearly")),
        Studio.Value(LeaveAlone.Of(new Place(Zone.HeartCentre), "It is thin already.")),
        Studio.Value(Adjustment.Of(
            new AdjustmentKindId("thin-corners"), new Place(Zone.TipCorners, Blades.Upper, Sides.Left),
            new Amount(2, 0.005m, "hardly anything"), finding, Zone.HeartCentre, "with care")),
        Studio.Value(RiskClosed.Of(risk, RiskOutcome.DidNotHappen, "lucky")),
        Studio.Note("Rested over lunch."),
        Studio.Value(Stopped.Of("It speaks.")),
        Studio.Value(Verdict.Of(VerdictKind.Improved, "Keep it for concerts.")),
        Studio.Value(Domain.Bench.Test.Of(TestKind.Length, millimetres: 70.5m)),
        Studio.Value(Domain.Bench.Test.Of(TestKind.Peep, pitch: Studio.Value(SaidPitch.Read("flat C", Tuning.Standard)))),
        Studio.Value(AdviceSetAside.Of(new AdviceId("clip-when-sharp/0a1b"), "I know.")),
        Studio.Value(Parked.Of("till tomorrow")),
        Studio.Value(CauseJudged.Of(new CauseId("tip-corners-thick"), CauseAnswer.Confirmed)),
    ];

    private static IEnumerable<string> Told(IEnumerable<BenchEntry> entries) => entries.Select(entry => string.Join(
        "; ",
        entry.GetType().GetProperties()
            .Where(property => property.DeclaringType != typeof(BenchEntry))
            .Select(property => $"{property.Name}={property.GetValue(entry)}")));

    private static async Task<BenchFact> Say(BenchBook book, ReedId reed, BenchEntry entry) =>
        Studio.Value(await book.RecordAsync(Studio.Ada, reed, entry, Studio.Operation(), Ct));

    private static async Task<List<SheetRow>> SheetAsync(TestDatabase db, ReedId reed)
    {
        await using var context = db.CreateDbContext();
        return await context.Set<SheetRow>().Where(row => row.ReedId == reed).OrderBy(row => row.FindingKind).ToListAsync(Ct);
    }

    private static async Task AssertSheetIsAsRebuilt(TestDatabase db, ReedId reed)
    {
        var stored = await SheetAsync(db, reed);
        Assert.NotEmpty(stored);
        await using var context = db.CreateDbContext();
        await FindingSheetRows.RebuildAsync(context, Ct);
        Assert.False(context.ChangeTracker.HasChanges());
    }

    private static async Task AccountAsync(TestDatabase db, string name)
    {
        await using var context = db.CreateDbContext();
        context.Add(new ClinicAccount { Id = Studio.Ada.Account.Value, UserName = name, DisplayName = name });
        await context.SaveChangesAsync(Ct);
    }

    private async Task<(BenchBook Book, ReedId Reed, TestDatabase Db)> BenchAsync(ClinicEngine engine)
    {
        var db = await databases.OpenAsync(engine);
        return (new BenchBook(db, TimeProvider.System), (await new Studio(db).ReedAsync()).Id, db);
    }
}
