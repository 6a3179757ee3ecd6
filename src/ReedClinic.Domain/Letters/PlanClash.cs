using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Letters;

/// <summary>Steps of a plan that would say the opposite of what the teacher tells the student in the same letter. Such a step is left out: the teacher’s words win.</summary>
internal static partial class PlanClash
{
    // Who is told of, and what is told by the way: “you leave …” tells what somebody does, and orders nothing.
    private const string Subject = @"\b(?:you|i|he|she|it|they|we|knife|hand|blade|strokes?)\b";

    // An order stands at the beginning of what is said, behind a colon, beside another one, or behind “you should” and the like.
    private const string Order = @"(?i)(?:^(?:(?:so|and|but|then|now|please|just|always|rather|better|instead|also|perhaps|maybe|first|next time|this time|for now|today)\b,?\s+)*"
        + @"|(?:^(?:if|when\w*|once|while|before|after|until|since|as|where|on|in|for|at|with|next)\b[^.;]*,|^(?:(?!" + Subject + @")[^.;])*(?:,|\b(?:and|but|so|then))|:)\s+(?:(?:please|rather|just|always|so|then|and|but)\s+)*"
        + @"|\b(?:(?:should|must|ought to|have to|need to|had better|try to|remember to|learn to|(?:you|best|better|wise|safer|time) to|would|can)|(?:i|you)[’']d(?: better)?|let(?:[’']s| us))\s+(?:(?:just|always|rather|simply|only|better|\w+ly)\s+)*)";

    // Where too much is left there, that is the fault and not the advice.
    private const string Spare = "(?:(?:leave|spare)\\b(?![^.;,:–]*\\btoo (?:thick|much|heavy|full|long|strong|many|high)\\b)|(?:stay|keep) (?:(?:your|the) knife )?(?:off|away from)|(?:don[’']t|do not|never) (?:touch|scrape|thin))\\b[^.;]*";

    private static readonly (Func<string, bool> Told, Regex Step)[] All =
    [
        (said => StopsTooSoon().IsMatch(said) && !ToldToStop().IsMatch(said), StopSteps()),
        (KeepTheLine().IsMatch, OverTheLine()),
        (SpareTheHeart().IsMatch, HeartStrokes()),
        (SpareTheCorners().IsMatch, CornerStrokes()),
        (DontCut().IsMatch, Cuts()),
        (NoKnife().IsMatch, KnifeSteps()),
    ];

    /// <summary>Whether a step says the opposite of what is told.</summary>
    /// <param name="told">What the teacher tells: the lesson and the likely habit.</param>
    /// <param name="step">A step of the plan.</param>
    public static bool IsBetween(string told, string step)
    {
        var sentences = Sentences().Split(told).Select(said => said.Trim(' ', '“', '”', '"')).ToList();
        return Array.Exists(All, clash => clash.Step.IsMatch(step) && sentences.Exists(said => clash.Told(said)));
    }

    [GeneratedRegex(@"(?<=[.!?;…])\s+|\n")]
    private static partial Regex Sentences();

    // Whoever is told that they stop too soon isn’t told to stop soon in the same letter.
    [GeneratedRegex(@"(?i)\b(stop\w*|give up|leave off)\b.*\b(early|soon|sooner|short|fear|afraid)\b|(?<!\bnot )\btoo (few strokes|cautious|careful|timid)\b")]
    private static partial Regex StopsTooSoon();

    // To stop, or to stop sooner, is the advice there; and who doesn’t stop soon enough is to be told when.
    [GeneratedRegex(Order + @"stop\b(?!.*\btoo\b)|\b(?:soon|early) enough\b|\b(?:you|hand|knife)\b[^,;]*\b(?:don[’']t|do not|doesn[’']t|does not|never|seldom|rarely|hardly)\s+(?:\w+\s+)?stop\b(?!.*\btoo\b)")]
    private static partial Regex ToldToStop();

    [GeneratedRegex("^Stop")]
    private static partial Regex StopSteps();

    [GeneratedRegex(@"(?i)\bline\b[^.;]*\b(shows?|stands?|stays?|visible|seen|see|kept|clear|crisp|sharp)\b|\b(keep|leave|see|show|guard|spare|save)\b[^.;]*\bline\b")]
    private static partial Regex KeepTheLine();

    [GeneratedRegex(@"(?i)\b(over|across) (the|that|this) line\b|\bjoin\b[^.;]*\b(tip and heart|heart and tip)\b")]
    private static partial Regex OverTheLine();

    [GeneratedRegex(Order + Spare + @"\bheart\b(?! of the matter)")]
    private static partial Regex SpareTheHeart();

    [GeneratedRegex(@"(?i)\bstrokes?\b[^.;]*\b(heart|of that mark|of the mark)\b")]
    private static partial Regex HeartStrokes();

    [GeneratedRegex(Order + Spare + @"\bcorners\b")]
    private static partial Regex SpareTheCorners();

    [GeneratedRegex(@"(?i)\bstrokes?\b[^.;]*\bcorners\b|\bwork\b[^.;]*\bcorners\b")]
    private static partial Regex CornerStrokes();

    [GeneratedRegex(Order + @"(?:(?:don[’']t|do not|never) (?:cut|clip|shorten)\w*|leave the (?:end|length)\b(?!.*\btoo long\b))|\bno (?:cut|clip|shorten)\w*\b")]
    private static partial Regex DontCut();

    [GeneratedRegex(@"(?i)\bcut\b[^.;]*\boff\b|\boff the end\b|\bshortening the end\b")]
    private static partial Regex Cuts();

    [GeneratedRegex(Order + @"(?:(?:put|lay) the knife (?:away|aside|down)|leave the knife|(?:don[’']t|do not) scrape|scrape nothing)\b|\b(?:no knife|without (?:a|the|your) knife|no scraping)\b")]
    private static partial Regex NoKnife();

    [GeneratedRegex(@"(?i)\b(scrape|scraping|strokes?|thin|cut|knife)\b")]
    private static partial Regex KnifeSteps();
}
