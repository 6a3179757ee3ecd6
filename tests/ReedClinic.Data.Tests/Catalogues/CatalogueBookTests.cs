using ReedClinic.Data.Bench;
using ReedClinic.Data.Catalogues;
using ReedClinic.Data.Diagnosis;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using BenchStudio = ReedClinic.Data.Tests.Bench.Studio;

namespace ReedClinic.Data.Tests.Catalogues;

/// <summary>What the owner adds to the catalogue, on both engines, and everywhere it turns up.</summary>
public sealed class CatalogueBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly Actor Owner = new(new AccountId(Guid.CreateVersion7(TimeProvider.System.GetUtcNow())), null, IsTeacher: false, IsOwner: true);

    private static readonly StudioEntryWords Frayed = new(StudioEntryKind.Fault, "fibres lifted at the tip", "Tiny hairs of cane stand up at the very end.")
    {
        Zone = Zone.TipEdge,
        SeenBy = new TestCardId("look-plaque"),
        Steps = [new AdjustmentKindId("smooth-bumps")],
    };

    private static readonly StudioEntryWords Polish = new(StudioEntryKind.Adjustment, "rub the tip on paper", "It lays the fibres down.")
    {
        Zone = Zone.TipEdge,
        Undo = Reversible.No,
        Caution = "Twice is too much.",
    };

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task An_owner_adds_tells_better_retires_and_brings_back_and_nobody_else_does(ClinicEngine engine)
    {
        var book = new CatalogueBook(await databases.FreshAsync(engine), TimeProvider.System);
        var operation = BenchStudio.Operation();
        var made = Value(await book.AddAsync(Owner, Frayed, operation, Ct));
        Assert.Equal(made.ToString(), Value(await book.AddAsync(Owner, Frayed, operation, Ct)).ToString());
        Assert.IsType<Outcome<StudioEntryView>.NotFound>(await book.AddAsync(BenchStudio.Ada, Polish, BenchStudio.Operation(), Ct));
        Assert.IsType<Outcome<StudioEntryView>.NotFound>(await book.RenameAsync(BenchStudio.Ada, made.Id, Frayed with { Name = "x" }, made.Version, BenchStudio.Operation(), Ct));
        Assert.IsType<Outcome<StudioEntryView>.NotFound>(await book.RetireAsync(BenchStudio.Ada, made.Id, made.Version, BenchStudio.Operation(), Ct));
        Assert.IsType<Outcome<StudioEntryView>.NotFound>(await book.BringBackAsync(BenchStudio.Ada, made.Id, made.Version, BenchStudio.Operation(), Ct));

        var renamed = Value(await book.RenameAsync(Owner, made.Id, Frayed with { Name = "hairs at the tip" }, made.Version, BenchStudio.Operation(), Ct));
        var late = await book.RetireAsync(Owner, made.Id, made.Version, BenchStudio.Operation(), Ct);
        Assert.Equal("hairs at the tip", Assert.IsType<Outcome<StudioEntryView>.Conflict>(late).Theirs.Name);
        var retiring = BenchStudio.Operation();
        var retired = Value(await book.RetireAsync(Owner, made.Id, renamed.Version, retiring, Ct));
        Assert.NotNull(retired.RetiredAt);
        Assert.Equal(retired.Version, Value(await book.RetireAsync(Owner, made.Id, renamed.Version, retiring, Ct)).Version);
        Assert.Null(Value(await book.BringBackAsync(Owner, made.Id, retired.Version, BenchStudio.Operation(), Ct)).RetiredAt);

        var view = (await book.ReadAsync(BenchStudio.Ada, Ct))!;
        Assert.Equal((made.Key, "hairs at the tip"), (Assert.Single(view.Own).Key, view.Catalogue.Own.Findings[0].Name));
        Assert.All(Catalogue.Shipped.Causes, cause => Assert.Equal(cause, view.Catalogue.Find(cause.Id)));
        Assert.All(Catalogue.Shipped.Adjustments, one => Assert.Equal(one, view.Catalogue.Find(one.Id)));
        Assert.Null(await book.ReadAsync(new Actor(Owner.Account, null, false, false), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Of_two_owners_who_give_one_name_at_the_same_moment_one_is_told_plainly(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var other = Owner with { Account = new AccountId(BenchStudio.NewGuid()) };
        for (var round = 0; round < 4; round++)
        {
            var words = Polish with { Name = $"grommet {(char)('a' + round)}" };
            var answers = await Task.WhenAll(new[] { Owner, other, Owner, other }.Select(actor => Task.Run(
                () => new CatalogueBook(db, TimeProvider.System).AddAsync(actor, words, BenchStudio.Operation(), Ct), Ct)));

            Assert.Single(answers.OfType<Outcome<StudioEntryView>.Done>());
            Assert.All(answers.Where(answer => answer is not Outcome<StudioEntryView>.Done), answer =>
                Assert.Equal(("Name", $"There is an entry of yours called “{words.Name}” already. Choose another name, or use that one."), (Refused(answer).Field, Refused(answer).Message)));
        }

        var (first, second) = (Value(await Add("grommet one")), Value(await Add("grommet two")));
        var renamed = await Task.WhenAll(new[] { first, second }.Select(one => Task.Run(
            () => new CatalogueBook(db, TimeProvider.System).RenameAsync(Owner, one.Id, Polish with { Name = "grommet of many" }, one.Version, BenchStudio.Operation(), Ct), Ct)));
        Assert.Single(renamed.OfType<Outcome<StudioEntryView>.Done>());
        Assert.Equal("Name", Refused(Assert.Single(renamed, answer => answer is not Outcome<StudioEntryView>.Done)).Field);

        Task<Outcome<StudioEntryView>> Add(string name) =>
            new CatalogueBook(db, TimeProvider.System).AddAsync(Owner, Polish with { Name = name }, BenchStudio.Operation(), Ct);
    }

    [Theory, OnBothEngines]
    public async Task An_adjustment_of_the_studios_own_becomes_a_pick_of_who_does_it_until_it_is_retired(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var book = new CatalogueBook(db, TimeProvider.System);
        var work = Value(await book.AddAsync(Owner, Polish, BenchStudio.Operation(), Ct));
        var bench = new BenchBook(db, TimeProvider.System);
        var reed = (await new BenchStudio(db).ReedAsync()).Id;
        for (var time = 0; time < 3; time++)
        {
            Value(await bench.RecordAsync(BenchStudio.Ada, reed, Value(Adjustment.Of(new AdjustmentKindId(work.Key), new Place(Zone.TipEdge))), BenchStudio.Operation(), Ct));
        }

        Assert.Equal(3, (await bench.HabitsAsync(BenchStudio.Ada, Ct))!.Habits.Count(habit => habit.Work?.Kind.Value == work.Key));
        Assert.Empty((await bench.HabitsAsync(BenchStudio.Ben, Ct))!.Habits);
        Value(await book.RetireAsync(Owner, work.Id, work.Version, BenchStudio.Operation(), Ct));
        Assert.Empty((await bench.HabitsAsync(BenchStudio.Ada, Ct))!.Habits);
    }

    [Theory, OnBothEngines]
    public async Task What_can_not_be_taken_is_refused_beside_its_field_and_nothing_is_kept(ClinicEngine engine)
    {
        var book = new CatalogueBook(await databases.FreshAsync(engine), TimeProvider.System);
        var made = Value(await book.AddAsync(Owner, Frayed, BenchStudio.Operation(), Ct));

        Assert.Equal("Name", Refused(await book.AddAsync(Owner, Polish with { Name = "tip too thick" }, BenchStudio.Operation(), Ct)).Field);
        Assert.Equal("Signs", Refused(await book.AddAsync(Owner, Frayed with { Name = "x", Signs = [new SignId("nothing-known")] }, BenchStudio.Operation(), Ct)).Field);
        Assert.Equal("Name", Refused(await book.RenameAsync(Owner, made.Id, Frayed with { Name = "worn out" }, made.Version, BenchStudio.Operation(), Ct)).Field);
        Assert.Equal("fibres lifted at the tip", Assert.Single((await book.ReadAsync(Owner, Ct))!.Own).Name);
    }

    [Theory, OnBothEngines]
    public async Task What_is_the_studios_own_is_noted_counted_weighed_and_told_and_keeps_its_name_when_it_is_retired(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var book = new CatalogueBook(db, TimeProvider.System);
        var fault = Value(await book.AddAsync(Owner, Frayed, BenchStudio.Operation(), Ct));
        var work = Value(await book.AddAsync(Owner, Polish, BenchStudio.Operation(), Ct));
        var (kind, done) = (new FindingKindId(fault.Key), new AdjustmentKindId(work.Key));
        var scene = new BenchStudio(db);
        var batch = await scene.BatchAsync(await scene.StudentAsync("Wilma"), 2);
        var bench = new BenchBook(db, TimeProvider.System);
        var reed = batch.Reeds[0].Id;
        var found = Value(await bench.RecordAsync(BenchStudio.Ada, reed, Value(Finding.Of(kind, FindingCharacter.Fault, new Place(Zone.TipEdge), words: "at the left")), BenchStudio.Operation(), Ct));
        Value(await bench.RecordAsync(BenchStudio.Ada, batch.Reeds[1].Id, Value(LookedFor.Of(kind)), BenchStudio.Operation(), Ct));
        var fact = Value(await bench.RecordAsync(BenchStudio.Ada, reed, Value(Adjustment.Of(done, new Place(Zone.TipEdge))), BenchStudio.Operation(), Ct));

        Assert.Equal(("fibres lifted at the tip: at the left", "rub the tip on paper"), (((Finding)found.Now!).Words, ((Adjustment)fact.Now!).Words));
        using var here = new LearnedHere(db, TimeProvider.System);
        var reasoned = (await new ReasoningBook(db, TimeProvider.System, here).FindAsync(BenchStudio.Ada, reed, Ct))!;
        var evidence = Domain.Diagnosis.ReedEvidence.Of(reasoned.Learned.Catalogue, reasoned.AtBench.Log, reasoned.AtBench.Reed, reasoned.AtBench.Batch);
        Assert.Equal(fault.Key, evidence.Likely[0].Cause.Id.Value);

        var retired = Value(await book.RetireAsync(Owner, fault.Id, fault.Version, BenchStudio.Operation(), Ct));
        Assert.Equal(2, retired.Reeds);
        var thread = new CommonThreadBook(db, TimeProvider.System);
        var view = (await thread.FindAsync(BenchStudio.Ada, batch.Code, Ct))!;
        Assert.Equal((1, 2), (view.InBatch.Count(kind, FindingCharacter.Fault).Found, view.InBatch.Count(kind, FindingCharacter.Fault).Looked));
        Assert.Equal("fibres lifted at the tip (retired)", Assert.Single(view.Report.Faults, line => line.Theme.Id == fault.Key).Theme.Name);
        Assert.Equal("fibres lifted at the tip (retired)", (await bench.FindAsync(BenchStudio.Ada, reed, Ct))!.Catalogue.Own.NameOf(kind));
        Value(await thread.ChooseAsync(BenchStudio.Ada, batch.Code, new ThreadChoice(kind), Guid.Empty, BenchStudio.Operation(), Ct));
        var chosen = (await thread.FindAsync(BenchStudio.Ada, batch.Code, Ct))!.Chosen!;
        Assert.Null(chosen.LessonKind);
        Assert.Equal("fibres lifted at the tip: Tiny hairs of cane stand up at the very end.", chosen.LessonWords);

        var letter = (await new LetterBook(db, TimeProvider.System, db.Outbox).ReadAsync(BenchStudio.Ada, batch.Code, Ct))!;
        var told = string.Join("\n", letter.Draft.Blocks.Select(block => block.Text));
        Assert.Matches("“fibres lifted at the tip”.*\\. Tiny hairs of cane stand up at the very end\\.", told);
        Assert.Contains("rub the tip on paper", told, StringComparison.OrdinalIgnoreCase);
        Assert.DoesNotContain("something else", told, StringComparison.OrdinalIgnoreCase);
    }

    [Theory, OnBothEngines]
    public async Task A_kind_that_was_retired_or_never_was_is_not_noted_and_one_that_stands_can_still_be_told_better(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var book = new CatalogueBook(db, TimeProvider.System);
        var fault = Value(await book.AddAsync(Owner, Frayed, BenchStudio.Operation(), Ct));
        var scene = new BenchStudio(db);
        var bench = new BenchBook(db, TimeProvider.System);
        var (first, second) = ((await scene.ReedAsync()).Id, (await scene.ReedAsync()).Id);
        Finding Found(string? words, string kind) => Value(Finding.Of(new FindingKindId(kind), FindingCharacter.Fault, new Place(Zone.TipEdge), words: words));

        Assert.Contains("isn’t on the list", Problem(await bench.RecordAsync(BenchStudio.Ada, first, Found("x", "own-fault-nothing"), BenchStudio.Operation(), Ct)).Message, StringComparison.Ordinal);
        var fact = Value(await bench.RecordAsync(BenchStudio.Ada, first, Found(null, fault.Key), BenchStudio.Operation(), Ct));
        var renamed = Value(await book.RenameAsync(Owner, fault.Id, Frayed with { Name = "hairs at the tip" }, fault.Version, BenchStudio.Operation(), Ct));
        Value(await book.RetireAsync(Owner, fault.Id, renamed.Version, BenchStudio.Operation(), Ct));

        Assert.Equal("fibres lifted at the tip", ((Finding)(await bench.FindAsync(BenchStudio.Ada, first, Ct))!.Log.Facts[0].Now!).Words);
        Assert.Contains("was retired", Problem(await bench.RecordAsync(BenchStudio.Ada, second, Found(null, fault.Key), BenchStudio.Operation(), Ct)).Message, StringComparison.Ordinal);
        var better = Value(await bench.CorrectAsync(BenchStudio.Ada, first, fact.Tail, Found("both corners", fault.Key), BenchStudio.Operation(), Ct));
        Assert.Equal("hairs at the tip: both corners", ((Finding)better.Now!).Words);
    }

    private static Problem Refused(Outcome<StudioEntryView> outcome) => Assert.Single(Assert.IsType<Outcome<StudioEntryView>.Refused>(outcome).Problems);

    private static Problem Problem(Outcome<BenchFact> outcome) => Assert.Single(Assert.IsType<Outcome<BenchFact>.Refused>(outcome).Problems);

    private static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;
}
