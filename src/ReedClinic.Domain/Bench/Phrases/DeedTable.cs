namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Which adjustment a verb and a place make together.</summary>
internal static class DeedTable
{
    // “*” is any place, and no place at all; “-” no place.
    private const string Table = """
        thin-corners: scrape take light dust even narrow define blend sand press free smooth; TipCorners
        thin-whole-tip: scrape take light dust free; tip
        thin-tip-sides: scrape take light dust free narrow even blend; TipSides
        thin-tip-centre: scrape take light dust free; TipCentre
        thin-edge: scrape take light dust define free narrow even press; TipEdge
        smooth-edge: sand polish burnish smooth; TipEdge tip TipSides TipCorners TipCentre
        lengthen-tip: lengthen; tip TipSides TipEdge Rooftop TipCentre Transition
        lengthen-tip: realign; Rooftop tip
        blend: blend smooth; Transition tip heart HeartCentre HeartBottom Rooftop TipSides
        blend: scrape take light dust even free narrow sand open press clean polish; Transition
        blend: blend; *
        define-tip: define clean free scrape take light dust open clear even clip; Rooftop
        define-tip: define; tip Transition heart *
        take-heart-sides: scrape take light dust narrow free even open blend smooth press; HeartSides
        take-heart-sides: narrow; heart HeartCentre
        dust-heart: scrape take light dust free even open; heart HeartCentre
        dust-heart: dust; -
        free-heart-bottom: scrape take light dust free open clean even lengthen smooth press; HeartBottom
        open-windows: scrape take light dust open free even clean define; Windows back
        extend-windows: lengthen; Windows back WindowBase lay
        extend-windows: open scrape take light dust free; WindowBase
        scrape-lay-base: scrape take light dust free lengthen open; lay-base
        thin-spine: scrape take light dust free even narrow press; Spine
        thin-rails: scrape take light dust free narrow even open; Rails
        narrow-edges: scrape take light narrow sand dust even polish; SideEdges
        narrow-edges: narrow; *
        smooth-bumps: smooth; bump
        smooth-bumps: smooth even scrape take dust light sand press clip blend clean free polish narrow; bump
        even-up: even; WholeReed * -
        square-tip: square; *
        square-tip: offset smooth even; TipEdge
        offset-tip: offset; *
        open-squeeze: open squeeze; Opening -
        open-squeeze: squeeze; SideEdges WholeReed TipSides HeartSides heart HeartCentre side *
        close-press: press; Opening face WholeReed - heart HeartCentre HeartSides tip
        close-press: squeeze; face
        draw-air: draw; air Opening -
        round-eye: round bend realign other fit light open; mandrel
        round-eye: round bend; Eye
        round-eye: open lengthen light fit; Eye
        round-eye: round; -
        open-squeeze: round; Opening
        flatten-eye: press squeeze; Eye
        bend-wire: bend round press squeeze open realign other narrow free even square; Wire
        add-wire: light fit other seal take tie; Wire
        seal-sides: seal; SideEdges fishskin - WholeReed side
        seal-sides: light fit tie other; fishskin
        seal-thread: seal; Thread
        seal-thread: seal light fit other soak polish; wax
        realign: realign bend; SideEdges WholeReed -
        realign: square; SideEdges
        burnish: burnish polish; *
        smooth-edge: light sand dust; abrasive
        smooth-edge: sand; - *
        clean-inside: realign other light take lengthen fit; swab
        clean-inside: clean light dust; Inside swab -
        clean-inside: clean; Eye WholeReed Opening
        clean-inside: take scrape dust light; Inside
        refit-cork: fit light sand seal take soak tie other clean; Cork
        retie: tie take; Thread
        retie: tie; WholeReed -
        retire: retire; WholeReed -
        soak: soak; WholeReed - tip
        rest-dry: dry; WholeReed -
        wait: wait; WholeReed -
        """;

    private static readonly Dictionary<(string Verb, string Place), string> Kinds = Read();

    /// <summary>The kind's lasting name; null when verb and place make no named adjustment.</summary>
    internal static string? Kind(string verb, string place) => Kinds.GetValueOrDefault((verb, place)) ?? Kinds.GetValueOrDefault((verb, "*"));

    /// <summary>As <see cref="Kind"/>, for this very place alone.</summary>
    internal static string? Specific(string verb, string place) => Kinds.GetValueOrDefault((verb, place));

    private static Dictionary<(string Verb, string Place), string> Read()
    {
        Dictionary<(string, string), string> kinds = [];
        foreach (var line in Table.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var parts = line.Split([':', ';'], StringSplitOptions.TrimEntries);
            foreach (var verb in parts[1].Split(' '))
            {
                foreach (var place in parts[2].Split(' '))
                {
                    kinds.TryAdd((verb, place), parts[0]);
                }
            }
        }

        return kinds;
    }
}
