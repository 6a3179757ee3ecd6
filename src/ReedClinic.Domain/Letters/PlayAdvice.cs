using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>
/// How a reed is to be played: a letter says it in one way. Where the teacher said it in words of their own, those are the advice, and the
/// letter adds none to it.
/// </summary>
/// <remarks>The words are common ones, from memory.</remarks>
internal static partial class PlayAdvice
{
    /// <summary>Whether a reed’s own part says how it is to be played: then nothing is said of it that is said of all.</summary>
    /// <param name="material">What the letter is made of.</param>
    /// <param name="reed">The reed.</param>
    internal static bool HasItsOwn(LetterMaterial material, Reed reed) => IsTheTeachers(material, reed) || SaidOfHarm.Of(material, reed).Count > 0 || PutAside.IsOpen(material.LogOf(reed.Id))
        || (material.LogOf(reed.Id) is { Verdict: { } verdict } log
            && (UseWordings.Says(verdict.Now.VerdictKind, reed) || (reed.UsedFor == ReedUse.Concert && LetterTried.IsGood(log, material.Batch.CrowTarget))));

    /// <summary>Whether a reed’s own part says how long or how gently it is played: what a reed is for says nothing of its first days.</summary>
    /// <param name="material">What the letter is made of.</param>
    /// <param name="reed">The reed.</param>
    internal static bool SaysThePace(LetterMaterial material, Reed reed) => SaidOfHarm.Of(material, reed).Count > 0 || PutAside.IsOpen(material.LogOf(reed.Id))
        || (IsTheTeachers(material, reed) ? !LeavesTheFirstDays(material, reed)
            : material.LogOf(reed.Id).Verdict is { Now.VerdictKind: not VerdictKind.AsGoodAsThisCaneGets } verdict && UseWordings.ByVerdict.ContainsKey(verdict.Now.VerdictKind));

    /// <summary>Whether the teacher said it, of this reed or of all.</summary>
    /// <param name="material">What the letter is made of.</param>
    /// <param name="reed">The reed.</param>
    internal static bool IsTheTeachers(LetterMaterial material, Reed reed) =>
        Typed(material, reed).Any(words => Tells(words)) || material.Batch.Questions.Any(question => IsAnsweredOf(question, reed));

    /// <summary>Whether the teacher said what a reed is for and not how soon or how long it is played: then its first days are as gentle as any other’s.</summary>
    /// <param name="material">What the letter is made of.</param>
    /// <param name="reed">The reed.</param>
    internal static bool LeavesTheFirstDays(LetterMaterial material, Reed reed) => IsTheTeachers(material, reed)
        && !Typed(material, reed).Any(words => Tells(words) && Pace().IsMatch(BeforeUse().Replace(words, "")))
        && !material.Batch.Questions.Any(question => IsAnsweredOf(question, reed) && Pace().IsMatch(question.Answer!));

    /// <summary>Whether the teacher wants it rested before it is needed: its gentle first days come before that.</summary>
    /// <param name="material">What the letter is made of.</param>
    /// <param name="reed">The reed.</param>
    internal static bool RestsBeforeUse(LetterMaterial material, Reed reed) => LeavesTheFirstDays(material, reed) && Typed(material, reed).Any(words => Tells(words) && BeforeUse().IsMatch(words));

    /// <summary>Whether the teacher said which reed comes first.</summary>
    /// <param name="material">What the letter is made of.</param>
    internal static bool SaysWhichFirst(LetterMaterial material) =>
        material.Batch.Questions.Any(question => question.Answer is not null && WhichFirst().IsMatch(question.Text))
        || material.Batch.Reeds.Any(reed => Typed(material, reed).Any(words => Tells(words) && First().IsMatch(words)));

    /// <summary>Whether the teacher said how long a reed is to be soaked.</summary>
    /// <param name="material">What the letter is made of.</param>
    /// <param name="reed">The reed.</param>
    internal static bool SaysHowToSoak(LetterMaterial material, Reed reed) =>
        Typed(material, reed).Any(words => Soaks().IsMatch(words) && Time().IsMatch(words))
        || material.Batch.Questions.Any(question => IsOf(question, reed) && question.Answer is { } answer && Soaks().IsMatch(question.Text + " " + answer) && Time().IsMatch(answer));

    /// <summary>Whether words say how a reed is to be played, kept or rested.</summary>
    /// <param name="words">What was typed.</param>
    internal static bool Tells(string words) => Told().IsMatch(words);

    // Of all reeds only what says when or how long; of this one whatever is asked and answered about its use.
    private static bool IsAnsweredOf(Question question, Reed reed) => IsOf(question, reed) && question.Answer is { } answer && (question.Text + " " + answer) is var both
        && ((Plays().IsMatch(both) && Time().IsMatch(answer) && !KnifeAnswer.IsAbout(question)) || (question.Reed is not null && (Tells(answer) || (Purpose().IsMatch(question.Text) && !WhichFirst().IsMatch(question.Text)))));

    private static bool IsOf(Question question, Reed reed) => question.Reed is null || question.Reed == reed.Id;

