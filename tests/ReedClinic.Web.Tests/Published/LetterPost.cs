using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.KillDriver;
using ReedClinic.Web.Tests.Hosting;
using ReedClinic.Web.Tests.Mailing;

namespace ReedClinic.Web.Tests.Published;

/// <summary>Students whose letters are sent by the same books that the pages use, on a database that a published app works on.</summary>
internal sealed class LetterPost(TestDatabase db) : IDbContextFactory<ClinicDb>
{
    private const int Students = 6;

    private static readonly Actor Colleague = new(new AccountId(Guid.CreateVersion7(DateTimeOffset.UnixEpoch)), null, IsTeacher: true, IsOwner: false);

    private readonly List<Actor> _students = [];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    /// <summary>The batches whose letters were sent.</summary>
    public List<string> Sent { get; } = [];

    /// <summary>The batches whose letter was all but sent: the save was done, and then taken back.</summary>
    public List<string> TakenBack { get; } = [];

    /// <summary>Starts a published app on that database, whose mails go to this server.</summary>
    public async Task<RunningApp> StartAsync(MailSink sink)
    {
        var settings = db.Settings.ToDictionary(pair => pair.Key.Replace(":", "__", StringComparison.Ordinal), pair => pair.Value!);
        settings["Mail__Host"] = "localhost";
        settings["Mail__Port"] = sink.Port.ToString(CultureInfo.InvariantCulture);
        settings["Mail__From"] = "reeds@harbour.example";
        settings["Mail__Authority"] = sink.Authority;
        settings["Web__Address"] = "https://reeds.harbour.example";
        return await RunningApp.StartAsync(await PublishedApp.FolderAsync(), settings, Ct);
    }

    /// <summary>Sends so many letters; behind every fifth another one comes to nothing.</summary>
    public async Task SendAsync(int count)
    {
        await using var scope = db.Services.CreateAsyncScope();
        for (var number = 1; number <= count; number++)
        {
            var code = await BatchAsync(scope.ServiceProvider);
            await SendAsync(new LetterBook(db, TimeProvider.System, db.Services.GetRequiredService<Outbox>()), code);
            Sent.Add(code.ToString());
            if (number % 5 == 0)
            {
                var other = await BatchAsync(scope.ServiceProvider);
                await Assert.ThrowsAsync<IOException>(() => SendAsync(new LetterBook(this, TimeProvider.System, db.Services.GetRequiredService<Outbox>()), other));
                TakenBack.Add(other.ToString());
            }
        }
    }

    /// <summary>Every mail that was put out.</summary>
    public async Task<List<Job>> MailsAsync()
    {
        await using var context = db.CreateDbContext();
        return await context.Set<Job>().AsNoTracking().Where(job => job.Kind == JobKind.Mail).ToListAsync(Ct);
    }

    /// <summary>Time passes for what waits: it is due now. What a worker holds stays its own.</summary>
    public async Task WindAsync()
    {
        var due = TimeProvider.System.GetUtcNow().AddSeconds(-1);
        await using var context = db.CreateDbContext();
        await context.Set<Job>().Where(job => job.Kind == JobKind.Mail && job.DoneAt == null && job.GaveUpAt == null && job.Lease == null && job.DueAt > due)
            .ExecuteUpdateAsync(set => set.SetProperty(job => job.DueAt, due), Ct);
    }

    /// <summary>Time passes for what a killed worker held: nobody has it any more.</summary>
    public async Task LeasesRunOutAsync()
    {
        var past = TimeProvider.System.GetUtcNow().AddSeconds(-1);
        await using var context = db.CreateDbContext();
        await context.Set<Job>().Where(job => job.Lease != null)
            .ExecuteUpdateAsync(set => set.SetProperty(job => job.LeasedUntil, past).SetProperty(job => job.DueAt, past), Ct);
    }

    /// <summary>A teacher sends once more what was given up.</summary>
    /// <returns>How many.</returns>
    public async Task<int> SendAgainAsync()
    {
        var mails = new LetterMailBook(db, TimeProvider.System, db.Services.GetRequiredService<Outbox>());
        var again = 0;
        foreach (var code in Sent)
        {
            var known = Assert.IsType<Outcome<BatchCode>.Done>(BatchCode.Read(code)).Value;
            if ((await mails.LookAsync(Colleague, known, Ct))!.State == LetterMailState.GivenUp)
            {
                Assert.IsType<Outcome<LetterMail>.Done>(await mails.AgainAsync(Colleague, known, Fresh(), Ct));
                again++;
            }
        }

        return again;
    }

    /// <summary>A context whose saves fail behind the last word of SQL, before anything is kept.</summary>
    public ClinicDb CreateDbContext()
    {
        var context = db.CreateDbContext();
        context.SavedChanges += (_, _) => throw new IOException("The line went dead.");
        return context;
    }

    private async Task<BatchCode> BatchAsync(IServiceProvider services)
    {
        if (_students.Count < Students)
        {
            var account = Assert.IsType<Outcome<AccountId>.Done>(await services.GetRequiredService<AccountRegister>().AdmitAsync(
                new NewAccount("Sanne", $"sanne{_students.Count}@harbour.example", ClinicHost.Password) { Age = AgeAnswer.OldEnough }, Role.Student, Fresh(), Ct)).Value;
            _students.Add((await services.GetRequiredService<AccountBook>().ActorFor(account, Ct))!);
        }

        var student = _students[(Sent.Count + TakenBack.Count) % _students.Count];
        var intake = services.GetRequiredService<IntakeBook>();
        var draft = Assert.IsType<Outcome<DraftView>.Done>(await intake.StartAsync(student, Fresh(), Ct)).Value;
        var form = new IntakeForm { Reeds = [new ReedForm { HowToRecognise = "green thread", Bothers = "slow to speak", Permission = nameof(Permission.SafeChangesOnly) }] };
        Assert.IsType<Outcome<DraftView>.Done>(await intake.SaveAsync(student, draft.Id, form, draft.Version, Fresh(), Ct));
        return Assert.IsType<Outcome<BatchView>.Done>(await intake.SubmitAsync(student, draft.Id, Fresh(), Ct)).Value.Batch.Code;
    }

    private async Task SendAsync(LetterBook letters, BatchCode code)
    {
        var sound = new LetterBook(db, TimeProvider.System, db.Services.GetRequiredService<Outbox>());
        var view = (await sound.ReadAsync(Colleague, code, Ct))!;
        foreach (var gap in view.Gaps)
        {
            view = Assert.IsType<Outcome<LetterView>.Done>(await sound.WaiveAsync(Colleague, code, gap.Key, "next time", Fresh(), Ct)).Value;
        }

        Assert.True(Assert.IsType<Outcome<LetterView>.Done>(await letters.SendAsync(Colleague, code, view.Mark, Fresh(), Ct)).Value.IsSent);
    }

    private static OperationId Fresh() => new(Guid.CreateVersion7(TimeProvider.System.GetUtcNow()));
}
