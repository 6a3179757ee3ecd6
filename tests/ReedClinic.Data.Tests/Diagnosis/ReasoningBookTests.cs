using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Diagnosis;
using ReedClinic.Data.People;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using BenchStudio = ReedClinic.Data.Tests.Bench.Studio;

namespace ReedClinic.Data.Tests.Diagnosis;

/// <summary>What this bench has taught, who wants the quiet line, and what teachers said of causes, on both engines.</summary>
public sealed class ReasoningBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly CauseId Corners = new("tip-corners-thick");

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory, OnBothEngines]
    public async Task A_word_on_a_cause_is_counted_once_for_each_reed_however_often_its_form_is_sent(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new BenchStudio(db);
        var bench = new BenchBook(db, TimeProvider.System);
        var (first, second) = ((await scene.ReedAsync()).Id, (await scene.ReedAsync()).Id);
        var operation = BenchStudio.Operation();
        foreach (var _ in Enumerable.Range(0, 2))
        {
            Value(await bench.RecordAsync(BenchStudio.Ada, first, Word(CauseAnswer.Confirmed), operation, Ct));
        }

        Value(await bench.RecordAsync(BenchStudio.Ben, second, Word(CauseAnswer.Confirmed), BenchStudio.Operation(), Ct));
        Value(await bench.RecordAsync(BenchStudio.Ben, second, Word(CauseAnswer.Dismissed), BenchStudio.Operation(), Ct));

        Assert.Equal("1 confirmed of 2 here", (await Book(db).CountsAsync(BenchStudio.Ada, Ct))!.Find(Corners)!.Value.Words);
        await using var context = db.CreateDbContext();
        Assert.Equal(3, await context.Set<CauseJudged>().CountAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_word_that_is_taken_back_counts_no_more_also_after_it_was_put_better(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var reed = (await new BenchStudio(db).ReedAsync()).Id;
        var bench = new BenchBook(db, TimeProvider.System);
        var fact = Value(await bench.RecordAsync(BenchStudio.Ada, reed, Word(CauseAnswer.Dismissed), BenchStudio.Operation(), Ct));
        Value(await bench.CorrectAsync(BenchStudio.Ada, reed, fact.Tail, Word(CauseAnswer.Confirmed), BenchStudio.Operation(), Ct));
        var counts = new List<string?> { await Said(db) };
        foreach (var _ in Enumerable.Range(0, 2))
        {
            Value(await bench.UndoAsync(BenchStudio.Ada, reed, null, BenchStudio.Operation(), Ct));
            counts.Add(await Said(db));
        }

        Assert.Equal(["1 confirmed of 1 here", "0 confirmed of 1 here", null], counts);
    }

    [Theory, OnBothEngines]
    public async Task What_is_reasoned_of_a_reed_takes_the_counts_at_once_and_only_an_owner_begins_them_anew(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var owner = await OpenAsync(db);
        var scene = new BenchStudio(db);
        var (first, second) = ((await scene.ReedAsync()).Id, (await scene.ReedAsync()).Id);
        var clock = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var (news, began) = (new BenchNews(), 0);
        news.CountsBegan += () => began++;
        using var learned = new LearnedHere(db, clock);
        var book = new ReasoningBook(db, clock, learned, news);
        var usual = (await book.FindAsync(BenchStudio.Ada, first, Ct))!.Learned.Catalogue.Find(Corners)!.Prior.Value;
        Value(await new BenchBook(db, clock).RecordAsync(BenchStudio.Ada, second, Word(CauseAnswer.Confirmed), BenchStudio.Operation(), Ct));
        var here = (await book.FindAsync(BenchStudio.Ada, first, Ct))!.Learned.Catalogue.Find(Corners)!.Prior.Value;
        clock.Advance(TimeSpan.FromMinutes(1));
        var operation = BenchStudio.Operation();

        Assert.Equal(Catalogue.Shipped.Find(Corners)!.Prior.Value, usual);
        Assert.True(here > usual);
        Assert.IsType<Outcome<StudioCounts>.NotFound>(await book.ForgetAsync(BenchStudio.Ada, operation, Ct));
        Assert.Equal(0, began);
        Assert.Empty(Value(await book.ForgetAsync(owner, operation, Ct)).All);
        Assert.Equal(1, began);
        Assert.Equal(usual, (await book.FindAsync(BenchStudio.Ada, first, Ct))!.Learned.Catalogue.Find(Corners)!.Prior.Value);

        clock.Advance(TimeSpan.FromMinutes(1));
        Value(await new BenchBook(db, clock).RecordAsync(BenchStudio.Ada, first, Word(CauseAnswer.Confirmed), BenchStudio.Operation(), Ct));
        Assert.Single(Value(await book.ForgetAsync(owner, operation, Ct)).All);
    }

    [Theory, OnBothEngines]
    public async Task What_is_said_of_a_cause_is_at_hand_at_every_bench_with_the_next_look_and_is_read_once(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var reed = (await new BenchStudio(db).ReedAsync()).Id;
        var (clock, news) = (new FakeTimeProvider(TimeProvider.System.GetUtcNow()), new BenchNews());
        var bench = new BenchBook(db, clock, news);
        using var here = new LearnedHere(db, clock, news);
        Assert.True(await here.CatchUpAsync(Ct));
        Assert.False(await here.CatchUpAsync(Ct));

        Value(await bench.RecordAsync(BenchStudio.Ada, reed, Word(CauseAnswer.Confirmed), BenchStudio.Operation(), Ct));
        Assert.True(await here.CatchUpAsync(Ct));
        Assert.Equal("1 confirmed of 1 here", here.AtHand!.Counts.Find(Corners)!.Value.Words);
        Assert.True(here.AtHand.Catalogue.Find(Corners)!.Prior.Value > Catalogue.Shipped.Find(Corners)!.Prior.Value);

        Value(await bench.RecordAsync(BenchStudio.Ada, reed, Clip(), BenchStudio.Operation(), Ct));
        Assert.False(await here.CatchUpAsync(Ct), "Something was written, and nothing of it is a word on a cause.");
        Value(await bench.UndoAsync(BenchStudio.Ada, reed, null, BenchStudio.Operation(), Ct));
        Value(await bench.UndoAsync(BenchStudio.Ada, reed, null, BenchStudio.Operation(), Ct));
        Assert.True(await here.CatchUpAsync(Ct));
        Assert.Null(here.AtHand.Counts.Find(Corners));
    }

    [Theory, OnBothEngines]
    public async Task What_passes_have_shown_is_read_from_the_logs_and_kept_for_a_while(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new BenchStudio(db);
        var clock = new FakeTimeProvider(TimeProvider.System.GetUtcNow());
        var bench = new BenchBook(db, clock);
        var reeds = (await scene.BatchAsync(await scene.StudentAsync("Wilma"), 6)).Reeds;
        using var here = new LearnedHere(db, clock);
        Assert.True((await here.ReadAsync(Ct)).Effects.Crow.Values.All(effect => effect.Passes == 0));
        foreach (var reed in reeds)
        {
            foreach (var entry in (BenchEntry[])[Crow("B"), Clip(), Crow("C")])
            {
                Value(await bench.RecordAsync(BenchStudio.Ada, reed.Id, entry, BenchStudio.Operation(), Ct));
            }
        }

        var before = await here.ReadAsync(Ct);
        clock.Advance(LearnedHere.Kept);
        var after = await here.ReadAsync(Ct);

        Assert.Equal(0, before.Effects.Crow[new("clip")].Passes);
        Assert.Equal((6, 6), (after.Effects.Crow[new("clip")].Passes, after.Reeds));
        Assert.False(after.Effects.Crow[new("clip")].IsTooLittle);
        Assert.Same(after, await here.ReadAsync(Ct));
    }

    [Theory, OnBothEngines]
    public async Task Nothing_is_learned_from_the_logs_of_a_student_for_whom_nothing_may_be_done(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var scene = new BenchStudio(db);
        var reed = (await scene.BatchAsync(await scene.StudentAsync("Jory"))).Reeds[0].Id;
        var bench = new BenchBook(db, TimeProvider.System);
        foreach (var entry in (BenchEntry[])[Crow("B"), Clip(), Crow("C"), Word(CauseAnswer.Confirmed)])
        {
            Value(await bench.RecordAsync(BenchStudio.Ada, reed, entry, BenchStudio.Operation(), Ct));
        }

        await using var context = db.CreateDbContext();
        await context.Set<Student>().ExecuteUpdateAsync(row => row.SetProperty(student => student.Consent, Consent.Withdrawn), Ct);
        using var here = new LearnedHere(db, TimeProvider.System);
        var learned = await here.ReadAsync(Ct);

        Assert.Equal((0, 0), (learned.Reeds, learned.Counts.All.Count));
    }

    [Theory, OnBothEngines]
    public async Task The_quiet_line_is_off_until_a_teacher_chooses_it_and_another_teacher_keeps_theirs(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        var (ada, ben) = (await AccountAsync(db), await AccountAsync(db));
        var book = Book(db);
        var operation = BenchStudio.Operation();

        Assert.False((await book.WantsLineAsync(ada, Ct))!.Line);
        Assert.True(Value(await book.ChooseLineAsync(ada, true, operation, Ct)));
        Assert.True((await book.WantsLineAsync(ada, Ct))!.Line);
        Assert.False((await book.WantsLineAsync(ben, Ct))!.Line);
        Assert.True(Value(await book.ChooseLineAsync(ada, false, operation, Ct)), "The same form sent twice gives the first answer.");
        Assert.False(Value(await book.ChooseLineAsync(ada, false, BenchStudio.Operation(), Ct)));
        Assert.Null(await book.WantsLineAsync(BenchStudio.Stranger, Ct));
    }

    [Theory, OnBothEngines]
    public async Task A_studio_without_a_reed_has_learned_nothing_and_says_so(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        using var here = new LearnedHere(db, TimeProvider.System);
        var learned = await here.ReadAsync(Ct);

        Assert.All(learned.Effects.Crow.Values, effect => Assert.StartsWith("Nobody has measured here yet", effect.Sentence, StringComparison.Ordinal));
        Assert.Null(await Book(db).FindAsync(BenchStudio.Ada, new ReedId(BenchStudio.NewGuid()), Ct));
    }

    private static ReasoningBook Book(TestDatabase db, TimeProvider? time = null) =>
        new(db, time ?? TimeProvider.System, new LearnedHere(db, time ?? TimeProvider.System));

    private static async Task<string?> Said(TestDatabase db) => (await Book(db).CountsAsync(BenchStudio.Ada, Ct))!.Find(Corners)?.Words;

    private static CauseJudged Word(CauseAnswer answer) => Value(CauseJudged.Of(Corners, answer));

    private static Adjustment Clip() => Value(Adjustment.Of(new AdjustmentKindId("clip"), new Place(Zone.TipEdge)));

    private static Domain.Bench.Test Crow(string pitch) => Value(Domain.Bench.Test.Of(TestKind.Crow, pitch: Value(SaidPitch.Read(pitch, Tuning.Standard))));

    private static T Value<T>(Outcome<T> outcome) => BenchStudio.Value(outcome);

    private static async Task<Actor> AccountAsync(TestDatabase db)
    {
        var id = BenchStudio.NewGuid();
        await using var context = db.CreateDbContext();
        context.Add(new ClinicAccount { Id = id, UserName = $"{id:N}", NormalizedUserName = $"{id:N}", DisplayName = "Edda" });
        await context.SaveChangesAsync(Ct);
        return new Actor(new AccountId(id), null, IsTeacher: true, IsOwner: false);
    }

    private static async Task<Actor> OpenAsync(TestDatabase db)
    {
        await using var scope = db.Services.CreateAsyncScope();
        var account = Value(await scope.ServiceProvider.GetRequiredService<StudioBook>().Open(
            db.Services.GetRequiredService<FirstRunCode>().Text, "Quay Reeds", null,
            new NewAccount("Maren", $"maren{BenchStudio.NewGuid():N}@harbour.example", "seven boats in the harbour"), BenchStudio.Operation(), Ct));
        return new Actor(account, null, IsTeacher: false, IsOwner: true);
    }
}
