using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Data.Demo;

/// <summary>The teaching notes of the demo’s studio; invented, and common practice where they speak of the trade.</summary>
internal static class DemoNotes
{
    public static readonly IReadOnlyList<OwnNoteWords> All =
    [
        new(
            "Corners against the lamp",
            "{student}, hold {reeds} against a lamp, with nothing between the blades. Light should come through {place} before it comes through the middle. "
            + "Where it doesn’t, the last two strokes of the knife stopped too early.\n\n"
            + "Let somebody stand beside you the first few times, and keep the other hand behind the edge.",
            "https://lanternquay.example/corners",
            [new("tip-corners-thick"), new("tip-thick")]),
        new(
            "A pencil line for the tip",
            "Before the next scrape, draw a thin pencil line where the tip should begin. Scrape up to it from both sides and leave the line itself for last: "
            + "when you can see it on {blade} without searching, the tip is apart from the heart.",
            null,
            [new("tip-not-separate")]),
        new(
            "The opening after a rest",
            "Soak {reed}, let it lie for five minutes, and look at the opening again before you touch it. Many an opening that seemed wrong was only thirsty.",
            null,
            [new("opening-wide"), new("opening-narrow")]),
    ];
}
