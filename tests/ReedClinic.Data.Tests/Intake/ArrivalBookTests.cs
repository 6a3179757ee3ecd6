using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Intake;

public sealed class ArrivalBookTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly ReedArrival Fine = new(Presence.Here, Fitness: Fitness.Fit);

    [Theory, OnBothEngines]
    public async Task A_batch_is_found_by_its_code_however_it_is_typed(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;

        var found = await scene.Arrival.FindAsync(Teacher, " " + batch.Code.ToString().ToLowerInvariant(), Ct);

        Assert.Equal(batch.Id, found.Found!.Batch.Id);
        Assert.Null(found.Trouble);
    }

    [Theory, OnBothEngines]
    public async Task A_mistyped_code_says_which_character_is_wrong(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var code = (await scene.BatchAsync(await scene.StudentAsync("Bram Oosterling"))).Batch.Code;
        var wrong = code.Value[..3] + (code.Value[3] == 'K' ? 'W' : 'K') + code.Value[4..];

        var search = await scene.Arrival.FindAsync(Teacher, wrong, Ct);

        Assert.Null(search.Found);
        Assert.NotNull(search.Trouble);
        var near = Assert.Single(search.Near);
        Assert.Equal(code, near.Code);
        Assert.StartsWith("The 4th character is", near.Difference, StringComparison.Ordinal);
        Assert.Equal("Bram Oosterling", near.StudentName);
    }

    [Theory, OnBothEngines]
    public async Task A_good_code_without_a_batch_says_so(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.FreshAsync(engine));

        var search = await scene.Arrival.FindAsync(Teacher, "7KP-W3MQ", Ct);

        Assert.Equal("No batch has this code.", search.Trouble);
        Assert.Empty(search.Near);
    }

    [Theory, OnBothEngines]
    public async Task A_mistyped_code_tells_a_student_nothing_of_other_batches(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var code = (await scene.BatchAsync(await scene.StudentAsync())).Batch.Code;
        var other = await scene.StudentAsync("Tove Lind");

        Assert.Empty((await scene.Arrival.FindAsync(other, code.Value[..6], Ct)).Near);
        Assert.Null((await scene.Arrival.FindAsync(other, code.Value, Ct)).Found);
    }

    [Theory, OnBothEngines]
    public async Task What_lay_in_the_parcel_is_kept_with_every_difference(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;
        var seen = new ReedArrival(
            Presence.Here, "pencil dot", WindingHand.Left, Overlap.UpperToTheRight, false, "left corner chipped", Fitness.DryFirst);
        var operation = Operation();

        var recorded = Done(await scene.Arrival.RecordAsync(
            Teacher, batch.Id, Parcel(batch, "box was wet", Fine, new ReedArrival(Presence.Missing), seen), batch.Version, operation, Ct));
        var extra = Done(await scene.Arrival.AddExtraAsync(Teacher, batch.Id, "no tag, blue thread", Operation(), Ct));
        var repeated = Done(await scene.Arrival.RecordAsync(
            Teacher, batch.Id, Parcel(batch, "again", Fine, Fine, Fine), batch.Version, operation, Ct));

        Assert.Equal(Stage.Here, recorded.Batch.Stage);
        Assert.NotNull(recorded.Batch.ArrivedAt);
        Assert.Equal(seen, repeated.Batch.Reeds[2].Arrival);
        Assert.Equal("box was wet", repeated.Batch.ArrivalNote);
        Assert.Equal(
            [MismatchKind.Missing, MismatchKind.Damaged, MismatchKind.Damp, MismatchKind.Extra],
            extra.Batch.Mismatches.Select(mismatch => mismatch.Kind));
        var row = Assert.Single(await scene.Desk.AllAsync(Teacher, Ct), row => row.Code == batch.Code);
        Assert.Equal((4, 1, 1, 1, Stage.Here), (row.Reeds, row.Missing, row.Extra, row.OpenQuestions, row.Stage));
    }

    [Theory, OnBothEngines]
    public async Task Two_teachers_on_one_parcel_do_not_overwrite_each_other(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;
        Done(await scene.Arrival.RecordAsync(Teacher, batch.Id, Parcel(batch, null, Fine), batch.Version, Operation(), Ct));

        var late = await scene.Arrival.RecordAsync(
            Teacher, batch.Id, Parcel(batch, null, new ReedArrival(Presence.Missing)), batch.Version, Operation(), Ct);

        var conflict = Assert.IsType<Outcome<BatchView>.Conflict>(late);
        Assert.Equal(Presence.Here, conflict.Theirs.Batch.Reeds[0].Presence);
    }

    [Theory, OnBothEngines]
    public async Task A_parcel_that_contradicts_itself_is_refused_beside_the_field(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;

        var refused = await scene.Arrival.RecordAsync(
            Teacher, batch.Id, Parcel(batch, new string('x', 501), Fine, new ReedArrival(Presence.Here)), batch.Version, Operation(), Ct);

        Assert.Equal(
            ["Note", "Reeds[2].Fitness"],
            Assert.IsType<Outcome<BatchView>.Refused>(refused).Problems.Select(problem => problem.Field));
        Assert.Equal(Presence.Expected, (await scene.Desk.BatchAsync(Teacher, batch.Code, Ct))!.Batch.Reeds[0].Presence);
    }

    [Theory, OnBothEngines]
    public async Task An_extra_reed_is_added_once_however_often_the_form_is_sent(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;
        var operation = Operation();

        await Task.WhenAll(Enumerable.Range(0, 5)
            .Select(_ => Task.Run(() => scene.Arrival.AddExtraAsync(Teacher, batch.Id, "blue thread", operation, Ct), Ct)));

        Assert.Equal(4, (await scene.Desk.BatchAsync(Teacher, batch.Code, Ct))!.Batch.Reeds.Count);
    }

    [Theory, OnBothEngines]
    public async Task An_extra_reed_that_was_added_by_mistake_is_removed_once_and_no_other(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var batch = (await scene.BatchAsync(student)).Batch;
        var extra = Done(await scene.Arrival.AddExtraAsync(Teacher, batch.Id, "blue thread", Operation(), Ct)).Batch.Reeds[^1];

        Assert.IsType<Outcome<BatchView>.NotFound>(await scene.Arrival.RemoveExtraAsync(student, batch.Id, extra.Id, Operation(), Ct));
        Assert.IsType<Outcome<BatchView>.Refused>(await scene.Arrival.RemoveExtraAsync(Teacher, batch.Id, batch.Reeds[0].Id, Operation(), Ct));
        var operation = Operation();
        var removed = Done(await scene.Arrival.RemoveExtraAsync(Teacher, batch.Id, extra.Id, operation, Ct));
        var again = Done(await scene.Arrival.RemoveExtraAsync(Teacher, batch.Id, extra.Id, operation, Ct));
        Assert.IsType<Outcome<BatchView>.Refused>(await scene.Arrival.RemoveExtraAsync(Teacher, batch.Id, extra.Id, Operation(), Ct));

        Assert.Equal(batch.Reeds.Select(reed => reed.Id), removed.Batch.Reeds.Select(reed => reed.Id));
        Assert.Equal(removed.Batch.Version, again.Batch.Version);
        Assert.Equal(4, Done(await scene.Arrival.AddExtraAsync(Teacher, batch.Id, "another", Operation(), Ct)).Batch.Reeds[^1].Number);
    }

    [Theory, OnBothEngines]
    public async Task What_removed_one_extra_reed_removes_no_other_and_says_of_none_that_it_is_gone(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;
        async Task<ReedId> Extra(string words) => Done(await scene.Arrival.AddExtraAsync(Teacher, batch.Id, words, Operation(), Ct)).Batch.Reeds[^1].Id;
        var (one, other) = (await Extra("bare cork"), await Extra("green thread"));
        var operation = Operation();
        Done(await scene.Arrival.RemoveExtraAsync(Teacher, batch.Id, one, operation, Ct));

        var refused = Assert.IsType<Outcome<BatchView>.Refused>(await scene.Arrival.RemoveExtraAsync(Teacher, batch.Id, other, operation, Ct));

        Assert.Equal(ArrivalBook.Removing, Assert.Single(refused.Problems).Field);
        Assert.Contains((await scene.Desk.BatchAsync(Teacher, batch.Code, Ct))!.Batch.Reeds, reed => reed.Id == other);
        Assert.DoesNotContain(Done(await scene.Arrival.RemoveExtraAsync(Teacher, batch.Id, other, Operation(), Ct)).Batch.Reeds, reed => reed.Id == other);
    }

    [Theory, OnBothEngines]
    public async Task An_extra_reed_on_which_something_was_done_stays(ClinicEngine engine)
    {
        var database = await databases.OpenAsync(engine);
        var scene = new IntakeScene(database);
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;
        async Task<ReedId> Extra(string words) => Done(await scene.Arrival.AddExtraAsync(Teacher, batch.Id, words, Operation(), Ct)).Batch.Reeds[^1].Id;
        var (tried, typed) = (await Extra("tried"), await Extra("typed"));
        await using (var db = database.CreateDbContext())
        {
            db.Add(Assert.IsType<Outcome<Test>.Done>(Test.Of(TestKind.Opening, 2)).Value.StampedWith(new EntryStamp(new EntryId(NewId()), tried, 1, Operation(), DateTimeOffset.UnixEpoch, Teacher.Account)));
            var draft = BenchDraft.For(typed, Teacher.Account);
            draft.Keep("corners th", DateTimeOffset.UnixEpoch);
            db.Add(draft);
            await db.SaveChangesAsync(Ct);
        }

        foreach (var reed in new[] { tried, typed })
        {
            Assert.IsType<Outcome<BatchView>.Refused>(await scene.Arrival.RemoveExtraAsync(Teacher, batch.Id, reed, Operation(), Ct));
        }

        Assert.Equal(5, (await scene.Desk.BatchAsync(Teacher, batch.Code, Ct))!.Batch.Reeds.Count);
    }

    [Theory, OnBothEngines]
    public async Task Whether_the_letter_tells_the_note_is_kept(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;

        var alone = Done(await scene.Arrival.RecordAsync(Teacher, batch.Id, Parcel(batch, "smells of smoke", Fine), batch.Version, Operation(), Ct));
        var told = Done(await scene.Arrival.RecordAsync(Teacher, batch.Id, Parcel(batch, "box was wet", Fine) with { NoteInLetter = true }, alone.Batch.Version, Operation(), Ct));

        Assert.Equal((false, true), (alone.Batch.ArrivalNoteInLetter, told.Batch.ArrivalNoteInLetter));
    }

    [Theory, OnBothEngines]
    public async Task A_student_opens_no_parcels(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var student = await scene.StudentAsync();
        var batch = (await scene.BatchAsync(student)).Batch;

        Assert.IsType<Outcome<BatchView>.NotFound>(
            await scene.Arrival.RecordAsync(student, batch.Id, Parcel(batch, null, Fine), batch.Version, Operation(), Ct));
        Assert.IsType<Outcome<BatchView>.NotFound>(await scene.Arrival.AddExtraAsync(student, batch.Id, "mine", Operation(), Ct));
        Assert.IsType<Outcome<BatchView>.NotFound>(await scene.Desk.MoveOnAsync(student, batch.Id, Stage.Home, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Reeds_that_are_posted_back_are_on_their_way_home(ClinicEngine engine)
    {
        var scene = new IntakeScene(await databases.OpenAsync(engine));
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;
        var operation = Operation();

        var first = Done(await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, operation, Ct));
        var again = Done(await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, operation, Ct));

        Assert.Equal(Stage.OnItsWayHome, again.Batch.Stage);
        Assert.Equal(first.Batch.PostedBackAt, again.Batch.PostedBackAt);
        Assert.IsType<Outcome<BatchView>.Refused>(await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.Here, Operation(), Ct));
    }

    [Theory, OnBothEngines]
    public async Task Reeds_that_were_posted_by_mistake_are_where_they_were_and_their_student_is_told_again_when_they_go(ClinicEngine engine)
    {
        var database = await databases.OpenAsync(engine);
        var scene = new IntakeScene(database);
        var student = await scene.StudentAsync();
        var batch = (await scene.BatchAsync(student)).Batch;
        Done(await scene.Arrival.RecordAsync(Teacher, batch.Id, Parcel(batch, null, Fine), batch.Version, Operation(), Ct));
        await using (var writing = database.CreateDbContext())
        {
            await writing.Set<Domain.People.Student>().Where(row => row.Id == batch.Student).ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Email, "runa@example.org"), Ct);
        }

        var (posted, taken) = (Operation(), Operation());
        Assert.IsType<Outcome<BatchView>.Done>(await scene.Desk.TakePostingBackAsync(Teacher, batch.Id, Operation(), Ct)); // nothing was posted: nothing to take back
        Done(await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, posted, Ct));
        Assert.True((await scene.Desk.BatchAsync(Teacher, batch.Code, Ct))!.Posting is { IsBeingTold: true, ToldAt: null });

        await using var db = database.CreateDbContext();
        await db.Set<Job>().Where(job => job.Once != null && job.Once.StartsWith($"news:{batch.Id.Value}:/batches/")).ExecuteUpdateAsync(set => set.SetProperty(job => job.DoneAt, DateTimeOffset.UnixEpoch), Ct); // it went out

        Assert.IsType<Outcome<BatchView>.NotFound>(await scene.Desk.TakePostingBackAsync(student, batch.Id, Operation(), Ct));
        var here = Done(await scene.Desk.TakePostingBackAsync(Teacher, batch.Id, taken, Ct));

        Assert.Equal((Stage.Here, null), (here.Batch.Stage, here.Batch.PostedBackAt));
        Assert.Equal([Stage.OnItsWay, Stage.Here], here.Batch.Journey.Select(step => step.Stage));
        Assert.NotNull((await scene.Desk.BatchAsync(student, batch.Code, Ct))!.Posting.TakenBackAt);
        Assert.IsType<Outcome<BatchView>.Conflict>(await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.Home, Operation(), Ct)); // pressed on a page from before
        var again = Done(await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, Operation(), Ct));
        Assert.Equal(Stage.OnItsWayHome, again.Batch.Stage);
        Assert.Equal(Stage.OnItsWayHome, Done(await scene.Desk.TakePostingBackAsync(Teacher, batch.Id, taken, Ct)).Batch.Stage); // the first form, once more
        Done(await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.Home, Operation(), Ct));
        Assert.IsType<Outcome<BatchView>.Conflict>(await scene.Desk.TakePostingBackAsync(Teacher, batch.Id, Operation(), Ct));
        Assert.Equal(2, await db.Set<Job>().CountAsync(job => job.Once != null && job.Once.StartsWith($"news:{batch.Id.Value}:/batches/"), Ct));
        Assert.Equal(
            [AuditEvent.PostedBack, AuditEvent.PostingTakenBack, AuditEvent.PostedBack],
            (await db.Set<AuditNote>().Where(note => note.What == batch.Id.Value).OrderBy(note => note.At).ThenBy(note => note.Id).ToListAsync(Ct)).Select(note => note.Event));
    }

    [Theory, OnBothEngines]
    public async Task A_mail_of_a_posting_that_was_taken_back_before_it_went_out_never_goes_and_the_true_one_goes_once(ClinicEngine engine)
    {
        var database = await databases.OpenAsync(engine);
        var scene = new IntakeScene(database);
        var batch = (await scene.BatchAsync(await scene.StudentAsync())).Batch;
        Done(await scene.Arrival.RecordAsync(Teacher, batch.Id, Parcel(batch, null, Fine), batch.Version, Operation(), Ct));
        await using var db = database.CreateDbContext();
        await db.Set<Domain.People.Student>().Where(row => row.Id == batch.Student).ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Email, "runa@example.org"), Ct);
        var news = db.Set<Job>().AsNoTracking().Where(job => job.Once != null && job.Once.StartsWith($"news:{batch.Id.Value}:/batches/"));

        Done(await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, Operation(), Ct));
        Assert.Equal(1, await news.CountAsync(Ct));
        Done(await scene.Desk.TakePostingBackAsync(Teacher, batch.Id, Operation(), Ct));
        Assert.Equal(0, await news.CountAsync(Ct));
        Done(await scene.Desk.MoveOnAsync(Teacher, batch.Id, Stage.OnItsWayHome, Operation(), Ct));

        Assert.Null((await news.SingleAsync(Ct)).DoneAt);
        Assert.True((await scene.Desk.BatchAsync(Teacher, batch.Code, Ct))!.Posting.IsBeingTold);
    }

    private static SeenParcel Parcel(Batch batch, string? note, params ReedArrival[] seen) =>
        new(batch.Reeds.Zip(seen).ToDictionary(pair => pair.First.Id, pair => pair.Second), note);
}
