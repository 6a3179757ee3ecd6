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

    /// <summary>Types one text about each reed wherever words are asked for; gives each text's answers where it was refused.</summary>
    public async Task<List<(string Text, string Page)>> Announce(IReadOnlyList<string> texts)
    {
        var walk = await IntakeWalk.Begin(student);
        await walk.Answer("country", ("Country", "Norway"));
        await walk.Answer("how-many", ("HowMany", $"{texts.Count}"));
        var refused = new List<(string, string)>();
        for (var i = 0; i < texts.Count; i++)
        {
            await walk.Answer($"reed/{i + 1}/permission", ($"Reeds[{i}].Permission", "SafeChangesOnly"));
            foreach (var (step, field) in new[] { ("recognise", $"Reeds[{i}].HowToRecognise"), ("bothers", $"Reeds[{i}].Bothers") })
            {
                var (to, page) = await walk.Answer($"reed/{i + 1}/{step}", (field, texts[i]));
                if (to is null)
                {
                    refused.Add((texts[i], page));
                    await walk.Answer($"reed/{i + 1}/{step}", (field, $"reed {i + 1}"));
                }
            }
        }

        Code = await walk.Send();
        return refused;
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
