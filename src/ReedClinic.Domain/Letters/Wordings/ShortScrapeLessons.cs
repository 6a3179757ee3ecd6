namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>
/// What a letter teaches about the back of a reed with a short scrape, which has one scraped field below the heart instead of windows
/// between spine and rails, and bark from there to the thread. Common practice, in our own words.
/// </summary>
internal static class ShortScrapeLessons
{
    internal static TeachingNote Back { get; } = new(
        [
            "hold it to {a lamp|the lamp|a light}: behind the heart the scrape should {darken|grow darker} {evenly|little by little} towards the bark, left and right {alike|the same}.",
            BodyLessons.Back.Checks[1],
            BodyLessons.Back.Checks[2],
        ],
        [
            "hold the knife upright and work at the lower end of the scrape, {left and right of the middle line|on both sides of the middle line}, {never|and never} on the line {itself|as such}.",
            "{each|every} stroke {starts|begins} where the bark ends and runs towards the tip; it {ends|stops} below the heart.",
            "{take three strokes|three strokes} on each side of {each|either} blade, then stop and {crow it|listen to the crow|try the crow}{ before you go on|}.",
        ],
        [
            "draw a line {with pencil|with a pencil|in soft pencil} where the scrape ends, on both blades{ before you begin| first|}.",
            "scrape only between {it|that line} and the heart, three strokes left and three right, on {both blades|each blade}.",
            "keep the bark behind the line {whole|as it is}{, all round|}: a longer scrape is {another reed|a reed of another kind}.",
            BodyLessons.Back.Plan[3],
            BodyLessons.Back.Plan[4],
        ]);

    internal static TeachingNote BackKept { get; } = new(
        [
            "hold it to {a lamp|the lamp|a light}: the middle line should be darker than what lies {beside it|left and right of it}, {all the way|from end to end}.",
            BodyLessons.BackKept.Checks[1],
        ],
        null,
        [
            "draw the middle line and the end of the scrape {with pencil|with a pencil|in soft pencil} before the first stroke, and {renew|redraw} the lines when they {fade|wear off}.",
            "lift the knife at the edge {instead of letting it run|and don't let it run|rather than letting it run} off the side{ of the blade|}.",
            BodyLessons.BackKept.Plan[2],
            BodyLessons.BackKept.Plan[3],
            BodyLessons.BackKept.Plan[4],
        ]);

    /// <summary>For every reed but an oboe’s with a long scrape: nobody has published how long the tips of the others are.</summary>
    internal static TeachingNote Line { get; } = TipLessons.Line with
    {
        Checks =
        [
            TipLessons.Line.Checks[0],
            "{measure|take a ruler and measure|with a ruler, measure} from the end of the reed to this line, in the middle and at the sides, on a reed that you like and on this one: they should be nearly alike.",
            TipLessons.Line.Checks[2],
        ],
        Stroke =
        [
            .. TipLessons.Line.Stroke!.Take(2),
            TipLessons.Line.Stroke![2],
            "it is shorter in the middle of the tip and longer at {its|the} sides.",
            TipLessons.Line.Stroke![4],
        ],
        Plan =
        [
            "{before you scrape, draw|first draw} a line in {soft pencil|pencil} on both blades where the tip is to begin: as far from the end as on a reed that you like.",
            .. TipLessons.Line.Plan.Skip(1),
        ],
    };

    internal static TeachingNote HeartKept { get; } = BodyLessons.HeartKept with
    {
        Checks =
        [
            "hold it to {a lamp|the lamp|a light}: the middle of the heart should be {darker than the rest of the scrape in front of it|the darkest part of the front half of the scrape}.",
            BodyLessons.HeartKept.Checks[1],
        ],
    };
}
