using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>A batch on the bench of a studio: announced, checked in, fit to play.</summary>
internal sealed class BenchScene(ClinicHost host, Batch batch)
{
    private static readonly Actor Colleague = new(new AccountId(Parcel.NewOperation().Value), null, IsTeacher: true, IsOwner: false);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    public Batch Batch { get; } = batch;

    public ReedId Reed => Batch.Reeds[0].Id;

    public string Page => $"/bench/{Reed.Value}";

    public string Entries => $"{Page}/entries";

    public static Task<BenchScene> Open(ClinicHost host, string student, params string[] reeds) =>
        Open(host, student, Permission.SafeChangesOnly, reeds);

    public static async Task<BenchScene> Open(ClinicHost host, string student, Permission permission, params string[] reeds)
    {
        using var client = await host.Student(student);
        var view = await host.Announce(student, permission, reeds);
        await using var scope = host.Services.CreateAsyncScope();
        var seen = view.Batch.Reeds.ToDictionary(reed => reed.Id, _ => new ReedArrival(Presence.Here, Fitness: Fitness.Fit));
        var arrived = await scope.ServiceProvider.GetRequiredService<ArrivalBook>()
            .RecordAsync(Colleague, view.Batch.Id, new SeenParcel(seen, null), view.Batch.Version, Parcel.NewOperation(), Ct);
        return new BenchScene(host, Assert.IsType<Outcome<BatchView>.Done>(arrived).Value.Batch);
    }

    /// <summary>What somebody says of one reed after another look at the parcel.</summary>
    public async Task Arrive(int number, ReedArrival arrival)
    {
        await using var scope = host.Services.CreateAsyncScope();
        var book = scope.ServiceProvider.GetRequiredService<ArrivalBook>();
        var seen = Batch.Reeds.ToDictionary(reed => reed.Id, reed => reed.Number == number ? arrival : reed.Arrival);
        Value(await book.RecordAsync(Colleague, Batch.Id, new SeenParcel(seen, null), Batch.Version, Parcel.NewOperation(), Ct));
    }

    /// <summary>Something that a colleague says about the first reed.</summary>
    public async Task<BenchFact> Say(BenchEntry entry) => await With(async book =>
        Assert.IsType<Outcome<BenchFact>.Done>(await book.RecordAsync(Colleague, Reed, entry, Parcel.NewOperation(), Ct)).Value);

    /// <summary>Something that a colleague says better.</summary>
    public async Task<BenchFact> Correct(EntryId seen, BenchEntry entry) => await With(async book =>
        Assert.IsType<Outcome<BenchFact>.Done>(await book.CorrectAsync(Colleague, Reed, seen, entry, Parcel.NewOperation(), Ct)).Value);

    /// <summary>The log of a reed as it stands.</summary>
    public async Task<BenchLog> Log(int number = 1) => (await With(book => book.FindAsync(Colleague, Batch.Reeds[number - 1].Id, Ct)))!.Log;

    public static T Value<T>(Outcome<T> outcome) => Assert.IsType<Outcome<T>.Done>(outcome).Value;

    private async Task<T> With<T>(Func<BenchBook, Task<T>> act)
    {
        await using var scope = host.Services.CreateAsyncScope();
        return await act(scope.ServiceProvider.GetRequiredService<BenchBook>());
    }
}
