namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>What tests are called, and how their words are said. The words of the scales are this program's own.</summary>
internal static class TestWords
{
    internal const string Table = """
        Test Crow: crow, crows, crowing, crowed, the crow, crow now, crows now, it crows, croak
        Test Peep: peep, peeps, peeping, beep, peeped
        Test SoftestStart: soft start, softest start, soft starts, soft attack, soft attacks, quiet start, quiet starts, soft entry, soft entries, softest starts, start soft, starting softly, to start softly, start softly, pianissimo start, quiet entry, quiet entries, starts soft, starts softly, starts quietly, start quietly, starts on breath, starts on a breath, start on a breath, starts with breath, soft notes start, needs a push, needs a shove, needs a nudge, needs a kick
        Test Effort: effort, resistance, to blow, blowing, blows, hard work, blow, to play
        Test TuningNote: tuning note, tuning a, the tuning, tuning notes, tuning pitch, tuned note
        Test LowResponse: low notes, low note, bottom notes, bottom note, low register, bottom register, lowest notes, lowest note, low end, bottom end, low response, low range, low ones, bottom of the range, down low, lows, notes at the bottom, deep notes
        Test HighSteadiness: high notes, high note, top notes, top note, high register, top register, upper register, high steadiness, highest notes, high ones, upper notes, high range, up high, up top, notes up top, top end, third octave
        Test Opening: end on
        Test Swell: swell, swells, long note, long tone, long notes, long tones, soft to loud, crescendo, swelling, loud and back, messa di voce, hairpin
        Test TonguedStarts: tongued, tonguing, tongued notes, tongued starts, tongued start, articulation, staccato, repeated notes, short notes, tongue it, tongue, tongued note, attack, attacks, short and dry, tonguing repeated notes
        Test Seal: vacuum, suction, drew the air, draw the air, drawing the air, sucked the air, suck the air, air drawn out, pop, seal test, air out of it, pull the air, pulled the air, seal
        Test ClosingOrder: closing order, when i press, when pressed, under a light press, light press, pressed lightly, press lightly, pinch it shut, on pressing
        Test Edge: edgy, edginess, covered, edgier, edge to the sound, edge in the sound, edge to the tone, edge on the sound, edge in the tone
        Test Depth: depth, bottom to the sound, bottom of the sound, bottom in the sound, hollow, bottom to the tone
        Sound sound: sound, sounds, tone, sounding, timbre, note's sound, voice
        Wordy idiom: take it easy, took it easy, taking it easy, take care, takes care, taking care, took care, take a look, took a look, taking a look, take heart, take note, take your time, took its time, taking its time, take a break, took a break, take a breath, took a breath, take my word, cut me some, cut some slack, cut it fine, file it under, filed it under, filed under, dry reed, dry cane, wet reed, scrape marks, scrape mark, knife work, clean reed, open question, close call, close look, made a note, take a photo, took a photo, took a picture, take a picture, took place, takes place, take turns, took me, takes me, takes time, took ages, took a while, taken aback, take away from this, open the parcel, open the case, open the box, open the letter, open the envelope, open the door, open the book, open the drawer, open the packet, open the bag, open the tin, open the file, open the message, open the mail, opened the parcel, opened the case, opened the box, opened the letter, opened the envelope, opened the door, opened the book, opened the drawer, opened the packet, opened the bag, opened the tin, opened the file, opened the message, opened the mail, opening the parcel, opening the case, opening the box, opening the letter, opening the envelope, opening the door, opening the book, opening the drawer, opening the packet, opening the bag, opening the tin, opening the file, opening the message, opening the mail, close the parcel, close the case, close the box, close the letter, close the envelope, close the door, close the book, close the drawer, close the packet, close the bag, close the tin, close the file, close the message, close the mail, closed the parcel, closed the case, closed the box, closed the letter, closed the envelope, closed the door, closed the book, closed the drawer, closed the packet, closed the bag, closed the tin, closed the file, closed the message, closed the mail, closing the parcel, closing the case, closing the box, closing the letter, closing the envelope, closing the door, closing the book, closing the drawer, closing the packet, closing the bag, closing the tin, closing the file, closing the message, closing the mail, clean the parcel, clean the case, clean the box, clean the letter, clean the envelope, clean the door, clean the book, clean the drawer, clean the packet, clean the bag, clean the tin, clean the file, clean the message, clean the mail, cleaned the parcel, cleaned the case, cleaned the box, cleaned the letter, cleaned the envelope, cleaned the door, cleaned the book, cleaned the drawer, cleaned the packet, cleaned the bag, cleaned the tin, cleaned the file, cleaned the message, cleaned the mail, cleaning the parcel, cleaning the case, cleaning the box, cleaning the letter, cleaning the envelope, cleaning the door, cleaning the book, cleaning the drawer, cleaning the packet, cleaning the bag, cleaning the tin, cleaning the file, cleaning the message, cleaning the mail, dry the parcel, dry the case, dry the box, dry the letter, dry the envelope, dry the door, dry the book, dry the drawer, dry the packet, dry the bag, dry the tin, dry the file, dry the message, dry the mail, dried the parcel, dried the case, dried the box, dried the letter, dried the envelope, dried the door, dried the book, dried the drawer, dried the packet, dried the bag, dried the tin, dried the file, dried the message, dried the mail, drying the parcel, drying the case, drying the box, drying the letter, drying the envelope, drying the door, drying the book, drying the drawer, drying the packet, drying the bag, drying the tin, drying the file, drying the message, drying the mail
        Wordy sound: way round, other way round, clean every time, every time clean, hit and miss, hit or miss, loud and soft, more or less, now and then, again and again, bit by bit, up and down, touch and go, over and over, from across the room, across the room
        """;

