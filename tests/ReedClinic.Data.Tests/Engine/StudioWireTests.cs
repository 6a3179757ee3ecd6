using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Data.Tests.Engine;

/// <summary>Two processes of one studio hear of one another.</summary>
public sealed class StudioWireTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly TimeSpan Long = TimeSpan.FromSeconds(60);

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_one_process_writes_another_hears_and_nobody_hears_themselves_twice()
    {
        var here = await databases.FreshAsync(ClinicEngine.Postgres);
        await using var there = new TestDatabase(ClinicEngine.Postgres, here.Connection);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        var running = await Task.WhenAll(RunAsync(here, stop.Token), RunAsync(there, stop.Token));
        var (reed, other) = (new ReedId(NewId()), new ReedId(NewId()));
        var (mine, theirs, last) = (0, new TaskCompletionSource(), new TaskCompletionSource());
        using var a = News(here).Listen(reed, () => mine++);
        using var b = News(there).Listen(reed, theirs.SetResult);
        using var c = News(here).Listen(other, last.SetResult);

        News(here).Tell(reed);
        await theirs.Task.WaitAsync(Long, Ct);
        News(there).Tell(other); // comes by the same way, after everything that went before it
        await last.Task.WaitAsync(Long, Ct);

        Assert.Equal(1, mine);
        await EndAsync(stop, running);
    }

    [Fact]
    public async Task Work_that_one_process_saves_wakes_the_workers_of_another()
    {
        var here = await databases.FreshAsync(ClinicEngine.Postgres);
        await using var there = new TestDatabase(ClinicEngine.Postgres, here.Connection);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        var running = await Task.WhenAll(RunAsync(here, stop.Token), RunAsync(there, stop.Token));
        var bell = there.Services.GetRequiredService<JobBell>();
        await bell.JobAsync(Long, Ct); // it is rung once when the wire is laid
        var woken = bell.JobAsync(Timeout.InfiniteTimeSpan, Ct);
        Assert.False(woken.IsCompleted);

        await using var context = here.CreateDbContext();
        var now = TimeProvider.System.GetUtcNow();
        context.Add(new Job { Id = NewId(), Kind = JobKind.Media, Once = "here", MadeAt = now, DueAt = now });
        await context.SaveChangesAsync(Ct);

        await woken.WaitAsync(Long, Ct);
        await EndAsync(stop, running);
    }

    [Fact]
    public async Task Counts_that_begin_anew_in_one_process_are_read_anew_in_another_at_once()
    {
        var here = await databases.FreshAsync(ClinicEngine.Postgres);
        await using var there = new TestDatabase(ClinicEngine.Postgres, here.Connection);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        var running = await Task.WhenAll(RunAsync(here, stop.Token), RunAsync(there, stop.Token));
        var told = new TaskCompletionSource();
        using var open = News(there).Listen(new ReedId(NewId()), () => told.TrySetResult());
        var before = News(there).Judged;

        News(here).TellCountsBegan();

        await told.Task.WaitAsync(Long, Ct);
        Assert.True(News(there).Judged > before, "the quiet line counts anew with its next look");
        await EndAsync(stop, running);
    }

    [Fact]
    public async Task A_word_on_a_cause_that_one_process_writes_is_to_be_counted_in_another_before_the_reed_is_read_anew()
    {
        var here = await databases.FreshAsync(ClinicEngine.Postgres);
        await using var there = new TestDatabase(ClinicEngine.Postgres, here.Connection);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        var running = await Task.WhenAll(RunAsync(here, stop.Token), RunAsync(there, stop.Token));
        var (reed, told, before) = (new ReedId(NewId()), new TaskCompletionSource<int>(), News(there).Judged);
        using var open = News(there).Listen(reed, () => told.TrySetResult(News(there).Judged));

        News(here).TellJudged();
        News(here).Tell(reed);

        Assert.Equal(before + 1, await told.Task.WaitAsync(Long, Ct));
        await EndAsync(stop, running);
    }

    [Fact]
    public async Task A_wire_that_breaks_says_so_and_a_new_one_tells_what_may_have_been_missed()
    {
        var here = await databases.FreshAsync(ClinicEngine.Postgres);
        var wire = here.Services.GetRequiredService<StudioWire>();
        var (laid, told) = (new TaskCompletionSource(), 0);
        using var listening = News(here).Listen(new ReedId(NewId()), () => told++);
        var running = wire.RunAsync(laid.SetResult, Ct);
        await laid.Task.WaitAsync(Long, Ct);

        await using (var context = here.CreateDbContext())
        {
            await context.Database.ExecuteSqlAsync($"SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND query LIKE 'LISTEN%'", Ct);
        }

        await Assert.ThrowsAnyAsync<Exception>(() => running.WaitAsync(Long, Ct));
        Assert.Equal(1, told);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        var again = await RunAsync(here, stop.Token);
        Assert.Equal(2, told);
        await EndAsync(stop, again);
    }

    [Fact]
    public async Task With_SQLite_there_is_no_wire() =>
        await (await databases.FreshAsync(ClinicEngine.Sqlite)).Services.GetRequiredService<StudioWire>().RunAsync(() => Assert.Fail("It listens."), Ct);

    private static BenchNews News(TestDatabase db) => db.Services.GetRequiredService<BenchNews>();

    private static Guid NewId() => Guid.CreateVersion7(TimeProvider.System.GetUtcNow());

    private static async Task<Task> RunAsync(TestDatabase db, CancellationToken ct)
    {
        var laid = new TaskCompletionSource();
        var running = db.Services.GetRequiredService<StudioWire>().RunAsync(laid.SetResult, ct);
        await laid.Task.WaitAsync(Long, Ct);
        return running;
    }

    private static async Task EndAsync(CancellationTokenSource stop, params Task[] running)
    {
        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => Task.WhenAll(running));
    }
}
