namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>Playing in and care. All of it is common practice.</summary>
internal static class CareWordings
{
    /// <summary>The first days. What it speaks of is one reed or each of several.</summary>
    internal static IReadOnlyList<string> FirstDays { get; } =
    [
        "on the first three days that you play <each>, {play|stay} no longer than ten minutes{ at a time|}, {in the middle of the range|in the middle of your range|on comfortable notes} and {not too loud|not too loudly|rather softly}.",
        "{begin|start} {gently|slowly} with <each>: ten minutes {on each of|for} the first three days of playing, {easy notes|comfortable notes|notes that come easily}, {nothing very loud|nothing loud|and softly}.",
        "for {the first three days of playing|three days of playing} ten minutes {a day|each day} {are|will be} enough for <each>, {with easy notes|on comfortable notes} and {nothing very loud|no loud ones|rather softly}.",
        "let <each> have three {easy|gentle|quiet} days{ to begin with|}: {ten minutes at most|no more than ten minutes} {a day|each day}, {in the middle of the range|on easy notes}{, not too loud|}.",
        "{play|try} <each> for three days {with care|gently|softly} before you {ask for more|play for long|play loudly}: ten minutes {a day|each day}{, easy notes|, in the middle of the range|}.",
    ];

    /// <summary>Behind the first days, where the teacher wants a reed rested before it is needed.</summary>
    internal static IReadOnlyList<string> DaysFirst { get; } = ["{these days come first|begin with these days}; the rest {that I wrote of|I wrote of} comes after them, right before you need it."];

    internal static IReadOnlyList<string> Soak { get; } =
    [
        "{soak|wet} <each> for three to five minutes in {fresh|clean} water {before you play|beforehand|before playing}, {and no longer|not longer}, {since more makes a reed stuffy|or the sound gets stuffy|because a reed that lies in water too long sounds stuffy}.",
        "three to five minutes in {fresh|clean} water {are enough|will do|are all it takes} {to soak <each>|for <each>|before you play}; longer makes {a reed stuffy|the sound stuffy|a stuffy reed}.",
        "give <each> three to five minutes in {fresh|clean} water {before you play|before playing|first}{; a reed that lies in water too long sounds stuffy|, but don't leave it there, or it sounds stuffy|: longer than that makes a reed stuffy}.",
        "{before you play|before playing}, {fresh|clean} water for three to five minutes is {right|enough|all that is needed}{ for <each>|}{; longer makes it stuffy|; more makes the sound stuffy|, since a longer bath makes a reed stuffy}.",
    ];

    internal static IReadOnlyList<string> Dry { get; } =
    [
        "{afterwards|when you have finished|after playing} shake the water out, let it dry {in the open|in the air|in moving air} for an hour, {away from heaters|far from any heater}, and only then {close the case|shut the case|put it in its case}.",
        "{when you have finished|after playing|when you stop}, shake the water out and let it dry {in moving air|in the open} for an hour before it goes into its case{, and keep it away from heaters|, far from any heater|, not on a heater}.",
        "shake the water out {after playing|when you have finished|each time}, {let it dry|dry it} {in the open|in moving air} {for an hour|for about an hour}{, away from heaters,|, never on a heater,} and {close the case after that|then put it in its case}.",
        "a {case|closed case} is no place for a wet reed: shake {the water out|it} and {let it dry in moving air|leave it in the open|let it dry in the open} for {an hour|about an hour} first, {away from heaters|far from any heater|not on a heater}.",
    ];

    internal static IReadOnlyList<string> Settles { get; } =
    [
        "a reed that has been worked on {changes a little|still changes|settles} in {the first days|its first days}, so {write down|note} what you hear and feel with <each> on the first day and {on the fourth|again on the fourth}.",
        "{after work like this|after such work} a reed {changes|settles} for a few days; {write down|note} what you hear in <each> {at first and again on day four|on the first day and on the fourth}.",
        "{don't be surprised by|expect} {some|a little} change in <each> {in|during} the first days: {fresh scraping needs to settle|fresh scraping takes time to settle}.",
        "{write|write down} a line about <each> on the first day and {another|one more} on the fourth{, because a reed settles after work|: after work a reed settles}.",
    ];

