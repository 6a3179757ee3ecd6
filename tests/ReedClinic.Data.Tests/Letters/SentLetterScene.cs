using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Tests.Guardians;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using static ReedClinic.Data.Tests.Intake.IntakeScene;

namespace ReedClinic.Data.Tests.Letters;

/// <summary>Students of every kind with a letter that was sent, and a clock that a test winds.</summary>
internal sealed class SentLetterScene(TestDatabase db)
{
    public TestDatabase Database => db;

    public GuardianScene People { get; } = new(db);

    public FakeTimeProvider Clock { get; } = new(TimeProvider.System.GetUtcNow());

    public LetterLinkBook Links => new(db, Clock, db.Services.GetRequiredService<MediaFolder>());

    public LetterFileBook Files => People.Book<LetterFileBook>();

    public LetterCourier Courier => new(db, Clock, db.Services.GetRequiredService<MediaFolder>());

    /// <summary>A batch of this student whose letter was sent; the mail about it waits.</summary>
    public async Task<Batch> SentAsync(Actor student)
    {
        var batch = await CameAsync(student);
        await SendAsync(batch);
        return batch;
    }

    /// <summary>A batch of this student, whose letter isn't sent yet.</summary>
    public async Task<Batch> CameAsync(Actor student) => (await People.Intake.BatchAsync(student, reeds: 2)).Batch;

    /// <summary>Sends a batch's letter; the mail about it waits.</summary>
    public async Task SendAsync(Batch batch)
    {
        var letters = new LetterBook(db, TimeProvider.System, db.Outbox);
        var view = (await letters.ReadAsync(Teacher, batch.Code, Ct))!;
        foreach (var gap in view.Gaps)
        {
            view = Done(await letters.WaiveAsync(Teacher, batch.Code, gap.Key, "next time", Operation(), Ct));
        }

        Done(await letters.SendAsync(Teacher, batch.Code, view.Mark, Operation(), Ct));
    }

    /// <summary>Sends it once more, with what was put right.</summary>
    public async Task CorrectAsync(Batch batch, string putRight)
    {
        var letter = (await People.Book<LetterBook>().ReadAsync(Teacher, batch.Code, Ct))!;
        var corrections = People.Book<LetterCorrectionBook>();
        Done(await corrections.BeginAsync(Teacher, batch.Code, letter.Version, Operation(), Ct));
        Done(await corrections.SayAsync(Teacher, batch.Code, null, putRight, Operation(), Ct));
        Done(await corrections.SendAsync(Teacher, batch.Code, letter.Mark, putRight, Operation(), Ct));
    }

    /// <summary>A student who is old enough, with a password.</summary>
    public Task<Actor> GrownAsync() => People.StudentAsync("Ines Calder", AgeAnswer.OldEnough);

    /// <summary>A student who began by a link and has no other way in.</summary>
    public async Task<Actor> BegunAsync(bool byHand = false)
    {
        var sent = Done(await People.Book<BeginBook>().SendAsync(Teacher, GuardianScene.NewEmail("begun"), byHand, Operation(), Ct));
        var account = Done(await People.Book<BeginBook>().StartAsync(sent.Secret, new string('d', 43), "Tove Lind", AgeAnswer.OldEnough, Operation(), Ct));
        return (await People.Book<AccountBook>().ActorFor(account, Ct))!;
    }

    public async Task<MadeLetterLink> MadeAsync(Batch batch, int days = 30) => Done(await Links.MakeAsync(Teacher, batch.Code, days, Operation(), Ct));

    /// <summary>The mail about a batch's letter, with its job.</summary>
    public async Task<(Job Job, Mail Mail)> NewsAsync(Batch batch)
    {
        await using var context = db.CreateDbContext();
        var once = $"news:{batch.Id.Value}:/letters/{batch.Code}";
        var job = await context.Set<Job>().AsNoTracking().SingleAsync(row => row.Once == once, Ct);
        return (job, db.Outbox.Open(job)!);
    }

    /// <summary>All mails about a batch's letter, with their jobs.</summary>
    public async Task<IReadOnlyList<(Job Job, Mail Mail)>> MailsAboutAsync(Batch batch)
    {
        await using var context = db.CreateDbContext();
        var once = $"news:{batch.Id.Value}:/letters/{batch.Code}";
        var jobs = await context.Set<Job>().AsNoTracking().Where(row => row.Once!.StartsWith(once)).ToListAsync(Ct);
        return [.. jobs.Select(job => (job, db.Outbox.Open(job)!))];
    }

    public async Task ChangeAsync(Func<ClinicDb, Task> change)
    {
        await using var context = db.CreateDbContext();
        await change(context);
        await context.SaveChangesAsync(Ct);
    }
}
