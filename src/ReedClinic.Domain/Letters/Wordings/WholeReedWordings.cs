namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a letter says what is the matter with the reed as a whole, its opening, and what holds it.</summary>
internal static class WholeReedWordings
{
    internal static IReadOnlyDictionary<string, FindingWording> All { get; } = new Dictionary<string, FindingWording>
    {
        ["opening-wide"] = new(
            "the opening [is/was] {wide|large|wider than it should be|rather wide|a little too wide}",
            "{makes soft playing hard work|tires the lips|makes quiet notes hard work}"),
        ["opening-narrow"] = new(
            "the opening [is/was] {narrow|small|narrower than it should be|rather small|a little too small}",
            "{makes the sound thin and the pitch rise|lets the pitch rise|makes the sound thin}"),
        ["opening-lopsided"] = new(
            "the opening [is/was] {higher on one side than on the other|not the same height on both sides|a little higher at one side}",
            "{makes one side close first|makes a reed sit oddly on the lips}"),
        ["centre-closes-first"] = new(
            "the middle of the blades [closes/closed] {before the sides|first, and the sides after it} when they [are/were] pressed lightly",
            "{makes a reed hard to control|makes soft notes uncertain|tempts a player to bite}")
        { EndsInTime = true },
        ["closes-in-play"] = new(
            "the opening [gets/got] smaller {while it [is/was] played|after {some|a few} minutes of playing}",
            "{makes the sound smaller as you go on|makes a reed tiring after a page}")
        { EndsInTime = true },
        ["more-open-than-liked"] = new("it [is/was] {more open|a little more open} than I would {choose|have it|make it}", null),
        ["brighter-than-liked"] = new("it [sounds/sounded] {brighter|a little brighter} than I would {choose|have it|make it}", null),
        ["crooked-on-staple"] = new(
            "{the blades {[stand/stood]|[sit/sat]} a little crooked on the staple|the cane [is/was] tied {a little|slightly} askew}",
            "{makes a reed harder to seal|makes it harder to get both sides alike}"),
        ["thread-too-high"] = new(
            "the thread {[goes/went]|[runs/ran]} {too far up|past the end of the staple|further up than the staple}",
            "{pinches the cane|takes depth from the sound|keeps the cane from moving freely}"),
        ["thread-leak"] = new(
            "{air [escapes/escaped]|some air [gets/got] out} {at|through} the thread",
            "{costs you breath|makes the sound airy|makes a reed harder to blow}"),
        ["cork-loose"] = new(
            "the cork [is/was] {loose or worn|no longer tight|a little loose or worn}",
            "{weakens the low notes|lets a reed rock in the instrument|makes the low notes unsure}"),
        ["dirty-inside"] = new(
            "{something [is/was] caught {inside|between the blades}|there [is/was] something {caught between the blades|caught inside}}",
            "{dulls the sound|keeps the blades from moving freely|makes a reed sound dull}"),
        ["worn"] = new(
            "the cane [is/was] {tired from hours of playing|worn out|at the end of its playing days}",
            "{leaves no spring in the blades|leaves the blades with little spring|makes the sound dull}"),
    };
}
