using System.Data.Common;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Diagnosis;
using ReedClinic.Domain.Diagnosis;
using ReedClinic.Domain.Diagnosis.Proposals;
using ReedClinic.Web.Shared.Insight;

namespace ReedClinic.Web.Features.Diagnosis;

/// <summary>What the quiet line says of a reed as its log stood.</summary>
/// <param name="Of">The place of the log’s last entry then.</param>
/// <param name="Evidence">What is reasoned.</param>
/// <param name="Step">The line; null where there is nothing more to suggest.</param>
public sealed record ReasonedLine(int Of, ReedEvidence Evidence, QuietStep? Step);

/// <summary>
/// Works out the quiet line beside the circuit: what is shown and what is saved never waits for it, and it waits for nothing that isn’t at
/// hand. What this bench has taught is read meanwhile, and taken the next time.
/// </summary>
public sealed class ReasonDesk(LearnedHere here, InsightFigures figures, TimeProvider time, ILogger<ReasonDesk> log)
{
    /// <summary>So many causes stand in the sheet above the line.</summary>
    public const int MostCauses = 3;

    /// <summary>The line for a reed.</summary>
    /// <param name="view">The reed and its log.</param>
    /// <param name="ct">Stops the waiting for it.</param>
    public Task<ReasonedLine> WorkOutAsync(BenchView view, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(view);
        return Task.Run(() =>
        {
            var began = time.GetTimestamp();
            var line = Of(view, here.AtHand);
            figures.Reasoned(began);
            return line;
        }, ct);
    }

    /// <summary>What is reasoned of a reed, for the page that shows all of it.</summary>
    /// <param name="view">The reed, and what this bench has taught.</param>
    public ReedEvidence Weigh(ReasoningView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        var began = time.GetTimestamp();
        var (bench, learned) = (view.AtBench, view.Learned);
        var evidence = ReedEvidence.Of(learned.Catalogue, bench.Log, bench.Reed, bench.Batch, learned.Effects);
        figures.Reasoned(began);
        return evidence;
    }

    /// <summary>Reads what this bench has taught, when it is time; what was said of causes as soon as something was written.</summary>
    /// <param name="ct">Stops it.</param>
    /// <returns>True when something new is at hand.</returns>
    public async Task<bool> LearnAsync(CancellationToken ct)
    {
        try
        {
            return await Task.Run(() => here.CatchUpAsync(ct), ct).ConfigureAwait(false);
        }
        catch (Exception failed) when (failed is DbException or TimeoutException or InvalidOperationException)
        {
            // What is at hand will do; the next entry asks again.
            ReasonLog.NotLearned(log, failed);
            return false;
        }
    }

    /// <summary>Why what was found, and then the likeliest causes, are as likely as they are.</summary>
    /// <param name="evidence">What is reasoned.</param>
    /// <param name="ct">Stops the waiting for it.</param>
    public static Task<List<Explanation>> WhyAsync(ReedEvidence evidence, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(evidence);
        return Task.Run(() => evidence.Foremost.Take(MostCauses).Select(one => evidence.Now.Causes.Explain(one.Cause.Id)).OfType<Explanation>().ToList(), ct);
    }

    internal static ReasonedLine Of(BenchView view, Learned? learned)
    {
        var evidence = ReedEvidence.Of(learned?.Counts.LayOver(view.Catalogue) ?? view.Catalogue, view.Log, view.Reed, view.Batch, learned?.Effects);
        return new ReasonedLine(view.Log.LastSequence, evidence, QuietStep.Of(evidence, view.Log));
    }
}
