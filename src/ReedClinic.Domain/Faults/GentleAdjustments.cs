using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Faults;

/// <summary>Adjustments that take no cane away.</summary>
internal static class GentleAdjustments
{
    internal static IReadOnlyList<AdjustmentKind> All { get; } =
    [
        new(new("soak"), "soak and settle", "soaked and settled", Zone.WholeReed, Reversible.Yes, "3 to 5 minutes",
            "Don't leave it in water: a reed that is too wet sounds stuffy.", EvidenceMark.Published(TradeTexts.Soaking)),
        new(new("rest-dry"), "dry and rest", "dried and rested", Zone.WholeReed, Reversible.Yes, "a night",
            "Keep it in air that moves, and away from a heater.", EvidenceMark.CommonPractice),
        new(new("wait"), "wait and try again another day", "left to settle for another day", Zone.WholeReed, Reversible.Yes, "1 to 3 short sessions",
            "Write down how it plays before and after.", EvidenceMark.Published(TradeTexts.TeachingHandbook)),
        new(new("clean-inside"), "clean the inside", "cleaned inside", Zone.Inside, Reversible.Yes, null,
            "Only when wet, and always out through the tip, never back.", EvidenceMark.Published(TradeTexts.PaperCleaning)),
        new(new("open-squeeze"), "open by squeezing the sides", "opened by squeezing the sides", Zone.Opening, Reversible.Partly, "5 to 10 seconds, wet",
            "Dry cane cracks under this.", EvidenceMark.Published(TradeTexts.TwoIdeasOnPitch)),
        new(new("close-press"), "close by pressing the faces", "closed by pressing the faces", Zone.Opening, Reversible.Partly, "5 to 20 seconds, wet, on a plaque",
            "Overdone, it presses the tone out of the cane.", EvidenceMark.Published(TradeTexts.TwoIdeasOnPitch)),
        new(new("draw-air"), "moisten and draw air through", "moistened, and air drawn through", Zone.Opening, Reversible.Yes, null,
            "This lasts only for a while.", EvidenceMark.Published(TradeTexts.ClosingInPlay)),
        new(new("round-eye"), "round the eye on the mandrel", "rounded at the eye on the mandrel", Zone.Eye, Reversible.Partly, "a light rolling press",
            "Thread and overlap can shift, and cane can split.", EvidenceMark.CommonPractice),
        new(new("flatten-eye"), "flatten the eye", "flattened at the eye", Zone.Eye, Reversible.Partly, "very little",
            "Pad the jaws and keep the mandrel inside.", EvidenceMark.CommonPractice),
        new(new("add-wire"), "add a wire", "given a wire", Zone.Wire, Reversible.Yes, "two turns, 3 to 5 mm above the thread",
            "Too tight, it damps or cracks the cane.", new EvidenceMark(Evidence.FromMemory)),
        new(new("bend-wire"), "round or flatten a wire", "had its wire rounded or flattened", Zone.Wire, Reversible.Yes, "a nudge at a time",
            "Hold the wire, not the bare cane.", EvidenceMark.Published(TradeTexts.TeachingHandbookBassoon)),
        new(new("seal-sides"), "seal the sides", "sealed at the sides", Zone.SideEdges, Reversible.Yes, "one and a half turns just above the thread",
            "Too high up, it damps the windows.", EvidenceMark.Published(TradeTexts.Sealing)),
        new(new("seal-thread"), "seal the thread", "sealed at the thread", Zone.Thread, Reversible.Yes, "a thin coat, dried fully",
            "No lacquer where lips go.", EvidenceMark.CommonPractice),
        new(new("realign"), "set the overlap", "had its overlap set", Zone.SideEdges, Reversible.Partly, "a small twist with finger and thumb, wet",
            "Dry cane splits; against the winding it creeps back.", EvidenceMark.CommonPractice),
        new(new("burnish"), "burnish", "burnished", Zone.WholeReed, Reversible.Partly, "light",
            "The effect is small.", EvidenceMark.CommonPractice),
        new(new("refit-cork"), "refit the cork", "refitted at the cork", Zone.Cork, Reversible.Yes, null,
            "It should go all the way in without force.", EvidenceMark.Published(TradeTexts.CorkAdvice)),
        new(new("retie"), "tie it again", "tied again", Zone.Thread, Reversible.No, "moved by 0.5 to 1 mm",
            "Only for a fine blade; cracks hide under the thread.", EvidenceMark.CommonPractice),
        new(new("retire"), "retire the reed", "retired", Zone.WholeReed, Reversible.No, null,
            "Keep the staple, and say why, kindly.", EvidenceMark.CommonPractice),
    ];
}