    /// <summary>The same where the teacher said how one of them is to be played: it names no days and gives no advice on playing.</summary>
    internal static IReadOnlyList<string> SettlesToo { get; } =
    [
        "{don't be surprised by|expect} {some|a little} change in <each> {at the beginning|at first}: {what was worked on|a reed that was worked on} needs {time to settle|to settle}.",
        "after work a reed {changes a little|still changes|settles} {at first|in the beginning}{, and so will <each>|: look out for that with <each>}.",
    ];

    /// <summary>The same of one reed, which needs no name.</summary>
    internal static IReadOnlyList<string> ItSettlesToo { get; } =
    [
        "{don't be surprised by|expect} {some|a little} change in it {at the beginning|at first}: {what was worked on|a reed that was worked on} needs {time to settle|to settle}.",
        "{after the work|after this work} it will {change a little|still change|settle} {at first|in the beginning}, {as every reed does|as reeds do|and that is as it should be}.",
    ];

    /// <summary>Taking turns, which needs more than one reed.</summary>
    internal const string Turns = "turns";

    /// <summary>What a plan about keeping reeds doesn’t say already.</summary>
    internal static IReadOnlyList<string> BesideKeeping { get; } = ["case", "weather"];

    /// <summary>Of these a letter says two; each says one thing, in whatever words.</summary>
    internal static IReadOnlyDictionary<string, IReadOnlyList<string>> More { get; } = new Dictionary<string, IReadOnlyList<string>>
    {
        [Turns] =
        [
            "take turns {with your reeds|among your reeds|between your reeds}, so that each {can rest|has a rest|gets a rest} for a day{ in between|}.",
            "{play|use} {your reeds|the reeds} {by turns|in turn}, {a day each|one each day}{: a rested reed lasts longer|, and each of them lasts longer|; rest does them good}.",
        ],
        ["date"] =
        [
            "{on a slip in the case|on a small slip}, {write|note} the day on which you first {play|played} <each>{: that tells you|, which tells you} how long {a reed has served|a reed lasts}.",
            "{write|note} {on a slip|on a small slip of paper} in the case when <each> was first played{, so that you know how long a reed lasts|: so you can tell how long it has served}.",
        ],
        ["rinse"] =
        [
            "{rinse the reed|rinse the reed in water|swill the reed in fresh water} {after playing|when you have played}{, since sugar and crumbs clog the cane|; it stays clean longer|, and it will stay clean longer}.",
            "{after playing|when you have played}, {rinse the reed|rinse the reed in water|swill the reed in fresh water}{: that keeps the cane clean|, and the cane stays clean longer|, so that nothing clogs the cane}.",
        ],
        ["mouth"] =
        [
            "{rinse your mouth|rinse your mouth with water} before you play{, if you have eaten|, above all after something sweet|}: {the reed stays cleaner|it keeps the reed clean}.",
            "{if you have eaten|after a meal}, {rinse your mouth|rinse your mouth with water} before you play{, and the reed stays cleaner|: it keeps the reed clean}.",
        ],
        ["case"] =
        [
            "{carry|keep} a reed {in a case that lets air in|in a case with a little air}{, and never loose in a pocket|, not in a closed tube|}.",
            "{the best case is one|choose a case} {that lets a little air in|with a little air in it}{; a closed tube keeps a reed damp|, because damp brings mould|}.",
        ],
        ["weather"] =
        [
            "{when the weather turns|in very dry or very damp weather|when the weather changes}, {give a reed a few minutes before you judge it|don't judge a reed at once}{, since cane feels the air|: cane feels the air|}.",
            "cane {feels|notices} the weather, so {try a reed on two days|play a reed on two different days} before you {judge it|make up your mind about it}.",
        ],
        ["hold"] =
        [
            "{push a reed|put a reed} into the instrument {with a gentle turn|with a small turn} and without force, {holding it by the cork|your fingers by the cork and not on the cane}.",
            "hold a reed by the cork{, not by the cane,|, never by the blades,|} when you put it into the instrument{, with a gentle turn and no force|, with a small turn and without force}.",
        ],
    };
}
