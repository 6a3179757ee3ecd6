namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>Words for what is found: how a place is, good or bad.</summary>
internal static class QualityWords
{
    internal const string Table = """
        Quality thick: thick, thicker, thickest, fat, fatter, heavy, heavier, chunky, meaty, meatier, stout, bulky, beefy, too much cane, too much wood, lot of cane, lots of cane, lot of wood, plenty of cane, full of cane, cane left, more cane, much cane, overweight, hefty, club like, thick still, still thick, undone, unscraped, hardly been touched, barely been touched, fleshy
        Quality stiff: stiff, stiffer, stiffest, strong, stronger, firm, firmer, rigid, hard under finger
        Quality thin: thin, thinner, thinnest, weak, weaker, weakest, papery, paper thin, nothing left, flimsy, skinny, little cane, too little cane, too little wood, not enough cane, hardly any cane, hardly any cane left, lost too much cane, worn thin, threadbare, overscraped, over scraped, scraped too far, thinned too far, transparent, see through, thinned too much, taken too far, lost cane, short of cane
        Quality soft: soft, softer, soggy, spongy, mushy
        Quality long: long, longer, longest, reaches too far, reaches far down, goes too far down, too far back, far back
        Quality short: short, shorter, shortest, stubby, stumpy
        Quality high: higher, further up, too high, too far up, far up, up too far, too far up staple, past the end of the staple, past staple, wound too high, runs too far up, goes too far up, high on the staple, past the top of the staple, over end of staple, beyond end of staple
        Quality low: further down, sits lower
        Quality steep: steep, steeper, abrupt, stair, staircase, stairs, cliff, like a stair, drops straight, drops off, sudden, too sharp a step, hard step, big step, ledge, drop off, sheer, too abrupt, high step, step too high, vertical, like a wall, shelf, kerb, curb
        Quality merged: runs together, run together, all one, not separate, no separation, not set off, cannot tell where, can not tell where, hard to tell where, hard to see where, cannot see where, can not see where, no telling where, no definition, undefined, blurred, blurs, blurry, vague, not clear, unclear, indistinct, ill defined, not defined, flow into each other, runs into one, runs into tip, no clear line, no clear start, no clear step, no real step, no step, no boundary, not marked off, no tip to speak of, not told apart, cannot be told from, not to be told from, washed out, not distinct, hardly tell, one with heart, no line between, nowhere to tell
        Quality even_across: evenly thin, thin right across, thin all across, even across, same thickness across, thin across, evenly right across, flat right across, thinned evenly, same thickness right across, evenly thin across, equally thin, thin from side to side, as thin in the middle as, no fall from centre to sides, no fall, level right across, thin all the way across, uniformly thin, nothing left in the middle
        Quality ragged: ragged, frayed, fraying, fuzzy, furry, rough, torn up, jagged, hairy, whiskery, splintered, splintery, feathery, raggedy
        Quality cracked: cracked, crack, cracks, split, splits, hairline, hairline crack, cracking, splitting, hairline split, fissure
        Quality broken: chipped, chip, broken, broke, missing, torn, tore, broken off, chunk out, piece gone, bit gone, snapped, torn off, chip out of, knocked off, lost its corner, chipped off, bite out of, chip out, piece missing, bit missing, nick out of, come off, bitten
        Quality wavy: wavy, ripples, rippled, rippling, ripply, wave, waves, warped, curls, curled, curly, undulating, wavelike, buckled, crinkled, wrinkled
        Quality blunt: blunt, blunter, bluntest, square cut
        Quality slanted: slanted, slants, slanting, slant, sloping, slopes off, not square, out of square, not straight, askew at the end, angled, at an angle, on the skew, oblique, diagonal, on a slant, tilts, tilted, on the slant
        Quality lopsided: lopsided, lop sided, one sided, asymmetric, asymmetrical, skewed, higher on one side, egg shaped, off to one side, wider on the left, wider on the right, wonky, not symmetrical, squint
        Quality uneven: uneven, unequal, unbalanced, not even, not equal, different, mismatched, not matched, don't match, do not match, does not match, not alike, unlike, not the same, unevenly, not equally deep, imbalance, deeper, shallower, out of balance, not balanced, differ, differs, imbalanced
        Quality bump: bump, bumps, lump, lumps, ridge, ridges, bumpy, lumpy, knife mark, knife marks, chatter marks, tram lines, washboard, humps and bumps, uneven strokes, high spot, high spots
        Quality barkspot: speck of bark, fleck of bark, patch of bark, bark island, island of bark, island bark, bit of bark, piece of bark, spot of bark, bark left, bark still, bark in heart, bark sitting, shiny patch, shiny spot, patch of skin, scrap of bark, sliver of bark, flake of bark, bark islands, islands of bark, shiny skin left
        Quality cut: cut, nicked, gone through, cut into, cut through, cut away, scraped into, scraped through, gouged, notched, breached, sliced into, sliced, nick, went through, scored, gouge
        Quality away: scraped away, scraped right away, scraped clean off, scraped right out, scraped nearly away, almost scraped away, nearly gone, all but gone, gone altogether, taken right away, taken off, scraped down to nothing, worn right away, gone, scraped off, scraped right off, scraped out, worn away, lost, vanished, taken away, no spine, scraped down, scraped right down, scraped clean away, disappeared, is no spine, not there
        Quality slipped: slipped, slipped too far, slip too far, too much slip, slid, slidden, slipping, overlap too much, too much overlap, shifted too far, moved too far, offset too far, shifted sideways, overlap too far, slipped over, overlaps too much
        Quality against: against winding, against thread, wrong way for thread, wrong way for winding, opposite to winding, contrary to winding, against the way it is wound
        Quality noslip: no overlap, no slip, exactly on top, right on top of each other, exactly on top of each other, without overlap, edge to edge, sit dead on top, sit exactly on each other, not overlapping, no overlap at all, any overlap, square on top of each other
        Quality leak: leak, leaks, leaking, leaky, leaked, lets air, air escapes, escaping air, air escaping, losing air, hiss of air, loses air, air gets out, air comes out, not airtight, air coming out, air getting out, hear air, hear the air, let air out, lets air out, not sealing, do not seal, does not seal, not seal
        Quality worn: worn out, worn, played out, tired, past its best, dead, used up, spent, had its day, clapped out, lifeless, lost its spring, no spring left, finished as a reed, on its last legs, at the end of its life, no life left, shot, exhausted, blown out, past it
        Quality dirty: dirty, dirt, filthy, gunk, gunky, lint, fluff, grime, something caught, clogged, debris, crud, bit of fluff, gunge, deposit, crumbs, mucky, blocked, film inside
        Quality mould: mould, mouldy
        Quality loose: loose, rocks, wobbly, wobbles, rocking, worn cork, rattles, too small cork, perished, shrunk, slack, crumbling, falling apart, does not grip
        Quality crooked: crooked, crookedly, tied on crooked, tied crooked, askew, off centre, not straight on, leans to, leaning, leans, twisted, cockeyed, skew, on the skew
        Quality squashed: squashed, squeezed flat, out of round, dented, crushed, bent, pinched shut, oval gone, deformed
        Quality wide: wide, wider, too open, gaping, gapes, yawning, too far open, cavernous, wide open, enormous, huge
        Quality small: small, smaller, tiny
        Quality big: big, bigger, large, larger
        Quality open: more open, open
        Quality narrow: narrow, narrower, too closed, pinched, nearly shut, almost shut, shut down, too shut, closed right up, collapsed, almost closed, nearly closed, tight
        Quality centrefirst: centre closes first, middle closes first, closes in the middle first, centre shuts first, middle shuts first, centre closes before sides, middle closes before sides, closes first, closes first in middle, centre meets first, middle meets first, centre touches first, middle touches first, closes from middle, closes from the centre, closes centre first, closes middle first, shuts before sides, closes before sides, meets before sides, touches before sides, closing first, first to close
        Quality closesinplay: shuts on me, closes on me, closes up on me, closes while, closes up while, shuts down after, closes after, shuts after, closes up after, closing up after, closes in play, closes up in playing, shuts as i play, closes as i play, closes up as i play, closes down after, collapses after, closes during, shrinks after, closes when played, closes up, closing up on me, closes down on me, shuts up after, gives up after
        Quality bright: bright, brighter, shrill, brightness
        Quality intact: intact, whole, unbroken, undamaged, untouched, complete, all there, still there, in one piece
        Quality kept: well kept, kept, you left alone, respected, left well alone, left alone, nicely left, left in place, left standing, left untouched, left alone nicely, kept well, looked after, preserved, well preserved, nicely kept, kept nicely, left plenty, left enough, well left
        Quality clear: clear, clearly set off, well set off, set off, well defined, defined, distinct, clearly separate, well separated, clearly separated, clean line, crisp, nicely set off, clearly marked, easy to see, plain to see, clear cut, separate, stands out, well marked, sharply defined
        Quality smooth: smooth, smoothly, seamless, gradual, well blended, blends well, nicely blended, runs smoothly, flows, flowing, gentle
        Quality even: even, evenly, regular, balanced, symmetrical, oval, almond, even oval, even almond
        Quality matched: matched, well matched, alike, match, matches, equal, identical, balanced with, evenly matched, a pair, just the same, same on both, the same all round, twins
        Quality seals: seals well, seals, seals nicely, sealed, airtight, sealing well, good seal, well sealed, seals beautifully, meet all the way, no air escapes, meet along, seals fine, seals tight, tight seal, sides meet, hold air
        Quality straight: tied straight, straight, neat, tied dead straight, neatly tied, tied neatly, well tied, tied well, tied on straight, dead straight, beautifully tied, stands straight, sits straight, tied true
        Quality falls: falls from centre to sides, falls nicely, falls away, falls gently, falls off to the sides, falls to sides, fall from centre to sides, falls, tapers, slopes off to the sides, tapers to sides, tapers from centre to sides, thicker in the middle than at the sides, falls off gently, fall away, falls away nicely, falls away to sides
        Good good: good, gorgeous, super, fantastic, wonderful, delightful, terrific, brilliant, exemplary, fabulous, marvellous, springy, graceful, elegant, skilfully, beautiful job, first rate, top notch, tidily, sweet, nice, nicely, lovely, clean, beautiful, beautifully, well done, excellent, perfect, perfectly, tidy, fine, well made, splendid, great, well, very well, handsome, pretty, pleasing, healthy, sound, admirable, superb, spot on
        """;
}
