using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Diagnosis;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Intake;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;
using ReedClinic.Web.Features.Bench.Line;

namespace ReedClinic.Web.Background;

/// <summary>
/// Goes the ways of the bench once when an installed process has started, for nobody, so that the first teacher doesn’t wait for what
/// every program does slowly the first time. It reads and never writes, and <c>/health/ready</c> waits for it, up to <see cref="Longest"/>.
/// </summary>
/// <param name="scopes">Gives the books.</param>
/// <param name="wire">Carries news between processes; it should hear before anybody is led here.</param>
/// <param name="server">Says whether anything listens: where nothing does, nobody is led here.</param>
/// <param name="log">The log.</param>
public sealed partial class FirstTurn(IServiceScopeFactory scopes, StudioWire wire, IServer server, ILogger<FirstTurn> log)
{
    private static readonly TimeSpan LongestForTheWire = TimeSpan.FromSeconds(5);

    private readonly TaskCompletionSource _over = new(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>How long anybody waits for it. After that the process is ready all the same, and slow once.</summary>
    public static TimeSpan Longest { get; } = TimeSpan.FromSeconds(15);

    /// <summary>True once it has been, or was given up.</summary>
    public bool IsOver => _over.Task.IsCompleted;

    /// <summary>Goes the ways once.</summary>
    /// <param name="services">Gives the books.</param>
    /// <param name="ct">Stops it.</param>
    public static async Task GoAsync(IServiceProvider services, CancellationToken ct)
    {
        var nowhere = Guid.CreateVersion7(services.GetRequiredService<TimeProvider>().GetUtcNow());
        var nobody = new Actor(new AccountId(nowhere), null, IsTeacher: true, IsOwner: false);
        var (bench, reasoning) = (services.GetRequiredService<BenchBook>(), services.GetRequiredService<ReasoningBook>());
        var newest = (await services.GetRequiredService<DeskBook>().AllAsync(nobody, ct).ConfigureAwait(false)).MaxBy(row => row.SubmittedAt);
        var batch = newest is null ? null : await bench.FindBatchAsync(nobody, newest.Code, ct).ConfigureAwait(false);
        var reed = batch is { Reeds: [.., var last] } ? last.Reed.Id : new ReedId(nowhere);
        var view = await bench.FindAsync(nobody, reed, ct).ConfigureAwait(false);
        await reasoning.FindAsync(nobody, reed, ct).ConfigureAwait(false);
        await bench.HabitsAsync(nobody, ct).ConfigureAwait(false);
        await bench.StripAsync(nobody, batch?.Batch.Id ?? new BatchId(nowhere), ct).ConfigureAwait(false);
        await services.GetRequiredService<BenchDraftBook>().FindAsync(nobody, reed, ct).ConfigureAwait(false);
        var heard = HeardLine.Of("crow a flat C, thinned the left corner a hair", view?.Log ?? BenchLog.Empty, Tuning.Standard);

        // For a reed that nobody has: it goes as far as asking for it, and no further.
        await bench.SayAsync(nobody, new ReedId(nowhere), heard.All, new OperationId(nowhere), ct).ConfigureAwait(false);
    }

    /// <summary>Takes the turn, or gives it up; whoever waits for it goes on either way.</summary>
    /// <param name="ct">The process stops.</param>
    public async Task TakeAsync(CancellationToken ct)
    {
        try
        {
            if (server.Features.Get<IServerAddressesFeature>() is not { Addresses.Count: > 0 })
            {
                return;
            }

            await Task.Yield(); // the start goes on
            using var bound = CancellationTokenSource.CreateLinkedTokenSource(ct);
            bound.CancelAfter(Longest);
            await Task.WhenAny(wire.Hearing, Task.Delay(LongestForTheWire, bound.Token)).ConfigureAwait(false);
            var scope = scopes.CreateAsyncScope();
            await using var _ = scope.ConfigureAwait(false);
            await GoAsync(scope.ServiceProvider, bound.Token).ConfigureAwait(false);
        }
        catch (OperationCanceledException)
        {
            TookTooLong(); // a slow machine, or the process stops: nothing is broken
        }
        catch (Exception trouble) when (trouble is not OutOfMemoryException)
        {
            Skipped(trouble);
        }
        finally
        {
            _over.TrySetResult();
        }
    }

    [LoggerMessage(Level = LogLevel.Warning, Message = "The ways of the bench weren't gone once before the first visitor; the first entry takes longer.")]
    private partial void Skipped(Exception trouble);

    [LoggerMessage(Level = LogLevel.Warning, Message = "The ways of the bench took too long to be gone once before the first visitor; the first entry takes longer.")]
    private partial void TookTooLong();
}

/// <summary>Has the process gone its first turn?</summary>
/// <param name="turn">The turn.</param>
public sealed class FirstTurnCheck(FirstTurn turn) : IHealthCheck
{
    /// <inheritdoc />
    public Task<HealthCheckResult> CheckHealthAsync(HealthCheckContext context, CancellationToken cancellationToken = default) =>
        Task.FromResult(turn.IsOver ? HealthCheckResult.Healthy() : HealthCheckResult.Degraded("It has only just started."));
}
