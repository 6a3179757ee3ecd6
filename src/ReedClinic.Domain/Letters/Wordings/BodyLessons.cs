namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What a letter teaches about heart, back, and both sides. Common practice, in our own words.</summary>
internal static class BodyLessons
{
    internal static TeachingNote HeartSides { get; } = new(
        [
            "press the wet blades {together very lightly|very lightly together} and watch from the front: the sides should {meet|close} first and the middle {last|after them|only then}.",
            "hold it to {a lamp|the lamp|a light}: the heart should be darkest in the middle and {fade|get lighter|grow lighter} towards {both sides|the sides}.",
            "{crow it|start the crow|try the crow} and let the air {grow|increase}: the low note should join {without a push|by itself|without being pushed}.",
        ],
        [
            "{support the heart {with the plaque, and a finger below the blades|with the plaque between the blades and a finger below them}|let the heart rest on the plaque, with a finger below the blades}, and hold the knife {almost|nearly} upright{, not flat|}.",
            "work on the side of the heart, {halfway|midway} between {the middle and the side of the blade|its middle and the side of the blade}, {never|and never} on the middle {itself|line}.",
            "{each|every} stroke {starts|begins} at the foot of the heart, runs towards the tip, and ends before the line between heart and tip.",
        ],
        [
            "mark the middle of the heart with {pencil|a pencil|soft pencil} and {stay off it|don't touch it|keep away from it}{ from then on|}.",
            "take three light strokes {on each side of the heart|left and right of that mark|on either side of the mark}, {on both blades|on one blade and then on the other}{, no more|}.",
            "{crow it|listen to the crow|try the crow}, and press it {lightly|gently} to see {what closes first|which part closes first}.",
            "{take three more|take another three} only if the middle still closes {before the sides|first}, and {never more than|no more than} three rounds {in|on} one day.",
            "stop {when|as soon as} the low note joins the crow {by itself|without a push}{; that is enough|, even if more seems possible|}.",
        ]);

    internal static TeachingNote HeartKept { get; } = new(
        [
            "hold it to {a lamp|the lamp|a light}: the middle of the heart should be the darkest {place|spot|part} {in front of the thread|of the whole scrape}.",
            "play one long note from soft to loud: it should keep its {pitch|place}; if it sinks when {you play loudly|it gets loud}, the heart {is thin|may be thin|has lost too much}.",
        ],
        null,
        [
            "{with pencil, shade|shade, in pencil,|in soft pencil, shade} the middle of the heart on both blades: {this stays|this part stays|that is to stay}.",
            "do {all the|all your|any} thinning {in the tip and at its sides|at the sides of the tip and in the tip}{, not behind it|, never behind it|}.",
            "hold it to the {lamp|light} and {crow it|try the crow} after {every|each} round{ of strokes|}, and look for the dark middle{ of the heart|}; {no more than|at most} three rounds {in|on} one day.",
            "{when|if|where} it feels hard to blow, look at the corners of the tip first, not at the heart{: they are the likelier cause|, since they are the likelier cause|}.",
            "stop {early|in good time}; a heart that {was left too strong|is still too strong} can be {eased another day|thinned another day|eased later on}.",
        ]);

    internal static TeachingNote Back { get; } = new(
        [
            "hold it to {a lamp|the lamp|a light}: the windows on {either side|both sides} of the spine should be {clearly|visibly} brighter than the spine and the rails.",
            "play the lowest notes {softly|quietly}: they should {speak|come|start} {without a push|by themselves|without being pushed}.",
            "{crow it|listen to the crow|try the crow}: if only the high note {comes|speaks}, the back is still {holding the reed|too strong|in the way}.",
        ],
        [
            "hold the knife upright and {stay|work} between the spine and the {rail|rails}: there are four windows, two {on each blade|to each blade|on either blade}.",
            "{each|every} stroke {starts|begins} above the bark and runs towards the tip; it {ends|stops} below the heart.",
            "{take three strokes|three strokes} in each of the four, then stop and {crow it|listen to the crow|try the crow}{ before you go on|}.",
        ],
        [
            "draw the spine and the two rails {with pencil|with a pencil|in soft pencil} on both blades{ before you begin| first|}.",
            "scrape only {between them|inside those lines|between those lines}, three strokes in each of the four windows{, no more in one round|}.",
            "keep {about|some|roughly} three millimetres of bark {above the thread|between scrape and thread}{, all round|}.",
            "{crow it|listen to the crow|try the crow} after {every|each} round and {watch the opening|keep an eye on the opening}; {no more than|at most} three rounds {in|on} one day.",
            "stop {when|as soon as} the low note {joins the crow|comes into the crow}{; more would cost the opening|, or the opening will suffer|}.",
        ]);

    internal static TeachingNote BackKept { get; } = new(
        [
            "hold it to {a lamp|the lamp|a light}: you should see a dark line down the middle and a narrow dark strip along {each|either} side of the blade, {all the way|from end to end}.",
            "play for ten minutes and look at the opening again: it should be {nearly|almost} {what it was|as it was|as high as before}.",
        ],
        null,
        [
            "draw the spine and the rails {with pencil|with a pencil|in soft pencil} before the first stroke, and {renew|redraw} the lines when they {fade|wear off}.",
            "lift the knife at the rail {instead of letting it run|and don't let it run|rather than letting it run} off the edge{ of the blade|}.",
            "take less from the back than you {think|think it needs|want to}: {two strokes|no more than two strokes} in a place, {then|and then} {crow it|try the crow}, and {no more than|at most} three rounds {in|on} one day.",
            "when the low notes are late, look at the tip and its corners {first|before anything else}{: they are often the cause|, since they are often the cause|}.",
            "stop {when|as soon as} the opening begins to {fall|shrink}, whatever else is still to {do|be done}.",
        ]);

    internal static TeachingNote Evenness { get; } = new(
        [
            "hold the wet reed to {a lamp|the lamp|a light} and compare left with right: the same shades should {lie|show|be seen} on {both sides|either side}; {where it is darker, it is thicker|the darker side is the thicker one}.",
            "{slide|slip} a dark plaque in and {look down on|study} one blade, then the other. {Over it|There} the {thin|thinner} side is the darker one, for thin cane lets the dark {show |}through.",
            "play it both ways up: it should {feel|be} {the same|just the same} {to blow|either way|both ways}.",
        ],
        [
            "work only on the {thick|thicker} side, the one {that is|which is} darker against the lamp; the {thin|thinner} one has {given enough|given all it should|given its share}{ already|}.",
            "turn the reed in your hand {instead of bending your wrist|and leave your wrist straight|and keep your wrist as it is}, so that the knife meets left and right at the same {angle|slant}.",
            "{take one stroke|one stroke|a single stroke}, then look; the stroke ends where the thick place {ends|stops}.",
        ],
        [
            "count your strokes {aloud|out loud|as you go}: {the same number left and right, upper and lower|as many on the left as on the right, on both blades}{, every time|, each round|}.",
            "turn the reed round so that {each side|either side} is worked {from|in} the same position{ of your hand| of the knife|}.",
            "after {every|each} round{ of strokes|} {crow it|try the crow} and hold the reed, without the plaque, against {the lamp|a lamp|the light}; {no more than|at most} three rounds {in|on} one day.",
            "put right what is uneven before you {go on to anything else|do anything else|think of anything else}{, however small it is|}.",
            "stop {when|as soon as} you can't tell the two sides apart{ any more|}{, by eye or by finger|, neither by eye nor by finger|}.",
        ]);
}
