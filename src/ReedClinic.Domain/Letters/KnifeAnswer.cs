using System.Text.RegularExpressions;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>Questions about a knife or an abrasive: beside each answer stands the caution, and an answer that gives leave is asked about before it goes.</summary>
/// <remarks>The words are common ones, from memory.</remarks>
internal static partial class KnifeAnswer
{
    /// <summary>Whether a question or its answer is about taking cane away.</summary>
    /// <param name="question">The question.</param>
    internal static bool IsAbout(Question question) => Scraping().IsMatch(question.Text + " " + question.Answer) || Cautions.In(question.Text).Contains(Caution.Knife);

    /// <summary>The notices of answers that give leave for what the caution right beside them asks to leave be.</summary>
    /// <param name="material">What the letter is composed from.</param>
    internal static IEnumerable<LetterGap> Gaps(LetterMaterial material) => material.Batch.Questions
        .Where(question => question.Answer is { } answer && IsAbout(question) && GivesLeave(answer) && !AnotherReed().IsMatch(question.Text + " " + answer))
        .Select(question => new LetterGap(
            "knife-" + Prose.Number(question.Number),
            GapKind.AnswerAgainstTheCaution,
            $"To {Prose.Quoted(question.Text)} you answer {Prose.Quote(question.Answer!)} Right after it the letter says: {Prose.Quote(Wordings.CautionWordings.NotYet[0])} The caution stays. Say in your answer what you mean: which reed, when, and with whom beside the knife.")
        {
            Question = question.Id,
            Reed = question.Reed,
            Part = AnswerBlocks.PartOf(material, question),
            IsToldOnly = true,
        });

    private static bool GivesLeave(string answer) => Leave().IsMatch(answer) && !Denied().IsMatch(answer);

    [GeneratedRegex(
        @"(?i)\b(scrap\w+|knife|knives|razor|clip(ped|ping|s)?|cut(ting|s)?|thin(ned|ning| (the|it|them|out))|shav(e|ed|ing)|strokes?|take (more|some|a little) off|cane off"
        + @"|sandpaper\w*|emery|nail file|sand(ed|ing)|sand (it|them|the|this|that|a|my|some|off|down)|fil(ed|ing)|file (it|them|the|this|that|a|my|some|off|down|away)|grind\w*|trim(med|ming)?|whittl\w*|scalpel|scissors)\b")]
    private static partial Regex Scraping();

    [GeneratedRegex(
        @"(?i)^\W*(?:yes|yeah|yep|sure|of course|certainly|by all means|go ahead|please do|do(?! not\b)|fine|ok|okay|absolutely|definitely|why not|gladly|a (?:light )?stroke|one stroke|two strokes|try|take|scrape|thin|cut|clip|sand|file|shave)\b"
        + @"|\byou (?:can|may|could|should|might)(?=\W*$|[.,;:!]|\s+(?:try|take|scrape|thin|cut|clip|sand|file|shave|trim|do|use|work|go|safely|gently|certainly|always|also|very|well|of)\b)|\b(?:is|are|be) (?:quite |perfectly |all )?(?:fine|right|ok|okay|safe|harmless)\b|\b(?:go ahead|feel free|won['’]t hurt|no harm|does no harm)\b")]
    private static partial Regex Leave();

    [GeneratedRegex(@"(?i)^\W*(?:no|not|never|don['’]t|do not|please (?:don|do not|leave)|better not|rather not|leave (?:it|them))\b")]
    private static partial Regex Denied();

    // Leave for another reed than those that come back.
    [GeneratedRegex(@"(?i)\b(?:next|new|old|spare|another|practice|other) (?:reed|reeds|one|ones|blank|blanks)\b|\b(?:on|with) (?:a|some) blanks?\b")]
    private static partial Regex AnotherReed();
}
