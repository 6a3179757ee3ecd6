namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What a letter teaches about tying, the opening, keeping reeds, and in general. Common practice, in our own words.</summary>
internal static class WholeReedLessons
{
    internal static TeachingNote General { get; } = new(
        [
            "hold the wet reed in front of {a lamp|the lamp|a light}: light and dark should {lie|be} {the same|alike} on {the left and on the right|both sides}.",
            "{crow it|try the crow}, first with {very little|hardly any} air: you should hear one high note, and a lower one {joining|coming in} as the air {grows|increases}.",
        ],
        null,
        [
            "soak the reed for three to five minutes and look at it {before you do anything else|before all else|before you do a thing to it}{, from all sides|}.",
            "{crow it|listen to the crow}, play one low and one high note, and {write down|note} what you hear{ each time|}.",
            "change one thing only, {the same on both sides and both blades|equally on both sides and both blades}{, and little of it|, and only a little|}.",
            "try the same notes {again|once more} and {compare|hold} them {with|against} what you {wrote down|noted}.",
            "stop while it is still getting better, and {go on|carry on} {another day|tomorrow|some other day}{: cane can't be put back|}.",
        ]);

    internal static TeachingNote Tying { get; } = new(
        [
            "look at the reed from the end and from the side: the blades should stand straight and overlap by {no more than a {hair|hair's breadth}|a {hair|hair's breadth} and no more}.",
            "{close|stop} the cork end with a finger and draw the air out: the blades should {stay|keep} together for a moment and then open with a {small|little} pop.",
            "hold the tip shut with two fingers, dip the reed in water and {blow gently|blow a little air} in at the cork end: no bubbles should {come|rise|be seen} {from the sides or the thread|at the sides or at the thread}.",
        ],
        null,
        [
            "set the cane straight on the staple, and {check it|look at it} from the front and from the side before you {pull|draw the thread} tight.",
            "wind evenly, and let the last turn {finish|end} level with the end of the staple, {not|never} beyond it{, or it pinches the cane|}.",
            "{watch|look|see} which way the thread pushes the upper blade, and let the blades lie {that way|as it pushes them|the same way}.",
            "pull firmly, but stop before the cane {creaks|begins to creak|starts to creak}{, or it may split|: it could split|}.",
            "{test|try|check} it for leaks before the first stroke of the knife{, with a finger on the cork end|}.",
        ]);

    internal static TeachingNote Opening { get; } = new(
        [
            "soak the reed for five minutes and look at it from the {front|end}: the gap should be an even oval, about as high as {a thick fingernail|a fingernail is thick}{, no more|}.",
            "look again after ten minutes of playing and {compare|see whether it has changed|see what it has done}{: that tells you more than the first look|}.",
            "start a note {very softly|as softly as you can}: if it needs a push, the gap may be too wide; if the sound is thin and high, {too narrow|it may be too narrow}.",
        ],
        null,
        [
            "let a new reed rest for {some|a few} days before you judge its opening{: it still moves|, since it still moves|}.",
            "soak it for the same time {every day|each day}, so that you {compare like with like|can compare one day with another}{ and not two soakings|}.",
            "try fingers before the knife, and only when it is wet: press the {faces|flat faces} gently to close it, pinch the sides gently to {open it|make it open}.",
            "play it for a minute and {look again|look at it again}{ before you do more|, and only then do more|}.",
            "take cane away only when the opening stays right {by itself|on its own}{ for a few days| from one day to the next|}.",
        ]);

    internal static TeachingNote Keeping { get; } = new(
        [
            "{write|note} the date of the first day on a slip in the case: after some weeks of daily playing a reed is {usually|mostly} {used up|worn}{, and it is time for another|}.",
            "look through the reed from the cork end {against the light|towards the light|against a bright sky}: nothing should {lie inside|be caught inside}.",
        ],
        null,
        [
            "{start|make|begin} the next reed before the one you play is {tired|worn out|quite tired}.",
            "take turns with three reeds, a day each{, so each can dry|, so none gets tired|}.",
            "rinse the reed in fresh water {after playing|when you have played}{, before you dry it|}.",
            "clean it inside {from time to time|now and then}, wet, from the cork end {out through the tip|towards the tip and out|and out at the tip}.",
            "push it all the way into the instrument, {with a turn and without force|with a small turn and no force}{, and hold it by the cork|}.",
        ]);
}
