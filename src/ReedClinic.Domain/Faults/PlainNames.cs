namespace ReedClinic.Domain.Faults;

/// <summary>What findings are called beside a drawing, in lists and over time, for a student: the words that letters have for them.</summary>
/// <remarks>In our own words.</remarks>
public static class PlainNames
{
    private static readonly Dictionary<string, string> Others = new(StringComparer.Ordinal)
    {
        ["spine-intact"] = "spine whole",
        ["rails-intact"] = "rails whole",
        ["tip-falls-to-sides"] = "sides of the tip thinner than its middle",
        ["tip-well-separated"] = "tip clearly set off from the heart",
        ["quadrants-matched"] = "both blades and both sides alike",
        ["seals-well"] = "no air lost at the sides",
        ["opening-even"] = "opening the same on both sides",
        ["tip-corners-thick"] = "corners of the tip too thick",
        ["tip-centre-thin"] = "middle of the tip too thin",
        ["tip-even-across"] = "tip as thin in the middle as at the sides",
        ["tip-line-slanted"] = "line between heart and tip slanted",
        ["heart-lopsided"] = "heart thicker on one side",
        ["opening-lopsided"] = "opening higher on one side",
        ["centre-closes-first"] = "middle closes before the sides",
        ["no-slip"] = "blades don’t overlap at the sides",
        ["slipped-against-winding"] = "blades lean against the thread",
        ["side-leak"] = "air gets out at the sides",
        ["thread-leak"] = "air gets out at the thread",
    };

    /// <summary>The name of a kind; null for an unknown id and for “something else”.</summary>
    /// <param name="id">A lasting name.</param>
    public static string? Find(FindingKindId id) => id.Value is { } kind && Others.TryGetValue(kind, out var plain) ? plain : FindingCatalogue.Find(id)?.Name;

    /// <summary>The name of a kind; “something else” for what has none.</summary>
    /// <param name="id">A lasting name.</param>
    public static string Of(FindingKindId id) => Find(id) ?? FindingCatalogue.NameOf(id);
}
