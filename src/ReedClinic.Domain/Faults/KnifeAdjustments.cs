using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Faults;

/// <summary>Adjustments that take cane away, from the tip down. Cane can't be put back.</summary>
internal static class KnifeAdjustments
{
    internal static IReadOnlyList<AdjustmentKind> All { get; } =
    [
        new(new("thin-corners"), "thin the tip corners", "thinned at the corners of the tip", Zone.TipCorners, Reversible.No, "1 to 3 strokes a corner",
            "Corners tear off easily: keep the plaque square under them.", EvidenceMark.CommonPractice),
        new(new("thin-tip-sides"), "thin the tip sides", "thinned at the sides of the tip", Zone.TipSides, Reversible.No, "2 to 4 strokes a side",
            "Keep the centre.", EvidenceMark.Published(TradeTexts.ReedPrinciples)),
        new(new("thin-whole-tip"), "thin the whole tip", "thinned over the whole tip", Zone.TipSides, Reversible.No, "a few strokes",
            "The crow falls as a thick tip comes down; keep length in hand for a clip.", EvidenceMark.CommonPractice),
        new(new("thin-tip-centre"), "thin the tip centre", "thinned at the centre of the tip", Zone.TipCentre, Reversible.No, "1 stroke",
            "This takes away the support of the high notes.", EvidenceMark.CommonPractice),
        new(new("thin-edge"), "thin the very edge", "thinned at the very edge", Zone.TipEdge, Reversible.No, "the last 0.3 to 0.5 mm",
            "The edge frays when it is overdone.", EvidenceMark.Published(TradeTexts.TeachingHandbook)),
        new(new("smooth-edge"), "even the tip with fine abrasive", "evened at the tip with fine abrasive", Zone.TipEdge, Reversible.No, "2 to 3 strokes, wet",
            "Rinse it: dust stays in the cane.", EvidenceMark.CommonPractice),
        new(new("lengthen-tip"), "lengthen the tip", "lengthened at the tip", Zone.Rooftop, Reversible.No, "0.2 to 0.5 mm",
            "The heart gets shorter by as much.", EvidenceMark.CommonPractice),
        new(new("blend"), "blend heart into tip", "blended from heart to tip", Zone.Transition, Reversible.No, "4 to 6 light strokes a quadrant",
            "Don't wash the heart away.", EvidenceMark.Published(TradeTexts.BlendAndHeart)),
        new(new("define-tip"), "set the tip off from the heart", "given a clearer step between tip and heart", Zone.Rooftop, Reversible.No, "light strokes just in front of the line",
            "Light strokes only: a deep line here weakens the tip.", EvidenceMark.Published(TradeTexts.ClearTip)),
        new(new("take-heart-sides"), "take the sides of the heart", "eased at the sides of the heart", Zone.HeartSides, Reversible.No, "3 to 5 strokes a side",
            "Not the centre.", EvidenceMark.Published(TradeTexts.ReedFixes)),
        new(new("dust-heart"), "dust the heart", "dusted on the heart", Zone.HeartCentre, Reversible.No, "1 to 2 strokes",
            "The one place never to hurry: pitch and resistance fall a long way.", EvidenceMark.Published(TradeTexts.ReedDefinitions)),
        new(new("free-heart-bottom"), "free the bottom of the heart", "freed at the bottom of the heart", Zone.HeartBottom, Reversible.No, "3 to 5 strokes a quadrant",
            "Watch the opening.", EvidenceMark.CommonPractice),
        new(new("open-windows"), "open the windows", "opened in the windows", Zone.Windows, Reversible.No, "3 to 6 strokes in each of four",
            "The pitch may go either way: try it after every few strokes.", EvidenceMark.Published(TradeTexts.TwoIdeasOnPitch)),
        new(new("extend-windows"), "extend the windows down", "extended at the windows", Zone.WindowBase, Reversible.No, "0.5 to 1 mm towards the bark",
            "Keep about 3 mm of bark above the thread.", EvidenceMark.Published(TradeTexts.ReedDefinitions)),
        new(new("scrape-lay-base"), "scrape the base of a short lay", "scraped at the base of the lay", Zone.WindowBase, Reversible.No, "a few strokes near the bark, sides first",
            "The lay creeps back a little each time.", EvidenceMark.Published(TradeTexts.TeachingHandbook)),
        new(new("thin-spine"), "thin the spine", "thinned at the spine", Zone.Spine, Reversible.No, "1 to 2 strokes",
            "The opening can collapse and the high notes lose their floor.", EvidenceMark.Published(TradeTexts.ReedFixes)),
        new(new("thin-rails"), "thin the rails", "thinned at the rails", Zone.Rails, Reversible.No, null,
            "Almost never wanted: leaks and collapse follow.", EvidenceMark.CommonPractice),
        new(new("narrow-edges"), "narrow the side edges", "narrowed at the side edges", Zone.SideEdges, Reversible.No, "2 or 3 strokes on fine abrasive, both edges together",
            "It can break the seal.", EvidenceMark.Published(TradeTexts.TeachingHandbook)),
        new(new("even-up"), "even up one side or blade", "evened up", Zone.WholeReed, Reversible.No, "1 to 2 strokes, then look again",
            "Take only from the thick part; chasing evenness thins the reed.", EvidenceMark.Published(TradeTexts.TwoIdeasOnPitch)),
        new(new("smooth-bumps"), "smooth bumps in the scrape", "smoothed", Zone.Transition, Reversible.No, "only the ridge",
            "Find the ridge with light from the side first.", EvidenceMark.Published(TradeTexts.TeachingHandbook)),
        new(new("clip-hair"), "clip a hair", "clipped by a hair", Zone.TipEdge, Reversible.No, "0.1 to 0.2 mm",
            "Two in a row make a full clip. Blade guarded, cut on a block, away from the hand.", EvidenceMark.Published(TradeTexts.ReedFixes)),
        new(new("clip"), "clip", "clipped", Zone.TipEdge, Reversible.No, "0.3 to 0.5 mm",
            "The tip gets shorter and has to be thinned again. Cut on a block, away from the hand.", EvidenceMark.Published(TradeTexts.ReedFixes)),
        new(new("square-tip"), "square up the tip", "squared up at the tip", Zone.TipEdge, Reversible.No, "as much as the low side needs",
            "Check first that the slant isn't in the tying.", EvidenceMark.CommonPractice),
        new(new("offset-tip"), "offset or level the blade ends", "offset or levelled at the blade ends", Zone.TipEdge, Reversible.No, "0.1 mm",
            "A matter of taste, not a cure.", EvidenceMark.Published(TradeTexts.TipLevels)),
    ];
}
