namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a letter says what is the matter with the reed as a whole, its opening, and what holds it.</summary>
internal static class WholeReedWordings
{
    internal static IReadOnlyDictionary<string, FindingWording> All { get; } = new Dictionary<string, FindingWording>
    {
        ["opening-wide"] = new(
            "the opening [is/was] {wide|large|wider than it should be}",
            "{makes soft playing hard work|tires the lips|makes quiet notes hard work}")
        { Graded = "the opening [is/was] {<deg>wide|<deg>large|<more>wider than it should be}" },
        ["opening-narrow"] = new(
            "the opening [is/was] {narrow|small|narrower than it should be}",
            "{makes the sound thin and the pitch rise|lets the pitch rise|makes the sound thin}")
        { Graded = "the opening [is/was] {<deg>narrow|<deg>small|<more>narrower than it should be}" },
        ["opening-lopsided"] = new(
            "the opening [is/was] {higher on one side than on the other|not the same height on both sides}",
            "{makes one side close first|makes a reed sit oddly on the lips}")
        { Graded = "the opening [is/was] <more>higher on one side than on the other" },
        ["centre-closes-first"] = new(
            "the middle of the blades [closes/closed] {before the sides|first, and the sides after it} when they [are/were] pressed lightly",
            "{makes a reed hard to control|makes soft notes uncertain|tempts a player to bite}")
        { EndsInTime = true },
        ["closes-in-play"] = new(
            "the opening [gets/got] smaller {while it [is/was] played|as it [is/was] played}",
            "{makes the sound smaller as you go on|makes a reed tiring after a page}")
        { EndsInTime = true },
        ["more-open-than-liked"] = new("it [is/was] more open than I would {choose|have it|make it}", null) { Graded = "it [is/was] <more>more open than I would {choose|have it|make it}" },
        ["brighter-than-liked"] = new("it [sounds/sounded] brighter than I would {choose|have it|make it}", null) { Graded = "it [sounds/sounded] <more>brighter than I would {choose|have it|make it}" },
        ["crooked-on-staple"] = new(
            "{the blades {[stand/stood]|[sit/sat]} crooked on the staple|the cane [is/was] tied askew}",
            "{makes a reed harder to seal|makes it harder to get both sides alike}")
        { Graded = "the blades {[stand/stood]|[sit/sat]} <deg>crooked on the staple" },
        ["thread-too-high"] = new(
            "the thread {[goes/went]|[runs/ran]} {too far up|past the end of the staple|further up than the staple}",
            "{pinches the cane|takes depth from the sound|keeps the cane from moving freely}"),
        ["thread-leak"] = new(
            "{air [escapes/escaped]|some air [gets/got] out} {at|through} the thread",
            "{costs you breath|makes the sound airy|makes a reed harder to blow}"),
        ["cork-loose"] = new(
            "the cork [is/was] {loose or worn|not tight}",
            "{weakens the low notes|lets a reed rock in the instrument|makes the low notes unsure}")
        { Graded = "the cork [is/was] <deg>loose or worn" },
        ["dirty-inside"] = new(
            "{something [is/was] caught {inside|between the blades}|there [is/was] something {caught between the blades|caught inside}}",
            "{dulls the sound|keeps the blades from moving freely|makes a reed sound dull}"),
        ["worn"] = new(
            "the cane [is/was] {tired from hours of playing|worn out|at the end of its playing days}",
            "{leaves no spring in the blades|leaves the blades with little spring|makes the sound dull}"),
    };
}
