namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a letter says what is the matter with a tip.</summary>
internal static class TipWordings
{
    internal static IReadOnlyDictionary<string, FindingWording> All { get; } = new Dictionary<string, FindingWording>
    {
        ["tip-thick"] = new(
            "{there [is/was] more cane in the tip than it needs|the tip [is/was] thick|the tip [is/was] thicker than it needs to be|the tip [has/had] cane to spare}",
            "{makes notes start {late|with a bump}|holds soft notes back|keeps soft notes waiting|makes the softest notes hard to begin}")
        { Graded = "the tip [is/was] {<deg>thick|<more>thicker than it needs to be}" },
        ["tip-thin"] = new(
            "{the tip [has/had] lost too much cane|the tip [is/was] {thin|thinner than it should be|thinner than a tip can afford}}",
            "{leaves the high notes nothing to lean on|makes the sound bright and nervous|takes the support from under the notes}")
        { Graded = "the tip [is/was] {<deg>thin|<more>thinner than it should be}" },
        ["tip-even-across"] = new(
            "the tip [is/was] {as thin in the middle as at its sides|equally thin all the way across|just as thin in its middle as at its sides|no thicker in the middle than at its sides}",
            "{makes the sound bright and uneasy|turns the sound bright|makes a note nervous|leaves a note without a middle to stand on}"),
        ["tip-centre-thin"] = new(
            "the middle of the tip {[is/was] too thin|[has/had] been thinned {too far|more than it can bear}|[has/had] lost its support}",
            "{makes the high notes sag|takes the floor from under the high notes|lets the high notes sink}")
        { Graded = "the middle of the tip [is/was] {<deg>thin|<more>thinner than it should be}" },
        ["tip-corners-thick"] = new(
            "the {corners|two corners} of the tip [are/were] {thick|thicker than they need be|heavy|not thin enough}",
            "{makes very soft starts fuzzy|leaves the softest starts fuzzy|holds back the very softest starts|makes a soft note begin with a puff of air}")
        {
            OnOneSide = "the <side> corner of <of> [is/was] {thick|thicker than it need be|heavy|not thin enough}",
            Graded = "the {corners|two corners} of the tip [are/were] {<deg>thick|<more>thicker than they need be}",
            GradedOnOneSide = "the <side> corner of <of> [is/was] {<deg>thick|<more>thicker than it need be}",
        },
        ["tip-corner-broken"] = new(
            "{a piece of one corner [is/was] missing|one corner of the tip [is/was] broken}",
            "{makes a reed hiss|lets some air hiss past|puts a hiss into soft notes}")
        {
            OnOneSide = "{a piece of the <side> corner of <of> [is/was] missing|the <side> corner of <of> [is/was] broken}",
            Graded = "one corner of the tip [is/was] <deg>chipped",
            GradedOnOneSide = "the <side> corner of <of> [is/was] <deg>chipped",
        },
        ["tip-short"] = new(
            "the {tip|thin part at the end} [is/was] {short|shorter than usual}",
            "{makes a reed feel stiff|makes starts sudden|makes a reed stiff and its starts sudden}")
        { Graded = "the tip [is/was] {<deg>short|<more>shorter than usual}" },
        ["tip-long"] = new(
            "{the {tip|thin part at the end} [reaches/reached] far down|the {tip|thin part at the end} [is/was] {long|longer than usual}}",
            "{lets the pitch sink|makes a reed flutter or squeak|makes a reed flutter, squeak or sink in pitch}")
        { Graded = "the tip [is/was] {<deg>long|<more>longer than usual}" },
        ["tip-not-separate"] = new(
            "{it [is/was] hard to see the line between heart and tip|the tip [doesn't/didn't] {stand out|stand out clearly} from the heart|the line between heart and tip [is/was] {hard to see|faint|not clear}}",
            "{makes starts soft-edged|makes the crow vague|leaves starts without an edge|makes both the starts and the crow vague}"),
        ["step-abrupt"] = new(
            "{the heart [drops/dropped] into the tip like a stair|the step from heart to tip [is/was] {steep|steeper than it should be}|there [is/was] a {stair|steep step} {between heart and tip|from heart to tip}}",
            "{keeps the two from working together|makes every start a little different|stops heart and tip from working together}")
        { Graded = "the step from heart to tip [is/was] {<deg>steep|<more>steeper than it should be}" },
        ["tip-line-slanted"] = new(
            "the end of the {reed|tip} [is/was] {not square|slanted|cut at a slant}",
            "{leaves one corner longer than the other|makes one corner longer than the other|makes the two corners answer one after the other}")
        { Graded = "the end of the {reed|tip} [is/was] <deg>slanted" },
        ["tip-edge-ragged"] = new(
            "the very {end|edge} of the tip [is/was] {frayed|ragged}",
            "{makes a reed hiss and spit|puts a hiss into the sound|hisses in soft notes}")
        { Graded = "the very {end|edge} of the tip [is/was] <deg>{frayed|ragged}" },
        ["tip-cracked"] = new(
            "{there [is/was] a crack in the tip|the cane [has/had] split at the {end|very end}|the tip [has/had] a crack in it}",
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
