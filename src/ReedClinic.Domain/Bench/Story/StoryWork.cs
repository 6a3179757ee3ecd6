using System.Globalization;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Story;

/// <summary>The work of a step in a few words: “clip 0.2 mm”, “corners ×2”.</summary>
internal static class StoryWork
{
    private const int LongestOwn = 32;

    private static readonly Dictionary<string, string> Short = new(StringComparer.Ordinal)
    {
        ["thin-corners"] = "corners",
        ["thin-tip-sides"] = "tip sides",
        ["thin-whole-tip"] = "whole tip",
        ["thin-tip-centre"] = "tip centre",
        ["thin-edge"] = "very edge",
        ["smooth-edge"] = "edge evened",
        ["lengthen-tip"] = "longer tip",
        ["blend"] = "blend",
        ["define-tip"] = "tip set off",
        ["take-heart-sides"] = "heart sides",
        ["dust-heart"] = "heart dusted",
        ["free-heart-bottom"] = "bottom of the heart",
        ["open-windows"] = "windows",
        ["extend-windows"] = "longer windows",
        ["scrape-lay-base"] = "base of the lay",
        ["thin-spine"] = "spine",
        ["thin-rails"] = "rails",
        ["narrow-edges"] = "side edges",
        ["even-up"] = "evened up",
        ["smooth-bumps"] = "bumps",
        ["square-tip"] = "tip squared",
        ["offset-tip"] = "blade ends",
        ["soak"] = "soaked",
        ["rest-dry"] = "rested",
        ["wait"] = "waited",
        ["clean-inside"] = "cleaned",
        ["open-squeeze"] = "opened",
        ["close-press"] = "closed",
        ["realign"] = "overlap set",
    };

    /// <summary>What was done, each kind once, in the order in which it was first done.</summary>
    internal static IReadOnlyList<string> Say(IReadOnlyList<Adjustment> work) =>
        [.. work.GroupBy(Name).Select(group => Words(group.Key, [.. group]))];

    /// <summary>The same as the beginning of a sentence.</summary>
    internal static string Lead(IReadOnlyList<Adjustment> work)
    {
        var words = Say(work);
        if (words.Count == 0)
        {
            return "Tried again";
        }

        if (words.Count == 1 && work.All(IsPlainClip) && Clipped(work) is { } clipped)
        {
            return string.Create(CultureInfo.InvariantCulture, $"A clip of {clipped:0.###} mm");
        }

        var all = words.Count == 1 ? words[0] : string.Join(", ", words.SkipLast(1)) + " and " + words[^1];
        return char.ToUpperInvariant(all[0]) + all[1..];
    }

    private static string Words(string name, IReadOnlyList<Adjustment> work)
    {
        if (work.All(IsPlainClip) && Clipped(work) is { } clipped)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{name} {clipped:0.###} mm");
        }

        var times = Times(work);
        return times == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name} ×{times}");
    }

    private static string Name(Adjustment work) => work.AdjustmentKind.Value switch
    {
        "clip-hair" when work.AmountMicrometres is null => "clip a hair",
        "clip" or "clip-hair" => "clip",
        _ when work.AdjustmentKind.IsInWords => Own(work.Words ?? ""),
        { } kind => Short.GetValueOrDefault(kind) ?? AdjustmentCatalogue.NameOf(work.AdjustmentKind),
    };

    private static string Own(string words)
    {
        var line = words.ReplaceLineEndings(" ").TrimEnd('.', ' ');
        return line.Length <= LongestOwn ? line : line[..line.LastIndexOf(' ', LongestOwn).And(LongestOwn)].TrimEnd() + "…";
    }

    private static int And(this int space, int otherwise) => space > 0 ? space : otherwise;

    private static bool IsPlainClip(Adjustment work) => WorkKinds.IsClip(work.AdjustmentKind) && work.AdjustmentKind.Value != "square-tip";

    // One blade and then the other is one clip; null when one of them has no size.
    private static decimal? Clipped(IReadOnlyList<Adjustment> work) => work.All(clip => clip.AmountMicrometres is not null)
        ? new[] { Blades.Upper, Blades.Lower }.Max(blade => work
            .Where(clip => clip.Blades == Blades.Both || clip.Blades == blade).Sum(clip => clip.AmountMicrometres!.Value)) / 1000m
        : null;

    // How often the same quarter of the reed was worked: both blades and both sides once are once.
    private static int Times(IReadOnlyList<Adjustment> work) => (
        from blade in new[] { Blades.Upper, Blades.Lower }
        from side in new[] { Sides.Left, Sides.Right }
        select work.Count(done => (done.Blades == Blades.Both || done.Blades == blade) && (done.Sides == Sides.Both || done.Sides == side)))
        .Max();
}
