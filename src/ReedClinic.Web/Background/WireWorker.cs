using ReedClinic.Data.Engine;

namespace ReedClinic.Web.Background;

/// <summary>Keeps the wire between the studio's processes up. Where it breaks, the site goes on, and pages look by themselves.</summary>
/// <param name="wire">The wire.</param>
/// <param name="time">The clock.</param>
/// <param name="log">The log.</param>
public sealed partial class WireWorker(StudioWire wire, TimeProvider time, ILogger<WireWorker> log) : BackgroundService
{
    /// <summary>How long it waits before it begins anew.</summary>
    public static TimeSpan Pause { get; } = TimeSpan.FromSeconds(2);

    /// <inheritdoc />
    protected override async Task ExecuteAsync(CancellationToken stoppingToken)
    {
        await Task.CompletedTask.ConfigureAwait(ConfigureAwaitOptions.ForceYielding);
        var broken = false;
        while (!stoppingToken.IsCancellationRequested)
        {
            try
            {
                await wire.RunAsync(() => broken = false, stoppingToken).ConfigureAwait(false);
                return; // one process alone needs none
            }
            catch (Exception trouble) when (!stoppingToken.IsCancellationRequested)
            {
                if (!broken)
                {
                    Broke(trouble);
                }

                broken = true;
                await Task.Delay(Pause, time, stoppingToken).ConfigureAwait(ConfigureAwaitOptions.SuppressThrowing);
            }
            catch (OperationCanceledException)
            {
                return;
            }
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The wire to the studio's other processes broke; it is laid anew. Until then their pages hear of news some seconds later.")]
    private partial void Broke(Exception trouble);
}
