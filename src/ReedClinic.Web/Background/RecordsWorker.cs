using ReedClinic.Data.Jobs;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Recurrence;

namespace ReedClinic.Web.Background;

/// <summary>
/// Once a day lets go of what has been kept long enough, and sweeps after anything was erased; once an hour
/// keeps files and the rows about them in step. Once a day it counts the studio's rates, too. It asks for work by the jobs
/// table, so that of several processes one does it, and a process that dies leaves it to another.
/// </summary>
public sealed partial class RecordsWorker(JobBoard board, RecordsCaretaker caretaker, MediaCaretaker media, StudioRatesCaretaker rates, TimeProvider time, ILogger<RecordsWorker> log) : BackgroundService
{
    /// <summary>How long it waits before it looks again.</summary>
    public static TimeSpan Pause { get; } = TimeSpan.FromSeconds(20);

    /// <inheritdoc />
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await caretaker.AskForRoundAsync(stoppingToken).ConfigureAwait(false);
                await DoAsync(JobKind.Retention, RoundAsync, stoppingToken).ConfigureAwait(false);
                await media.AskForRoundAsync(stoppingToken).ConfigureAwait(false);
                await DoAsync(JobKind.Media, media.SweepAsync, stoppingToken).ConfigureAwait(false);
                await DoAsync(JobKind.Sweep, SweepAsync, stoppingToken).ConfigureAwait(false);
                await rates.AskForRoundAsync(stoppingToken).ConfigureAwait(false);
                await DoAsync(JobKind.Rates, rates.RollUpAsync, stoppingToken).ConfigureAwait(false);
            }
            catch (Exception trouble) when (!stoppingToken.IsCancellationRequested)
            {
                // The site goes on without it; the next look tries again.
                Stumbled(trouble);
            }

            try
            {
                await Task.Delay(Pause, time, stoppingToken).ConfigureAwait(false);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }

    private async Task RoundAsync(CancellationToken ct)
    {
        var round = await caretaker.RoundAsync(ct).ConfigureAwait(false);
        Went(round.Rows, round.Told, round.LetGo);
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
            try
            {
                await work(ct).ConfigureAwait(false);
                await board.DoneAsync(job, ct).ConfigureAwait(false);
            }
            catch (Exception trouble) when (!ct.IsCancellationRequested)
            {
                Stumbled(trouble);
                await board.FailedAsync(job, trouble.GetType().Name, forEver: false, ct).ConfigureAwait(false);
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Information, Message = "Kept long enough: {Rows} rows went, {Told} people were told, {LetGo} people's records went.")]
    private partial void Went(int rows, int told, int letGo);

    [LoggerMessage(Level = LogLevel.Error, Message = "Looking after records failed; it is tried again.")]
    private partial void Stumbled(Exception trouble);
}
