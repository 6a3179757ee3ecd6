using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Letters;

/// <summary>What the student’s last letter taught, as the logs of its reeds hold it.</summary>
/// <param name="Kind">The fault that its common lesson was about.</param>
/// <param name="Count">On how many of its reeds that was found when they came; none of them is only suspected.</param>
/// <param name="From">The entries that say so.</param>
public sealed record EarlierLesson(FindingKindId Kind, Tally Count, IReadOnlyList<EntryId> From)
{
    /// <summary>Reads it; null where that letter taught nothing that was found for certain.</summary>
    /// <param name="sent">The letter as it was sent.</param>
    /// <param name="reeds">The reeds of its batch with their logs.</param>
    public static EarlierLesson? Of(LetterDraft sent, IReadOnlyList<(Reed Reed, BenchLog Log)> reeds)
    {
        ArgumentNullException.ThrowIfNull(sent);
        ArgumentNullException.ThrowIfNull(reeds);
        if (sent.LessonKind is not { } kind || !sent.Blocks.Any(block => block is { Kind: BlockKind.Lesson, Paragraphs.Count: > 0 }))
        {
            return null;
        }

        List<(Reed Reed, BenchLog Log)> here = [.. reeds.Where(one => one.Reed.Presence != Presence.Missing)];
        var sheet = new FindingSheet([.. here.Select(one => one.Reed.Id)], here.SelectMany(one => SheetRow.Of(one.Reed.Id, one.Log)));
        var count = sheet.Count(kind, FindingCharacter.Fault);
        List<EntryId> from =
        [
            .. here.Where(one => IsThere(sheet.Cell(kind, one.Reed.Id)))
                .SelectMany(one => one.Log.Live<Finding>().Where(fact => fact.Now.FindingKind == kind).Select(fact => fact.Root)),
        ];
        return count.Found == count.Suspected ? null : new(kind, count with { Found = count.Found - count.Suspected, Suspected = 0 }, from);
    }

    /// <summary>Whether a cell says that it was there for certain.</summary>
    /// <param name="cell">The cell.</param>
    internal static bool IsThere(SheetCell cell) => cell is { Answer: SheetAnswer.Yes, Character: FindingCharacter.Fault, Suspected: false };
}
