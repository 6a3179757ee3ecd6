namespace ReedClinic.Domain.Letters;

/// <summary>The notes themselves. Common practice, in our own words.</summary>
internal static class TeachingNotes
{
    internal static TeachingNote General { get; } = new(
        [
            "Hold the wet reed in front of a lamp: light and dark should lie the same on the left and on the right.",
            "Crow it with the lips at the thread, first with very little air: you should hear one high note, and a lower one joining as the air grows.",
        ],
        null,
        [
            "Soak the reed for three to five minutes and look at it before you do anything.",
            "Crow it, play one low and one high note, and write down what you hear.",
            "Change one thing only, the same on both sides and both blades.",
            "Try the same notes again and compare them with what you wrote.",
            "Stop while it is still getting better, and go on another day.",
        ]);

    internal static TeachingNote TipSides { get; } = new(
        [
            "Slide a dark plaque between the blades and look at the tip: the corners should be the palest part of it. If they are as dark as the middle, there is still cane to take.",
            "Start a middle note with the breath alone, as softly as you can: it should come on the air, without a bump.",
            "Turn the reed over and look again; both blades should look alike.",
        ],
        [
            "The reed is wet, and the plaque lies flat and square under the tip.",
            "Hold the knife almost upright, leaning a little in the direction it travels, and let it touch only the outer third of the tip.",
            "The stroke is as long as a grain of rice: it starts just in front of the line where the heart ends and runs outwards over the corner, off the edge.",
            "It should sound like a whisper; when it scratches, the knife is blunt or the hand too heavy.",
        ],
        [
            "Scrape the tip until the low line in front of the heart is clear.",
            "Then leave the middle of the tip alone and work only outwards, towards the corners.",
            "Two strokes on each of the four corners, then crow it.",
            "When the crow falls below C, clip a hair and go on.",
            "Stop when a soft note starts on the breath alone.",
        ]);

    internal static TeachingNote TipCentre { get; } = new(
        [
            "Slide a dark plaque between the blades: the middle of the tip should look a shade darker than its sides. If the tip is pale all across, the middle has gone.",
            "Hold a high note without biting: it should keep its place. If it sinks or flutters, the tip has no middle to lean on.",
            "Crow it with very little air: a rattle without a high note tells the same story.",
        ],
        [
            "The reed is wet, and the plaque supports the whole tip.",
            "Lay the knife beside the middle line, never on it, almost upright.",
            "Each stroke starts beside the middle, runs towards one corner, and ends past the edge; the middle itself is never crossed.",
        ],
        [
            "With a soft pencil, draw a line down the middle of the tip before you start.",
            "Scrape on either side of that line and leave the line standing.",
            "After every two strokes hold the reed to the lamp: the middle should stay a shade darker.",
            "If the tip has become too thin, clip a hair rather than scrape more.",
            "Stop as soon as a high note holds by itself.",
        ]);

    internal static TeachingNote TipLine { get; } = new(
        [
            "Hold the wet reed to a lamp: there should be a clear line, like the ridge of a roof, where the dark heart ends and the bright tip begins.",
            "Measure from the end of the reed to that line: about two millimetres in the middle and about four at the sides are usual on a long-scrape reed.",
            "Crow it: a clear tip gives a clear high note with little air.",
        ],
        [
            "Support the tip with the plaque, and hold the knife almost upright.",
            "Work in the low line just in front of the heart, with very short, light strokes towards the tip.",
            "Begin at the line, lift the knife within two millimetres, and never dig: the line is a change of slope, not a ditch.",
        ],
        [
            "Before you scrape, draw the line of the roof on both blades with a soft pencil.",
            "Thin the tip in front of the line first and leave the heart alone.",
            "Look at it against the lamp after every few strokes, both blades.",
            "Join tip and heart last, with a few light strokes over the line.",
            "Stop when the crow begins with one clear high note.",
        ]);

    internal static TeachingNote Slope { get; } = new(
        [
            "Draw a fingertip lightly from the heart to the tip: you should feel a slope, not a stair and not a bump.",
            "Let the light fall from the side: ridges throw a small shadow.",
            "Repeat one note, short and dry: every start should be the same.",
        ],
        [
            "Hold the knife upright and let it ride over the slope between heart and tip with almost no weight.",
            "The stroke begins at the front of the heart and ends in the first millimetre of the tip; lift the knife before it reaches the edge.",
            "Work beside the middle line, left and right by turns.",
        ],
        [
            "Shape the tip first and leave a small stair behind it.",
            "Then take the stair away with light strokes, four on each side of each blade.",
            "Look with light from the side after each round.",
            "Crow it: the low note should join sooner as the slope gets smoother.",
            "Stop when finger and ear agree; the heart must stay dark against the lamp.",
        ]);

    internal static TeachingNote TipEnd { get; } = new(
        [
            "Look at the very end with a magnifying glass: it should be straight, with two whole corners.",
            "Listen close to the reed as you play softly: a hiss points to the edge.",
        ],
        null,
        [
            "Put the cap or the case over the tip whenever the reed is not in your mouth.",
            "Wet the reed before you touch the tip, always.",
            "Slide the plaque in from the side, not from the front.",
            "Cut on a firm block with a blade that has cut nothing else.",
            "Look at both corners after every stroke near them.",
        ]);

