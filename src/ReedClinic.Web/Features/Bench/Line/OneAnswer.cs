using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Web.Features.Bench.Line;

/// <summary>A question about a line in which more than one thing was done or judged: its answer goes for all of them, and the question names them.</summary>
public static class OneAnswer
{
    /// <summary>The question with what its answer goes for.</summary>
    /// <param name="asked">What is asked; the question itself first.</param>
    /// <param name="entries">What the line would record.</param>
    /// <param name="view">The reed and its log.</param>
    /// <param name="t">The bench’s words.</param>
    /// <returns>The same where it is one thing.</returns>
    public static IReadOnlyList<Problem> Tell(IReadOnlyList<Problem> asked, IReadOnlyList<BenchEntry> entries, BenchView view, IStringLocalizer<BenchText> t)
    {
        ArgumentNullException.ThrowIfNull(asked);
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(t);
        var words = new EntryWords(t, view.Log, view.Batch.CrowTarget.Tuning, view.Catalogue);
        List<string> done = [.. entries.Where(entry => entry is Adjustment or Verdict).Select(words.InShort)];
        return done.Count < 2
            ? asked
            : [asked[0] with { Message = $"{asked[0].Message} {(done.Count == 2 ? t["OneAnswerBoth", done[0], done[1]] : t["OneAnswerAll", done.Count, string.Join(" · ", done)])}" }, .. asked.Skip(1)];
    }
}
