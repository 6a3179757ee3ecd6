namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a letter says what is the matter with a tip.</summary>
internal static class TipWordings
{
    internal static IReadOnlyDictionary<string, FindingWording> All { get; } = new Dictionary<string, FindingWording>
    {
        ["tip-thick"] = new(
            "{there [is/was] more cane in the tip than it needs|the tip [is/was] {still|rather|a little} thick|the tip [is/was] thicker than it needs to be|the tip [has/had] {some|a little} cane to spare}",
            "{makes notes start {late|with a bump}|holds soft notes back|keeps soft notes waiting|makes the softest notes hard to begin}"),
        ["tip-thin"] = new(
            "{the tip [has/had] {lost a lot of|given up much of} its cane|the tip [is/was] {very thin|thinner than it should be|thinner than a tip can afford}}",
            "{leaves the high notes nothing to lean on|makes the sound bright and nervous|takes the support from under the notes}"),
        ["tip-even-across"] = new(
            "the tip [is/was] {as thin in the middle as at its sides|equally thin all the way across|just as thin in its middle as at its sides|no thicker in the middle than at its sides}",
            "{makes the sound bright and uneasy|turns the sound bright|makes a note nervous|leaves a note without a middle to stand on}"),
        ["tip-centre-thin"] = new(
            "the middle of the tip {[is/was] {too thin|very thin}|[has/had] been thinned {too far|a little too far|more than it can bear}|[has/had] lost its support}",
            "{makes the high notes sag|takes the floor from under the high notes|lets the high notes sink}"),
        ["tip-corners-thick"] = new(
            "the {corners|two corners} of the tip [are/were] {still thick|thicker than they need be|still a little heavy|not quite thin enough}",
            "{makes very soft starts fuzzy|leaves the softest starts fuzzy|holds back the very softest starts|makes a soft note begin with a puff of air}")
        { OnOneSide = "the <side> corner of <of> [is/was] {still thick|thicker than it need be|still a little heavy|not quite thin enough}" },
        ["tip-corner-broken"] = new(
            "{a {small|little|tiny} piece of one corner [is/was] missing|one corner of the tip [is/was] {chipped|broken off}}",
            "{makes a reed hiss|lets some air hiss past|puts a hiss into soft notes}")
        { OnOneSide = "{a {small|little|tiny} piece of the <side> corner of <of> [is/was] missing|the <side> corner of <of> [is/was] {chipped|broken off}}" },
        ["tip-short"] = new(
            "the {tip|thin part at the end} [is/was] {short|rather short|shorter than usual|a little too short}",
            "{makes a reed feel stiff|makes starts sudden|makes a reed stiff and its starts sudden}"),
        ["tip-long"] = new(
            "{the {tip|thin part at the end} [reaches/reached] {far|a long way} down|the {tip|thin part at the end} [is/was] {long|rather long|longer than usual}}",
            "{lets the pitch sink|makes a reed flutter or squeak|makes a reed flutter, squeak or sink in pitch}"),
        ["tip-not-separate"] = new(
            "{it [is/was] hard to see the line between heart and tip|the tip [doesn't/didn't] {stand out|stand out clearly} from the heart|the line between heart and tip [is/was] {hard to see|faint|not clear}}",
            "{makes starts soft-edged|makes the crow vague|leaves starts without an edge|makes both the starts and the crow vague}"),
        ["step-abrupt"] = new(
            "{the heart [drops/dropped] into the tip like a stair|the step from heart to tip [is/was] {steep|steeper than it should be}|there [is/was] a {stair|steep step} {between heart and tip|from heart to tip}}",
            "{keeps the two from working together|makes every start a little different|stops heart and tip from working together}"),
        ["tip-line-slanted"] = new(
            "the end of the {reed|tip} [is/was] {not square|a little slanted|cut at a slant|not quite square}",
            "{leaves one corner longer than the other|makes one corner longer than the other|makes the two corners answer one after the other}"),
        ["tip-edge-ragged"] = new(
            "the very {end|edge} of the tip [is/was] {frayed|ragged|a little frayed|a little ragged}",
            "{makes a reed hiss and spit|puts a hiss into the sound|hisses in soft notes}"),
        ["tip-cracked"] = new(
            "{there [is/was] a {crack|small crack} in the tip|the cane [has/had] split at the {end|very end}|the tip [has/had] a {crack|small split} in it}",
            "{grows with playing|gets longer with time|lets the sound buzz}"),
        ["tip-wavy"] = new(
            "the tip {[ripples/rippled] like a leaf|[is/was] wavy|[goes/went] wavy} when it [is/was] {wet|soaked}",
            "{settles after a good soak|calms down with soaking|settles when it is given time in the water}")
        { EndsInTime = true },
        ["tip-blunter-than-liked"] = new(
            "the end of the reed [is/was] {squarer|firmer|blunter} than I would {choose|make it|cut it}",
            null),
    };
}
