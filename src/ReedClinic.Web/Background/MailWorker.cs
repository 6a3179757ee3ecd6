using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Web.Mailing;
using ReedClinic.Web.Shared.Insight;

namespace ReedClinic.Web.Background;

/// <summary>
/// Sends the mails that were put out. What goes wrong is noted at the mail and tried again; whatever happens here, the site
/// goes on.
/// </summary>
/// <param name="board">Where the work is.</param>
/// <param name="bell">Rings when there is some.</param>
/// <param name="outbox">Opens a mail.</param>
/// <param name="writer">Writes it.</param>
/// <param name="sender">Sends it.</param>
/// <param name="settings">Whether mail goes anywhere.</param>
/// <param name="figures">Makes a span of each try.</param>
/// <param name="standings">Hears how it goes.</param>
/// <param name="time">The clock.</param>
/// <param name="scopes">For reading what the studio is called, and what goes along with a letter.</param>
/// <param name="log">The log. No address and no words of a mail stand in it.</param>
public sealed partial class MailWorker(
    JobBoard board, JobBell bell, Outbox outbox, MailWriter writer, MailSender sender, MailSettings settings,
    InsightFigures figures, WorkerStandings standings, TimeProvider time, IServiceScopeFactory scopes, ILogger<MailWorker> log)
    : StudioWorker(QuietWork.Mail, standings, time, log)
{
    /// <summary>How often it looks although nobody rang: for work of other processes, and for what is to be tried again.</summary>
    public static TimeSpan Floor { get; } = TimeSpan.FromSeconds(5);

    /// <summary>Sends what is due now.</summary>
    /// <param name="ct">Stops it.</param>
    /// <returns>How many were tried.</returns>
    public async Task<int> SendDueAsync(CancellationToken ct)
    {
        var tried = 0;
        while (await board.ClaimAsync(JobKind.Mail, ct).ConfigureAwait(false) is { } job)
        {
            tried++;
            await DoAsync(job, ct).ConfigureAwait(false);
        }

        await sender.RestAsync(ct).ConfigureAwait(false);
        return tried;
    }

    /// <inheritdoc />
    protected override Task LookAsync(CancellationToken ct) => settings.IsOn ? SendDueAsync(ct) : Task.CompletedTask;

    /// <inheritdoc />
    protected override Task RestAsync(CancellationToken ct) => settings.IsOn ? bell.JobAsync(Floor, ct) : NothingMoreAsync(ct);

    private async Task DoAsync(Job job, CancellationToken ct)
    {
        using var span = figures.Span(Work);
        SendResult result;
        try
        {
            result = await TryAsync(job, ct).ConfigureAwait(false);
        }
        catch (Exception failure) when (!ct.IsCancellationRequested)
        {
            Stumbled(Log, failure);
            result = SendResult.Later("Something went wrong here; the log has it.");
        }

        if (result.Problem is not { } problem)
        {
            await board.DoneAsync(job, ct, result.Way).ConfigureAwait(false);
            return;
        }

        NotSent(Log, job.Id, job.Attempts, problem);
        await board.FailedAsync(job, problem, result.ForEver, ct).ConfigureAwait(false);
    }

    private async Task<SendResult> TryAsync(Job job, CancellationToken ct)
    {
        if (outbox.Open(job) is not { } mail)
        {
            return SendResult.Never("It can't be read any more, because the keys that sealed it are gone.");
        }

        var (studio, parcel) = await AskAsync(job, mail, ct).ConfigureAwait(false);
        using var message = writer.Write(job, parcel.Secret is null ? mail : mail with { Secret = parcel.Secret, At = parcel.ExpiresAt }, studio, parcel.Letter);
        return message is null
            ? SendResult.Never("That is no address that mail can be sent to.")
            : await sender.SendAsync(message, ct).ConfigureAwait(false);
    }

    private async Task<(string Studio, LetterParcel Parcel)> AskAsync(Job job, Mail mail, CancellationToken ct)
    {
        var scope = scopes.CreateAsyncScope();
        await using var _ = scope.ConfigureAwait(false);
        return (
            (await scope.ServiceProvider.GetRequiredService<StudioBook>().Read(ct).ConfigureAwait(false))?.Name ?? "ReedClinic",
            await scope.ServiceProvider.GetRequiredService<LetterCourier>().PackAsync(job, mail, ct).ConfigureAwait(false));
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The mail worker stumbled, and goes on")]
    private static partial void Stumbled(ILogger logger, Exception failure);

    [LoggerMessage(Level = LogLevel.Warning, Message = "Mail {Job} wasn't sent at try {Attempt}: {Problem}")]
    private static partial void NotSent(ILogger logger, Guid job, int attempt, string problem);
}
