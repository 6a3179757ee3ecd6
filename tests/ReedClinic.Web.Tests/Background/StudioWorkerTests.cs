using System.Net;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Web.Background;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Background;

/// <summary>All work behind the pages, whichever worker does it: what it throws takes nothing down, is told of, and is tried again.</summary>
public sealed class StudioWorkerTests
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Each_worker_that_throws_wherever_it_asks_the_records_is_told_of_goes_on_and_gets_its_work_done()
    {
        await using var host = new TroubledHost();
        await host.OpenStudio();
        var standings = host.Services.GetRequiredService<WorkerStandings>();
        foreach (var kind in TroubledHost.Kinds)
        {
            var worker = (StudioWorker)ActivatorUtilities.CreateInstance(host.Services, kind);
            await host.PutWorkAsync();
            Assert.Null(await host.TryAsync(worker)); // what a start asks for
            await host.PutWorkAsync();
            host.Trouble.Asked = 0;
            Assert.Null(await host.TryAsync(worker));
            var points = host.Trouble.Asked;
            Assert.True(points > 0, $"{kind.Name} asks the records for nothing.");
            for (var point = 1; point <= points; point++)
            {
                await host.PutWorkAsync();
                var before = host.Trouble.Thrown;
                (host.Trouble.Asked, host.Trouble.ThrowsAt) = (0, asked => asked == point);
                var pause = await host.TryAsync(worker);
                Assert.Equal(before + 1, host.Trouble.Thrown);
                host.Trouble.ThrowsAt = _ => false;

                // It failed as a whole, or at one piece of work, which is noted there.
                var said = $"{kind.Name} at its question {point} of {points}";
                Assert.True(pause is not null || await host.HasNotedFailureAsync(), $"{said}: nobody is told.");
                Assert.Equal(pause is not null, standings.Stumbling.Any(one => one.Work == worker.Work));
                host.Clock.Advance(TimeSpan.FromMinutes(3)); // past its pause, the job's and its lease
                Assert.Null(await host.TryAsync(worker));
                Assert.Empty(standings.Stumbling);
                Assert.True(await host.IsDoneAsync(worker.Work), $"{said}: its work is left.");
            }
        }
    }

    [Fact]
    public async Task A_part_of_looking_after_records_that_always_fails_keeps_no_other_from_being_done()
    {
        await using var host = new TroubledHost();
        await host.OpenStudio();
        var worker = ActivatorUtilities.CreateInstance<RecordsWorker>(host.Services);
        await host.PutWorkAsync();
        (host.Trouble.Asked, host.Trouble.ThrowsAt) = (0, asked => asked == 1);

        Assert.NotNull(await host.TryAsync(worker));
        Assert.True(await host.IsDoneAsync(QuietWork.Records));
    }

    [Fact]
    public async Task While_all_of_them_throw_the_site_is_up_and_the_owner_and_a_watcher_are_told_and_then_all_go_on()
    {
        await using var host = new TroubledHost { Runs = true };
        host.Trouble.ThrowsAt = _ => true;
        using var owner = await host.SignedIn(await host.OpenStudio());
        var standings = host.Services.GetRequiredService<WorkerStandings>();
        await TroubledHost.UntilAsync(() => standings.Stumbling.Count == TroubledHost.Kinds.Count);

        Assert.Equal(HttpStatusCode.OK, (await owner.See("/studio")).Status);
        Assert.Equal(HttpStatusCode.OK, (await owner.See("/health/live")).Status);
        Assert.Equal(HttpStatusCode.OK, (await owner.See("/health/ready")).Status);
        Assert.Equal(HttpStatusCode.ServiceUnavailable, (await owner.See("/health/work")).Status);
        var page = WebUtility.HtmlDecode((await owner.See("/studio/upkeep")).Page);
        Assert.All(["Sending mail", "Sealing the audit’s notes", "Tidying and deleting", "Reading sounds", "Hearing of the studio’s other processes"], words => Assert.Contains(words, page, StringComparison.Ordinal));
        Assert.Contains("tried again by itself within half a minute", page, StringComparison.Ordinal);

        host.Trouble.ThrowsAt = _ => false;
        await TroubledHost.UntilAsync(() =>
        {
            host.Clock.Advance(StudioWorker.LongestPause);
            return standings.Stumbling.Count == 0;
        });
        Assert.Equal(HttpStatusCode.OK, (await owner.See("/health/work")).Status);
        Assert.Contains("All of it goes on.", (await owner.See("/studio/upkeep")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public void There_is_no_work_behind_the_pages_that_is_not_kept_going() =>
        Assert.Equal(
            typeof(StudioWorker).Assembly.GetTypes().Where(type => type is { IsClass: true, IsAbstract: false } && type.IsAssignableTo(typeof(IHostedService))).Order(ByName),
            typeof(StudioWorker).Assembly.GetTypes().Where(type => !type.IsAbstract && type.IsSubclassOf(typeof(StudioWorker))).Order(ByName));

    [Theory]
    [InlineData(1, 2)]
    [InlineData(2, 4)]
    [InlineData(4, 16)]
    [InlineData(5, 30)]
    [InlineData(5_000, 30)]
    public void It_waits_longer_each_time_and_half_a_minute_at_most(int inARow, int seconds) =>
        Assert.Equal(TimeSpan.FromSeconds(seconds), StudioWorker.PauseAfter(inARow));

    private static Comparer<Type> ByName => Comparer<Type>.Create((one, other) => string.CompareOrdinal(one.Name, other.Name));
}
