using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>What was typed with a finding that has a name of its own: the letter says one thing once, in the teacher’s words where they are a sentence about it.</summary>
internal static partial class RemarkSaid
{
    // What such words are made of beside the names of the finding and of its place. From memory.
    private static readonly HashSet<string> Plain = new(StringComparer.Ordinal)
    {
        "a", "all", "an", "and", "are", "at", "bit", "clearly", "feels", "find", "found", "here", "i", "in", "is", "it", "its", "like", "little", "look", "looks", "my", "of", "on", "one",
        "quite", "over", "rather", "really", "reed", "round", "see", "seems", "slightly", "so", "somewhat", "still", "than", "that", "the", "there", "they", "this", "to", "too", "touch", "very", "was", "were",
    };

    /// <summary>Whether the remark says the finding’s name and place once more and nothing else.</summary>
    /// <param name="finding">The finding.</param>
    public static bool IsOnlyTheName(Finding finding) => finding.Words is { } words && Words(words).All(word => IsSaid(word, finding));

    /// <summary>The remark where it is one clause about the very thing, such as “the upper blade is a bit wider”; null where it isn’t.</summary>
    /// <param name="finding">The finding.</param>
    public static string? Clause(Finding finding) => finding is { Character: FindingCharacter.Fault, Certainty: Certainty.Certain, Words: { } words }
        && FindingWording.Of(finding.FindingKind) is not null && !IsOnlyTheName(finding) && OneClause().Match(words) is { Success: true } clause
        && Words(clause.Groups["of"].Value).Any(word => !Plain.Contains(word) && Known(finding).Contains(Stem(word))) ? words : null;

    /// <summary>What is told of such words as a sentence of its own: nothing where they only name the finding, or stand in its own sentence.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="past">Whether it is told as what was.</param>
    /// <param name="turn">Makes neighbours choose other words.</param>
    /// <param name="phrasing">Chooses the words.</param>
    public static string? Sentence(Finding finding, bool past, int turn, Phrasing phrasing)
    {
        if (finding.Words is not { } words || IsOnlyTheName(finding) || Clause(finding) is not null)
        {
            return null;
        }

        if (finding.Blades == Blades.Both && Words(words).All(word => word is "both" or "blades" || IsSaid(word, finding)))
        {
            return phrasing.Say("both-blades", turn, FindingFrames.OnBothBlades);
        }

        // What only names the finding once more is left out where the rest can stand alone.
        List<string> all = [.. Parts().Split(words.Trim().TrimEnd('.', '!'))], more = [.. all.Where(part => !Words(part).All(word => IsSaid(word, finding)))];
        List<string?> told = [.. more.Select(part => OneSide().Match(part) is { Success: true } side ? Told(side) : more.Count < all.Count ? BenchSaid.Whole(part, past) : null)];
        return told.Count > 0 && !told.Contains(null) ? string.Join(' ', told) : BenchSaid.Sentence(words, turn, phrasing, past);
    }

    // “left one worse” is short for whoever stands at the bench; whoever reads it needs a verb.
    private static string Told(Match side) => string.Join(' ', new[]
    {
        "The", side.Groups["side"].Value.ToLowerInvariant(), side.Groups["of"].Success ? side.Groups["of"].Value.ToLowerInvariant() : "one", side.Groups["of"].Value.EndsWith('s') ? "are" : "is", side.Groups["how"].Value.ToLowerInvariant(),
    }) + ".";

    // A side or a blade is told with the place.
    private static bool IsSaid(string word, Finding finding) => Plain.Contains(word) || Known(finding).Contains(Stem(word)) || word switch
    {
        "side" or "sides" => finding.Sides is Sides.Left or Sides.Right,
        "blade" => finding.Blades is Blades.Upper or Blades.Lower,
        "left" => finding.Sides == Sides.Left,
        "right" => finding.Sides == Sides.Right,
        "upper" or "top" => finding.Blades == Blades.Upper,
        "lower" or "bottom" => finding.Blades == Blades.Lower,
        "wing" or "wings" => finding.Zone is Zone.TipCorners or Zone.TipSides,
        "chip" or "chipped" or "nick" or "nicked" or "gone" => finding.FindingKind.Value == "tip-corner-broken",
        _ => false,
    };

    private static HashSet<string> Known(Finding finding) =>
        [.. Words($"{FindingCatalogue.NameOf(finding.FindingKind)} {finding.Zone.Name()} {finding.Zone.NamePlainly()} {FindingWording.Of(finding.FindingKind)?.What}").Where(word => !Plain.Contains(word)).Select(Stem)];

    private static IEnumerable<string> Words(string text) => Word().Matches(text.ToLowerInvariant()).Select(match => match.Value);

    private static string Stem(string word) => More().Replace(Possessive().Replace(word, ""), "").TrimEnd('s');

    // “A bit thick” is told where “a little thicker” is.
    [GeneratedRegex("(?<=^(?:thick|thin|long|short|wid|narrow|strong|weak))(?:n?er|e)$")]
    private static partial Regex More();

    // Its subject, and what is said of it; nothing else in the sentence.
    [GeneratedRegex(@"(?i)^\s*(?<of>(?:the|its|this|both|one|left|right|upper|lower) [\p{L} ]{2,40}?) (?:is|are|was|were|has|have|had|looks?|feels?|seems?)\b[^.!?;:“”""()]{2,60}[.!]?\s*$")]
    private static partial Regex OneClause();

    [GeneratedRegex(@"\s*[,;:.–]+\s+(?:and |but )?")]
    private static partial Regex Parts();

    [GeneratedRegex(@"(?i)^(?:the )?(?<side>left|right|upper|lower|other)(?: (?<of>ones?|sides?|corners?|half|blade|window|rail))? (?<how>(?:(?:a )?(?:bit|little|touch) |much |slightly |far |rather |clearly )?(?:worse|thicker|thinner|heavier|lighter|longer|shorter|wider|narrower|higher|stronger|weaker)(?: than (?:the )?(?:left|right|upper|lower|other)(?: (?:one|side|corner|half|blade|window|rail))?)?)$")]
    private static partial Regex OneSide();

    [GeneratedRegex("['’]s$")]
    private static partial Regex Possessive();

    [GeneratedRegex(@"\p{L}[\p{L}’']*")]
    private static partial Regex Word();
}
