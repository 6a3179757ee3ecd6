using System.Security.Cryptography;
using System.Text;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Letters;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Features.Letters;

/// <summary>
/// Mends the gaps of a letter from one form: answers, verdicts, closed risks, and reasons for what stays open. Each goes to
/// the Book that keeps it, under an operation of its own made from the form's, so that a repeated form repeats nothing.
/// </summary>
public sealed class LetterMending(LetterBook letters, BenchBook bench)
{
    /// <summary>Mends what was filled in; the rest stays a gap.</summary>
    /// <param name="actor">Who mends.</param>
    /// <param name="view">The letter as the page read it.</param>
    /// <param name="posted">What was filled in.</param>
    /// <param name="ct">Stops it.</param>
    public async Task<Outcome<LetterView>> MendAsync(Actor actor, LetterView view, LetterPost posted, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(view);
        ArgumentNullException.ThrowIfNull(posted);
        var problems = new List<Problem>();
        foreach (var gap in view.Gaps)
        {
            problems.AddRange(await MendAsync(actor, view, gap, posted, ct).ConfigureAwait(false));
        }

        foreach (var waived in view.Waived.Where(waived => posted[Field("Reopen", waived.Gap)] is { Length: > 0 }))
        {
            var outcome = await letters.WaiveAsync(
                actor, view.AtBench.Batch.Code, waived.Gap.Key, null, Of(posted, waived.Gap, "reopen"), ct).ConfigureAwait(false);
            problems.AddRange(ProblemsOf(outcome, ""));
        }

        return problems.Count > 0
            ? new Outcome<LetterView>.Refused(problems)
            : await letters.ReadAsync(actor, view.AtBench.Batch.Code, ct).ConfigureAwait(false) is { } now
                ? new Outcome<LetterView>.Done(now)
                : new Outcome<LetterView>.NotFound();
    }

    /// <summary>The name of a gap's field.</summary>
    /// <param name="what">What is filled in.</param>
    /// <param name="gap">The gap.</param>
    public static string Field(string what, LetterGap gap)
    {
        ArgumentNullException.ThrowIfNull(gap);
        return $"{what}.{gap.Key}";
    }

    private async Task<IEnumerable<Problem>> MendAsync(
        Actor actor, LetterView view, LetterGap gap, LetterPost posted, CancellationToken ct)
    {
        var code = view.AtBench.Batch.Code;
        if (posted[Field("Answer", gap)] is { Length: > 0 } answer && gap.Question is { } question)
        {
            var outcome = await letters.AnswerAsync(actor, code, question, answer, Of(posted, gap, "answer"), ct).ConfigureAwait(false);
            return ProblemsOf(outcome, Field("Answer", gap));
        }

        if (Enum.TryParse<VerdictKind>(posted[Field("Verdict", gap)], out var verdict) && gap.Reed is { } reed
            && Verdict.Of(verdict) is Outcome<Verdict>.Done(var said))
        {
            var outcome = await bench.RecordAsync(actor, reed, said, Of(posted, gap, "verdict"), ct).ConfigureAwait(false);
            return ProblemsOf(outcome, Field("Verdict", gap));
        }

        if (posted[Field("Reason", gap)] is { Length: > 0 } reason)
        {
            var outcome = await letters.WaiveAsync(actor, code, gap.Key, reason, Of(posted, gap, "waive"), ct).ConfigureAwait(false);
            return ProblemsOf(outcome, Field("Reason", gap));
        }

        return [];
    }

    private static IEnumerable<Problem> ProblemsOf<T>(Outcome<T> outcome, string field) =>
        outcome switch
        {
            Outcome<T>.Done => [],
            Outcome<T>.Refused(var problems) => problems.Select(problem => problem with { Field = field }),
            Outcome<T>.Conflict => [new Problem(field, "Somebody changed this letter at the same moment. Look at it, and save this once more.")],
            _ => [new Problem(field, "This isn't there any more.")],
        };

    // A form that brought no operation repeats nothing: its parts get fresh ones where they are saved.
    private static OperationId Of(LetterPost posted, LetterGap gap, string what) => posted.Operation == default
        ? default
        : new(new Guid(SHA256.HashData(Encoding.UTF8.GetBytes($"{posted.Operation.Value:N}{what}{gap.Key}")).AsSpan(0, 16)));
}
