using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>A batch that a student has announced, made by the same book that the intake pages use.</summary>
public static class Parcel
{
    private static int _operations;

    /// <summary>An operation that no other test has used.</summary>
    public static OperationId NewOperation() =>
        new(Guid.CreateVersion7(DateTimeOffset.UnixEpoch.AddSeconds(Interlocked.Increment(ref _operations))));

    /// <summary>Announces a batch of the newest student who has this name.</summary>
    public static Task<BatchView> Announce(this ClinicHost host, string student, params string[] recognised) =>
        host.Announce(student, Permission.SafeChangesOnly, recognised);

    /// <summary>The same, with what the student allows.</summary>
    public static async Task<BatchView> Announce(this ClinicHost host, string student, Permission permission, params string[] recognised)
    {
        var ct = TestContext.Current.CancellationToken;
        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        var person = (await db.Set<Student>().ToListAsync(ct)).Last(candidate => candidate.Name == student);
        var actor = new Actor(person.Account!.Value, person.Id, false, false);
        var intake = scope.ServiceProvider.GetRequiredService<IntakeBook>();
        var draft = Assert.IsType<Outcome<DraftView>.Done>(await intake.StartAsync(actor, NewOperation(), ct)).Value;
        var form = new IntakeForm
        {
            Reeds = [.. recognised.Select(words => new ReedForm { HowToRecognise = words, Bothers = "slow to speak", Permission = permission.ToString() })],
        };
        Assert.IsType<Outcome<DraftView>.Done>(await intake.SaveAsync(actor, draft.Id, form, draft.Version, NewOperation(), ct));
        return Assert.IsType<Outcome<BatchView>.Done>(await intake.SubmitAsync(actor, draft.Id, NewOperation(), ct)).Value;
    }

    /// <summary>Sends the letter of a batch, with every gap left open on purpose.</summary>
    public static async Task SendLetter(this ClinicHost host, BatchCode code)
    {
        var ct = TestContext.Current.CancellationToken;
        await using var scope = host.Services.CreateAsyncScope();
        var letters = scope.ServiceProvider.GetRequiredService<LetterBook>();
        var colleague = new Actor(new AccountId(NewOperation().Value), null, IsTeacher: true, IsOwner: false);
        var view = (await letters.ReadAsync(colleague, code, ct))!;
        foreach (var gap in view.Gaps)
        {
            view = Assert.IsType<Outcome<LetterView>.Done>(await letters.WaiveAsync(colleague, code, gap.Key, "next time", NewOperation(), ct)).Value;
        }

        Assert.IsType<Outcome<LetterView>.Done>(await letters.SendAsync(colleague, code, view.Mark, NewOperation(), ct));
    }
}