    private static IEnumerable<string> Typed(LetterMaterial material, Reed reed)
    {
        var log = material.LogOf(reed.Id);
        IEnumerable<string?> typed =
        [
            log.Verdict?.Now.Words,
            log.IsParked ? PutAside.Why(log) : null,
            .. log.Live<Stopped>().Select(stop => stop.Now.Words),
            .. log.LeftAlone.Select(left => left.Now.Words),
            .. log.Findings.SelectMany(found => new[] { OwnId.Remark(found.Finding.FindingKind.Value, found.Finding.Words), found.Ended?.Now.Words }),
            .. log.Live<Adjustment>().Select(work => OwnId.Remark(work.Now.AdjustmentKind.Value, Agreement.Without(work.Now.Words))),
            .. log.Risks.SelectMany(risk => new[] { risk.Fact.Now.Words, risk.Closed?.Now.Words }),
            material.ReasonFor(LetterWish.KeyOf(reed)),
        ];
        return typed.OfType<string>();
    }

    [GeneratedRegex(
        @"(?i)(?:(?:^|[.!?;:,–(-]\s*|\b(?:please|do|don['’]t|not|never|only|just|then|and|but|or|first|can|may|should|must|might|could|always|better|now|(?<!\b(?:joy|pleasure|easy|easier|hard|harder|nice|nicer|fun|how|what|enough|needs?) )to)\s+)(?:play|practi[sc]e)\b"
        + @"|(?<!\b(?:I|we) (?:\w+ )?)\b(?:use|keep|save|spare|rest|break|warm) (?:it|this one|this reed|this|them|these|that one)\b(?! (?:as|alone|off|away|from|dry|together|so|that way|like)\b)"
        + @"|(?<!\bI (?:\w+ )?)\b(?:give|let|leave) (?:it|this one|this reed|them|these)\b[^.!?]*\b(?:rest|days?|weeks?|play(?:ed|ing)?|nights?|month)\b"
        + @"|\b(?:needs?|wants?|likes?|takes?) [^.!?]{0,25}\b(?:playing|rest(?:ing)?|days?|weeks?|breaking in)\b|\b(?:played|broken) in\b|\bnot (?:yet )?(?:to be|be) played\b"
        + @"|\b(?:good|best|better|fine|right|suited) (?:for|in) (?!(?:it|its|you|me|us|now|this|that)\b)"
        + @"|\b(?:for|in|at|before|until|till|after) (?:the |a |an |your |every |daily |any |everyday )?(?:next )?(?:concerts?|practice|lessons?|rehearsals?|auditions?|exams?|performances?|recitals?|orchestra|band|everyday playing|every day)\b)")]
    private static partial Regex Told();

    [GeneratedRegex(@"(?i)\b(?:concerts?|practice|lessons?|rehearsals?|auditions?|exams?|performances?|recitals?|orchestra|band|play(?:ed|ing)? (?:it |this (?:one )?)?(?:in\b|every|at|already|now|first|for)|break(?:ing)? (?:it )?in)\b")]
    private static partial Regex Purpose();

    [GeneratedRegex(@"(?i)\b(?:play\w*|practi[sc]\w*|rest\w*|wait\w*|break(?:ing)? (?:\w+ )?in|use)\b")]
    private static partial Regex Plays();

    [GeneratedRegex(@"(?i)\b(?:seconds?|minutes?|hours?|days?|nights?|weeks?|months?|daily|fortnight|mornings?|evenings?|overnight)\b")]
    private static partial Regex Time();

    [GeneratedRegex(@"(?i)\b(?:seconds?|minutes?|hours?|days?|nights?|weeks?|months?|daily|fortnight|mornings?|evenings?|overnight|at once|(?:straight|right) away|already|as (?:long|much|often) as|a (?:little|bit|while)|short(?:ly)?|long(?! notes?\b| tones?\b)|gently|softly|quiet(?:ly)?|easy|easily|rest(?:ed|ing)?|wait|(?:play(?:ed|ing)?|break(?:ing)?|broken) (?:it |this (?:one )?)?in|not|never|don['’]t|any more|no longer|until|till)\b")]
    private static partial Regex Pace();

    // “Let it rest a day before the concert” says nothing of its first days; “give it twenty minutes a day before the concert” does.
    [GeneratedRegex(@"(?i)\b(?:let|give|leave|rest|keep|save|spare|don['’]t|do not)\b(?![^.!?;]*\b(?:minutes?|hours?|(?:each|every|per) day|(?:once|twice|times|little|bit|more) a day|daily|(?:longer|more|less) than|at most)\b)[^.!?;]*\b(?:before|for) (?:the |a |an |your |any |each |every )?(?:next )?(?:concerts?|lessons?|rehearsals?|auditions?|exams?|performances?|recitals?)\b")]
    private static partial Regex BeforeUse();

    [GeneratedRegex(@"(?i)\b(?:soak\w*|dip(?:ped|ping)?|wet(?:ted|ting)?|in (?:the )?water)\b")]
    private static partial Regex Soaks();

    [GeneratedRegex(@"(?i)\bwhich\b.*\bfirst\b")]
    private static partial Regex WhichFirst();

    [GeneratedRegex(@"(?i)\bfirst\b")]
    private static partial Regex First();
}
