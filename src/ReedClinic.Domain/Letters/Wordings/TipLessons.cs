namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What a letter teaches about the tip. Common practice, in our own words.</summary>
internal static class TipLessons
{
    internal static TeachingNote Sides { get; } = new(
        [
            "{slide in|slip in|push in} a dark plaque{ between the blades|} and {look|look straight} down on the tip. {It shows|The dark shows} through thin cane, so the corners should be {darkest|the darkest}; {if|where} they are as pale as the middle, {they want thinning|there is more to take|they are still thick}.",
            "{turn the reed over and {look again|do the same again|look at the other blade}; both blades should {look alike|look the same|show the same}|then {look at|study} the other blade {in the same way|too}: {they should match|both should look alike|one should be like the other}}.",
            "{start|begin} a {middle|comfortable} note with the breath alone, as softly as you can: {it should|it ought to|a good tip will} {come|start} {on the air|with the air}, {without a bump|with no bump|with no thump}.",
        ],
        [
            "{the reed is wet, and the plaque lies|the reed has to be wet, and the plaque should lie|wet the reed well, and let the plaque lie} {flat and square|flat and straight|flat, not askew,} {under|beneath} the tip.",
            "hold the knife {almost|nearly} upright, {leaning a little {in the direction it travels|the way it moves}|tilted a little the way it moves}, and let it touch {only|no more than} the outer third of the tip.",
            "{the stroke|each stroke|every stroke} is {as long as|no longer than|about as long as} a grain of rice: it {starts|begins} just in front of the line between heart and tip, runs {outwards|slantwise out} to the corner, and ends {past it|in the air past it}.",
            "it should {sound like|make no more noise than|sound no louder than} a {whisper|soft whisper}; {when|if} it scratches, the knife is blunt or {the hand too heavy|the hand is pressing|you are pressing}.",
        ],
        [
            "scrape the tip, two strokes {a side|to a side} on {each|either} blade, {three times at the most|no more than three times}, until {you can see clearly|it is easy to see|anybody could see} where it {begins|starts}.",
            "{then|after that|from then on} leave the middle of the tip {alone|as it is} and work {only outwards|outwards only}, towards the {corners|two corners}.",
            "{take two strokes on|give two strokes to|two strokes on} each of the four corners, then {crow it|try it|listen to the crow}; {no more than|at most} three rounds {in|on} one day.",
            "{when|if|as soon as} the crow {drops|sinks} {below|lower than} <crow>, {put the knife down|take no more strokes|scrape no more}, and ask your teacher to cut {a hair's breadth|no more than a hair} off the end{: that brings it up again|}.",
            "stop {when|as soon as} a soft note {starts|begins|comes} on the breath alone{, even if it isn't perfect|: that is what all this is for|}.",
        ]);

    internal static TeachingNote Centre { get; } = new(
        [
            "{slide in|slip in} a dark plaque and look down on the tip. Its middle should be {a shade|a little} paler than its sides, where thin cane {lets the dark show through|lets the dark through}; if it is dark {all across|right across}, the middle {has gone|is too thin}.",
            "hold a high note without biting: it should {keep its place|stay where it is}; if it {sinks or flutters|flutters or sinks}, the tip has {no middle|nothing in the middle} to {lean on|stand on}.",
            "{crow it|try the crow} with {very little|hardly any} air: a rattle without a high note {tells the same story|points to the same thing|means the same}.",
        ],
        [
            "{the reed is wet, and the plaque {supports|lies under}|the reed has to be wet, and the plaque should {support|lie under}|wet the reed well, and let the plaque {support|lie under}} the whole tip.",
            "{lay|set} the knife {beside the middle line, never on it|next to the middle line and never on it|close to the middle line but not on it}, {almost|nearly} upright.",
            "{each|every} stroke {starts|begins} beside the middle, runs towards one corner, and ends past the end of the tip; the middle itself is {never crossed|not crossed|left out}.",
        ],
        [
            "{with a soft pencil, draw|draw, with a soft pencil,|in soft pencil, draw} a line down the middle of the tip before you {start|begin|scrape}.",
            "{slide|slip} the plaque in and take two strokes on {either side|each side} of that line, on {both blades|one blade and then the other}, and {leave the line standing|leave the line itself alone|let the line stand}{: it is the support|}.",
            "after every {two strokes|second stroke} take the plaque out and hold the reed to {the lamp|a lamp|the light}: {against a lamp|in front of a lamp|held so} thin cane is bright, so the middle should {stay|remain} a shade darker than the sides.",
            "if the tip has {become|grown} too thin, ask your teacher to cut a {hair|hair's breadth} off the end {rather than scrape more|instead of scraping more|and don't scrape any more}.",
            "try a high note after each round, {no more than|at most} three rounds on one day, and stop {as soon as|when} it {holds|stays up|keeps its place} {by itself|without help|on its own}.",
        ]);

