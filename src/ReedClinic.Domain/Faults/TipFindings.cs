using ReedClinic.Domain.Reeds;
using static ReedClinic.Domain.Bench.FindingCharacter;
using static ReedClinic.Domain.Bench.FindingShape;

namespace ReedClinic.Domain.Faults;

/// <summary>What can be the matter with a tip.</summary>
internal static class TipFindings
{
    internal static IReadOnlyList<FindingKind> All { get; } =
    [
        new(new("tip-thick"), "tip too thick", Zone.TipSides, Fault, Spot,
            "There is more cane in the tip than it needs, so notes start late or with a bump.",
            EvidenceMark.Published(TradeTexts.ReedPrinciples)),
        new(new("tip-thin"), "tip too thin", Zone.TipSides, Fault, Spot,
            "The tip has lost so much cane that there is nothing left to lean on.",
            EvidenceMark.Published(TradeTexts.ReedPrinciples)),
        new(new("tip-even-across"), "tip evenly thin across", Zone.TipCentre, Fault, ShapeAcross,
            "The tip is as thin in the middle as at its sides; it should fall away gently from the centre, or the sound turns bright and uneasy.",
            EvidenceMark.CommonPractice),
        new(new("tip-centre-thin"), "tip centre too thin", Zone.TipCentre, Fault, Spot,
            "The middle of the tip, which carries the high notes, has been thinned too far.",
            EvidenceMark.CommonPractice),
        new(new("tip-corners-thick"), "tip corners too thick", Zone.TipCorners, Fault, Comparison,
            "The two outer ends of the tip are still thick, so very soft starts stay fuzzy.",
            EvidenceMark.CommonPractice),
        new(new("tip-corner-broken"), "corner chipped or missing", Zone.TipCorners, Fault, Spot,
            "A small piece of one corner is gone; it usually hisses.",
            EvidenceMark.Published(TradeTexts.WornReeds)),
        new(new("tip-short"), "tip too short", Zone.Rooftop, Fault, SeparationAlong,
            "The thin part at the end is short, so the reed feels stiff and starts abruptly.",
            EvidenceMark.CommonPractice),
        new(new("tip-long"), "tip too long", Zone.Rooftop, Fault, SeparationAlong,
            "The thin part at the end reaches far down, so the reed can flutter, squeak or sink in pitch.",
            EvidenceMark.Published(TradeTexts.TeachingHandbook)),
        new(new("tip-not-separate"), "tip not separate from the heart", Zone.Rooftop, Fault, SeparationAlong,
            "It is hard to see where the tip ends and the heart begins, so starts are soft-edged and the crow is vague.",
            EvidenceMark.Published(TradeTexts.ClearTip)),
        new(new("step-abrupt"), "step from heart to tip too steep", Zone.Transition, Fault, SeparationAlong,
            "The heart drops into the tip like a stair; a short slope would let the two work together.",
            EvidenceMark.Published(TradeTexts.BlendAndHeart)),
        new(new("tip-line-slanted"), "tip line slanted", Zone.TipEdge, Fault, ShapeAcross,
            "The end of the reed is not square, so one corner is longer than the other.",
            EvidenceMark.CommonPractice),
        new(new("tip-edge-ragged"), "edge of the tip ragged", Zone.TipEdge, Fault, Spot,
            "The very end is frayed, which hisses and spits.",
            EvidenceMark.CommonPractice),
        new(new("tip-cracked"), "crack in the tip", Zone.TipSides, Fault, Spot,
            "The cane has split at the end.",
            EvidenceMark.CommonPractice),
        new(new("tip-wavy"), "tip wavy when wet", Zone.TipEdge, Fault, ShapeAcross,
            "The tip ripples like a leaf; soaking sometimes settles it.",
            EvidenceMark.CommonPractice),
        new(new("tip-blunter-than-liked"), "tip blunter than I like", Zone.TipEdge, Taste, ShapeAcross,
            "The end of the reed is squarer and firmer than this teacher would choose; that is the player's own choice.",
            EvidenceMark.CommonPractice),
    ];
}
