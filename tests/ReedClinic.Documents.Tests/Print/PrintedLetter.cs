using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>Letters to print whose words stand here, so that they look the same whatever the composer comes to say. All of it is invented.</summary>
internal static class PrintedLetter
{
    public static readonly DateTimeOffset Day = new(2026, 3, 9, 12, 0, 0, TimeSpan.Zero);

    private static readonly string[] Tags = ["sand-coloured thread, tag 1", "sand-coloured thread, tag 2, pencil dot near the thread", "green thread, no tag"];

    /// <summary>Three reeds with the same fault, or as many as are asked for.</summary>
    public static LetterDraft Usual(int reeds = 3)
    {
        List<LetterReed> known = [.. Enumerable.Range(1, reeds).Select(Reed)];
        return new(
            new BatchId(Id(100)), "7KP-W3MQ", "Ines", "Mara, at the harbour bench", ScrapeStyle.LongScrape, known,
            [.. Beginning(reeds), .. known.SelectMany(About), .. End()])
        {
            Studio = "The Harbour Bench",
            LessonKind = new FindingKindId("tip-corners-thick"),
            LessonMarks = [new(new Place(Zone.TipCorners, Blades.Upper), MarkKind.Fault, "corners of the tip too thick", "reeds 1, 2 and 3"), new(new Place(Zone.TipCorners, Blades.Lower, Sides.Left), MarkKind.Fault, "corners of the tip too thick", "reed 2")],
        };
    }

    /// <summary>The same letter with other marks on its first reed.</summary>
    public static LetterDraft Marked(ScrapeStyle style, Instrument instrument, params IReadOnlyList<ReedMark> marks)
    {
        var letter = Usual(1);
        return letter with { Scrape = style, Instrument = instrument, Reeds = [letter.Reeds[0] with { Marks = marks }] };
    }

    /// <summary>A crow's way with so many steps.</summary>
    public static CrowPicture Crow(int steps)
    {
        string[] work = ["corners ×2", "clip 0.1 mm", "heart sides", "tip sides", "windows ×2", "blend"];
        List<double> cents = [.. Enumerable.Range(0, steps + 1).Select(index => index == steps ? 0 : Math.Round(-70 + (index * 70.0 / steps) - (index % 3 * 15)))];
        return new(
            "C", 442, "From 70 cents below C to C in three passes",
            [.. cents.Select((middle, index) => new CrowHeard(index, middle - (index == 1 ? 25 : 0), middle + (index == 1 ? 25 : 0)))],
            [.. Enumerable.Range(0, steps).Select(index => new CrowMove([work[index % work.Length]], $"{10 + index} cents up", $"{work[index % work.Length]}: {10 + index} cents up", index == 1))]);
    }

    private static LetterReed Reed(int number) => new(new ReedId(Id(number)), number, Tags[(number - 1) % Tags.Length],
    [
        new(new Place(Zone.Spine), MarkKind.Strength, "spine left whole"),
        new(new Place(Zone.TipCorners, Blades.Upper), MarkKind.Fault, "corners of the tip too thick", "seen on the plaque"),
        new(new Place(Zone.Opening), MarkKind.Taste, "more open than you like it"),
        new(new Place(Zone.TipCorners), MarkKind.Worked, "thinned", Times: number),
        new(new Place(Zone.TipEdge), MarkKind.Worked, "clipped 0.1 mm"),
        new(new Place(Zone.HeartCentre), MarkKind.LeaveAlone, "it is just right and holds the pitch"),
    ])
    { Crow = Crow(2 + (number % 3)) };

    private static IEnumerable<LetterBlock> Beginning(int reeds) =>
    [
        Block("greeting", BlockKind.Greeting, "Dear Ines,", reeds == 1 ? "Thank you for the reed. It came safely on Tuesday, and I have had it on the bench for two afternoons." : "Thank you for the reeds. They came safely on Tuesday, all of them dry and whole, and I have had them on the bench for two afternoons."),
        Block("done-well", BlockKind.DoneWell, "The spine runs unbroken from the tip to the bark, and the windows are open and even.", "The thread is wound tight and closes the sides.") with { Heading = "What you do well", IsList = true },
        Block("answers", BlockKind.Answers, "You asked: “Which one should I play first?” Begin with number one. It is the easiest of them.") with { Heading = "Your questions" },
    ];

