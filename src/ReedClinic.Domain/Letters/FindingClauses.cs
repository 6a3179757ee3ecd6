using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Letters;

/// <summary>What a finding says of its reed, to stand inside a sentence: “the corners of the tip are thick”.</summary>
internal static class FindingClauses
{
    private static readonly Dictionary<string, string> Clauses = new()
    {
        ["tip-thick"] = "the tip is thick",
        ["tip-thin"] = "the tip is too thin",
        ["tip-even-across"] = "the tip is as thin in the middle as at its sides",
        ["tip-centre-thin"] = "the middle of the tip is too thin",
        ["tip-corners-thick"] = "the corners of the tip are thick",
        ["tip-corner-broken"] = "a corner of the tip is chipped or missing",
        ["tip-short"] = "the tip is short",
        ["tip-long"] = "the tip is long",
        ["tip-not-separate"] = "the tip doesn't stand out from the heart",
        ["step-abrupt"] = "the step from heart to tip is steep",
        ["tip-line-slanted"] = "the end of the tip is not square",
        ["tip-edge-ragged"] = "the very edge of the tip is ragged",
        ["tip-cracked"] = "there is a crack in the tip",
        ["tip-wavy"] = "the tip is wavy when it is wet",
        ["tip-blunter-than-liked"] = "the tip is blunter than I like",
        ["heart-thick"] = "the heart is thick",
        ["heart-thin"] = "the heart is too thin",
        ["heart-lopsided"] = "one side of the heart is thicker than the other",
        ["heart-sides-thick"] = "the sides of the heart are thick",
        ["heart-length"] = "the heart begins or ends in an unusual place",
        ["back-thick"] = "the back is thick",
        ["back-thin"] = "the back is thin",
        ["windows-uneven"] = "the windows are not alike",
        ["spine-scraped"] = "the spine has been scraped away",
        ["rails-cut"] = "the rails have been cut into",
        ["bark-island"] = "a patch of bark is left in the scrape",
        ["bumps"] = "there are small bumps in the scrape",
        ["body-cracked"] = "there is a crack behind the tip",
        ["left-right-uneven"] = "left and right are not alike",
        ["blades-uneven"] = "one blade is stronger than the other",
        ["slipped-too-far"] = "the blades have slipped too far",
        ["slipped-against-winding"] = "the blades lean against the winding",
        ["no-slip"] = "the blades don't overlap at the sides",
        ["side-leak"] = "air escapes at the sides",
        ["opening-wide"] = "the opening is wide",
        ["opening-narrow"] = "the opening is narrow",
        ["opening-lopsided"] = "the opening is higher on one side",
        ["centre-closes-first"] = "the middle closes before the sides",
        ["closes-in-play"] = "the opening shrinks while it is played",
        ["more-open-than-liked"] = "it is more open than I like",
        ["brighter-than-liked"] = "it is brighter than I like",
        ["crooked-on-staple"] = "the blades are a little crooked on the staple",
        ["thread-too-high"] = "the thread goes too far up",
        ["thread-leak"] = "air escapes at the thread",
        ["cork-loose"] = "the cork is loose or worn",
        ["dirty-inside"] = "there is something caught inside",
        ["worn"] = "the cane is worn out",
        ["opening-even"] = "the opening is even",
        ["spine-intact"] = "the spine is whole",
        ["rails-intact"] = "the rails are whole",
        ["tip-well-separated"] = "the tip stands out clearly",
        ["tip-falls-to-sides"] = "the tip falls away from the middle to its sides",
        ["blend-smooth"] = "the slope from heart to tip is smooth",
        ["heart-well-kept"] = "the heart is well kept",
        ["quadrants-matched"] = "both blades and both sides are alike",
        ["seals-well"] = "it seals well",
        ["tied-straight"] = "it is tied straight",
    };

    /// <summary>The clause of a kind; null for what has none.</summary>
    /// <param name="kind">The kind.</param>
    internal static string? Of(FindingKindId kind) => kind.Value is { } id ? Clauses.GetValueOrDefault(id) : null;
}
