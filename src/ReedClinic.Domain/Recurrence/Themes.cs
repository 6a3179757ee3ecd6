using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using static ReedClinic.Domain.Bench.FindingCharacter;

namespace ReedClinic.Domain.Recurrence;

/// <summary>All themes: the families, and each kind of finding by itself. How kinds are grouped is common practice, in our own words.</summary>
public static class Themes
{
    private static readonly Row[] Families =
    [
        new("tip-not-apart", Fault, "tip not set off from the heart", "The tip is hardly thinner than the heart", null,
            ["tip-not-separate", "tip-thick"]),
        new("tip-sides-not-thinner", Fault, "sides of the tip not thinner than its centre", "The sides of the tip are not thinner than its middle", "tip-not-apart",
            ["tip-corners-thick", "tip-even-across"]),
        new("tip-overdone", Fault, "too much taken off the tip", "Too much cane was taken off the tip", null, ["tip-thin", "tip-centre-thin"]),
        new("tip-line-off", Fault, "tip or heart of an unusual length", "The tip or the heart has an odd length", null,
            ["tip-short", "tip-long", "heart-length"]),
        new("tip-end", Fault, "end of the tip not clean and square", "The end of the reed is not clean and square", null,
            ["tip-corner-broken", "tip-line-slanted", "tip-edge-ragged", "tip-cracked", "tip-wavy"]),
        new("not-smooth", Fault, "scrape not smooth", "There are bumps or steps in the scrape", null, ["step-abrupt", "bumps", "bark-island"]),
        new("body-heavy", Fault, "heart and back too thick", "Too much cane is left behind the tip", null, ["heart-thick", "back-thick"]),
        new("heart-sides-heavy", Fault, "sides of the heart too thick", "The sides of the heart are as thick as its middle", "body-heavy",
            ["heart-sides-thick", "centre-closes-first"]),
        new("support-gone", Fault, "heart, back, spine or rails too thin", "The parts that hold the reed are scraped too thin", null,
            ["heart-thin", "back-thin", "spine-scraped", "rails-cut", "closes-in-play"]),
        new("uneven", Fault, "sides or blades not alike", "The two sides or blades are not alike", null,
            ["left-right-uneven", "blades-uneven", "heart-lopsided", "windows-uneven", "opening-lopsided"]),
        new("tying", Fault, "something in the tying", "Something in the tying is not quite right", null, ["crooked-on-staple", "thread-too-high"]),
        new("blades-meet", Fault, "blades not meeting as they should", "The blades don’t meet well at the sides", "tying",
            ["slipped-too-far", "slipped-against-winding", "no-slip"]),
        new("leaks", Fault, "air gets out", "Air gets out where it should not", "tying", ["side-leak", "thread-leak"]),
        new("keeping", Fault, "age and care", "The reed shows its age or needs care", null, ["worn", "dirty-inside", "cork-loose", "body-cracked"]),
        new("support-kept", Strength, "heart, spine and rails well kept", "The parts that hold the reed are well kept", null,
            ["spine-intact", "rails-intact", "heart-well-kept"]),
        new("tip-well-made", Strength, "tip well made", "The tip is well made", null, ["tip-well-separated", "tip-falls-to-sides", "blend-smooth"]),
        new("well-tied", Strength, "well tied", "The reed is well tied and keeps its air", null, ["tied-straight", "seals-well"]),
        new("well-balanced", Strength, "both sides alike", "Both sides and both blades are alike", null, ["quadrants-matched", "opening-even"]),
    ];

    /// <summary>The families first, the wider before the narrower, then each kind by itself.</summary>
    public static IReadOnlyList<Theme> All { get; } = [.. Families.Select(Family), .. FindingCatalogue.All.Where(kind => kind.Usually != Taste).Select(Single)];

    /// <summary>What a student does well, to be looked at first.</summary>
    public static IReadOnlyList<Theme> Strengths { get; } = [.. All.Where(theme => theme.Character == Strength)];

    /// <summary>What can be learned from.</summary>
    public static IReadOnlyList<Theme> Faults { get; } = [.. All.Where(theme => theme.Character == Fault)];

    private static readonly Dictionary<string, Theme> ById = All.ToDictionary(theme => theme.Id);

    /// <summary>A theme by its lasting name.</summary>
    /// <param name="id">The name.</param>
    /// <returns>The theme, or null.</returns>
    public static Theme? Find(string id) => ById.GetValueOrDefault(id);

    /// <summary>The studio’s own kinds of finding that stand on a student’s sheets, each by itself; what was retired is called so.</summary>
    /// <param name="own">What the studio added; null for nothing.</param>
    /// <param name="history">The student’s sheets.</param>
    public static IEnumerable<Theme> Own(OwnKinds? own, StudentHistory history)
    {
        ArgumentNullException.ThrowIfNull(history);
        return OwnKindsIn(history)
            .Select(kind => (Kind: kind, Known: own?.Find(kind))).Where(one => one.Known is not null)
            .Select(one => Single(one.Known! with { Name = own!.NameOf(one.Kind) }));
    }

    /// <summary>The studio’s own kinds of finding that stand on a student’s sheets, for counting alone: they are called by their lasting names.</summary>
    /// <param name="history">The student’s sheets.</param>
    public static IEnumerable<Theme> OwnIn(StudentHistory history)
    {
        ArgumentNullException.ThrowIfNull(history);
        return OwnKindsIn(history).Select(kind => new Theme(kind.Value, Fault, kind.Value, kind.Value, [kind], null));
    }

    private static IEnumerable<FindingKindId> OwnKindsIn(StudentHistory history) =>
        history.Batches.SelectMany(sheet => sheet.Kinds).Where(kind => OwnId.Is(kind.Value)).Distinct();

    private static Theme Family(Row row) => new(row.Id, row.Character, row.Name, row.Says, [.. KindsOf(row).Select(kind => new FindingKindId(kind))], row.Wider);

    private static IEnumerable<string> KindsOf(Row row) => row.Kinds.Concat(Families.Where(inner => inner.Wider == row.Id).SelectMany(KindsOf));

    private static Theme Single(FindingKind kind) => new(
        kind.Id.Value,
        kind.Usually,
        kind.Name,
        $"{char.ToUpperInvariant(kind.Name[0])}{kind.Name[1..]}",
        [kind.Id],
        Array.Find(Families, row => row.Kinds.Contains(kind.Id.Value))?.Id);

    private sealed record Row(string Id, FindingCharacter Character, string Name, string Says, string? Wider, string[] Kinds);
}
