using ReedClinic.Data.Engine;
using ReedClinic.Domain.Upkeep;

namespace ReedClinic.Web.Background;

/// <summary>Keeps the wire between the studio's processes up. Where it breaks, the site goes on, and pages look by themselves.</summary>
/// <param name="wire">The wire.</param>
/// <param name="standings">Hears how it goes.</param>
/// <param name="time">The clock.</param>
/// <param name="log">The log.</param>
public sealed class WireWorker(StudioWire wire, WorkerStandings standings, TimeProvider time, ILogger<WireWorker> log)
    : StudioWorker(QuietWork.Wire, standings, time, log)
{
    private static readonly TimeSpan Short = TimeSpan.FromSeconds(2);

    /// <inheritdoc />
    protected override Task LookAsync(CancellationToken ct) => wire.RunAsync(GoesWell, ct);

    // It only ends by itself where one process is alone and needs none.
    /// <inheritdoc />
    protected override Task RestAsync(CancellationToken ct) => NothingMoreAsync(ct);

    /// <inheritdoc />
    protected override TimeSpan Pause(int inARow) => Short;
}
