using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What to do with a reed: play it first or keep it, where not to scrape, which side is up.</summary>
/// <remarks>All of it is common practice.</remarks>
internal static class UseWordings
{
    internal static IReadOnlyDictionary<VerdictKind, IReadOnlyList<string>> ByVerdict { get; } = new Dictionary<VerdictKind, IReadOnlyList<string>>
    {
        [VerdictKind.NotToBeSaved] =
        [
            "{please don't|don't} play it {any more|any longer}; {keep it for|save it for} its staple, which {can be used again|can carry another reed|is good for another reed}.",
            "{please don't|don't} play it {any more|any longer}, but {keep|save} the staple: {it can be used again|another reed can be tied on it|it will serve the next one}.",
            "{let the cane go|give the cane up|part with the cane} and keep the staple{, which is still good for another reed|; you can tie another reed on it|}.",
        ],
        [VerdictKind.NeedsPlayingIn] =
        [
            "play it in: {ten minutes a day|a little each day} for a week, {easy notes|with easy notes|on easy notes}, and don't judge it {before then|any sooner|until then}.",
            "{give it|let it have} a week of {ten easy minutes a day|short and easy playing} to be played in{; judge it after that|, and judge it only then}.",
            "ten minutes of easy notes {each|every} day for a week will play it in{; wait that long before you judge it|}.",
        ],
        [VerdictKind.StoppedToProtectIt] =
        [
            "{use|keep} it for {short, quiet practice|quiet practice, not too long}, and give it a {day's rest|day off|day to rest} {between|in between|after it}.",
            "{short and quiet practice|quiet practice, not too long,} {suits it best|is best for it}, with a {day's rest|day off} {between|in between}.",
            "{keep it for|it is best in} quiet practice{, a little at a time|, and not for long}{: it likes a day's rest after it|, and let it rest a day afterwards}.",
        ],
        [VerdictKind.ReturnedUnplayed] = ["wait until you have read what I wrote about it {above|further up}.", "{before you play it|first}, read what I wrote about it {above|further up}."],
        [VerdictKind.AsGoodAsThisCaneGets] =
        [
            "{use it|play it|keep it} for {everyday playing|your daily practice|every day} rather than for a concert.",
            "{everyday playing|daily practice} is {the right work|the best place|right} for it{; keep another for concerts|, rather than a concert|; take another to a concert}.",
            "it {will do well|is fine} {for everyday playing|in daily practice}{; for a concert take another|, but take another to a concert}.",
        ],
    };

    /// <summary>Of a reed that was put aside and has no verdict.</summary>
    internal static IReadOnlyList<string> AsideGently { get; } = ["{you may play it|it may be played}{ meanwhile|}, but gently: {a little at a time, and quietly|quiet practice, a little at a time}."];

    /// <summary>The same where the teacher said how it is to be played.</summary>
    internal static IReadOnlyList<string> AsideMind { get; } = ["before you play it, {mind|go by} what I wrote about it {above|further up}."];

    /// <summary>How the work on it goes on.</summary>
    internal static IReadOnlyList<string> AsideNext { get; } = ["{if you want me to go on with it|for me to go on with it}, {send it again|put it in again} with your next reeds."];

    /// <summary>Whether what a verdict says of a reed’s use was asked for: what isn’t for concerts needs no word of them.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <param name="reed">The reed.</param>
    internal static bool Says(VerdictKind verdict, Reed reed) => ByVerdict.ContainsKey(verdict) && (verdict != VerdictKind.AsGoodAsThisCaneGets || reed.UsedFor == ReedUse.Concert);

    /// <summary>A reed for concerts on which nothing was done: it has no first days.</summary>
    internal static IReadOnlyList<string> ConcertAsItCame { get; } =
    [
        "{keep|save} {it|this one|this reed} for concerts{, as you do|}: {a little playing now and then|a short while every few days} {will keep it ready|will be enough to keep it ready|will do}.",
        "{since|as} you {use it|play it|keep it} for concerts, {don't wear it out|spare it} {in daily practice|in your daily practice|day by day}.",
    ];

    internal static IReadOnlyList<string> Concert { get; } =
    [
        "{keep|save} {it|this one|this reed} for concerts{, as you do|}: {once it is played in|after its first days}, {a little playing now and then|a short while every few days} {will keep it ready|will be enough to keep it ready|will do}.",
        "{since|as} you {use it|play it|keep it} for concerts, {don't wear it out|spare it} {in daily practice|in your daily practice|day by day}{: once it is played in, a little now and then is enough|; after its first days a little playing now and then will keep it ready|}.",
        "{for a concert reed|for a reed that is kept for concerts|since it is for concerts}, {a little now and then|a little playing now and then} {will do|will be enough} {after its first days|once it is played in}{; practise on another|, and another can do the daily work|}.",
    ];

