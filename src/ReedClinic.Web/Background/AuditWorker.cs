using ReedClinic.Data.Audit;
using ReedClinic.Data.Jobs;

namespace ReedClinic.Web.Background;

/// <summary>Puts what was noted for the audit onto its chain, soon after it was noted and once more at the end.</summary>
/// <param name="chain">The chain.</param>
/// <param name="bell">Rings when something was noted.</param>
/// <param name="log">The log.</param>
public sealed partial class AuditWorker(AuditChain chain, JobBell bell, ILogger<AuditWorker> log) : BackgroundService
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
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.CompletedTask.ConfigureAwait(ConfigureAwaitOptions.ForceYielding);
        while (!stoppingToken.IsCancellationRequested)
        {
            await SealAsync(stoppingToken).ConfigureAwait(false);
            await bell.NoteAsync(Floor, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
        }
    }

    private async Task EndAsync(CancellationToken ct)
    {
        await base.StopAsync(ct).ConfigureAwait(false);
        using var patience = new CancellationTokenSource(AtTheEnd);
        await SealAsync(patience.Token).ConfigureAwait(false);
    }

    private async Task SealAsync(CancellationToken ct)
    {
        try
        {
            while (await chain.SealAsync(ct).ConfigureAwait(false) > 0)
            {
                // There may be more than one go takes.
            }
        }
        catch (OperationCanceledException) when (ct.IsCancellationRequested)
        {
            // What is left waits for the next start.
        }
        catch (Exception failure)
        {
            Stumbled(log, failure);
        }
    }

    [LoggerMessage(Level = LogLevel.Error, Message = "The audit's notes couldn't be put on the chain; it is tried again")]
    private static partial void Stumbled(ILogger logger, Exception failure);
}
