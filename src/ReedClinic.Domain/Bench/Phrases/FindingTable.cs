namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Which finding a place and a word for how it is make together.</summary>
internal static class FindingTable
{
    // “*” is any place, and no place at all. A region stands for the reed's part when none is named.
    private const string Table = """
        tip-thick: tip TipSides TipEdge; thick stiff
        tip-thin: tip TipSides TipEdge TipCorners; thin soft
        tip-thick: tip TipSides TipEdge; undone
        heart-sides-thick: HeartSides; undone
        tip-corners-thick: TipCorners; undone
        back-thick: back Windows WindowBase HeartBottom lay; undone
        heart-well-kept: heart HeartCentre; undone
        spine-intact: Spine; undone
        rails-intact: Rails; undone
        tip-even-across: tip TipSides TipCentre TipEdge *; even_across
        tip-centre-thin: TipCentre; thin soft
        tip-corners-thick: TipCorners; thick stiff
        tip-corner-broken: TipCorners; broken cut away
        tip-cracked: TipCorners; cracked
        tip-short: tip TipSides TipEdge Rooftop; short low
        tip-long: tip TipSides TipEdge Rooftop; long
        tip-not-separate: tip Rooftop Transition heart *; merged
        step-abrupt: Transition Rooftop tip heart HeartCentre *; steep
        step-abrupt: Transition; thick high
        tip-line-slanted: tip TipEdge TipCorners TipSides *; slanted
        tip-line-slanted: tip TipEdge; lopsided crooked uneven high low
        tip-line-slanted: TipCorners; long high short low lopsided uneven
        tip-edge-ragged: tip TipEdge TipCorners TipSides *; ragged
        tip-edge-ragged: tip TipEdge; broken cut
        tip-cracked: tip TipEdge TipSides TipCentre *; cracked
        tip-wavy: tip TipEdge TipSides TipCorners *; wavy
        tip-blunter-than-liked: tip TipEdge TipSides *; blunt
        heart-thick: heart HeartCentre; thick stiff
        heart-thin: heart HeartCentre HeartSides HeartBottom; thin soft away deep
        heart-lopsided: heart HeartSides HeartCentre; lopsided uneven
        heart-sides-thick: HeartSides; thick stiff
        heart-length: heart HeartBottom HeartCentre HeartSides; long short high low
        back-thick: HeartBottom back Windows WindowBase lay; thick stiff shallow short narrow
        back-thin: back Windows WindowBase lay; thin soft deep away
        windows-uneven: back Windows WindowBase; uneven lopsided
        spine-scraped: Spine; away cut thin soft worn
        rails-cut: Rails; cut away thin broken worn
        bark-island: *; barkspot
        bumps: *; bump
        bumps: Transition; ragged uneven
        body-cracked: heart HeartCentre HeartSides HeartBottom back Windows WindowBase Spine Rails Bark; cracked
        left-right-uneven: TipSides tip Rooftop Transition Spine Rails SideEdges; uneven
        slipped-against-winding: *; against
        slipped-too-far: *; slipped
        slipped-too-far: SideEdges; long wide big
        no-slip: SideEdges; small
        no-slip: *; noslip
        cork-loose: Cork; leak loose worn thin broken cracked away ragged soft crooked
        thread-leak: Thread Eye; leak
        side-leak: *; leak
        opening-wide: Opening *; wide
        opening-wide: Opening; open long big
        opening-narrow: Opening *; narrow
        opening-narrow: Opening; short low thin small
        opening-lopsided: Opening *; lopsided
        opening-lopsided: Opening; high low uneven slanted crooked
        centre-closes-first: *; centrefirst
        closes-in-play: *; closesinplay
        more-open-than-liked: *; open
        brighter-than-liked: *; bright
        left-right-uneven: Rooftop Transition HeartCentre HeartSides Spine Rails Windows; crooked slanted lopsided
        crooked-on-staple: *; crooked
        crooked-on-staple: Thread Eye WholeReed; slanted uneven
        thread-too-high: Thread; high long
        thread-too-high: *; high
        thread-leak: Thread; loose
        cork-loose: Cork; falls
        dirty-inside: *; dirty
        worn: *; worn
        left-right-uneven: *; uneven
        opening-even: Opening; even clear smooth matched intact good
        opening-even: *; oval
        spine-intact: Spine; intact kept clear good straight even
        rails-intact: Rails; intact kept clear good even
        tip-well-separated: tip Rooftop Transition *; clear
        tip-falls-to-sides: *; falls
        blend-smooth: Transition *; smooth
        blend-smooth: Transition; good even
        tip-well-separated: Rooftop; good even straight
        heart-well-kept: heart HeartCentre; kept intact good even
        quadrants-matched: *; matched alike
        quadrants-matched: TipSides HeartSides Windows back TipCorners WholeReed; even
        seals-well: *; seals
        seals-well: SideEdges; good intact
        tied-straight: *; straight
        tied-straight: Thread; good
        """;

