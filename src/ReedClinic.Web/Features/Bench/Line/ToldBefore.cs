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

    /// <summary>The field that says that it is work: what is said after it was said of the reed as it was then, and waits behind it.</summary>
    public const string Work = "Work";

    private const char Between = ' ';

    /// <summary>What a line comes to is told before it is recorded, where that is due; the weightiest of the first thing in it.</summary>
    /// <param name="entries">What is about to be recorded, in order.</param>
    /// <param name="view">The reed and its log.</param>
    public static AdviceLine? Of(IReadOnlyList<BenchEntry> entries, BenchView view) => All(entries, view) is [var first, ..] ? first : null;

    /// <summary>The advice as an answer that the page can show: its line under its own name, and its reason.</summary>
    /// <param name="advice">The advice.</param>
    public static IReadOnlyList<Problem> Problems(AdviceLine advice)
    {
        ArgumentNullException.ThrowIfNull(advice);
        Problem[] told = [new($"{Field}:{advice.Id.Value}", advice.Line), new(Reason, advice.Reason)];
        return advice.Kind is AdviceKind.SameVerdict or AdviceKind.VerdictWithoutWork or AdviceKind.UnplayedThoughTried ? told : [.. told, new Problem(Work, advice.Line)];
    }

    /// <summary>
    /// What keeps entries from being recorded now: the first advice that is due and that the page hasn’t shown. What it has shown is
    /// set aside together with the entries, and keeps nothing back.
    /// </summary>
    /// <param name="entries">What is about to be recorded, in order.</param>
    /// <param name="shown">Which advice the page has shown; none at all where it can show none.</param>
    /// <param name="view">The reed and its log.</param>
    /// <param name="operation">The operation that records the entries.</param>
    /// <returns>What is told instead of recording them; else the advice to set aside with them.</returns>
    public static (IReadOnlyList<Problem> Told, IReadOnlyList<AdviceId> Heeded) Wanted(
        IReadOnlyList<BenchEntry> entries, StringValues shown, BenchView view, OperationId operation)
    {
        ArgumentNullException.ThrowIfNull(view);
        return Judged(shown.Count == 0 ? [] : All(entries, view, operation), shown);
    }

    /// <summary>The same for what is said in another entry’s place: it is judged by what stood before that.</summary>
    /// <param name="fact">What is said better.</param>
    /// <param name="better">What is to stand in its place.</param>
    /// <param name="shown">Which advice the page has shown; none at all where it can show none.</param>
    /// <param name="view">The reed and its log.</param>
    /// <returns>What is told instead of recording it; else the advice to set aside with it.</returns>
    public static (IReadOnlyList<Problem> Told, IReadOnlyList<AdviceId> Heeded) WantedInPlaceOf(BenchFact fact, BenchEntry better, StringValues shown, BenchView view)
    {
        ArgumentNullException.ThrowIfNull(view);
        return Judged(shown.Count == 0 ? [] : Beforehand.InPlaceOf(fact, view.Log, view.Reed, view.Batch, better), shown);
    }

    private static (IReadOnlyList<Problem> Told, IReadOnlyList<AdviceId> Heeded) Judged(IReadOnlyList<AdviceLine> due, StringValues shown)
    {
        var seen = shown.ToString().Split(Between);
        return due.FirstOrDefault(line => !seen.Contains(line.Id.Value)) is { } unseen ? (Problems(unseen), []) : ([], [.. due.Select(line => line.Id)]);
    }

    // Each advice once, however many of the entries it is due for.
    private static List<AdviceLine> All(IReadOnlyList<BenchEntry> entries, BenchView view, OperationId operation = default)
    {
        ArgumentNullException.ThrowIfNull(entries);
        ArgumentNullException.ThrowIfNull(view);
        return [.. entries.SelectMany((entry, at) => Beforehand.All(view.Log, view.Reed, view.Batch, entry, operation, [.. entries.Take(at)])).DistinctBy(line => line.Id)];
    }
}
