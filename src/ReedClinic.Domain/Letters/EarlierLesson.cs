using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Letters;

/// <summary>What the student’s last letter taught, as the logs of its reeds hold it.</summary>
/// <param name="Kind">The fault that its common lesson was about.</param>
/// <param name="Count">On how many of its reeds that was found when they came; none of them is only suspected.</param>
/// <param name="From">The entries that say so.</param>
public sealed partial record EarlierLesson(FindingKindId Kind, Tally Count, IReadOnlyList<EntryId> From)
{
    // Longer than this it is no sentence to be said once more.
    private const int MostLetters = 160;

    /// <summary>The lesson in the teacher’s words, where it was about nothing that is in the catalogue; null for one that is.</summary>
    public string? Words { get; init; }

    /// <summary>Reads it; null where that letter taught nothing that was found for certain, or that was said in few words.</summary>
    /// <param name="sent">The letter as it was sent.</param>
    /// <param name="reeds">The reeds of its batch with their logs.</param>
    public static EarlierLesson? Of(LetterDraft sent, IReadOnlyList<(Reed Reed, BenchLog Log)> reeds)
    {
        ArgumentNullException.ThrowIfNull(sent);
        ArgumentNullException.ThrowIfNull(reeds);
        if (sent.Blocks.FirstOrDefault(block => block is { Kind: BlockKind.Lesson, Paragraphs.Count: > 0 }) is not { } lesson)
        {
            return null;
        }

        if (sent.LessonKind is not { } kind)
        {
            return InWords(sent.LessonWords, lesson);
        }

        List<(Reed Reed, BenchLog Log)> here = [.. reeds.Where(one => one.Reed.Presence != Presence.Missing)];
        var sheet = new FindingSheet([.. here.Select(one => one.Reed.Id)], here.SelectMany(one => SheetRow.Of(one.Reed.Id, LetterLog.Standing(one.Log))));
        var count = sheet.Count(kind, FindingCharacter.Fault);
        List<EntryId> from =
        [
            .. here.Where(one => IsThere(sheet.Cell(kind, one.Reed.Id)))
                .SelectMany(one => LetterLog.Standing(one.Log).Live<Finding>().Where(fact => fact.Now.FindingKind == kind).Select(fact => fact.Root)),
        ];
        return count.Found == count.Suspected || IsInOtherWords(sent, from) ? null : new(kind, count with { Found = count.Found - count.Suspected, Suspected = 0 }, from);
    }

    // Only what the student has read: words that were changed by hand are others.
    private static EarlierLesson? InWords(string? words, LetterBlock lesson) =>
        words is not null && Explained().Replace(lesson.Text, "").Contains(Explained().Replace(Prose.Sentence(words), ""), StringComparison.Ordinal) && FirstSentence().Match(Prose.Sentence(words)).Value is { Length: > 0 and <= MostLetters } first
            ? new(default, default, []) { Words = first } : null;

    // A word of the trade may have been explained in the midst of them.
    [GeneratedRegex(@" \([^)]*\)")]
    private static partial Regex Explained();

    [GeneratedRegex(@"^.+?[.!?…][”’)]?(?=\s|$)")]
    private static partial Regex FirstSentence();

    // Rewritten by hand, and no sentence left that rests on what was found: then nobody knows what that letter taught.
    private static bool IsInOtherWords(LetterDraft sent, List<EntryId> from) => sent.Blocks.Any(block => block is { Kind: BlockKind.Lesson, IsEdited: true })
        && !sent.Blocks.Any(block => block.Kind == BlockKind.Lesson && block.Paragraphs.Any(paragraph => paragraph.Sentences.Any(sentence => sentence.From.Any(from.Contains))));

    /// <summary>Whether a cell says that it was there for certain.</summary>
    /// <param name="cell">The cell.</param>
    internal static bool IsThere(SheetCell cell) => cell is { Answer: SheetAnswer.Yes, Character: FindingCharacter.Fault, Suspected: false };
}
