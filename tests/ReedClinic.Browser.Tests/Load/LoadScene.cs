using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Demo;
using ReedClinic.Data.Intake;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Line;

namespace ReedClinic.Browser.Tests.Load;

/// <summary>A teacher of the studio and the reeds in front of them.</summary>
/// <param name="Email">Their address.</param>
/// <param name="Reeds">The reeds.</param>
internal sealed record LoadTeacher(string Email, IReadOnlyList<ReedId> Reeds);

/// <summary>The invented studio with more people at work than it has: every reed has a log of its own already.</summary>
internal sealed class LoadScene(IServiceProvider services, CancellationToken ct)
{
    /// <summary>The password of everybody here.</summary>
    public const string Password = "a quiet tide at four o'clock";

    private const int ReedsInABatch = 4;

    // What stands in each log before anybody is measured.
    private static readonly string[] Before =
    [
        "b-40", "peep is sharp", "hard to blow", "low notes speak", "windows uneven", "left corner thick", "heart too thick", "blades slip", "clip a hair", "b-10", "thin the corners", "c-30",
    ];

    private int _students;

    /// <summary>Fills a database, and makes it first where it isn't there.</summary>
    /// <param name="settings">How to reach it.</param>
    /// <param name="teachers">How many reeds each of the teachers wants.</param>
    /// <param name="ct">Gives up.</param>
    public static async Task<IReadOnlyList<LoadTeacher>> FillAsync(IReadOnlyDictionary<string, string> settings, IEnumerable<int> teachers, CancellationToken ct)
    {
        var configuration = new ConfigurationBuilder()
            .AddInMemoryCollection(settings.Select(pair => KeyValuePair.Create(pair.Key.Replace("__", ":", StringComparison.Ordinal), (string?)pair.Value))).Build();
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddClinicData(configuration, contentRoot: AppContext.BaseDirectory);
        await using var provider = services.BuildServiceProvider();
        await provider.GetRequiredService<ClinicSchema>().MigrateAsync(ct);
        await using var scope = provider.CreateAsyncScope();
        await scope.ServiceProvider.GetRequiredService<DemoStudio>().SeedAsync(ct);
        var scene = new LoadScene(scope.ServiceProvider, ct);
        List<LoadTeacher> made = [];
        foreach (var (reeds, number) in teachers.Select((reeds, index) => (reeds, index + 1)))
        {
            made.Add(await scene.TeacherAsync($"bench{number}@lanternquay.example", reeds));
        }

        return made;
    }

    private async Task<LoadTeacher> TeacherAsync(string email, int reeds)
    {
        var teacher = await AdmitAsync(email, Role.Teacher);
        List<ReedId> all = [];
        while (all.Count < reeds)
        {
            all.AddRange(await BatchAsync(Math.Min(ReedsInABatch, reeds - all.Count)));
        }

        foreach (var reed in all)
        {
            await WorkAsync(teacher, reed);
        }

        return new LoadTeacher(email, all);
    }

    private async Task<Actor> AdmitAsync(string email, Role role)
    {
        var account = Done(await services.GetRequiredService<AccountRegister>().AdmitAsync(
            new NewAccount("Bench", email, Password) { Age = AgeAnswer.OldEnough }, role, NewOperation(), ct));
        return (await services.GetRequiredService<AccountBook>().ActorFor(account, ct))!;
    }

    private async Task<IEnumerable<ReedId>> BatchAsync(int reeds)
    {
        var student = await AdmitAsync($"sender{++_students}@lanternquay.example", Role.Student);
        var intake = services.GetRequiredService<IntakeBook>();
        var draft = Done(await intake.StartAsync(student, NewOperation(), ct));
        var form = new IntakeForm
        {
            Reeds =
            [
                .. Enumerable.Range(1, reeds).Select(number => new ReedForm
                {
                    HowToRecognise = $"grey thread, {number} dots", Bothers = "hard to start", Permission = nameof(Permission.TakeRisks),
                }),
            ],
        };
        Done(await intake.SaveAsync(student, draft.Id, form, draft.Version, NewOperation(), ct));
        return Done(await intake.SubmitAsync(student, draft.Id, NewOperation(), ct)).Batch.Reeds.OrderBy(reed => reed.Number).Select(reed => reed.Id);
    }

    private async Task WorkAsync(Actor teacher, ReedId reed)
    {
        var bench = services.GetRequiredService<BenchBook>();
        foreach (var line in Before)
        {
            var view = (await bench.FindAsync(teacher, reed, ct))!;
            Done(await bench.SayAsync(teacher, reed, HeardLine.Of(line, view.Log, view.Batch.CrowTarget.Tuning).All, NewOperation(), ct));
        }
    }

    private static T Done<T>(Outcome<T> outcome) =>
        outcome is Outcome<T>.Done done ? done.Value : throw new InvalidOperationException($"The scene can't be made: {outcome}");

    private static OperationId NewOperation() => new(Guid.CreateVersion7(TimeProvider.System.GetUtcNow()));
}
