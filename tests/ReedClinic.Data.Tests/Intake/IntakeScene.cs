using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Tests.Intake;

/// <summary>Students, a teacher and sent batches for the tests of whatever happens to a batch.</summary>
internal sealed class IntakeScene(TestDatabase db)
{
    public static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static Actor Teacher { get; } = new(new AccountId(NewId()), null, IsTeacher: true, IsOwner: false);

    public IntakeBook Intake { get; } = new(db, TimeProvider.System);

    public ArrivalBook Arrival { get; } = new(db, TimeProvider.System, db.Outbox);

    public DeskBook Desk { get; } = new(db, TimeProvider.System, db.Outbox);

    public StudentBook Students { get; } = new(db, TimeProvider.System, db.Outbox);

    public static OperationId Operation() => new(NewId());

    public static Guid NewId() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());

    public async Task<Actor> StudentAsync(string name = "Ines Kestrel")
    {
        var account = new Actor(new AccountId(NewId()), null, false, false);
        var student = Done(await Students.WelcomeAsync(account, name, null, Operation(), Ct));
        Done(await Students.SayAgeAsync(account, AgeAnswer.OldEnough, Operation(), Ct));
        return account with { Student = student.Id };
    }

    public static IntakeForm Form(int reeds = 3) => new()
    {
        TunesTo = "442",
        Country = "Portugal",
        Questions = "Which one should I play first?",
        Reeds =
        [
            .. Enumerable.Range(1, reeds).Select(number => new ReedForm
            {
                HowToRecognise = FormattableString.Invariant($"tag {number}, sand-coloured thread"),
                Bothers = "low notes come late",
                Permission = "TakeRisks",
                Response = "2",
                HoursPlayed = "1.5",
            }),
        ],
    };

    public async Task<DraftView> DraftAsync(Actor student, IntakeForm form)
    {
        var draft = Done(await Intake.StartAsync(student, Operation(), Ct));
        return Done(await Intake.SaveAsync(student, draft.Id, form, draft.Version, Operation(), Ct));
    }

    public async Task<BatchView> BatchAsync(Actor student, int reeds = 3)
    {
        var draft = await DraftAsync(student, Form(reeds));
        return Done(await Intake.SubmitAsync(student, draft.Id, Operation(), Ct));
    }

    public static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;
}