    private static IEnumerable<LetterBlock> About(LetterReed reed) =>
    [
        Block($"reed-{reed.Number}-story", BlockKind.ReedStory,
            "It came with thick corners: on the plaque they showed pale at both ends of the tip, and the softest start came late and with a hiss. Everything behind the tip was sound, so I kept my knife away from it.",
            "In the first pass I thinned the corners on both blades, twice, from the front of the heart outwards past the corner, and listened after each side. The crow moved from 70 cents below C to just under it. Then a hair off the tip, 0.1 mm, brought it up to C. I looked at the opening again after every pass, since thinner corners let the blades close sooner at the sides; it stayed as it was.",
            "I stopped there: every further stroke was giving less than the one before, and the tip has nothing to spare.") with { Reed = reed.Id },
        Block($"reed-{reed.Number}-now", BlockKind.ReedNow) with
        {
            Reed = reed.Id,
            Rows =
            [
                new("softest start", "late, with a hiss", "at once, on very little air", Movement.Nearer, []),
                new("crow", "one note, 70 cents below C", "C in two octaves", Movement.Nearer, []),
                new("slur down to low B♭", "breaks at C♯", null, Movement.Same, []),
                new("staying up to pitch when tired", "442 Hz, holds for 5 minutes", "a little lower after 5 minutes", Movement.Further, []),
            ],
        },
        Block($"reed-{reed.Number}-use", BlockKind.ReedUse, "Play this one first, ten minutes a day in the first week, and then as you like.", "Soak it for 3 minutes in lukewarm water, up to the thread.", "Leave the middle of the heart alone: it holds the pitch.") with { Reed = reed.Id, IsList = true },
    ];

    private static IEnumerable<LetterBlock> End() =>
    [
        Block("lesson", BlockKind.Lesson, "All of them had the same thing: the corners of the tip are thicker than its middle. The tip then speaks from the middle alone, and soft notes come late.") with { Heading = "What they have in common" },
        Block("habit", BlockKind.Habit, "Perhaps your knife turns back before the corner. It is easily done: the corner is where one fears to break through."),
        Block("check", BlockKind.CheckYourself, "Look down on the tip over a dark plaque, in good light: its corners should be darker than its middle.", "Bend each corner with a fingernail, very gently. It should give as easily as on a reed that you like.") with { Heading = "How to see it yourself", IsList = true },
        Block("stroke", BlockKind.Stroke, "Begin in front of the heart and let the stroke end in the air, past the corner. Lift nothing before it. Ten light strokes rather than two strong ones, and turn the reed over after every five.") with { Heading = "The stroke" },
        Block("plan", BlockKind.Plan, "Sharpen the knife before you begin, and again before the tip.", "Scrape the tip last, from the middle outwards.", "Try the softest start after every ten strokes, and write down what it did.", "Stop when it speaks. What a tip has lost doesn’t come back.") with { Heading = "For the next reed", IsList = true },
        Block("care", BlockKind.Care, "Let them dry in the open before you close the case.", "Rinse them after playing, and don’t lend them.") with { Heading = "Playing in and care", IsList = true },
        Block("cautions", BlockKind.Cautions, "Cut away from your fingers, with the reed held on the mandrel, and put the knife down before you look up. Don’t breathe the dust in: work over a damp cloth. If a reed has grown mould, throw it away.") with { Heading = "Please mind" },
        Block("closing", BlockKind.Closing, "Write to me how they do after a week. I wish you much pleasure with them.", "Mara, at the harbour bench"),
    ];

    public static LetterBlock Block(string key, BlockKind kind, params IEnumerable<string> paragraphs) => new(key, kind, [.. paragraphs.Select(LetterParagraph.Plain)]);

    private static Guid Id(int number) => new($"018f0000-0000-7000-8000-{number:D12}");
}
