namespace ReedClinic.Domain.Diagnosis.Habits;

/// <summary>A habit, and what it leaves behind. All of it is common practice.</summary>
/// <param name="Id">Its lasting name.</param>
/// <param name="Perhaps">The guess, to stand after “Perhaps”.</param>
/// <param name="Needs">What must recur: each of these, any one of those that stand together.</param>
/// <param name="Against">What speaks against it where it recurs.</param>
/// <param name="Check">How to check it oneself.</param>
/// <param name="Tests">The tests for that.</param>
internal sealed record HabitWay(string Id, string Perhaps, string[][] Needs, string[] Against, string Check, string[] Tests);

/// <summary>Habits of the knife and of the thread: the order of zones, the knife’s path, and a zone that is thinned because its neighbour was left.</summary>
internal static class HabitTable
{
    internal static IReadOnlyList<HabitWay> All { get; } =
    [
        new("up-the-middle", "the strokes go straight up the middle and leave the cane over the centre of the tip.",
            [["tip-even-across", "tip-centre-thin"]], ["tip-falls-to-sides"],
            "Scrape a line in pencil across the tip and take one stroke: the pencil should go at the side first. If it goes at the side and the centre is thin all the same, it is something else.",
            ["look-plaque", "look-lamp"]),
        new("short-of-the-corners", "the knife leaves the cane before it comes to the corners.",
            [["tip-corners-thick"]], ["tip-falls-to-sides"],
            "Blacken the corners with a pencil and take your usual strokes: what is still black was never reached. If they come clean, the knife is pressed less there.",
            ["look-plaque", "softest-tone"]),
        new("tip-for-the-corners", "the whole tip is thinned until it speaks, while the corners that hold it back are left.",
            [["tip-thin", "tip-centre-thin", "tip-even-across"], ["tip-corners-thick"]], [],
            "Before the next stroke on the tip, look at the corners alone on a dark plaque. If they are as dark as the rest of the tip, they are thin too, and it is something else.",
            ["look-plaque", "softest-tone"]),
        new("tip-for-the-heart", "the tip is thinned further and further, while the sides of the heart or the step behind it are left thick.",
            [["tip-thin", "tip-even-across"], ["heart-sides-thick", "step-abrupt", "heart-thick"]], ["blend-smooth"],
            "Press the faces lightly: if the centre meets first, it is the sides of the heart that wait. If the sides meet first, leave the heart alone.",
            ["closing-order", "look-lamp"]),
        new("heart-for-the-back", "the heart is thinned for the sake of the low notes, while the back behind it is left thick.",
            [["heart-thin"], ["back-thick"]], ["heart-well-kept"],
            "Play the low notes before and after one pass in the back alone. If nothing changes, it wasn’t the back.",
            ["low-notes", "look-lamp"]),
        new("back-before-tip", "the back is finished before the tip speaks, so that the reed is weak behind and thick in front.",
            [["back-thin"], ["tip-thick", "tip-corners-thick"]], [],
            "Write down in which order you scrape the next reed, and crow it after each zone. If the tip came first, it is something else.",
            ["crow-soft", "loud-soft-range"]),
        new("over-blended", "the slope is smoothed until no line is left between tip and heart.",
            [["tip-not-separate"]], ["tip-well-separated", "step-abrupt"],
            "Count the strokes on the slope in the next reed, and stop at half of them. If the line is gone all the same, it was never made.",
            ["look-lamp", "crow-texture"]),
        new("one-hand", "the same side is always scraped with less reach or more pressure.",
            [["left-right-uneven", "heart-lopsided", "windows-uneven"]], ["quadrants-matched"],
            "Turn the reed round for every second stroke and count the strokes aloud. If it stays uneven with equal counts, the gouge or the tying may be uneven.",
            ["look-lamp", "look-plaque"]),
        new("one-blade", "the blade that lies on top gets fresher strokes than the other.",
            [["blades-uneven"]], ["quadrants-matched"],
            "Begin the next reed with the other blade. If the same blade is stronger again, it may be the cane.",
            ["turned-over", "look-plaque"]),
        new("blunt-knife", "the knife is blunt and is pressed, so that it tears and leaves ridges.",
            [["bumps", "tip-edge-ragged"]], [],
            "Have the knife looked at, and try one reed with it freshly sharpened. Somebody who knows how should show you how it is sharpened.",
            ["look-plaque", "tongued-notes"]),
        new("off-the-edge", "the strokes run off over the edge of the back.",
            [["rails-cut"]], ["rails-intact"],
            "Draw a pencil line along each rail and see whether it is still there at the end. If it is, the rails were narrow from the shape.",
            ["look-lamp", "seal-draw"]),
        new("over-the-spine", "the strokes in the back cross the middle line.",
            [["spine-scraped"]], ["spine-intact"],
            "Draw a pencil line up the middle of the back and see whether it is still there at the end.",
            ["look-lamp", "top-notes"]),
        new("clip-for-the-tip", "it is clipped to make it speak or rise, and the tip isn’t made anew after.",
            [["tip-short"]], [],
            "Measure before and after each clip, and count the clips of one reed. If there were only one or two, the tip was begun too far up.",
            ["length", "breath-start"]),
        new("tied-askew", "the cane moves while the last turns are wound.",
            [["crooked-on-staple", "slipped-against-winding", "no-slip"]], ["tied-straight"],
            "Look at the next blank end-on after the third turn and after the last. If it stands straight until it is scraped, it is something else.",
            ["look-lamp", "seal-blow"]),
        new("thread-by-eye", "the thread’s end is set by eye and not measured.",
            [["thread-too-high", "thread-leak"]], [],
            "Mark the end of the staple on the thread side with a ruler before tying. If the thread ends there and it leaks, look at the turns.",
            ["length", "seal-blow"]),
        new("put-away-wet", "the reeds are put away wet, and not rinsed.",
            [["dirty-inside", "tip-wavy"]], [],
            "For a week, rinse, shake and dry them open in air. If nothing changes, it is something else.",
            ["look-lamp", "crow-soft"]),
    ];
}
