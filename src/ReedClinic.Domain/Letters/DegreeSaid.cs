using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters;

/// <summary>How much of a fault there is, as far as somebody said so: a letter says neither more nor less.</summary>
/// <remarks>The words are common English, from memory.</remarks>
internal static partial class DegreeSaid
{
    /// <summary>What stands before a plain word and before a comparison; null where no degree was said.</summary>
    /// <param name="finding">The finding.</param>
    public static (string Plain, string More)? Of(Finding finding) => finding.Words is not { } words || Denied().IsMatch(words) ? null
        : Little().IsMatch(words) ? ("a little ", "a little ")
        : Very().IsMatch(words) ? ("very ", "much ")
        : Rather().IsMatch(words) ? ("rather ", "rather ")
        : IsChipped(finding) ? ("", "") : null;

    // A chip is less than what is broken off.
    private static bool IsChipped(Finding finding) => finding.FindingKind.Value == "tip-corner-broken" && Chip().IsMatch(finding.Words!);

    [GeneratedRegex(@"(?i)\b(?:a (?:(?:tiny|little|wee) )?(?:bit|touch|tad|shade|hair|fraction)|a little|slight(?:ly)?|somewhat|marginally|tiny|barely|just)\b")]
    private static partial Regex Little();

    [GeneratedRegex(@"(?i)\b(?:very|much|far|really|badly|extremely|terribly|hugely|a lot|way) ?(?:too )?\b")]
    private static partial Regex Very();

    [GeneratedRegex(@"(?i)\b(?:rather|quite|fairly|pretty|on the \p{L}+ side)\b")]
    private static partial Regex Rather();

    [GeneratedRegex(@"(?i)\b(?:chip(?:ped|s)?|nick(?:ed|s)?)\b")]
    private static partial Regex Chip();

    [GeneratedRegex(@"(?i)\b(?:not|no|never|isn['’]t|aren['’]t)\b|\bmore than (?:a|one)\b")]
    private static partial Regex Denied();
}
