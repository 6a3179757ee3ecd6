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
        : Said(finding.FindingKind.Value, words) ?? (IsChipped(finding) ? ("", "") : null);

    // A degree counts beside the quality that was found only: not the one in “too thick so far”, “far from ready” or “a lot of bark left”.
    private static (string Plain, string More)? Said(string kind, string words) =>
        Qualities.TryGetValue(kind, out var qualities) && Degree().Matches(words).FirstOrDefault(match => qualities.Contains(match.Groups["what"].Value.ToLowerInvariant())) is { } said
            ? said.Groups["little"].Success ? ("a little ", "a little ") : said.Groups["very"].Success ? ("very ", "much ") : ("rather ", "rather ")
            : null;

    // A chip is less than what is broken off.
    private static bool IsChipped(Finding finding) => finding.FindingKind.Value == "tip-corner-broken" && Chip().IsMatch(finding.Words!);

    private static readonly string[] Thick = ["thick", "thicker", "heavy", "heavier", "full", "fuller", "strong", "stronger", "stout", "stiff", "stiffer", "much"];

    private static readonly string[] Thin = ["thin", "thinner", "weak", "weaker", "light", "lighter", "hollow", "soft", "softer"];

    private static readonly string[] Uneven = ["uneven", "unequal", "lopsided", "higher", "lower", "skewed", "askew", .. Thick, .. Thin];

    private static readonly Dictionary<string, string[]> Qualities = new(StringComparer.Ordinal)
    {
        ["tip-thick"] = Thick,
        ["tip-corners-thick"] = Thick,
        ["heart-thick"] = Thick,
        ["heart-sides-thick"] = Thick,
        ["back-thick"] = Thick,
        ["tip-thin"] = Thin,
        ["tip-centre-thin"] = Thin,
        ["heart-thin"] = Thin,
        ["back-thin"] = Thin,
        ["left-right-uneven"] = Uneven,
        ["blades-uneven"] = Uneven,
        ["opening-lopsided"] = Uneven,
        ["tip-short"] = ["short", "shorter"],
        ["tip-long"] = ["long", "longer"],
        ["step-abrupt"] = ["abrupt", "steep", "steeper", "sharp", "sudden", "hard"],
        ["tip-line-slanted"] = ["slanted", "slanting", "crooked", "oblique", "askew"],
        ["tip-edge-ragged"] = ["ragged", "frayed", "rough", "torn"],
        ["tip-corner-broken"] = ["chipped", "chip", "nicked", "nick", "broken", "damaged"],
        ["opening-wide"] = ["wide", "wider", "large", "larger", "big", "bigger", "open", "high", "higher"],
        ["opening-narrow"] = ["narrow", "narrower", "small", "smaller", "closed", "flat", "low", "lower"],
        ["more-open-than-liked"] = ["open", "wide", "wider"],
        ["brighter-than-liked"] = ["bright", "brighter"],
        ["crooked-on-staple"] = ["crooked", "askew", "slanted", "twisted"],
        ["cork-loose"] = ["loose", "worn"],
    };

    // Straight before the quality, or straight behind it where nothing follows: “a bit too thick”, “on the thick side”, “chipped a bit, upper”.
    [GeneratedRegex(@"(?i)\b(?:(?<little>(?<!\bquite )(?:a )?(?:(?:tiny|little|wee) )?(?:bit|touch|tad|shade|hair|fraction)|a little|slightly|somewhat|marginally|tiny|barely)|(?<very>quite a (?:bit|lot)|a (?:good|fair) (?:bit|deal)|a lot|very|much|(?<!\b(?:so|as) )far|really|badly|extremely|terribly|hugely|way)|(?<rather>rather|quite|fairly|pretty))(?= (?:too |on the )?(?<what>\p{L}+))"
        + @"|(?<=\bon the )(?<what>\p{L}+)(?<rather>)(?= side\b)"
        + @"|(?<=\b(?<what>\p{L}+) )(?:(?<little>a (?:(?:tiny|little|wee) )?(?:bit|touch|tad|shade)|a little|slightly|somewhat)|(?<very>quite a (?:bit|lot)|a lot|very much|badly|terribly))(?=\s*(?:$|[,.;:!)]))")]
    private static partial Regex Degree();

    [GeneratedRegex(@"(?i)\b(?:chip(?:ped|s)?|nick(?:ed|s)?)\b")]
    private static partial Regex Chip();

    [GeneratedRegex(@"(?i)\b(?:not|no|never|isn['’]t|aren['’]t)\b|\bmore than (?:a|one)\b")]
    private static partial Regex Denied();
}