    /// <summary>One test's words: the index on its scale, and the ways of saying it; longer ways are tried first.</summary>
    internal static readonly (TestKind Test, int Step, string Ways)[] Steps =
    [
        (TestKind.SoftestStart, 0, "will not start softly, not start softly, will not start quietly, no soft start, not start, will not start soft, will not start, will not"),
        (TestKind.SoftestStart, 1, "needs push, needs a push, needs shove, needs nudge, needs kick, with a push, needs pushing, needs a bit of a push, push to, only with a push, takes a push"),
        (TestKind.SoftestStart, 2, "starts softly, start softly, softly, starts soft, quietly, starts quietly"),
        (TestKind.SoftestStart, 3, "starts on breath, start on breath, on a breath, on breath, on the breath, starts from nothing, from nothing, with breath alone, breath alone, a breath"),
        (TestKind.LowResponse, 0, "will not speak, not speak, will not come, not come, not come out, refuse, refuses, refuse to speak, nothing, silent, dead, do not speak, not sound, not there, no low notes, missing, will not play, will not start, will not, not answer, do not"),
        (TestKind.LowResponse, 1, "late, come late, slow, slow to speak, lag, sluggish, delayed, hesitate, hesitates, drag, lagging, hesitant, comes late, behind, a beat behind, slowly, too slowly"),
        (TestKind.LowResponse, 2, "with care, carefully, speaks with care, if i am careful, coaxing, with coaxing, reluctant, reluctantly, if careful, when i am careful, with a little care, coax, if you are careful, just about speak"),
        (TestKind.LowResponse, 3, "at once, speaks at once, immediately, straight away, right away, easily, instantly, pop out, pops out, freely, without a thought, straight off, promptly, on the dot, without delay, ready, jump out, drop out easily, like a bell, come out, speak, speaks, speak now, come easily"),
        (TestKind.HighSteadiness, 0, "drop out, drops out, crack, cracks, break up, cut out, cuts out, fall off, break, breaks, dropping out, fail, give out, gives out, cutting out, break off, vanish, disappear, collapse, not hold, will not hold, do not hold, die"),
        (TestKind.HighSteadiness, 1, "wander, wanders, waver, wavers, unsteady, shaky, wobble, wobbles, drift, drifts, unstable, swim, wandering, wobbly, wavering, all over the place, not steady, shake"),
        (TestKind.HighSteadiness, 2, "with help, holds with help, hold with help, hold with a bit of help, needs help, need help, if i help, need some help, needs some help, with support, with a little help, with some help, if helped, help it, i help, helping, so long as i help, with a bit of help, only with help, when helped"),
        (TestKind.HighSteadiness, 3, "hold, holds, steady, stable, stay, stays, secure, solid, rock steady, hold firm, stay put, hold now, holding, stay where they are"),
        (TestKind.Swell, 0, "break, breaks, cracks, breaking, cuts out, gives out, splits"),
        (TestKind.Swell, 1, "goes wild, wild, runs away, spreads, goes wild when loud, bursts, out of control, goes mad, run wild"),
        (TestKind.Swell, 2, "sags, sag, drops when loud, goes flat when loud, sinks, sags when loud, droops, flat when loud, drops in pitch, sagging, sinking, falls"),
        (TestKind.Swell, 3, "keeps its place, stays put, holds its place, keep its place, stays where it is, steady, holds its pitch, keeps its pitch, stays in place, stays, keeps place, rock steady, holds, even, keeping its place"),
        (TestKind.TonguedStarts, 0, "thud, thuds, thuddy, thump, thumps, thudding, thick starts, clunk, clunks"),
        (TestKind.TonguedStarts, 2, "mostly clean, nearly clean, nearly always clean, clean mostly, almost clean, clean most of the time, mostly, nearly all clean, most of them clean"),
        (TestKind.TonguedStarts, 1, "unsure, hit and miss, uncertain, unreliable, hesitant, not sure, not clean, not always clean, fuzzy, unclear, ragged"),
        (TestKind.TonguedStarts, 3, "clean every time, clean, crisp, every time, clean each time, always clean, all clean, clean now, cleanly"),
        (TestKind.Seal, 0, "does not hold, not hold, will not hold, no vacuum, no suction, not hold a vacuum, no pop, no hold, holds nothing"),
        (TestKind.Seal, 1, "fades at once, fades, gone at once, lost at once, fades straight away, goes at once, fade"),
        (TestKind.Seal, 2, "holds for a moment, moment, for a second, holds a second, holds a moment, for a while, briefly, for a bit"),
        (TestKind.Seal, 3, "then opens with a pop, pop, small pop, little pop, opens with a pop, with a pop, pops open, pops, holds then pops, holds, holds well"),
        (TestKind.ClosingOrder, 0, "centre closes first, middle closes first, middle first, centre first, middle meets first, centre meets first, middle touches first, sides last, middle shuts first, closes in the middle first, centre touches first"),
        (TestKind.ClosingOrder, 1, "all at once, all together, same time, everything at once, at once, sides and middle together, together"),
        (TestKind.ClosingOrder, 2, "sides close first, sides first, sides meet first, centre last, middle last, sides touch first, outside in, from the outside in, sides shut first, edges first, edges meet first"),
        (TestKind.Depth, 0, "hollow, no depth, no bottom, empty, no bottom to it, not any depth"),
        (TestKind.Depth, 1, "thin, not much depth, little depth, lacks depth, lacking in depth, shallow, weedy, reedy"),
        (TestKind.Depth, 2, "enough, enough depth, adequate, enough bottom, depth enough"),
        (TestKind.Depth, 3, "full, rich, deep, plenty of depth, lots of depth, fuller, plenty, lot of depth, round, real depth"),
        (TestKind.Peep, 1, "already crowing, crowing already, already crows, crows, crowing, crow in it, rattles"),
        (TestKind.Peep, 0, "clean, clear, pure, one note, clean and clear, not crowing"),
    ];
}
