using ReedClinic.Data.Jobs;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Recurrence;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Web.Shared.Insight;

namespace ReedClinic.Web.Background;

/// <summary>
/// Once a day lets go of what has been kept long enough, and sweeps after anything was erased; once an hour
/// keeps files and the rows about them in step. Once a day it counts the studio's rates, too. It asks for work by the jobs
/// table, so that of several processes one does it, and a process that dies leaves it to another.
/// </summary>
/// <param name="board">Where the work is.</param>
/// <param name="caretaker">Looks after rows.</param>
/// <param name="media">Looks after files.</param>
/// <param name="rates">Counts the studio's rates.</param>
/// <param name="figures">Makes a span of each piece of work.</param>
/// <param name="standings">Hears how it goes.</param>
/// <param name="time">The clock.</param>
/// <param name="log">The log.</param>
public sealed partial class RecordsWorker(
    JobBoard board, RecordsCaretaker caretaker, MediaCaretaker media, StudioRatesCaretaker rates, InsightFigures figures, WorkerStandings standings, TimeProvider time, ILogger<RecordsWorker> log)
    : StudioWorker(QuietWork.Records, standings, time, log)
{
    /// <summary>How long it waits before it looks again.</summary>
    public static TimeSpan Between { get; } = TimeSpan.FromSeconds(20);

    /// <inheritdoc />
    protected override async Task LookAsync(CancellationToken ct)
    {
        Func<CancellationToken, Task>[] parts =
        [
            caretaker.AskForRoundAsync,
            stop => DoAsync(JobKind.Retention, RoundAsync, stop),
            media.AskForRoundAsync,
            stop => DoAsync(JobKind.Media, media.SweepAsync, stop),
            stop => DoAsync(JobKind.Sweep, SweepAsync, stop),
            rates.AskForRoundAsync,
            stop => DoAsync(JobKind.Rates, rates.RollUpAsync, stop),
        ];
        Exception? first = null;
        foreach (var part in parts)
        {
            try
            {
                await part(ct).ConfigureAwait(false);
            }
            catch (Exception trouble) when (!ct.IsCancellationRequested)
            {
                first ??= trouble; // what comes behind it is done all the same
            }
        }

        if (first is not null)
        {
            throw new InvalidOperationException("A part of looking after records failed.", first);
        }
    }

    /// <inheritdoc />
    protected override Task RestAsync(CancellationToken ct) => Task.Delay(Between, Time, ct);

    private async Task RoundAsync(CancellationToken ct)
    {
        var round = await caretaker.RoundAsync(ct).ConfigureAwait(false);
        Went(Log, round.Rows, round.Told, round.LetGo);
    }

    // The files of those who were erased first: their rows are gone already.
    private async Task SweepAsync(CancellationToken ct)
    {
        await media.RemoveAskedAsync(ct).ConfigureAwait(false);
        await caretaker.SweepAsync(ct).ConfigureAwait(false);
    }

    private async Task DoAsync(JobKind kind, Func<CancellationToken, Task> work, CancellationToken ct)
    {
        while (await board.ClaimAsync(kind, ct).ConfigureAwait(false) is { } job)
        {
            using var span = figures.Span(Work);
            try
            {
                await work(ct).ConfigureAwait(false);
                await board.DoneAsync(job, ct).ConfigureAwait(false);
            }
            catch (Exception trouble) when (!ct.IsCancellationRequested)
            {
                Stumbled(Log, trouble);
                await board.FailedAsync(job, trouble.GetType().Name, forEver: false, ct).ConfigureAwait(false);
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Kept long enough: {Rows} rows went, {Told} people were told, {LetGo} people's records went.")]
    private static partial void Went(ILogger logger, int rows, int told, int letGo);

    [LoggerMessage(Level = LogLevel.Error, Message = "Looking after records failed; it is tried again.")]
    private static partial void Stumbled(ILogger logger, Exception trouble);
}
