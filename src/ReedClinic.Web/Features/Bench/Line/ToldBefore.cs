using Microsoft.Extensions.Primitives;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>
/// Advice that is told before something is recorded, to a page that can show it: such a page says with each press which advice it
/// has shown. What was shown, and said once more, is recorded, and the advice is set aside for good.
/// </summary>
public static class ToldBefore
{
    /// <summary>The field in which a page says which advice it has shown; one that can’t show any leaves it out.</summary>
    public const string Field = "Heeded";

    /// <summary>The field of the reason in an answer.</summary>
    public const string Reason = "Reason";

    private const char Between = ' ';

    /// <summary>What a line comes to is told before it is recorded, where that is due; the weightiest of it.</summary>
    /// <param name="entries">What is about to be recorded, in order.</param>
    /// <param name="view">The reed and its log.</param>
    public static AdviceLine? Of(IReadOnlyList<BenchEntry> entries, BenchView view)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(view);
        return entries.Select((entry, at) => Beforehand.Of(view.Log, view.Reed, view.Batch, entry, [.. entries.Take(at)])).FirstOrDefault(line => line is not null);
    }

    /// <summary>The advice as an answer that the page can show: its line under its own name, and its reason.</summary>
    /// <param name="advice">The advice.</param>
    public static IReadOnlyList<Problem> Problems(AdviceLine advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        return [new Problem($"{Field}:{advice.Id.Value}", advice.Line), new Problem(Reason, advice.Reason)];
    }

    /// <summary>What keeps entries from being recorded now. Advice that was shown already is set aside instead, and nothing keeps them.</summary>
    /// <param name="entries">What is about to be recorded, in order.</param>
    /// <param name="shown">Which advice the page has shown; none at all where it can show none.</param>
    /// <param name="actor">Who is at the bench.</param>
    /// <param name="view">The reed and its log.</param>
    /// <param name="operation">The operation that records the entries.</param>
    /// <param name="bench">Sets the advice aside.</param>
    /// <param name="ct">Cancels before it is saved.</param>
    public static async Task<IReadOnlyList<Problem>> WantedAsync(
        IReadOnlyList<BenchEntry> entries, StringValues shown, Actor actor, BenchView view, OperationId operation, BenchBook bench, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(bench);
        ArgumentNullException.ThrowIfNull(view);
        // Sent again after its answer was lost it stands already, and would be judged against itself.
        var stands = view.Log.Facts.Any(fact => fact.Chain.Any(link => link.OperationId == operation));
        if (stands || shown.Count == 0 || Of(entries, view) is not { } advice)
        {
            return [];
        }

        if (!shown.ToString().Split(Between).Contains(advice.Id.Value))
        {
            return Problems(advice);
        }

        // By itself and first: what is recorded keeps its own operation, so that sent again it still stands once.
        if (AdviceSetAside.Of(advice.Id) is Outcome<AdviceSetAside>.Done(var aside))
        {
            await bench.RecordAsync(actor, view.Reed.Id, aside, operation.Part(OperationId.MostParts - 1), ct).ConfigureAwait(false);
        }

        return [];
    }
}
