using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Letters;

/// <summary>Steps of a plan that would say the opposite of what the teacher tells the student in the same letter. Such a step is left out: the teacher’s words win.</summary>
internal static partial class PlanClash
{
    private static readonly (Regex Told, Regex Step)[] All =
    [
        (StopsTooSoon(), StopSteps()),
        (KeepTheLine(), OverTheLine()),
        (SpareTheHeart(), HeartStrokes()),
        (SpareTheCorners(), CornerStrokes()),
        (DontCut(), Cuts()),
        (NoKnife(), KnifeSteps()),
    ];

    /// <summary>Whether a step says the opposite of what is told.</summary>
    /// <param name="told">What the teacher tells: the lesson and the likely habit.</param>
    /// <param name="step">A step of the plan.</param>
    public static bool IsBetween(string told, string step) => Array.Exists(All, clash => clash.Told.IsMatch(told) && clash.Step.IsMatch(step));

    // Whoever is told that they stop too soon isn't told to stop soon in the same letter.
    [GeneratedRegex(@"(?i)\b(stop\w*|give up|leave off)\b.*\b(early|soon|sooner|short|fear|afraid)\b|\btoo (few strokes|cautious|careful|timid)\b")]
    private static partial Regex StopsTooSoon();

    [GeneratedRegex("^Stop")]
    private static partial Regex StopSteps();

    [GeneratedRegex(@"(?i)\bline\b[^.;]*\b(shows?|stands?|stays?|visible|seen|see|kept|clear|crisp|sharp)\b|\b(keep|leave|see|show|guard|spare|save)\b[^.;]*\bline\b")]
    private static partial Regex KeepTheLine();

    [GeneratedRegex(@"(?i)\b(over|across) (the|that|this) line\b|\bjoin\b[^.;]*\b(tip and heart|heart and tip)\b")]
    private static partial Regex OverTheLine();

    [GeneratedRegex(@"(?i)\b(leave|spare|stay (off|away from)|keep (off|away from|your knife off)|(don[’']t|do not|never) (touch|scrape|thin))\b[^.;]*\bheart\b(?! of the matter)")]
    private static partial Regex SpareTheHeart();

    [GeneratedRegex(@"(?i)\bstrokes?\b[^.;]*\b(heart|of that mark|of the mark)\b")]
    private static partial Regex HeartStrokes();

    [GeneratedRegex(@"(?i)\b(leave|spare|stay (off|away from)|keep (off|away from|your knife off)|(don[’']t|do not|never) (touch|scrape|thin))\b[^.;]*\bcorners\b")]
    private static partial Regex SpareTheCorners();

    [GeneratedRegex(@"(?i)\bstrokes?\b[^.;]*\bcorners\b|\bwork\b[^.;]*\bcorners\b")]
    private static partial Regex CornerStrokes();

    [GeneratedRegex(@"(?i)\b(don[’']t|do not|never|no) (cut|clip|shorten)\w*\b|\bleave the (end|length)\b")]
    private static partial Regex DontCut();

    [GeneratedRegex(@"(?i)\bcut\b[^.;]*\boff\b")]
    private static partial Regex Cuts();

    [GeneratedRegex(@"(?i)\b(no knife|without (a|the|your) knife|(put|lay) the knife (away|aside|down)|leave the knife|(don[’']t|do not) scrape|scrape nothing|no scraping)\b")]
    private static partial Regex NoKnife();

    [GeneratedRegex(@"(?i)\b(scrape|scraping|strokes?|thin|cut|knife)\b")]
    private static partial Regex KnifeSteps();
}
