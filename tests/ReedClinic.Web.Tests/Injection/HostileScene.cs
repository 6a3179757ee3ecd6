using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Injection;

/// <summary>A student's batch, and what is typed about it on its way.</summary>
internal sealed class HostileScene(ClinicHost host, HttpClient student, HttpClient teacher)
{
    /// <summary>As many reeds as a batch may have.</summary>
    public const int MostReeds = 12;

    private static readonly Actor Colleague = new(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public HttpClient Student => student;

    public HttpClient Teacher => teacher;

    /// <summary>The newest batch's code.</summary>
    public string Code { get; private set; } = "";

    /// <summary>Sends a parcel, a reed for each pair of texts; none of them may be refused.</summary>
    public async Task Announce(IReadOnlyList<(string Recognised, string Bothers)> reeds)
    {
        var walk = await IntakeWalk.Begin(student);
        await walk.Answer("country", ("Country", "Norway"));
        await walk.Answer("how-many", ("HowMany", $"{reeds.Count}"));
        for (var i = 0; i < reeds.Count; i++)
        {
            var (recognised, bothers) = reeds[i];
            await walk.Answer($"reed/{i + 1}/permission", ($"Reeds[{i}].Permission", "SafeChangesOnly"));
            foreach (var (step, field, typed) in new[] { ("recognise", "HowToRecognise", recognised), ("bothers", "Bothers", bothers) })
            {
                Assert.True((await walk.Answer($"reed/{i + 1}/{step}", ($"Reeds[{i}].{field}", typed))).To is not null, $"refused: {typed}");
            }
        }

        Code = await walk.Send();
    }

    /// <summary>Types one text after another at one screen of an intake; gives each page that came of it, and whether it was taken.</summary>
    public async Task Try(string step, string field, IEnumerable<string> texts, Action<string, bool, string> look)
    {
        var walk = await IntakeWalk.Begin(student);
        await walk.Answer("how-many", ("HowMany", "1"));
        foreach (var text in texts)
        {
            var (to, page) = await walk.Answer($"reed/1/{step}", ($"Reeds[0].{field}", text));
            look(text, to is not null, to is null ? page : (await student.See($"{walk.Draft}/reed/1/{step}")).Page);
        }
    }

    /// <summary>Takes every reed in and says something about the first, so that a letter can be written.</summary>
    public async Task<string> TakeIn()
    {
        var desk = host.Services.GetRequiredService<DeskBook>();
        var batch = (await desk.BatchAsync(Colleague, Done(BatchCode.Read(Code)), Ct))!.Batch;
        var fine = new ReedArrival(Presence.Here, Fitness: Fitness.Fit);
        Done(await host.Services.GetRequiredService<ArrivalBook>().RecordAsync(
            Colleague, batch.Id, new(batch.Reeds.ToDictionary(reed => reed.Id, _ => fine), null), batch.Version, Parcel.NewOperation(), Ct));
        foreach (var reed in batch.Reeds)
        {
            Done(await host.Services.GetRequiredService<BenchBook>().RecordAsync(Colleague, reed.Id, Done(Verdict.Of(VerdictKind.Improved)), Parcel.NewOperation(), Ct));
        }

        return $"/bench/{batch.Reeds[0].Id.Value}";
    }

    private static T Done<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;
}
