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

    internal static IReadOnlyList<string> Soak { get; } =
    [
        "{soak|wet} <each> for three to five minutes in {fresh|clean} water {before you play|beforehand|before playing}, {then take it out|and no longer|and not longer than that}.",
        "three to five minutes in {fresh|clean} water {are enough|will do|are all it takes} {to soak <each>|for <each>|before you play}; longer makes {it stuffy|a reed stuffy|the sound stuffy}.",
        "give <each> three to five minutes in {fresh|clean} water {before you play|before playing}{; a reed that lies in water too long sounds stuffy|, but don't leave it there|}.",
        "{before you play|before playing}, {fresh|clean} water for three to five minutes is {right|enough|all that is needed}{ for <each>|}{; don't leave it in longer|, not longer|; more makes it stuffy}.",
    ];

    internal static IReadOnlyList<string> Dry { get; } =
    [
        "{afterwards|when you have finished|after playing} shake the water out, let it dry {in the open|in the air} for an hour, and only then {close the case|shut the case|put it in its case}.",
        "{when you have finished|after playing|when you stop}, let it dry in moving air before it goes into its case{, and keep it away from heaters|, far from any heater|, not on a heater}.",
        "{let it dry|dry it} {in the open|in moving air} {for an hour|for about an hour} {after playing|when you have finished|each time}{, away from heaters,|, never on a heater,|} and {close the case after that|then put it in its case}.",
        "a {case|closed case} is no place for a wet reed: {shake the water out|shake it} and {let it dry first|leave it in the open for an hour first}{, away from heaters|}.",
    ];

    internal static IReadOnlyList<string> Settles { get; } =
    [
        "a reed that has been worked on {changes a little|still changes|settles} in {the first days|its first days}, so {write down|note} how it feels on the first day and {on the fourth|again on the fourth}.",
        "{after work like this|after such work} a reed {changes|settles} for a few days; {write down|note} what you hear in <each> {at first and again on day four|on the first day and on the fourth}.",
        "{don't be surprised by|expect} {some|a little} change in <each> {in|during} the first days: {fresh scraping needs to settle|fresh scraping takes time to settle}.",
        "{keep|make} a short note on <each> on the first day and on the fourth{, because a reed settles after work|: after work a reed settles}.",
    ];

    /// <summary>What a plan about keeping reeds doesn’t say already.</summary>
    internal static IEnumerable<IReadOnlyList<string>> MoreBesideKeeping => More.Skip(3).Take(2);

    /// <summary>Of these a letter says one or two.</summary>
    internal static IReadOnlyList<IReadOnlyList<string>> More { get; } =
    [
        [
            "take turns {with your reeds|among your reeds|between your reeds}, so that each {can rest|has a rest|gets a rest} for a day{ in between|}.",
            "{play|use} {your reeds|the reeds} {by turns|in turn}, {a day each|one each day}{: a rested reed lasts longer|, and each of them lasts longer|; rest does them good}.",
        ],
        [
            "{on a slip in the case|on a small slip}, {write|note} the day on which you first {play|played} <each>{: that tells you|, which tells you} how long {a reed has served|a reed lasts}.",
            "{a slip of paper|a small slip} in the case that tells when <each> was first played {helps|is useful}{ later|}.",
        ],
        [
            "{rinse it|rinse it in water|swill it in fresh water} {after playing|when you have played}{, since sugar and crumbs clog the cane|; it stays clean longer|, and it will stay clean longer}.",
            "{rinse your mouth|rinse your mouth with water} before you play{, if you have eaten|, above all after something sweet|}: {the reed stays cleaner|it keeps the reed clean}.",
        ],
        [
            "{carry|keep} it {in a case that lets air in|in a case with a little air}{, and never loose in a pocket|, not in a closed tube|}.",
            "{the best case is one|choose a case} {that lets a little air in|with a little air in it}{; a closed tube keeps it damp|, because damp brings mould|}.",
        ],
        [
            "{when the weather turns|in very dry or very damp weather|when the weather changes}, {give it a few minutes before you judge it|don't judge it at once}{, since cane feels the air|: cane feels the air|}.",
            "cane {feels|notices} the weather, so {try it on two days|play it on two different days} before you {judge it|make up your mind about it}.",
        ],
        [
            "{push it|put it} {all the way |}into the instrument {with a turn and without force|with a gentle turn|with a small turn, never with force}{, holding it by the cork|}.",
            "hold it by the cork{, not by the cane,|, never by the blades,|} when you {push it in|put it into the instrument|take it out}.",
        ],
    ];
}
