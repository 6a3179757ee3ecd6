using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>Finds remarks at the bench that plainly praise the reed: a letter tells no remarks, and its teacher may want to tell these.</summary>
/// <remarks>The words are common English, from memory. What is in doubt is no praise.</remarks>
internal static partial class NotePraised
{
    /// <summary>The gap that tells the teacher of them; null where there are none.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static LetterGap? Gap(Reed reed, BenchLog log)
    {
        List<string> said = [.. log.Live<Note>().OrderBy(note => note.Sequence).SelectMany(note => In(note.Now.Words)).Select(Prose.Whole).Distinct(StringComparer.OrdinalIgnoreCase)];
        return said.Count == 0 || reed.Presence == Presence.Missing ? null : new(
            "praised-" + Prose.Number(reed.Number),
            GapKind.PraiseNotInTheLetter,
            $"Good of reed {Prose.Number(reed.Number)}, said at the bench and not in the letter: {string.Join(' ', said.Select(Prose.Quote))}")
        {
            Reed = reed.Id,
            Part = LetterComposer.Key(reed, "story"),
            IsToldOnly = true,
        };
    }

    /// <summary>The sentences that praise it.</summary>
    /// <param name="words">What was said.</param>
    internal static IEnumerable<string> In(string? words) => SpokenOf.Sentences(words).Where(sentence =>
        !Open().IsMatch(sentence) && !BenchTalk.In(sentence).Any() && Parts().Split(sentence).Any(part => Praise().IsMatch(part) && !Doubt().IsMatch(part)));

    private const string Good = "(?:good|nice|lovely|beautiful|gorgeous|great|excellent|wonderful|splendid|sweet)";

    private const string Thing = "(?:reed|one|sound|tone|crow|peep|tip|heart|back|spine|cane|scrape|tying|thread|balance|response|opening|colour|ring|low notes|high notes|notes)";

    private const string Is = "(?:is|are|was|were|looks?|sounds?|feels?|plays?|speaks?|[’']s)";

    [GeneratedRegex(@"[,;:–]+(?:\s+|$)|\s+(?:but|though|although)\s+")]
    private static partial Regex Parts();

    [GeneratedRegex(@"(?i)\b" + Good + @" (?:(?:\w+ ){0,2})" + Thing + @"\b|\b" + Thing + @" ?" + Is + @" (?:\w+ ){0,2}(?:" + Good + @"|fine|warm|well|beautifully)\b|\b(?:sings|singing|rings beautifully)\b"
        + @"|\bI (?:really |do |rather |just )?(?:like|love|enjoy) (?:this|it|the|how|its)\b|\b(?:well|beautifully|cleanly|neatly) (?:made|tied|scraped|finished|done)\b|^\W*" + Good + @"(?: this| here)?\W*$")]
    private static partial Regex Praise();

    [GeneratedRegex(@"(?i)\b(?:not|no|never|nothing|nowhere|none|hardly|barely|almost|nearly|isn[’']t|wasn[’']t|aren[’']t|doesn[’']t|don[’']t|didn[’']t|won[’']t|can[’']t|would|could|should|might|may|want|wants|need|needs|hope|too|used to|less|lost|once|another|other|next|make|makes|get|becomes?|before|until|" + Good + @" (?:idea|while|bit|deal|day|night|morning|hour|enough))\b")]
    private static partial Regex Doubt();

    // What is asked, or holds only if something else does.
    [GeneratedRegex(@"(?i)\?|\b(?:if|unless|would be|could be|wish)\b")]
    private static partial Regex Open();
}
