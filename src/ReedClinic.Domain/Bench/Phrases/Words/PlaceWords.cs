namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>Words for places. The names of the parts are the trade's own (common practice).</summary>
/// <remarks>One line for each meaning. Small words inside a form (the, a, of, your …) may be said or not.</remarks>
internal static class PlaceWords
{
    internal const string Table = """
        Zone TipCorners: corner, corners, ear, ears, tip corner, tip corners, corner tip, corners tip, cornerpoint
        Zone TipSides: tip side, tip sides, side tip, sides tip, wing, wings, wing tip, wings tip, tip wing, tip wings, flank tip, flanks tip, tip flank, tip flanks, edges tip, left and right tip, cheeks tip
        Zone TipCentre: tip centre, centre tip, middle tip, tip middle, mid tip, tip's middle, centre of tip, tip in the middle, tip in the centre
        Zone TipEdge: edge, very edge, tip edge, edge tip, edge at the tip, very end, very front, end tip, tip end, end of the tip, tip line, line of the tip, blade ends, blade end, end blade, ends blades, end of the reed, front edge, leading edge, very tip, tip of the reed, playing edge, lip of the tip
        Zone Rooftop: rooftop, roof top, roof, roofline, roof line, gutter, gutters, tip boundary, where tip begins, where tip starts, tip start, start tip, tip begins, inverted v
        Zone Transition: transition, transitions, ramp, ramps, slope, slopes, wall, blend, slope from the heart to the tip, ramp from the heart to the tip, heart to tip, heart into tip, tip into heart, tip to heart, step from heart to tip, step between tip and heart, step between heart and tip, step into tip, step into the heart, the step, transition from heart to tip, between heart and tip, between tip and heart, tip to back
        Zone HeartCentre: hump, belly, hump heart, belly heart, middle heart, centre heart, heart centre, heart middle, heart's centre, mid heart, core of the heart
        Zone HeartSides: shoulder, shoulders, shoulders heart, shoulder heart, heart shoulders, flank heart, flanks heart, heart flank, heart flanks, side heart, sides heart, heart side, heart sides, edges heart, heart edges
        Zone HeartBottom: catch, catches, bottom heart, heart bottom, bottom end heart, lower border heart, lower edge heart, base heart, lower end heart, foot heart, back of the heart, lower heart, lower part heart, heart's lower border, behind the heart
        Zone Windows: window, windows, channel, channels, hollow of the back, hollows
        Zone WindowBase: base lay, lay base, bottom lay, base windows, base window, window base, windows base, bottom windows, bottom window, foot windows, windows further down, bottom channels, base channels, base of the scrape, bottom of the back, base of the back, lower back
        Zone Spine: spine, spines, backbone, centre line, central line
        Zone Rails: rail, rails
        Zone Bark: bark, bark band
        Zone SideEdges: side edge, side edges, edges reed, long edge, long edges, sides reed, side reed, seam, seams, reed's sides, outer edges, side seam, side seams, edge of the side, overlap, overlaps
        Zone Opening: opening, openings, aperture, gap, mouth reed, slit, tip opening, opening tip
        Zone Inside: inside, insides, inside reed, interior
        Zone Wire: wire, wires
        Zone Thread: thread, threads, winding, windings, binding, wrapping, thread end, loose end, end of thread, knot, string, tie
        Zone Eye: eye, eye staple, staple eye, staple, oval of the staple, staple's eye, tube, staple top
        Zone Cork: cork, corks
        Zone WholeReed: whole reed, reed as a whole, entire reed, whole thing, all over
        Region tip: tip, tips, tip area, tip region, whole tip, entire tip, tip as a whole, all the tip, tip all over, full tip, tip's
        Region heart: heart, hearts, heart as a whole, whole heart, heart's, heart area
        Region back: back
        Region lay: lay
        Part centre: middle, centre, centres, middles
        Part side: side, sides, flank, flanks, edges, cheek, cheeks
        Part bottom: base, lower border, foot, lower end
        Part face: face, faces, flats
        Side Left: left, left hand, lefthand, left side, left hand side, left one, left half, left handed side
        Side Right: right side, right hand, righthand, right hand side, right one, right half
        Side Both: left and right, right and left, both sides, each side, either side, a side, per side, two sides, all four sides, both of them, each, apiece, every side, on both, left and right alike, left as well as right
        Side Other: other side, other one side, opposite side, other corner, opposite corner, other ear, other wing, other shoulder, other channel, other window, other rail, other flank, other half, far side
        Blade Upper: upper, upper blade, top blade, upper one, top one, upper reed blade, topmost blade, upper face, upper side, blade with the mark, marked blade
        Blade Lower: lower, lower blade, bottom blade, lower one, bottom one, underside blade, lower face, lower side, under blade, underneath blade, unmarked blade
        Blade Both: both blades, upper and lower, lower and upper, each blade, either blade, two blades, per blade, a blade, all round, every blade, top and bottom blades, top and bottom, top and bottom blade
        Blade Other: other blade, other one, opposite blade, other face
        """;
}
