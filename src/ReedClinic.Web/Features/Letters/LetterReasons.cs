using ReedClinic.Data.Letters;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Web.Features.Letters;

/// <summary>Reasons that the student is to read, of a reed whose part is in the teacher's own words: nothing is composed there, so they go into that part.</summary>
internal static class LetterReasons
{
    /// <summary>What the field of a gap held already when the form was opened.</summary>
    public const string Proposed = nameof(Proposed);

    /// <summary>The form without reasons that were only proposed: they count where the gaps are filled in, and not where something else is kept.</summary>
    /// <param name="posted">The form.</param>
    public static LetterPost Meant(LetterPost posted) => posted["Step"] == "mend" ? posted : new(posted.Fields
        .Where(pair => !(pair.Key.StartsWith("Reason.", StringComparison.Ordinal) && posted[Proposed + pair.Key["Reason".Length..]] == pair.Value))
        .ToDictionary(pair => pair.Key, pair => pair.Value));

    /// <summary>The form with such reasons at the end of their parts.</summary>
    /// <param name="view">The letter as it stands.</param>
    /// <param name="posted">The form.</param>
    public static LetterPost IntoTheWords(LetterView view, LetterPost posted)
    {
        foreach (var gap in view.Gaps.Concat(view.Notices).Where(gap => gap.Kind is GapKind.UnansweredComplaint or GapKind.GivenUpWithoutWhy or GapKind.WorkBeyondTheWish))
        {
            var field = LetterMending.Field("Reason", gap.Key);
            if (posted.Filled.TryGetValue(field, out var reason) && PartOf(gap, view, posted) is { } part)
            {
                var more = posted.AtTheEndOf(part, reason.Trim());

                // Of a complaint nothing is asked any more once its part has other words.
                posted = gap.Kind == GapKind.UnansweredComplaint ? new(more.Fields.Where(pair => pair.Key != field).ToDictionary(pair => pair.Key, pair => pair.Value)) : more;
            }
        }

        return posted;
    }

    private static LetterBlock? PartOf(LetterGap gap, LetterView view, LetterPost posted) => view.Draft.Blocks.FirstOrDefault(block =>
        block.Reed == gap.Reed && (block.Kind == BlockKind.ReedStory || (block.Kind == BlockKind.ReedNow && gap.Kind == GapKind.UnansweredComplaint))
        && (block.IsEdited || posted.Texts.ContainsKey(block.Key)));
}
