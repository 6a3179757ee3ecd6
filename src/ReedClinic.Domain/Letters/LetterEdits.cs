using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>Parts about a reed that were changed by hand, held against its log where they plainly say the opposite.</summary>
public static partial class LetterEdits
{
    /// <summary>All that is missing, and all that the teacher is told before the letter goes; what was left out of a part is no news once its reed has other words.</summary>
    /// <param name="letter">The letter as it stands.</param>
    /// <param name="material">What it is composed from.</param>
    public static IReadOnlyList<LetterGap> AllGaps(LetterDraft letter, LetterMaterial material) =>
    [
        .. LetterComposer.Gaps(material).Where(gap => !(gap.Kind is GapKind.SpokenOfTheStudent or GapKind.BluntAtTheBench or GapKind.ShorthandAtTheBench or GapKind.PraiseNotInTheLetter && letter.Blocks.Any(block => block.IsEdited && block.Reed is { } reed && reed == gap.Reed))),
        .. Gaps(letter, material),
        .. LetterAdvice.Gaps(letter, material),
    ];

    /// <summary>What the teacher is asked about: which of the two is so.</summary>
    /// <param name="letter">The letter as it stands.</param>
    /// <param name="material">What it is composed from.</param>
    public static IReadOnlyList<LetterGap> Gaps(LetterDraft letter, LetterMaterial material)
    {
        ArgumentNullException.ThrowIfNull(letter);
        ArgumentNullException.ThrowIfNull(material);
        return
        [
            .. material.Batch.Reeds.Select(reed => Gap(reed, letter, material.LogOf(reed.Id))).OfType<LetterGap>(),
            .. material.Batch.Reeds.Where(reed => !letter.Blocks.Any(block => block is { IsEdited: true, Kind: BlockKind.ReedStory or BlockKind.ReedNow } && block.Reed == reed.Id))
                .Select(reed => LetterUnanswered.Gap(material, reed, material.LogOf(reed.Id))).OfType<LetterGap>(),
        ];
    }

    private static LetterGap? Gap(Reed reed, LetterDraft letter, BenchLog log)
    {
        List<string> said =
        [
            .. letter.Blocks.Where(block => block.IsEdited && block.Reed == reed.Id).SelectMany(block => block.Paragraphs)
                .SelectMany(paragraph => Sentence().Split(paragraph.Text)).Where(sentence => !sentence.Contains('“', StringComparison.Ordinal)),
        ];
        var work = log.Work.ToList();
        return work.Exists(done => SafeChanges.TakesCane(done.Now.AdjustmentKind) == true) && said.Find(sentence => NoCane().IsMatch(sentence)) is { } none
            ? Ask(reed, none, "its log holds work that takes cane")
            : work.Count == 0 && said.Find(LetterUntold.TellsOfWork) is { } some
            ? Ask(reed, some, "its log holds no work")
            : null;
    }

    private static LetterGap Ask(Reed reed, string words, string log) => new(
        "edited-" + Prose.Number(reed.Number),
        GapKind.WordsAgainstTheLog,
        $"In your own words the letter says of reed {Prose.Number(reed.Number)}: {Prose.Quote(words)} But {log}. Change the words, or the log, or say why both are so.")
    {
        Reed = reed.Id,
    };

    // Nothing taken from the whole reed; of one part of it alone that may well be so.
    [GeneratedRegex(@"(?i)\b(no cane (was|has been|is|had been) (taken|removed|scraped|cut)|(took|taken|removed|scraped) no cane|(took|taken|removed|scraped|cut) nothing|nothing (was|has been|had been) (taken|removed|scraped|cut)|left (the|its) cane (alone|as it (was|came))|(did not|didn[’']t|have not|haven[’']t) (scrape|scraped|cut|thin|thinned) (it|this (reed|one)))\b(?!.*\b(from|off|on|at|in|of) (the|its) (?!reed\b))(?!.* (further|more|again|else)\b)")]
    private static partial Regex NoCane();

    [GeneratedRegex(@"(?<=[.!?…])\s+|\n")]
    private static partial Regex Sentence();
}
