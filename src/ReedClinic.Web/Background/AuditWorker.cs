using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;
using ReedClinic.Domain.Upkeep;

namespace ReedClinic.Web.Background;

/// <summary>Puts what was noted for the audit onto its chain, soon after it was noted and once more at the end.</summary>
/// <param name="chain">The chain.</param>
/// <param name="bell">Rings when something was noted.</param>
/// <param name="standings">Hears how it goes.</param>
/// <param name="time">The clock.</param>
/// <param name="log">The log.</param>
public sealed class AuditWorker(AuditChain chain, JobBell bell, WorkerStandings standings, TimeProvider time, ILogger<AuditWorker> log)
    : StudioWorker(QuietWork.Audit, standings, time, log)
{
    private static readonly TimeSpan Floor = TimeSpan.FromSeconds(5);
    private static readonly TimeSpan AtTheEnd = TimeSpan.FromSeconds(3);

    private readonly Lock _gate = new();
    private Task? _stopping;

    /// <inheritdoc />
    public override Task StopAsync(CancellationToken cancellationToken)
    {
        // A host may ask twice at once; nobody goes on before the last note is sealed.
        lock (_gate)
        {
            return _stopping ??= EndAsync(cancellationToken);
        }
    }

    /// <inheritdoc />
    protected override async Task LookAsync(CancellationToken ct)
    {
        while (await chain.SealAsync(ct).ConfigureAwait(false) > 0)
        {
            // There may be more than one go takes.
        }
    }

    /// <inheritdoc />
    protected override Task RestAsync(CancellationToken ct) => bell.NoteAsync(Floor, ct);

    private async Task EndAsync(CancellationToken ct)
    {
        await base.StopAsync(ct).ConfigureAwait(false);
        using var patience = new CancellationTokenSource(AtTheEnd);
        await ((Task)TryAsync(patience.Token)).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing); // what is left waits for the next start
    }
}
