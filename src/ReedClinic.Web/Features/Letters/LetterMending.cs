using Microsoft.Extensions.Localization;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Letters;

/// <summary>What came of filling in gaps.</summary>
/// <param name="Settled">The fields that were kept, or that say what stands already.</param>
/// <param name="Problems">What couldn't be kept, beside its field.</param>
public sealed record Mended(IReadOnlySet<string> Settled, IReadOnlyList<Problem> Problems);

/// <summary>
/// Mends the gaps of a letter from its form: answers, verdicts, and reasons for what stays open. Each goes to the Book that
/// keeps it, under an operation of its own made from the form's, so that a repeated form repeats nothing.
/// </summary>
public sealed class LetterMending(LetterBook letters, BenchBook bench, IStringLocalizer<LetterText> words)
{
    /// <summary>Says that what was filled in should stand instead of what somebody else filled in since.</summary>
    public const string Instead = "Instead";

    /// <summary>Mends what was filled in; the rest stays a gap.</summary>
    /// <param name="actor">Who mends.</param>
    /// <param name="view">The letter as it stands.</param>
    /// <param name="posted">What was filled in.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Mended> MendAsync(Actor actor, LetterView view, LetterPost posted, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(posted);
        var settled = new HashSet<string>();
        var problems = new List<Problem>();
        foreach (var (field, typed) in posted.Filled)
        {
            List<Problem> refused = [.. await FillAsync(actor, view, field, typed, posted, ct).ConfigureAwait(false)];
            problems.AddRange(refused);
            if (refused.Count == 0)
            {
                settled.Add(field);
            }
        }

        foreach (var waived in view.Waived.Select(waived => waived.Gap.Key).Where(gap => posted[Field("Reopen", gap)] is { Length: > 0 }))
        {
            var field = Field("Reopen", waived);
            List<Problem> refused = [.. ProblemsOf(
                await letters.WaiveAsync(actor, view.AtBench.Batch.Code, waived, null, posted.OperationFor(field, ""), ct).ConfigureAwait(false), "")];
            problems.AddRange(refused);
            if (refused.Count == 0)
            {
                settled.Add(field);
            }
        }

        return new(settled, problems);
    }

    /// <summary>The name of a gap's field.</summary>
    /// <param name="what">What is filled in.</param>
    /// <param name="gap">The gap's key.</param>
    public static string Field(string what, string gap) => $"{what}.{gap}";

    private async Task<IEnumerable<Problem>> FillAsync(
        Actor actor, LetterView view, string field, string typed, LetterPost posted, CancellationToken ct)
    {
        var gap = field[(field.IndexOf('.', StringComparison.Ordinal) + 1)..];
        var what = field[..field.IndexOf('.', StringComparison.Ordinal)];
        if (what == "Reason" && posted.Filled.Keys.Any(other => other != field && other.EndsWith("." + gap, StringComparison.Ordinal)))
        {
            return [new Problem(field, words["OneOfTwo"])];
        }

        var since = LetterSince.Of(view, what, gap);
        if (since is not null && LetterSince.SaysTheSame(since, field, typed))
        {
            return [];
        }

        if (since is not null && posted[Field(Instead, gap)] is null)
        {
            return [new Problem(field, words["FilledSince", since])];
        }

        var operation = posted.OperationFor(field, typed);
        var code = view.AtBench.Batch.Code;
        return what switch
        {
            "Answer" when LetterSince.Question(view, gap) is { } question =>
                ProblemsOf(await letters.AnswerAsync(actor, code, question.Id, typed, operation, ct).ConfigureAwait(false), field),
            "Verdict" when LetterSince.Reed(view, gap) is { } reed && LetterSince.VerdictIn(field, typed) is { } kind
                && Verdict.Of(kind) is Outcome<Verdict>.Done(var verdict) =>
                ProblemsOf(await bench.RecordAsync(actor, reed.Id, verdict, operation, ct).ConfigureAwait(false), field),
            "Reason" when LetterSince.IsGap(view, gap) =>
                ProblemsOf(await letters.WaiveAsync(actor, code, gap, typed, operation, ct).ConfigureAwait(false), field),
            _ => posted[Field(Instead, gap)] is null ? [new Problem(field, words["NotMissing"])] : [],
        };
    }

    private IEnumerable<Problem> ProblemsOf<T>(Outcome<T> outcome, string field) =>
        outcome switch
        {
            Outcome<T>.Done => [],
            Outcome<T>.Refused(var problems) => problems.Select(problem => problem with { Field = field }),
            Outcome<T>.Conflict => [new Problem(field, words["SameMoment"])],
            _ => [new Problem(field, words["Gone"])],
        };
}
