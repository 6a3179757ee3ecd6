using ReedClinic.Data.Letters;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Letters;

/// <summary>What somebody else filled in since a form was opened, so that what was typed in it isn't dropped.</summary>
internal static class LetterSince
{
    /// <summary>What stands where a gap was; null while it is a gap.</summary>
    public static string? Of(LetterView view, string what, string gap) =>
        view.Gaps.Concat(view.Notices).Any(open => open.Key == gap) ? null : what switch
        {
            "Answer" => Question(view, gap)?.Answer,
            "Verdict" => Reed(view, gap) is { } reed ? view.AtBench.LogOf(reed.Id).Verdict?.Now.VerdictKind.Name() : null,
            _ => view.Waived.FirstOrDefault(waived => waived.Gap.Key == gap)?.Reason,
        };

    /// <summary>Whether what was typed in a field says what stands.</summary>
    public static bool SaysTheSame(string stands, string field, string typed) =>
        stands == typed.ReplaceLineEndings("\n").Trim() || VerdictIn(field, typed)?.Name() == stands;

    /// <summary>The verdict that was chosen in a field; null where words are typed, whatever they look like.</summary>
    public static VerdictKind? VerdictIn(string field, string typed) =>
        field.StartsWith("Verdict.", StringComparison.Ordinal) && Enum.TryParse<VerdictKind>(typed, out var verdict) && Enum.IsDefined(verdict)
            ? verdict
            : null;

    /// <summary>The question of a gap.</summary>
    public static Question? Question(LetterView view, string gap) =>
        view.AtBench.Batch.Questions.FirstOrDefault(question => LetterGap.KeyOf(question) == gap);

    /// <summary>The reed whose verdict is a gap.</summary>
    public static Reed? Reed(LetterView view, string gap) =>
        view.AtBench.Batch.Reeds.FirstOrDefault(reed => LetterGap.KeyOfVerdict(reed) == gap);

    /// <summary>Whether this is missing, or was left open.</summary>
    public static bool IsGap(LetterView view, string gap) =>
        view.Gaps.Concat(view.Notices).Any(open => open.Key == gap) || view.Waived.Any(waived => waived.Gap.Key == gap);
}
