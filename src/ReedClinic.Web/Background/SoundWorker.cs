using ReedClinic.Data.Jobs;
using ReedClinic.Data.Recordings;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Measurement.Sound.Readings;
using ReedClinic.Web.Shared.Insight;

namespace ReedClinic.Web.Background;

/// <summary>
/// Reads what kept sounds say: one at a time, on one core, and no more of a file than the decoder’s limits allow. A process that
/// dies leaves its sound to another, or to itself after it has started again; whatever a file holds, the site goes on.
/// </summary>
/// <param name="board">Where the work is.</param>
/// <param name="bell">Rings when there is some.</param>
/// <param name="register">Where sounds come from and readings go.</param>
/// <param name="child">Decodes the forms that no decoder here does, where the studio named a program for it.</param>
/// <param name="tests">Puts what was measured at the bench into the log.</param>
/// <param name="figures">Hears how long a reading took.</param>
/// <param name="standings">Hears how it goes.</param>
/// <param name="time">The clock.</param>
/// <param name="log">The log. Nothing of a sound stands in it.</param>
public sealed partial class SoundWorker(
    JobBoard board, JobBell bell, SoundRegister register, ChildDecoder child, MeasuredTests tests, InsightFigures figures, WorkerStandings standings, TimeProvider time, ILogger<SoundWorker> log)
    : StudioWorker(QuietWork.Sound, standings, time, log)
{
    private int _look;
    private bool _askedAgain;

    /// <summary>So long one try may take to decode a file: a minute of sound takes a second or so, and this also on a machine that does much else.</summary>
    public TimeSpan Deadline { get; init; } = TimeSpan.FromSeconds(30);

    /// <summary>How often it looks although nobody rang: for work of other processes, and for what is to be tried again.</summary>
    public static TimeSpan Floor { get; } = TimeSpan.FromSeconds(5);

    /// <summary>How often it looks for what was kept and never asked for.</summary>
    public const int LooksBetweenRounds = 120;

    /// <summary>So long a sound waits while the decoder that was named can’t be started.</summary>
    public static TimeSpan WhileAway { get; } = TimeSpan.FromMinutes(10);

    /// <summary>So often a sound is tried: whatever a file holds, it is given up then, also when it took the process with it.</summary>
    public const int MostTries = 3;

    /// <summary>Reads what is due now.</summary>
    /// <param name="ct">Stops it.</param>
    /// <returns>How many were tried.</returns>
    public async Task<int> ReadDueAsync(CancellationToken ct)
    {
        var tried = 0;
        while (await board.ClaimAsync(JobKind.Sound, ct).ConfigureAwait(false) is { } job)
        {
            tried++;
            await DoAsync(job, ct).ConfigureAwait(false);
        }

        return tried;
    }

    /// <inheritdoc />
    protected override async Task LookAsync(CancellationToken ct)
    {
        // Once: which forms are read doesn’t change while the program runs.
        if (!_askedAgain && child.ReadsAny)
        {
            await register.AskAgainAsync(child.ReadsFile, ct).ConfigureAwait(false);
        }

        _askedAgain = true;
        if (_look++ % LooksBetweenRounds == 0)
        {
            await register.AskForLeftAsync(ct).ConfigureAwait(false);
        }

        await ReadDueAsync(ct).ConfigureAwait(false);
    }

    /// <inheritdoc />
    protected override Task RestAsync(CancellationToken ct) => bell.SoundAsync(Floor, ct);

    private async Task DoAsync(Job job, CancellationToken ct)
    {
        using var span = figures.Span(Work);
        try
        {
            if (job.Attempts > MostTries)
            {
                await register.GiveUpAsync(job, SoundTrouble.GaveUp, ct).ConfigureAwait(false);
                await board.FailedAsync(job, "given up", forEver: true, ct).ConfigureAwait(false);
                return;
            }

            if (await register.OpenAsync(job, ct).ConfigureAwait(false) is { } sound)
            {
                await ReadAsync(sound, ct).ConfigureAwait(false);
                await tests.RecordAsync(sound.Recording, ct).ConfigureAwait(false);
            }

            await board.DoneAsync(job, ct).ConfigureAwait(false);
        }
        catch (DecoderAwayException away) when (!ct.IsCancellationRequested)
        {
            Away(Log, away);
            await board.PutOffAsync(job, "The decoder can't be started.", WhileAway, ct).ConfigureAwait(false);
        }
        catch (Exception failure) when (!ct.IsCancellationRequested)
        {
            Stumbled(Log, failure);
            await FailedAsync(job, failure, ct).ConfigureAwait(false);
        }
    }

    // After the last try the page says so, and the sound stays.
    private async Task FailedAsync(Job job, Exception failure, CancellationToken ct)
    {
        try
        {
            if (job.Attempts >= MostTries)
            {
                await register.GiveUpAsync(job, SoundTrouble.GaveUp, ct).ConfigureAwait(false);
            }
        }
        finally
        {
            await board.FailedAsync(job, failure.GetType().Name, forEver: job.Attempts >= MostTries, ct).ConfigureAwait(false);
        }
    }

    private async Task ReadAsync(SoundToRead sound, CancellationToken ct)
    {
        if (sound.HasEnded)
        {
            return;
        }

        if (sound.Path is null)
        {
            await register.GiveUpAsync(sound.Recording, SoundTrouble.Missing, ct).ConfigureAwait(false);
            return;
        }

        var file = new FileStream(sound.Path, FileMode.Open, FileAccess.Read, FileShare.Read | FileShare.Delete);
        await using var _ = file.ConfigureAwait(false);
        var began = Time.GetTimestamp();
        using var late = new CancellationTokenSource(Deadline, Time);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(late.Token, ct);

        // Whatever a decoder doesn’t come back from stays behind on a thread of its own.
        var decoded = await Task.Run(() => SoundDecoder.DecodeAsync(file, DecodeLimits.Usual, stop.Token), stop.Token).WaitAsync(stop.Token).ConfigureAwait(false);
        if (decoded is DecodeResult.Refused { Reason: DecodeRefusal.FormNotRead, Form: { } form } && child.Reads(form))
        {
            decoded = await child.DecodeAsync(sound.Path, form, DecodeLimits.Usual, stop.Token).ConfigureAwait(false);
        }

        switch (decoded)
        {
            case DecodeResult.Done(var clip):
                var report = ClipReport.Of(clip);
                figures.SoundRead(began, wasRead: true);
                await register.KeepAsync(sound.Recording, report, ct).ConfigureAwait(false);
                break;
            case DecodeResult.Refused refused:
                figures.SoundRead(began, wasRead: false);
                await register.GiveUpAsync(sound.Recording, ClipReport.Kept(refused.Reason), ct).ConfigureAwait(false);
                break;
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The decoder that was named can't be started; the sound waits.")]
    private static partial void Away(ILogger logger, Exception away);

    [LoggerMessage(Level = LogLevel.Error, Message = "Reading a sound failed; it is tried again.")]
    private static partial void Stumbled(ILogger logger, Exception failure);
}
