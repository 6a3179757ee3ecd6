namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a letter says what a reed-maker has done well. It holds for one reed as for several.</summary>
internal static class StrengthWordings
{
    internal static IReadOnlyDictionary<string, FindingWording> All { get; } = new Dictionary<string, FindingWording>
    {
        ["opening-even"] = new(
            "the opening is {an even oval|the same on both sides|even from side to side|nicely even}",
            "{helps soft notes to start|makes a reed easier to control|lets both sides close together}"),
        ["spine-intact"] = new(
            "the spine {is whole|has been left standing|stands whole|has been kept}",
            "{steadies the high notes|holds the high notes up|gives the high notes a floor}"),
        ["rails-intact"] = new(
            "the rails {are whole|have been left whole|have been kept|are there from end to end}",
            "{helps a reed to seal|keeps a reed in shape|helps a reed to seal and to keep its shape}"),
        ["tip-well-separated"] = new(
            "{it is easy to see where the tip begins|the tip stands out clearly from the heart|the tip is clearly set off from the heart}",
            "{makes for clear starts|helps notes to start clearly|makes the crow clear}"),
        ["tip-falls-to-sides"] = new(
            "{the middle of the tip is a {touch|little} thicker than its sides|the tip falls away gently from its middle to its sides|the tip gets thinner from its middle to its sides}",
            "{supports the high notes|carries the high notes|gives a note something to lean on}"),
        ["blend-smooth"] = new(
            "{the heart runs into the tip without a {stair|step|bump}|the slope from heart to tip is {smooth|even}}",
            "{lets heart and tip work together|helps slurs to run smoothly|helps a note to speak at once}"),
        ["heart-well-kept"] = new(
            "the heart has been {left alone|well kept|left strong enough|left as strong as it should be}",
            "{gives the sound its core|keeps sound and pitch steady|holds the pitch}"),
        ["quadrants-matched"] = new(
            "{both blades and both sides are {alike|a match|the same}|left and right are alike on both blades}",
            "{makes a reed even to play|lets a reed feel the same either way up|makes a reed easy to trust}"),
        ["seals-well"] = new(
            "{the sides {meet|close} and no air {escapes|gets out}|no air {escapes|gets out} at the sides}",
            "{saves your breath|helps the low notes|keeps the sound clear}"),
        ["tied-straight"] = new(
            "{the cane stands straight on the staple|the cane stands straight and the thread is {neat|neat and tight}|the cane has been tied straight}",
            "{is where a good reed begins|gives all the rest a good start|saves much trouble later}"),
    };
}