    internal static TeachingNote HeartSides { get; } = new(
        [
            "Press the wet blades together very lightly and watch from the front: the sides should meet first and the middle last.",
            "Hold it to a lamp: the heart should be darkest in the middle and fade towards both edges.",
            "Crow it and let the air grow: the low note should join without a push.",
        ],
        [
            "Support the heart with the plaque or a finger, and hold the knife almost upright.",
            "Work on the flank of the heart, halfway between the middle and the edge, never on the middle itself.",
            "Each stroke starts at the bottom of the heart, runs towards the tip, and ends before the line of the roof.",
        ],
        [
            "Mark the middle of the heart with pencil and stay off it.",
            "Take three light strokes on each flank, on both blades.",
            "Crow it, and press it lightly to see what closes first.",
            "Repeat only if the middle still closes before the sides.",
            "Stop when the low note joins the crow by itself.",
        ]);

    internal static TeachingNote HeartKept { get; } = new(
        [
            "Hold it to a lamp: the middle of the heart should be the darkest place in front of the thread.",
            "Play one long note from soft to loud: it should keep its pitch. If it sinks when you play loudly, the heart is thin.",
        ],
        null,
        [
            "With pencil, shade the middle of the heart on both blades: this stays.",
            "Do all the thinning in the tip and at its sides.",
            "Hold it to the lamp after every pass and look for the dark middle.",
            "When it feels hard, look at the corners of the tip first, not at the heart.",
            "Stop early; a heart that was left too strong can be eased another day.",
        ]);

    internal static TeachingNote Back { get; } = new(
        [
            "Hold it to a lamp: the windows on either side of the spine should be clearly brighter than the spine and the rails.",
            "Play the lowest notes softly: they should speak without a push.",
            "Crow it: if only the high note comes, the back is still holding the reed.",
        ],
        [
            "Hold the knife upright and stay between the spine and the rail: there are four windows, two on each blade.",
            "Each stroke starts above the bark and runs towards the tip; it ends below the heart.",
            "Three strokes in each of the four, then stop and crow.",
        ],
        [
            "Draw the spine and the two rails with pencil on both blades.",
            "Scrape only between them, the same number of strokes in all four windows.",
            "Keep about three millimetres of bark above the thread.",
            "Crow after every round and watch the opening.",
            "Stop when the low note joins the crow.",
        ]);

    internal static TeachingNote BackKept { get; } = new(
        [
            "Hold it to a lamp: you should see a dark line down the middle and a narrow dark strip along each edge, all the way.",
            "Play for ten minutes and look at the opening again: it should be nearly what it was.",
        ],
        null,
        [
            "Draw the spine and the rails with pencil before the first stroke, and renew the lines when they fade.",
            "Lift the knife at the rail instead of letting it run off the edge.",
            "Take less from the back than you think, and try it.",
            "When the low notes are late, look at the tip and its corners first.",
            "Stop when the opening begins to fall, whatever else is still to do.",
        ]);

    internal static TeachingNote Evenness { get; } = new(
        [
            "Hold the wet reed to a lamp and compare left with right: the same shades should lie on both sides.",
            "Slide a dark plaque in and look at one blade, then turn the reed over and look at the other.",
            "Play it both ways up: it should feel the same.",
        ],
        [
            "Work only on the darker side; the brighter one has given enough.",
            "Turn the reed in your hand instead of bending your wrist, so that the knife meets left and right at the same angle.",
            "One stroke, then look; the stroke ends where the dark patch ends.",
        ],
        [
            "Count your strokes aloud: the same number left and right, upper and lower.",
            "Turn the reed round so that each side is worked from the same position.",
            "Look at it against the lamp after every round.",
            "Put right what is uneven before you go on to anything else.",
            "Stop when you can't tell the two sides apart.",
        ]);

    internal static TeachingNote Tying { get; } = new(
        [
            "Look at the reed from the end and from the side: the blades should stand straight and overlap by no more than a hair.",
            "Close the cork end with a finger and draw the air out: the blades should stay together for a moment and then open with a small pop.",
            "Blow gently with the cork end closed and the reed under water: no bubbles should come from the sides or the thread.",
        ],
        null,
        [
            "Set the cane straight on the staple, and check it from the front and from the side before you pull tight.",
            "Wind evenly, and let the last turn finish level with the end of the staple, not beyond it.",
            "Watch which way the thread pushes the upper blade, and let the blades lie that way.",
            "Pull firmly, but stop before the cane creaks.",
            "Test for leaks before the first stroke of the knife.",
        ]);

    internal static TeachingNote Opening { get; } = new(
        [
            "Soak the reed for five minutes and look at it from the front: the gap should be an even oval, about as high as a thick fingernail.",
            "Look again after ten minutes of playing and compare.",
            "Start a note very softly: if it needs a push, the gap may be too wide; if the sound is thin and high, too narrow.",
        ],
        null,
        [
            "Let a new reed rest for some days before you judge its opening.",
            "Soak it for the same time every day, so that you compare like with like.",
            "Try fingers before the knife: press the faces gently to close it, pinch the sides gently to open it, and only when it is wet.",
            "Play it for a minute and look again.",
            "Take cane away only when the opening stays right by itself.",
        ]);

    internal static TeachingNote Keeping { get; } = new(
        [
            "Write the date of the first day on a slip in the case: after some weeks of daily playing a reed is simply used up.",
            "Look through the reed from the cork end against a window: nothing should lie inside.",
        ],
        null,
        [
            "Start the next reed before this one is tired.",
            "Take turns with three reeds, a day each.",
            "Rinse the reed after playing and let it dry in the open.",
            "Clean it inside from time to time, wet, from the cork end out through the tip.",
            "Push it all the way into the instrument, with a turn and without force.",
        ]);
}
