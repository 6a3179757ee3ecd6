namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a letter says what is the matter with heart, back, spine, rails and the side edges.</summary>
internal static class BodyWordings
{
    internal static IReadOnlyDictionary<string, FindingWording> All { get; } = new Dictionary<string, FindingWording>
    {
        ["heart-thick"] = new(
            "{the heart [is/was] {thick|thicker than it should be}|the heart [has/had] {more cane than it needs|cane to spare}}",
            "{holds the rest of the reed still|keeps the low notes away|keeps the low part of the crow away|makes the low notes hard to reach}")
        {
            Graded = "the heart [is/was] {<deg>thick|<more>thicker than it should be}",
            ShowsInEffort = "{makes a reed stiff|makes a reed hard to blow|takes much breath}",
        },
        ["heart-thin"] = new(
            "the heart [has/had] {lost too much cane|become too thin|little cane left|become thinner than it should be}",
            "{lets the pitch sink when you play loudly|makes sound and pitch unsteady|makes the pitch wander}")
        {
            Graded = "the heart [is/was] {<deg>thin|<more>thinner than it should be}",
            OnHeartSides = "the {sides|two sides} of the heart [have/had] {lost too much cane|become too thin|little cane left|become thinner than they should be}",
        },
        ["heart-lopsided"] = new(
            "one side of the heart [is/was] {thicker|heavier|stronger} than the other",
            "{keeps the two halves from moving together|makes the two halves move one after the other|lets one half do all the work}"),
        ["heart-sides-thick"] = new(
            "the {sides|two sides} of the heart [are/were] {thick|thicker than they should be|heavy}",
            "{lets the middle close before the sides|makes a reed tiring to blow|makes the middle close first|makes a reed hard work after a page or two}")
        {
            OnOneSide = "the <side> side of the heart [is/was] {thick|thicker than it should be|heavy}",
            Graded = "the {sides|two sides} of the heart [are/were] {<deg>thick|<more>thicker than they should be}",
            GradedOnOneSide = "the <side> side of the heart [is/was] {<deg>thick|<more>thicker than it should be}",
        },
        ["heart-length"] = new(
            "{the heart [begins/began] or [ends/ended] in an {unusual|unexpected} place|the heart [is/was] of an unusual length}",
            "{changes how stiff a reed feels|makes a reed stiffer or wilder than it need be}"),
        ["back-thick"] = new(
            "{there [is/was] cane to spare in the back|the back [is/was] {thick|thicker than it should be}}",
            "{makes the low notes come late|keeps the low notes waiting|takes depth from the sound|leaves the sound with little depth}")
        {
            Graded = "the back [is/was] {<deg>thick|<more>thicker than it should be}",
            ShowsInEffort = "{makes a reed stiff|makes a reed hard to blow|takes much breath}",
        },
        ["back-thin"] = new(
            "the back [is/was] {thin|thinner than usual}",
            "{makes a reed give way when you play loudly|lets a loud note collapse|gives way in loud playing}")
        { Graded = "the back [is/was] {<deg>thin|<more>thinner than usual}" },
        ["windows-uneven"] = new(
            "{the windows [are/were] {not alike|not equally deep|not quite the same}|one of the windows [is/was] deeper than {the other|its neighbour}}",
            "{makes one side work harder than the other|lets one half of the reed do all the work|lets the two halves answer one after the other}"),
        ["spine-scraped"] = new(
            "the spine [has/had] been scraped {away|too thin}",
            "{lets the opening fall|takes the floor from under the high notes|costs some of the opening and of the high notes}"),
        ["rails-cut"] = new(
            "the rails [have/had] been {cut into|scraped into|nicked}",
            "{makes it harder for a reed to seal|lets air out at the sides|weakens the shape of a reed}"),
        ["bark-island"] = new(
            "a patch of bark [is/was] left {in the scrape|standing in the scrape}",
            "{stays stiff|stays stiff where a reed should bend|keeps that spot stiff}"),
        ["bumps"] = new(
            "{there [are/were] {ridges|bumps} in the scrape|the scrape [has/had] {ridges|bumps} in it}",
            "{makes starts hit and miss|makes no two starts alike|makes starts uncertain}"),
        ["body-cracked"] = new(
            "{the cane [has/had] split behind the tip|there [is/was] a {crack|split} behind the tip}",
            "{means that a reed won't last|ends the life of a reed|can't be helped by scraping}"),
        ["left-right-uneven"] = new(
            "{one half of the blade [is/was] {thicker|stronger} than the other|{left and right|the left half and the right half} [are/were] {not alike|not the same|no match}}",
            "{makes a reed feel lopsided|makes the two halves work against each other|unsettles the pitch}")
        { Graded = "one half of the blade [is/was] <more>{thicker|stronger} than the other" },
        ["blades-uneven"] = new(
            "{one blade [is/was] {stronger|thicker} than the other|the two blades [are/were] not {alike|equally strong|a match}}",
            "{makes a reed feel different when you turn it over|makes one way up better than the other}")
        { Graded = "one blade [is/was] <more>{stronger|thicker} than the other" },
        ["slipped-too-far"] = new(
            "the blades [have/had] slipped {too far to the side|further sideways than they should|too far sideways}",
            "{lets air out at the sides|costs a reed its seal|makes the sides leak}"),
        ["slipped-against-winding"] = new(
            "the blades [lean/leaned] {against the thread|the way the thread doesn't push|against the push of the thread}",
            "{makes them creep back|lets them creep back with time|makes a reed change from day to day}"),
        ["no-slip"] = new(
            "{the blades [sit/sat] exactly on top of each other|the blades [don't/didn't] overlap at the sides}",
            "{lets the sides chatter or leak|makes the sides leak more easily|lets the sides chatter}"),
        ["side-leak"] = new(
            "{air [escapes/escaped] {at the sides|where the two blades meet|at the edges}|air [gets/got] out at the sides}",
            "{costs you breath|makes the sound airy|tires you sooner than it should}"),
    };
}
