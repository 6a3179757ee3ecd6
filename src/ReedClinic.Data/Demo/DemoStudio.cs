using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.TeachingNotes;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Demo;

/// <summary>
/// Fills an empty database with an invented studio, through the same Books as people use, under a clock that is set
/// back. Whether that may happen at all is the host's to say: in Development alone.
/// </summary>
public sealed class DemoStudio(
    IDbContextFactory<ClinicDb> databases, TimeProvider time, IPasswordHasher<ClinicAccount> hasher, ILookupNormalizer fold, Outbox outbox)
{
    private static readonly ReedArrival Fine = new(
        Presence.Here, "pencil dot near the thread", WindingHand.Right, Overlap.UpperToTheLeft, true, Fitness: Fitness.Fit);

    private readonly DemoClock _clock = new(time.GetUtcNow());

    /// <summary>The people of the demo who are in this database; empty in any other studio.</summary>
    public async Task<IReadOnlyList<DemoSignIn>> SignInsAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        var addresses = await db.Users.Select(account => account.Email).ToListAsync(ct).ConfigureAwait(false);
        return [.. DemoPeople.All.Where(person => addresses.Contains(person.Email))];
    }

    /// <summary>Seeds the demo, unless anybody is in the studio already.</summary>
    public async Task SeedAsync(CancellationToken ct)
    {
        if (!await NobodyIsHereAsync(ct).ConfigureAwait(false))
        {
            return;
        }

        var today = time.GetUtcNow();
        _clock.GoTo(today.AddDays(-200));
        var maren = await OpenAsync(ct).ConfigureAwait(false);
        var accounts = new AccountBook(databases, _clock, Register(), outbox);
        var assistant = DemoAnswer.Of(await Register().AdmitAsync(DemoPeople.AccountOf(DemoPeople.Edda), Role.Teacher, _clock.Operation(), ct).ConfigureAwait(false));
        var edda = (await accounts.ActorFor(assistant, ct).ConfigureAwait(false))!;
        var ines = await SignUpAsync(accounts, DemoPeople.Ines, ct).ConfigureAwait(false);
        var tomas = await SignUpAsync(accounts, DemoPeople.Tomas, ct).ConfigureAwait(false);
        var wilma = await SignUpAsync(accounts, DemoPeople.Wilma, ct).ConfigureAwait(false);
        await SignUpAsync(accounts, DemoPeople.Jory, ct).ConfigureAwait(false);

        foreach (var note in DemoNotes.All)
        {
            DemoAnswer.Of(await new OwnNoteBook(databases, _clock).BeginAsync(maren, note, _clock.Operation(), ct).ConfigureAwait(false));
        }

        await SpringAsync(ines, maren, today.AddDays(-150), ct).ConfigureAwait(false);
        await AutumnAsync(ines, maren, today.AddDays(-25), ct).ConfigureAwait(false);
        await AtTheBenchAsync(tomas, edda, today.AddDays(-6), ct).ConfigureAwait(false);
        _clock.GoTo(today.AddHours(-20));
        await SendAsync(wilma, DemoIntakes.Wilma(), ct).ConfigureAwait(false);
    }

    private async Task<bool> NobodyIsHereAsync(CancellationToken ct)
    {
        var db = await databases.CreateDbContextAsync(ct).ConfigureAwait(false);
        await using var _ = db.ConfigureAwait(false);
        return !await db.Users.AnyAsync(ct).ConfigureAwait(false)
            && !await db.Set<Studio>().AnyAsync(ct).ConfigureAwait(false)
            && !await db.Set<Student>().AnyAsync(ct).ConfigureAwait(false);
    }

    private async Task SpringAsync(Actor student, Actor teacher, DateTimeOffset from, CancellationToken ct)
    {
        _clock.GoTo(from);
        var batch = await SendAsync(student, DemoIntakes.InesInSpring(), ct).ConfigureAwait(false);
        _clock.GoTo(from.AddDays(4));
        batch = await UnpackAsync(teacher, batch, null, ct, Fine, Fine, Fine).ConfigureAwait(false);
        _clock.GoTo(from.AddDays(6));
        await DemoWork.SpringFirstAsync(At(teacher, batch, 0, ct)).ConfigureAwait(false);
        await DemoWork.SpringSecondAsync(At(teacher, batch, 1, ct)).ConfigureAwait(false);
        await DemoWork.SpringThirdAsync(At(teacher, batch, 2, ct)).ConfigureAwait(false);
        await ThreadAsync(teacher, batch, "tip-corners-thick", "Finish the corners: they should let light through before the middle does.", null, ct)
            .ConfigureAwait(false);
        await WriteAsync(teacher, batch, ct).ConfigureAwait(false);
        var desk = new DeskBook(databases, _clock, outbox);
        _clock.Pass(TimeSpan.FromDays(1));
        DemoAnswer.Of(await desk.MoveOnAsync(teacher, batch.Batch.Id, Stage.OnItsWayHome, _clock.Operation(), ct).ConfigureAwait(false));
        _clock.Pass(TimeSpan.FromDays(3));
        DemoAnswer.Of(await desk.MoveOnAsync(teacher, batch.Batch.Id, Stage.Home, _clock.Operation(), ct).ConfigureAwait(false));
    }

    private async Task AutumnAsync(Actor student, Actor teacher, DateTimeOffset from, CancellationToken ct)
    {
        _clock.GoTo(from);
        var batch = await SendAsync(student, DemoIntakes.InesInAutumn(), ct).ConfigureAwait(false);
        _clock.GoTo(from.AddDays(3));
        batch = await UnpackAsync(teacher, batch, null, ct, Fine, Fine with { Damage = "a scuff on the bark, harmless" }, Fine).ConfigureAwait(false);
        _clock.GoTo(from.AddDays(5));
        var first = At(teacher, batch, 0, ct);
        await DemoWork.AutumnAsync(first, "C +10", "C", blends: true).ConfigureAwait(false);
        await first.EndsAsync(VerdictKind.Improved, "Every start was clean: there was nothing more to win.", "You wrote that it is the easiest you have made: more work could have cost that.").ConfigureAwait(false);
        var second = At(teacher, batch, 1, ct);
        await DemoWork.AutumnAsync(second, "B +45", "B +30", blends: true).ConfigureAwait(false);
        await second.AdjustAsync("clip-hair", new Place(Zone.TipEdge), new(Millimetres: 0.1m), null).ConfigureAwait(false);
        await second.TestAsync(TestKind.Crow, 0, "C").ConfigureAwait(false);
        await second.EndsAsync(VerdictKind.Improved, "The pitch is up where you need it.", "Let it rest a day before the concert.").ConfigureAwait(false);
        var third = At(teacher, batch, 2, ct);
        await DemoWork.AutumnAsync(third, "C +5", "C -5", blends: false).ConfigureAwait(false);
        await third.EndsAsync(VerdictKind.AsGoodAsThisCaneGets, "The cane is soft; more work would only thin it.", "Good for long notes at home.").ConfigureAwait(false);
        await ThreadAsync(teacher, batch, "tip-not-separate", "Mark where the tip begins with a pencil line, and let it show when you have finished.",
            "you stop as soon as the reed crows, before the line is drawn", ct).ConfigureAwait(false);
        await WriteAsync(teacher, batch, ct).ConfigureAwait(false);
    }

    private async Task AtTheBenchAsync(Actor student, Actor teacher, DateTimeOffset from, CancellationToken ct)
    {
        _clock.GoTo(from);
        var batch = await SendAsync(student, DemoIntakes.Tomas(), ct).ConfigureAwait(false);
        _clock.GoTo(from.AddDays(4));
        batch = await UnpackAsync(
            teacher, batch, "One corner of the box was wet.", ct,
            Fine,
            Fine with { Overlap = Overlap.UpperToTheRight, OverlapAgrees = false },
            Fine with { UpperMark = "scratch beside the thread", Winding = WindingHand.Left, Overlap = Overlap.NotRead, OverlapAgrees = null },
            new ReedArrival(Presence.Missing)).ConfigureAwait(false);
        _clock.GoTo(from.AddDays(5));
        await DemoWork.FirstLookAsync(At(teacher, batch, 0, ct), opening: 4, crow: 1, "B -20", start: 1, low: 2, effort: 4).ConfigureAwait(false);
        await DemoWork.FirstLookAsync(At(teacher, batch, 1, ct), opening: 1, crow: 0, "C# +5", start: 2, low: 1, effort: 2).ConfigureAwait(false);
        await DemoWork.FirstLookAsync(At(teacher, batch, 2, ct), opening: 2, crow: 0, "between B and C", start: 3, low: 3, effort: 2).ConfigureAwait(false);
    }

    private async Task<Actor> OpenAsync(CancellationToken ct)
    {
        var code = new FirstRunCode();
        var studio = new StudioBook(databases, _clock, Register(), code);
        var owner = DemoAnswer.Of(await studio.Open(
            code.Text, DemoPeople.StudioName, DemoPeople.PostTo, DemoPeople.AccountOf(DemoPeople.Maren), _clock.Operation(), ct).ConfigureAwait(false));
        var actor = (await new AccountBook(databases, _clock, Register(), outbox).ActorFor(owner, ct).ConfigureAwait(false))!;
        var stands = (await studio.Read(ct).ConfigureAwait(false))!;
        DemoAnswer.Of(await studio.DescribeAsync(
            actor, DemoPeople.StudioName, DemoPeople.PostTo, DemoPeople.WriteTo, stands.Version, _clock.Operation(), ct).ConfigureAwait(false));
        return actor;
    }

    private async Task<Actor> SignUpAsync(AccountBook accounts, DemoSignIn person, CancellationToken ct)
    {
        _clock.Pass(TimeSpan.FromDays(1));
        var account = DemoAnswer.Of(await Register().AdmitAsync(DemoPeople.AccountOf(person), Role.Student, _clock.Operation(), ct).ConfigureAwait(false));
        return (await accounts.ActorFor(account, ct).ConfigureAwait(false))!;
    }

    private async Task<BatchView> SendAsync(Actor student, IntakeForm form, CancellationToken ct)
    {
        var book = new IntakeBook(databases, _clock);
        var draft = DemoAnswer.Of(await book.StartAsync(student, _clock.Operation(), ct).ConfigureAwait(false));
        _clock.Pass(TimeSpan.FromMinutes(12));
        DemoAnswer.Of(await book.SaveAsync(student, draft.Id, form, draft.Version, _clock.Operation(), ct).ConfigureAwait(false));
        return DemoAnswer.Of(await book.SubmitAsync(student, draft.Id, _clock.Operation(), ct).ConfigureAwait(false));
    }

    private async Task<BatchView> UnpackAsync(Actor teacher, BatchView batch, string? note, CancellationToken ct, params ReedArrival[] seen)
    {
        var reeds = batch.Batch.Reeds.OrderBy(reed => reed.Number).Zip(seen).ToDictionary(pair => pair.First.Id, pair => pair.Second);
        return DemoAnswer.Of(await new ArrivalBook(databases, _clock, outbox).RecordAsync(
            teacher, batch.Batch.Id, new SeenParcel(reeds, note) { NoteInLetter = true }, batch.Batch.Version, _clock.Operation(), ct).ConfigureAwait(false));
    }

    private async Task ThreadAsync(Actor teacher, BatchView batch, string lesson, string words, string? habit, CancellationToken ct) =>
        DemoAnswer.Of(await new CommonThreadBook(databases, _clock).ChooseAsync(
            teacher,
            batch.Batch.Code,
            new ThreadChoice
            {
                LessonKind = new FindingKindId(lesson),
                LessonWords = words,
                StrengthKind = new FindingKindId("heart-well-kept"),
                HabitWords = habit,
            },
            Guid.Empty,
            _clock.Operation(),
            ct).ConfigureAwait(false));

    private async Task WriteAsync(Actor teacher, BatchView batch, CancellationToken ct)
    {
        _clock.Pass(TimeSpan.FromHours(20));
        var book = new LetterBook(databases, _clock, outbox);
        var code = batch.Batch.Code;
        foreach (var question in batch.Batch.Questions)
        {
            DemoAnswer.Of(await book.AnswerAsync(teacher, code, question.Id, DemoIntakes.Answers[question.Text], _clock.Operation(), ct)
                .ConfigureAwait(false));
        }

        var draft = (await book.ReadAsync(teacher, code, ct).ConfigureAwait(false))!;
        foreach (var gap in draft.Gaps.Where(gap => gap.Kind == GapKind.WorkBeyondTheWish))
        {
            DemoAnswer.Of(await book.WaiveAsync(
                teacher, code, gap.Key, DemoIntakes.WhyTheKnife(draft.AtBench.Batch.Reeds.Single(reed => reed.Id == gap.Reed).Number),
                _clock.Operation(), ct).ConfigureAwait(false));
        }

        var ready = (await book.ReadAsync(teacher, code, ct).ConfigureAwait(false))!;
        _clock.Pass(TimeSpan.FromMinutes(15));
        DemoAnswer.Of(await book.SendAsync(teacher, code, ready.Mark, _clock.Operation(), ct).ConfigureAwait(false));
    }

    private DemoBench At(Actor teacher, BatchView batch, int reed, CancellationToken ct) => new(
        new BenchBook(databases, _clock),
        _clock,
        teacher,
        batch.Student.TunesTo ?? Tuning.Standard,
        batch.Batch.Reeds.OrderBy(one => one.Number).ElementAt(reed).Id,
        ct);

    private AccountRegister Register() => new(databases, _clock, hasher, fold);
}
