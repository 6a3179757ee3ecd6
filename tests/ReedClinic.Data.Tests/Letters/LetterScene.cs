using Microsoft.EntityFrameworkCore;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Letters;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.Tests.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

/// <summary>A batch of two reeds that has been worked on; the second still has no verdict, and a question has no answer.</summary>
internal sealed record LetterScene(TestDatabase Db, IntakeScene Intake, Actor Student, Batch Batch)
{
    public BatchCode Code => Batch.Code;

    public LetterBook Book { get; } = new(Db, TimeProvider.System, Db.Outbox);

    public LetterCorrectionBook Corrections { get; } = new(Db, TimeProvider.System, Db.Outbox);

    public LetterBoxBook Box { get; } = new(Db);

    public static async Task<LetterScene> OfAsync(TestDatabase db)
    {
        var intake = new IntakeScene(db);
        var student = await intake.StudentAsync();
        var batch = (await intake.BatchAsync(student, reeds: 2)).Batch;
        var fine = new ReedArrival(Presence.Here, Fitness: Fitness.Fit);
        Done(await intake.Arrival.RecordAsync(
            Teacher, batch.Id, new(batch.Reeds.ToDictionary(reed => reed.Id, _ => fine), null), batch.Version, Operation(), Ct));
        var scene = new LetterScene(db, intake, student, batch);
        for (var number = 1; number <= 2; number++)
        {
            await scene.SayAsync(
                number, Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners, Blades.Upper)));
        }

        await scene.SayAsync(1, Verdict.Of(VerdictKind.Improved));
        Done(await new CommonThreadBook(db, TimeProvider.System).ChooseAsync(
            Teacher, batch.Code, new ThreadChoice(new FindingKindId("tip-corners-thick"), HabitWords: "the knife turns early"),
            Guid.Empty, Operation(), Ct));
        return scene;
    }

    public async Task<LetterView> ReadAsync() => (await Book.ReadAsync(Teacher, Code, Ct))!;

    public async Task SayAsync<T>(int reed, Outcome<T> entry)
        where T : BenchEntry => Done(await new BenchBook(Db, TimeProvider.System).RecordAsync(
            Teacher, Batch.Reeds[reed - 1].Id, Done(entry), Operation(), Ct));

    public async Task HasAddressAsync()
    {
        await using var db = Db.CreateDbContext();
        await db.Set<Student>().Where(row => row.Id == Batch.Student).ExecuteUpdateAsync(rows => rows.SetProperty(row => row.Email, "ines@example.org"), Ct);
    }

    public async Task<LetterView> ReadyAsync()
    {
        await SayAsync(2, Verdict.Of(VerdictKind.LeftAsItCame));
        return Done(await Book.AnswerAsync(Teacher, Code, Batch.Questions[0].Id, "Number one.", Operation(), Ct));
    }

    public async Task<LetterView> SentAsync() => Done(await Book.SendAsync(Teacher, Code, (await ReadyAsync()).Mark, Operation(), Ct));

    public async Task<LetterView> BegunAsync() => Done(await Corrections.BeginAsync(Teacher, Code, (await ReadAsync()).Version, Operation(), Ct));

    public async Task<LetterView> CorrectedAsync(string lesson, string whatChanged)
    {
        var begun = await BegunAsync();
        Done(await Book.SaveAsync(Teacher, Code, new Dictionary<string, string> { ["lesson"] = lesson }, begun.Version, Operation(), Ct));
        var said = Done(await Corrections.SayAsync(Teacher, Code, null, whatChanged, Operation(), Ct));
        return Done(await Corrections.SendAsync(Teacher, Code, said.Mark, whatChanged, Operation(), Ct));
    }
}
