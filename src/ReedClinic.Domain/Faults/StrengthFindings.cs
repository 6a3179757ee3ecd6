using ReedClinic.Domain.Reeds;
using static ReedClinic.Domain.Bench.FindingCharacter;
using static ReedClinic.Domain.Bench.FindingShape;

namespace ReedClinic.Domain.Faults;

/// <summary>What a reed-maker can have done well. Each is common practice.</summary>
internal static class StrengthFindings
{
    internal static IReadOnlyList<FindingKind> All { get; } =
    [
        new(new("opening-even"), "opening even", Zone.Opening, Strength, ShapeAcross,
            "The gap is an even oval, the same on both sides.", EvidenceMark.CommonPractice),
        new(new("spine-intact"), "spine intact", Zone.Spine, Strength, Spot,
            "The thick line down the middle has been kept, which steadies the high notes.", EvidenceMark.CommonPractice),
        new(new("rails-intact"), "rails intact", Zone.Rails, Strength, Spot,
            "The strips along the edges are whole, so the reed seals and keeps its shape.", EvidenceMark.CommonPractice),
        new(new("tip-well-separated"), "tip clearly set off", Zone.Rooftop, Strength, SeparationAlong,
            "It is easy to see where the tip begins.", EvidenceMark.CommonPractice),
        new(new("tip-falls-to-sides"), "tip falls from centre to sides", Zone.TipCentre, Strength, ShapeAcross,
            "The middle of the tip is a touch thicker than its sides, as it should be.", EvidenceMark.CommonPractice),
        new(new("blend-smooth"), "slope from heart to tip smooth", Zone.Transition, Strength, SeparationAlong,
            "The heart runs into the tip without a stair.", EvidenceMark.CommonPractice),
        new(new("heart-well-kept"), "heart well kept", Zone.HeartCentre, Strength, Spot,
            "The thick middle has been left alone, which gives the sound its core.", EvidenceMark.CommonPractice),
        new(new("quadrants-matched"), "both blades and sides matched", Zone.WholeReed, Strength, Comparison,
            "Left and right, upper and lower blade are alike.", EvidenceMark.CommonPractice),
        new(new("seals-well"), "seals well", Zone.SideEdges, Strength, Spot,
            "The sides meet and no air escapes.", EvidenceMark.CommonPractice),
        new(new("tied-straight"), "tied straight", Zone.Thread, Strength, SeparationAlong,
            "The cane stands straight on the staple and the thread is neat and tight.", EvidenceMark.CommonPractice),
    ];
}
