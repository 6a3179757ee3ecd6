using ReedClinic.Data.Upkeep;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Web.Background;
using ReedClinic.Web.Mailing;

namespace ReedClinic.Web.Shared.Insight;

/// <summary>Reads once a minute how the machine stands, for the figures that are told of it. Only there where they go somewhere.</summary>
/// <param name="reader">Reads it.</param>
/// <param name="figures">Where it is told.</param>
/// <param name="post">Whether mail goes anywhere.</param>
/// <param name="standings">Hears how it goes.</param>
/// <param name="time">The clock.</param>
/// <param name="log">The log.</param>
public sealed class InsightWorker(UpkeepReader reader, InsightFigures figures, MailPost post, WorkerStandings standings, TimeProvider time, ILogger<InsightWorker> log)
    : StudioWorker(QuietWork.Figures, standings, time, log)
{
    /// <summary>How long it waits between two looks.</summary>
    public static TimeSpan Between { get; } = TimeSpan.FromMinutes(1);

    /// <inheritdoc />
    protected override async Task LookAsync(CancellationToken ct) => figures.Tell(await reader.ReadAsync(post.IsOn, [], ct).ConfigureAwait(false));

    /// <inheritdoc />
    protected override Task RestAsync(CancellationToken ct) => Task.Delay(Between, Time, ct);
}