    internal static TeachingNote Line { get; } = new(
        [
            "hold the wet reed to {a lamp|the lamp|a light}: {there should be|you should see|look for} a clear line between heart and tip, {dark on one side of it and bright on the other|where dark turns to bright|where the dark ends and the bright begins}.",
            "{measure|take a ruler and measure|with a ruler, measure} from the end of the reed to this line: about two millimetres in the middle and about four at the sides are {usual|common} on a reed scraped {almost to the thread|nearly to the thread|down to near the thread}.",
            "{crow it|listen to the crow|try the crow}{ while it is still wet|, the reed still wet|, with the reed still wet}: a {clear|clearly cut|well cut} tip gives {a clear high note|one clear high note} with {little|only a little|very little} air.",
        ],
        [
            "wet the reed, {support the tip with the plaque|let the plaque support the tip|put the plaque under the tip}, and hold the knife {almost|nearly} upright{, never flat|, not flat|}.",
            "{start|begin} {each|every} stroke just in front of the line that you {marked|drew} in pencil, and {draw|lead} it {lightly|with little weight} towards the end of the reed; set one stroke {beside|next to} the other.",
            "{the strokes are|keep the strokes} short{ and light|}: lift the knife {just |}before the end of the reed.",
            "{the tip is short|so short is the tip}, and {shortest|shorter still} in the middle{: there a stroke has little room|, where a stroke has little room|}.",
            "{never dig|don't dig} at that line: the tip should {begin|start} with {a change of slope|a bend in the slope}, {not a ditch|not a groove|and no ditch}.",
        ],
        [
            "{before you scrape, draw|first draw} a line in {soft pencil|pencil} on both blades where the tip is to begin: about two millimetres from the end in the middle, about four at the sides.",
            "{slide|slip} the plaque in, {leave the heart {alone|as it is|in peace} and thin only the tip|thin only the tip, and leave the heart {alone|as it is|in peace}}: three light strokes on the left and three on the right, on {each|either} blade{: that is one round|, which is one round}.",
            "{then|after each round} take the plaque out, {crow the reed|try the crow} and hold it{, still wet,|} to {the lamp|a lamp|the light}. {Do|Go on with} another round only while the tip isn't {clearly|plainly} brighter than the heart, and {no more than|at most} three rounds {in|on} one day.",
            "{last of all|at the very end|last}, go over that place with a fingertip: {an edge that you feel comes off|take an edge off} with {two or three|no more than three} light strokes in front of it; the line between dark and bright {stays|is to stay}.",
            "stop {when|as soon as|once} the crow {begins|starts} with {one clear high note|a clear high note}{; the rest is for another day|, even if it isn't perfect|}.",
        ]);

    internal static TeachingNote Slope { get; } = new(
        [
            "{draw|run} a fingertip lightly from the heart to the tip: you should feel a slope, {not a stair and not a bump|no stair and no bump|and neither a stair nor a bump}.",
            "let the light {fall|come} from the side: {ridges throw|a ridge throws|every ridge throws} {a small shadow|a little shadow}{ that you can see|}.",
            "{repeat|play} one note {again and again|many times}, short and dry: {every start|each start} should be {the same|like the one before}.",
        ],
        [
            "hold the knife upright and let it {ride|glide} over the slope between heart and tip with {almost no weight|hardly any weight|next to no weight}.",
            "{the stroke|each stroke} {begins|starts} at the front of the heart and ends in the first millimetre of the tip; lift the knife before it {reaches|gets to} the very end.",
            "work beside the middle line, {left and right {by turns|in turn}|once on the left and once on the right}{, never on it|}.",
        ],
        [
            "{shape|make} the tip first and leave a small {stair|step} between it and the heart{ for now|, which goes later|}.",
            "then take the {stair|step} away with light strokes, four on each side of {each|either} blade; {no more than two such rounds|two such rounds at the most} on one day.",
            "look at it {with light from the side|with the lamp at one side|in light from the side} after {each|every} round{ of strokes|}.",
            "{crow it|listen to the crow}: the low note should join {sooner|earlier} {as|while} the slope gets {smoother|more even}.",
            "stop when finger and ear {agree|are content|tell the same}; the heart must {stay|remain} dark against the {lamp|light}.",
        ]);

    internal static TeachingNote End { get; } = new(
        [
            "look at the very end {with|through} a magnifying glass: it should be straight, with two whole corners{ and nothing frayed|, and nothing frayed|}.",
            "listen {close to the reed|closely} {as|while} you play softly: a hiss {points to|comes from|tells of} the very end of the tip.",
        ],
        null,
        [
            "put the cap or the case over the tip {whenever|as long as|while} the reed is not {in your mouth|between your lips|being played}.",
            "wet the reed before you touch the tip, {always|every time|each time}{: dry cane breaks|, since dry cane breaks|}.",
            "{slide|slip} the plaque in from the side, {not|never} from the front{, where the corners are|}.",
            "cut on a firm block{,|} with a blade {that has cut nothing else|that you use for nothing else|kept for that alone}.",
            "look at both corners {after every stroke near them|each time you have been near them|after each stroke close to them}{, with a lens if you have one|}.",
        ]);
}