    private static readonly Dictionary<(string Place, string Quality), string> Kinds = Read();

    /// <summary>Words that are a finding whatever the place; the others need one.</summary>
    private static readonly HashSet<string> Alone =
    [
        "even_across", "merged", "steep", "slanted", "ragged", "cracked", "wavy", "blunt", "barkspot", "bump", "slipped", "against", "noslip",
        "leak", "wide", "narrow", "lopsided", "centrefirst", "closesinplay", "crooked", "dirty", "worn", "uneven", "falls", "kept", "matched",
        "seals", "straight", "bright", "open", "smooth", "clear", "high",
    ];

    private static readonly HashSet<string> Praise = ["intact", "kept", "clear", "smooth", "even", "matched", "seals", "straight", "falls", "good"];

    /// <summary>True for words of praise.</summary>
    internal static bool IsPraise(string quality) => Praise.Contains(quality);

    /// <summary>The kind's lasting name; null when the two make no named finding.</summary>
    internal static string? Kind(Mention? place, string quality)
    {
        if (place?.HasPlace == true)
        {
            if (quality is "wide" or "narrow" or "open" && place.Zone is not (Reeds.Zone.Opening or Reeds.Zone.WholeReed or Reeds.Zone.TipEdge) && place.Region is not "tip")
            {
                return null;
            }

            var named = place.Zone?.ToString() ?? place.Region!;
            if (place.Region == "heart" && place.OneSide is not null && Kinds.TryGetValue(("HeartSides", quality), out var side))
            {
                return side;
            }

            var anywhere = quality switch
            {
                "straight" => place.Zone is Reeds.Zone.Eye or Reeds.Zone.WholeReed or Reeds.Zone.Thread or Reeds.Zone.SideEdges,
                "high" => place.Zone is Reeds.Zone.Eye or Reeds.Zone.WholeReed,
                "falls" => place.Region is "tip" or "heart" || place.Zone is { } fallen && PlaceReader.Of(fallen) is "tip" or "heart" || place.Zone is Reeds.Zone.WholeReed,
                _ => true,
            };
            return Kinds.GetValueOrDefault((named, quality)) ?? (anywhere ? Kinds.GetValueOrDefault(("*", quality)) : null);
        }

        if (quality is "alike")
        {
            return place?.Blade is not null || place?.Side is not null || place?.Part is not null ? "quadrants-matched" : null;
        }

        return Alone.Contains(quality) ? Kinds.GetValueOrDefault(("*", quality)) : null;
    }

    private static Dictionary<(string Place, string Quality), string> Read()
    {
        Dictionary<(string, string), string> kinds = [];
        foreach (var line in Table.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var parts = line.Split([':', ';'], StringSplitOptions.TrimEntries);
            foreach (var place in parts[1].Split(' '))
            {
                foreach (var quality in parts[2].Split(' '))
                {
                    kinds.TryAdd((place, quality), parts[0]);
                }
            }
        }

        return kinds;
    }
}
