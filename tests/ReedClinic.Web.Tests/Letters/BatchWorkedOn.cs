using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recurrence;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

/// <summary>A batch of two reeds that has been worked on; the second still has no verdict.</summary>
internal static class BatchWorkedOn
{
    private static readonly Actor Bench = new(new AccountId(NewId()), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public static async Task<string> Of(ClinicHost host, HttpClient student, string? asks = null)
    {
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(2);
        if (asks is not null)
        {
            await walk.Answer("questions", ("Questions", asks));
        }

        var code = await walk.Send();
        var books = host.Services;
        var desk = books.GetRequiredService<DeskBook>();
        var batch = (await desk.BatchAsync(Bench, Done(BatchCode.Read(code)), Ct))!.Batch;
        var fine = new ReedArrival(Presence.Here, Fitness: Fitness.Fit);
        Done(await books.GetRequiredService<ArrivalBook>().RecordAsync(
            Bench, batch.Id, new(batch.Reeds.ToDictionary(reed => reed.Id, _ => fine), null), batch.Version, Operation(), Ct));
        var log = books.GetRequiredService<BenchBook>();
        foreach (var reed in batch.Reeds)
        {
            Done(await log.RecordAsync(
                Bench, reed.Id,
                Done(Finding.Of(new("tip-corners-thick"), FindingCharacter.Fault, new Place(Zone.TipCorners))), Operation(), Ct));
        }

        Done(await log.RecordAsync(Bench, batch.Reeds[0].Id, Done(Verdict.Of(VerdictKind.Improved)), Operation(), Ct));
        Done(await books.GetRequiredService<CommonThreadBook>().ChooseAsync(
            Bench, batch.Code, new ThreadChoice(new FindingKindId("tip-corners-thick"), HabitWords: "the knife turns early"),
            Guid.Empty, Operation(), Ct));
        return code;
    }

    /// <summary>The crow of its first reed is heard, something is clipped, and it is heard again.</summary>
    public static async Task CrowAsync(ClinicHost host, string code)
    {
        var batch = (await host.Services.GetRequiredService<DeskBook>().BatchAsync(Bench, Done(BatchCode.Read(code)), Ct))!.Batch;
        var log = host.Services.GetRequiredService<BenchBook>();
        BenchEntry[] entries =
        [
            Done(Test.Of(TestKind.Crow, 0, Done(SaidPitch.Read("B +40", Tuning.Standard)))),
            Done(Adjustment.Of(new("clip-hair"), new Place(Zone.TipEdge))),
            Done(Test.Of(TestKind.Crow, 0, Done(SaidPitch.Read("C", Tuning.Standard)))),
        ];
        foreach (var entry in entries)
        {
            Done(await log.RecordAsync(Bench, batch.Reeds[0].Id, entry, Operation(), Ct));
        }
    }

    private static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private static OperationId Operation() => new(NewId());

    private static Guid NewId() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());
}
