using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Data;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Jobs;
using ReedClinic.Web.Background;

namespace ReedClinic.Web.Tests.Background;

/// <summary>While the server with the records is away, the log tells so and isn't filled with it.</summary>
public sealed class WireAwayTests
{
    [Fact]
    public async Task Of_a_row_of_failures_the_first_stands_in_the_log_and_then_each_time_that_there_are_twice_as_many()
    {
        var (log, standings) = (new Heard(), new WorkerStandings(new FakeTimeProvider()));
        using var wire = new StudioWire(new Away(), new BenchNews(), new JobBell());
        using var worker = new WireWorker(wire, standings, new FakeTimeProvider(), log);

        for (var failure = 1; failure <= 100; failure++)
        {
            Assert.Equal(TimeSpan.FromSeconds(2), await worker.TryAsync(TestContext.Current.CancellationToken));
        }

        Assert.Equal([1, 2, 4, 8, 16, 32, 64], log.InARow);
        Assert.Equal(100, Assert.Single(standings.Stumbling).Times);
        Assert.Equal(100, Assert.Single(standings.Failures).Value);

        standings.WentWell(worker.Work);
        await worker.TryAsync(TestContext.Current.CancellationToken);
        Assert.Equal(1, log.InARow[^1]);
        Assert.Equal(8, log.InARow.Count);
    }

    private sealed class Away : IDbContextFactory<ClinicDb>
    {
        public ClinicDb CreateDbContext() => throw new TimeoutException("nobody answers");
    }

    private sealed class Heard : ILogger<WireWorker>
    {
        public List<int> InARow { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) =>
            InARow.Add((int)((IReadOnlyList<KeyValuePair<string, object?>>)state!).Single(pair => pair.Key == "InARow").Value!);
    }
}