    internal static IReadOnlyList<string> First { get; } =
    [
        "{play|try|take} this one first{, and then the others|, and the others after it|}{, if you like|}.",
        "this is the {one|reed} {to play|I would play|for you to play} first{ of all|}{, I think|}.",
        "{play|take|choose} this {one|reed} first{; the others can wait a day|, and let the others rest|, and take the others after it|, and leave the others for another day}.",
        "{if you ask me|if you want to know|if you wonder} which {one|reed} to play first, {it is this one|take this one|I would say this one}.",
        "{I would|in your place I would|if it were mine, I would} {play|take|try} {this one|this reed} first{, and the others later|, before the others|}.",
        "{of all of them|of them all|of your reeds}, {play|take|choose} this one first{, if you like|}.",
    ];

    /// <summary>The same where the others have advice of their own.</summary>
    internal static IReadOnlyList<string> FirstAlone { get; } =
    [
        "{play|try|take} this {one|reed} first{ of all|}{, if you like|, I would say|}.",
        "this is the {one|reed} {to play|I would play|for you to play|to begin with} {first|first of all}{, I think|, if you ask me|}.",
        "{if you ask me|if you want to know|if you wonder} which {one|reed} to play first, {it is this one|take this one|I would say this one}.",
        "{I would|in your place I would|if it were mine, I would} {play|take|try} {this one|this reed} first{ of all|}.",
    ];

    internal static IReadOnlyList<string> InTurn { get; } =
    [
        "{play|use} {this one|it} in turn with the others, so that each has a day to {dry|rest}.",
        "{let it take turns|use it in turn} with the others{, a day each|}{: each needs a day to dry|, so that each can dry for a day|}.",
        "it can {take its turn|share the work} with the others{, a day each|, a day at a time}{, so that none is played two days running|}.",
        "{play it|use it} {on days when the others rest|while the others rest}{, so that all of them can dry well|, since each needs a day to dry|}.",
    ];

    /// <summary>Which of two to play first.</summary>
    internal static IReadOnlyList<string> FirstOfTwo { get; } =
    [
        "{play|try|take} this one first{, and then <other>|, and <other> after it|}{, if you like|}.",
        "this is the {one|reed} {to play|I would play|for you to play} first{ of all|}{, I think|}.",
        "{play|take|choose} this {one|reed} first{; <other> can wait a day|, and let <other> rest|, and take <other> after it|, and leave <other> for another day}.",
        "{if you ask me|if you want to know|if you wonder} which {one|reed} to play first, {it is this one|take this one|I would say this one}.",
        "{I would|in your place I would|if it were mine, I would} {play|take|try} {this one|this reed} first{, and <other> later|, before <other>|}.",
    ];

    /// <summary>How the second of two is played.</summary>
    internal static IReadOnlyList<string> InTurnOfTwo { get; } =
    [
        "{play|use} {this one|it} in turn with <other>, so that each has a day to {dry|rest}.",
        "{let it take turns|use it in turn} with <other>{, a day each|}{: each needs a day to dry|, so that each can dry for a day|}.",
        "it can {take its turn|share the work} with <other>{, a day each|, a day at a time}{, so that neither is played two days running|}.",
        "{play it|use it} {on days when <other> rests|while <other> rests}{, so that both can dry well|, since each needs a day to dry|}.",
    ];

    internal static IReadOnlyList<string> DontScrape { get; } =
    [
        "please {don't scrape|don't touch|leave alone} <place>{ here| on this one| on this reed| for now|}.",
        "<place> {should|had better|ought to} {be left alone|stay untouched|be left in peace}{ here| for now|}.",
        "{keep|stay} {off|away from} <place>{ here| on this one| with the knife|}, please.",
        "{one place to leave alone|a place not to scrape}{ here|}: <place>.",
        "{don't take anything|take nothing} from <place>{ here| on this one| for now|}, please.",
    ];

    internal static IReadOnlyList<string> ThisSideUp { get; } =
    [
        "{play|hold} it with {this side|this blade} up: the {blade|one} {with the mark|that is marked} (<mark>).",
        "the {upper blade|blade that goes on top|blade that belongs on top|top blade} is {the one with this mark|the marked one}: <mark>.",
        "{this way up|which way up|as for which way up}: {the marked blade|the blade with the mark|the blade that is marked} {goes on top|is the upper one|belongs on top} (<mark>).",
        "{when|whenever} you play it, {let the marked blade be|keep the marked blade|have the marked blade} {on top|the upper one}{, please|} (<mark>).",
        "{turn it so that|hold it so that|see to it that|take care that} {the marked blade|the blade with the mark|the blade that is marked} is {on top|the upper one}{ when you play|} (<mark>).",
    ];
}
