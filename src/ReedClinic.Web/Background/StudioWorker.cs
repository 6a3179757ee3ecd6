using System.Numerics;
using ReedClinic.Domain.Upkeep;

namespace ReedClinic.Web.Background;

/// <summary>
/// Work behind the pages. Whatever it throws, wherever, it goes on: it waits a little longer each time, the owners' page about
/// upkeep and <c>/health/work</c> tell of it, and nothing else is taken down with it.
/// </summary>
/// <param name="work">Which work it is.</param>
/// <param name="standings">Hears how it goes.</param>
/// <param name="time">The clock.</param>
/// <param name="log">The log.</param>
public abstract partial class StudioWorker(QuietWork work, WorkerStandings standings, TimeProvider time, ILogger log) : BackgroundService
{
    /// <summary>How long it waits at most after a failure.</summary>
    public static TimeSpan LongestPause { get; } = TimeSpan.FromSeconds(30);

    /// <summary>Which work it is.</summary>
    public QuietWork Work { get; } = work;

    /// <summary>The clock.</summary>
    protected TimeProvider Time { get; } = time;

    /// <summary>The log.</summary>
    protected ILogger Log { get; } = log;

    /// <summary>How long it waits after a number of failures in a row: two seconds, doubled each time, half a minute at most.</summary>
    /// <param name="inARow">How many, at least one.</param>
    public static TimeSpan PauseAfter(int inARow) => TimeSpan.FromSeconds(Math.Min(Math.Pow(2, inARow), LongestPause.TotalSeconds));

    /// <summary>Whether a failure stands in the log: the first in a row, and then each time that there are twice as many.</summary>
    /// <param name="inARow">How many, at least one.</param>
    public static bool IsTold(int inARow) => BitOperations.IsPow2(inARow);

    /// <summary>Does once what there is to do. It throws nothing but what stops it.</summary>
    /// <param name="ct">Stops it.</param>
    /// <returns>How long to wait because it failed; null when it went well.</returns>
    /// <exception cref="OperationCanceledException">It was stopped.</exception>
    public Task<TimeSpan?> TryAsync(CancellationToken ct) => KeepAsync(LookAsync, ct);

    /// <summary>Does what there is to do now.</summary>
    /// <param name="ct">Stops it.</param>
    protected abstract Task LookAsync(CancellationToken ct);

    /// <summary>Waits until there may be more.</summary>
    /// <param name="ct">Stops it.</param>
    protected abstract Task RestAsync(CancellationToken ct);

    /// <summary>How long it waits after so many failures in a row.</summary>
    /// <param name="inARow">How many, at least one.</param>
    protected virtual TimeSpan Pause(int inARow) => PauseAfter(inARow);

    /// <summary>It goes well; for work that has no end, which would never be heard of otherwise.</summary>
    protected void GoesWell() => standings.WentWell(Work);

    /// <summary>Waits for ever.</summary>
    /// <param name="ct">Stops it.</param>
    protected static Task NothingMoreAsync(CancellationToken ct) => Task.Delay(Timeout.Infinite, ct);

    /// <inheritdoc />
    protected sealed override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.CompletedTask.ConfigureAwait(ConfigureAwaitOptions.ForceYielding);
        try
        {
            while (!stoppingToken.IsCancellationRequested)
            {
                if ((await TryAsync(stoppingToken).ConfigureAwait(false) ?? await KeepAsync(RestAsync, stoppingToken).ConfigureAwait(false)) is { } pause)
                {
                    await Task.Delay(pause, Time, stoppingToken).ConfigureAwait(false);
                }
            }
        }
        catch (OperationCanceledException) when (stoppingToken.IsCancellationRequested)
        {
            // What is left waits for the next start.
        }
    }

    private async Task<TimeSpan?> KeepAsync(Func<CancellationToken, Task> part, CancellationToken ct)
    {
        try
        {
            await part(ct).ConfigureAwait(false);
            GoesWell();
            return null;
        }
        catch (Exception trouble) when (!ct.IsCancellationRequested)
        {
            var inARow = standings.Failed(Work);
            var pause = Pause(inARow);
            if (IsTold(inARow))
            {
                Stumbled(Log, Work, inARow, pause.TotalSeconds, trouble);
            }

            return pause;
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "{Work} failed ({InARow} in a row); it is tried again in {Seconds} s")]
    private static partial void Stumbled(ILogger logger, QuietWork work, int inARow, double seconds, Exception trouble);
}
