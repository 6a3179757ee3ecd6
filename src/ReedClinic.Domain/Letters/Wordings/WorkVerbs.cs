using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What the teacher did, to stand after “I”.</summary>
internal static class WorkVerbs
{
    // An amount that was measured is told as it was said, and no hair beside it.
    private const string CutMeasured = "{cut a little off the end|shortened it at the end|took a little off the end}";

    /// <summary>What was done once: where it was measured, no other amount is named beside that.</summary>
    /// <param name="work">The work.</param>
    internal static string Of(Adjustment work) => work is { AdjustmentKind.Value: "clip-hair", Amount.Millimetres: not null } ? CutMeasured : All[work.AdjustmentKind.Value];

    internal static IReadOnlyDictionary<string, string> All { get; } = new Dictionary<string, string>
    {
        ["soak"] = "{soaked it and let it settle|gave it a soak and let it settle}",
        ["rest-dry"] = "{dried it and let it rest|let it dry and rest}",
        ["wait"] = "{left it to settle for another day|gave it another day to settle}",
        ["clean-inside"] = "{cleaned it inside|cleaned its inside}",
        ["open-squeeze"] = "{opened it by squeezing its sides|squeezed its sides to open it}",
        ["close-press"] = "{closed it by pressing its flat faces|pressed its flat faces to close it}",
        ["draw-air"] = "{moistened it and drew air through|wetted it and drew air through}",
        ["round-eye"] = "{made the narrow end of the staple rounder|rounded the narrow end of the staple}",
        ["flatten-eye"] = "{made the narrow end of the staple flatter|flattened the narrow end of the staple}",
        ["add-wire"] = "{put a wire round it|gave it a wire}",
        ["bend-wire"] = "{changed the shape of its wire|bent its wire to another shape}",
        ["seal-sides"] = "{sealed its sides|sealed it at the sides}",
        ["seal-thread"] = "{sealed the thread|sealed it at the thread}",
        ["realign"] = "{set the overlap of the blades|set the blades to overlap as they should}",
        ["burnish"] = "{rubbed it smooth|polished the cane by rubbing it}",
        ["refit-cork"] = "{refitted the cork|made the cork fit again}",
        ["retie"] = "{tied it again|tied it afresh}",
        ["retire"] = "{retired it|let it retire}",
        ["thin-corners"] = "{thinned the corners of the tip|took a little from the corners of the tip|eased the corners of the tip}",
        ["thin-tip-sides"] = "{thinned the sides of the tip|took a little from the sides of the tip|eased the sides of the tip}",
        ["thin-whole-tip"] = "{thinned the whole tip|took a little from the tip all over}",
        ["thin-tip-centre"] = "{thinned the middle of the tip|took a little from the middle of the tip}",
        ["thin-edge"] = "{thinned the very edge of the tip|took a little from the very edge of the tip}",
        ["smooth-edge"] = "{evened the tip with fine abrasive|evened the end of the tip with fine abrasive}",
        ["lengthen-tip"] = "{made the tip longer|lengthened the tip}",
        ["blend"] = "{smoothed the slope from the heart into the tip|let the heart run more smoothly into the tip|smoothed the way from heart to tip}",
        ["define-tip"] = "{set the tip off more clearly from the heart|made the step between tip and heart clearer}",
        ["take-heart-sides"] = "{eased the sides of the heart|took a little from the sides of the heart|thinned the sides of the heart}",
        ["dust-heart"] = "{took a breath of cane from the heart|took no more than dust from the heart}",
        ["free-heart-bottom"] = "{freed the lower end of the heart|eased the lower end of the heart}",
        ["open-windows"] = "{scraped the windows|took some cane from the windows|thinned the windows}",
        ["extend-windows"] = "{drew the windows further down|made the windows longer}",
        ["scrape-lay-base"] = "{scraped the lower end of the scrape|eased the lower end of the scrape}",
        ["thin-spine"] = "{thinned the spine|took a little from the spine}",
        ["thin-rails"] = "{thinned the rails|took a little from the rails}",
        ["narrow-edges"] = "{made the side edges narrower|narrowed the side edges}",
        ["even-up"] = "{evened it up|took cane from the thicker part, to even it up}",
        ["smooth-bumps"] = "{smoothed the bumps|took the bumps away}",
        ["clip-hair"] = "{cut a hair's breadth off the end|cut no more than a hair off the end|shortened it by a hair's breadth}",
        ["clip"] = "{cut a little off the end|shortened it at the end|cut a small piece off the end}",
        ["square-tip"] = "{squared up the end|made the end square again}",
        ["offset-tip"] = "{set the ends of the blades a touch apart or level|changed how the ends of the blades stand to each other}",
    };
}
