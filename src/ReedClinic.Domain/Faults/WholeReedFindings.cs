using ReedClinic.Domain.Reeds;
using static ReedClinic.Domain.Bench.FindingCharacter;
using static ReedClinic.Domain.Bench.FindingShape;

namespace ReedClinic.Domain.Faults;

/// <summary>What can be the matter with the reed as a whole, its opening, and what holds it.</summary>
internal static class WholeReedFindings
{
    internal static IReadOnlyList<FindingKind> All { get; } =
    [
        new(new("opening-wide"), "opening too wide", Zone.Opening, Fault, ShapeAcross,
            "The gap at the tip is large, so soft playing is hard work.",
            EvidenceMark.CommonPractice),
        new(new("opening-narrow"), "opening too narrow", Zone.Opening, Fault, ShapeAcross,
            "The gap at the tip is small, so the sound is thin and the pitch tends to rise.",
            EvidenceMark.Published(TradeTexts.TwoIdeasOnPitch)),
        new(new("opening-lopsided"), "opening lopsided", Zone.Opening, Fault, ShapeAcross,
            "The gap is higher on one side than on the other.",
            EvidenceMark.Published(TradeTexts.WornReeds)),
        new(new("centre-closes-first"), "centre closes before the sides", Zone.Opening, Fault, ShapeAcross,
            "When the reed is pressed lightly the middle meets first; it should be the last.",
            EvidenceMark.Published(TradeTexts.ClosingPattern)),
        new(new("closes-in-play"), "closes while it is played", Zone.Opening, Fault, Spot,
            "The gap is right at first and shrinks after some minutes.",
            EvidenceMark.Published(TradeTexts.ClosingInPlay)),
        new(new("more-open-than-liked"), "more open than I like", Zone.Opening, Taste, ShapeAcross,
            "This teacher would choose a smaller gap; that is the player's own choice.",
            EvidenceMark.CommonPractice),
        new(new("brighter-than-liked"), "brighter than I like", Zone.WholeReed, Taste, Spot,
            "This teacher would choose a darker sound; that is the player's own choice.",
            EvidenceMark.CommonPractice),
        new(new("crooked-on-staple"), "blades crooked on the staple", Zone.Thread, Fault, Comparison,
            "The cane was tied a little askew, so the blades don't stand straight.",
            EvidenceMark.Published(TradeTexts.LeakCauses)),
        new(new("thread-too-high"), "thread too far up", Zone.Thread, Fault, SeparationAlong,
            "The thread runs past the end of the staple and pinches the cane.",
            EvidenceMark.Published(TradeTexts.TeachingHandbook)),
        new(new("thread-leak"), "leak at the thread", Zone.Thread, Fault, Spot,
            "Air escapes through the binding.",
            EvidenceMark.CommonPractice),
        new(new("cork-loose"), "cork loose or worn", Zone.Cork, Fault, Spot,
            "The reed rocks in the instrument, which weakens the low notes.",
            EvidenceMark.Published(TradeTexts.CorkAdvice)),
        new(new("dirty-inside"), "dirt inside", Zone.Inside, Fault, Spot,
            "Something is caught between the blades and damps them.",
            EvidenceMark.CommonPractice),
        new(new("worn"), "worn out", Zone.WholeReed, Fault, Spot,
            "The cane is tired from hours of playing and no longer springs back.",
            EvidenceMark.CommonPractice),
    ];
}
