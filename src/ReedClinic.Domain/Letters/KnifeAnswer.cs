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

    // Clause by clause: “No, but you may …” gives leave, and “don't scrape, cut or sand it” gives none.
    private static bool GivesLeave(string answer) => SentenceEnd().Split(NoMatter().Replace(NoHarm().Replace(answer, "go ahead"), "")).Any(sentence =>
    {
        var (isFirst, denied) = (true, false);
        foreach (var clause in ClauseEnd().Split(sentence).Where(part => part.Trim().Length > 0))
        {
            if (Leave().Matches(clause).Any(leave => !Denied().IsMatch(clause[..leave.Index]) && (isFirst || leave.Index > 0 || !Weak().IsMatch(leave.Value)) && !(denied && Work().IsMatch(leave.Value))))
            {
                return true;
            }

            isFirst = false;
            denied |= !No().IsMatch(clause) && Denied().IsMatch(clause);
        }

        return false;
    });

    [GeneratedRegex(
        @"(?i)\b(scrap\w+|knife|knives|razor|clip(ped|ping|s)?|cut(ting|s)?|thin(ned|ning| (the|it|them|out))|shav(e|ed|ing)|strokes?|take (more|some|a little) off|cane off"
        + @"|sandpaper\w*|emery|nail file|sand(ed|ing)|sand (it|them|the|this|that|a|my|some|off|down)|fil(ed|ing)|file (it|them|the|this|that|a|my|some|off|down|away)|grind\w*|trim(med|ming)?|whittl\w*|scalpel|scissors)\b")]
    private static partial Regex Scraping();

    [GeneratedRegex(
        @"(?i)^\W*(?:yes|yeah|yep|sure|of course|certainly|by all means|go ahead|please do|do(?! not\b)|fine|ok|okay|absolutely|definitely|why not|gladly|a (?:light )?stroke|one stroke|two strokes|take (?:a|one|two|some|more)\b[^,;:–—]*\b(?:strokes?|little|bit|cane|off)|try|take|scrape|thin|cut|clip|sand|file|shave)\b"
        + @"|\byou (?:can|may|could|should|might)(?=\W*$|[.,;:!]|\s+(?:try|take|scrape|thin|cut|clip|sand|file|shave|trim|do|use|work|go|safely|gently|certainly|always|also|very|well|of)\b)|\b(?:is|are|be) (?:quite |perfectly |all )?(?:fine|right|ok|okay|safe|harmless)\b|\b(?:go ahead|feel free|won['’]t hurt|no harm|does no harm)\b")]
    private static partial Regex Leave();

    // What is no denial, whatever it begins with.
    [GeneratedRegex(@"(?i)\b(?:(?:no|not any|not a|not the least) (?:problem|harm|worr(?:y|ies)|objections?|danger|trouble|risk)|no reason (?:not|why not)|why (?:ever )?not)\b(?! (?:done|in (?:waiting|leaving|asking)))")]
    private static partial Regex NoHarm();

    [GeneratedRegex(@"(?i)\b(?:don[’']t worry|do not worry|not at all|never mind|don[’']t hesitate to|do not hesitate to)\b")]
    private static partial Regex NoMatter();

    [GeneratedRegex(@"(?i)\b(?:no|not|never|nobody|neither|nor|without|cannot|\w+n[’']t|leave (?:it|them))\b")]
    private static partial Regex Denied();

    [GeneratedRegex(@"(?i)^\W*(?:no|not|never)\W*$")]
    private static partial Regex No();

    // Behind the first clause of a sentence these tell something else: “No, try another week first”.
    [GeneratedRegex(@"(?i)^\W*(?:do|fine|try|take)$")]
    private static partial Regex Weak();

    [GeneratedRegex(@"(?i)^\W*(?:scrape|thin|cut|clip|sand|file|shave)$")]
    private static partial Regex Work();

    [GeneratedRegex(@"(?<=[.!?…;])\s+|\n")]
    private static partial Regex SentenceEnd();

    [GeneratedRegex(@"(?i)[,:–—]+|\bbut\b")]
    private static partial Regex ClauseEnd();

    // Leave for another reed than those that come back.
    [GeneratedRegex(@"(?i)\b(?:next|new|old|spare|another|practice|other) (?:reed|reeds|one|ones|blank|blanks)\b|\b(?:on|with) (?:a|some) blanks?\b")]
    private static partial Regex AnotherReed();
}
