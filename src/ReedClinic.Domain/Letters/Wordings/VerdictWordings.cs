using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a reed leaves the bench, and what to do with it.</summary>
internal static class VerdictWordings
{
    /// <summary>Not to be saved, and nothing was tried on it.</summary>
    internal static IReadOnlyList<string> NotToBeSavedUntried => [.. All[VerdictKind.NotToBeSaved].SkipLast(1)];

    /// <summary>The same of a further reed.</summary>
    internal static IReadOnlyList<string> NotToBeSavedToo { get; } =
    [
        "{this one|this reed} can't be saved {either|any more than the other}{: I am sorry|, and I am sorry for that, too}.", "{this one's|this reed's} playing days are over{ as well|, too}{: I am sorry|, which I regret}.",
    ];

    /// <summary>A good reed when it came, though not in everything.</summary>
    internal static IReadOnlyList<string> GoodOnArrivalOnTheWhole { get; } =
    [
        "{on the whole|taken all in all} {it was|this was} a good reed when it came{: I only refined it|; I did no more than refine it|}.",
        "but for what {I tell of it here|stands here} you {had sent me|sent me} a good reed{: I only refined it|}.",
    ];

    /// <summary>Why, where something was found that by itself ends the days of a reed.</summary>
    internal static IReadOnlyList<string> GivenUpBecause { get; } =
    [
        "{the reason is|what decided it is|what stands against it is} <what>{, which no work of mine mends|: that can't be put back|, and nothing that I know mends that}.",
        "<what> {is the reason|decided it|is what decided it}{: that can't be put back|, and no work of mine mends that|}.",
    ];

    /// <summary>Where risks were allowed on it, and it was worked on.</summary>
    internal static IReadOnlyList<string> RiskWasAllowed { get; } =
    [
        "you had {allowed me|given me leave} to take risks {with it|on this one}, and {that is how I worked on it|I worked on it with that leave}{; thank you for trusting me with it|}.",
        "I {worked on it|tried what I tried} with {your leave|the leave that you gave} to take risks{: thank you for that trust|, and I thank you for it|}.",
    ];

    /// <summary>The same where nothing was done.</summary>
    internal static IReadOnlyList<string> RiskNotTaken { get; } =
    [
        "you {would have|had} allowed risks {with it|on this one}; I took none.", "{your leave to take risks|the leave that you gave me to take risks} I did not use {on it|on this one|here}.",
    ];

    /// <summary>Better, and nothing was done: then nothing is said of work.</summary>
    internal static IReadOnlyList<string> ImprovedByItself { get; } =
    [
        "it {tested|has tested} better {later|a second time} than {when it came|on arrival}, and that without {any work|a knife}.",
        "{left to itself|with nothing done to it}, it {tested|has tested} better {later|a second time} than {when it came|on arrival}.",
    ];

    /// <summary>Better, but its cane is tired or at its end: then nothing is promised.</summary>
    internal static IReadOnlyList<string> ImprovedNearItsEnd { get; } =
    [
        "{it|this one|this reed} {plays|now plays} better than {when it came|it did on arrival|on the day it came|before}{, for as long as its cane lasts|}.",
        "{it|this one|this reed} {goes home|leaves me|comes back to you|travels home} {a better reed|in better order|better than it came}{, for as long as its cane lasts|}.",
        "the work {has helped|did it good}{, as far as this cane goes|, for as long as its cane lasts|}.",
    ];

    /// <summary>It came as a good reed, and something went wrong here: then nothing is said of refining.</summary>
    internal static IReadOnlyList<string> GoodOnArrivalHarmed { get; } =
    [
        "you {had sent me|sent me} a good reed, and {not all that I did was for its good|not all of my work did it good}.",
        "{that is a pity|I regret that}, for {it|this one} {came as a good reed|was a good reed when it came}.",
    ];

    internal static IReadOnlyDictionary<VerdictKind, IReadOnlyList<string>> All { get; } = new Dictionary<VerdictKind, IReadOnlyList<string>>
    {
        [VerdictKind.Improved] =
        [
            "{it|this one|this reed} {plays|now plays} better than {when it came|it did on arrival|on the day it came|before}.",
            "{I think|I believe|I am fairly sure that} you will {notice|feel|hear} {the difference|what has changed|the change}{ at once| quite soon|}.",
            "{it|this one|this reed} {goes home|leaves me|comes back to you|travels home} {in better order|better than it came|the better for it|the better for the work}.",
            "you {will|should} get {more|a good deal more} out of {it|this reed|this one} now than {when it came|before|on the day it came}.",
            "the work {has helped|did it good|has paid off}{: it is better now|, and it is a better reed|; it plays better now}.",
            "{it|this one|this reed} has gained by {the work|what was done}{, and I am glad of it|, I think|}.",
        ],
        [VerdictKind.GoodOnArrivalRefined] =
        [
            "{it was|this was} a good reed {already|when it came|from the start}; I {only refined it|only made it a little finer|did no more than refine it}.",
            "you {had sent me|sent me} a good reed{ here|}, and it {needed|asked for} {very little|little|only a touch}{ more|}.",
            "{it|this one|this reed} {came as a good reed|was good when it came}{, and it was a pleasure to refine|; I only made it a little finer|}.",
        ],
        [VerdictKind.LeftAsItCame] =
        [
            "{it|this one|this reed} {goes home|comes back to you|travels home} {as it came|just as it came|as you sent it|unchanged}{, then|}.",
            "I {send|am sending} {it|this one} {back|home} {as it was|just as it was|as it came|unchanged}.",
            "{nothing about it has changed|it has not changed|nothing has changed here}: {you get it back|it goes home|it comes home} {as it came|as you sent it}.",
            "you {have|get|will have} {it|this one} back {as it was|just as it was|as you sent it|unchanged}.",
        ],
        [VerdictKind.AsGoodAsThisCaneGets] =
        [
            "{it|this one|this reed} is as good now as {this piece of cane|its cane|the cane} {lets it be|allows}.",
            "{more|much more} cannot be had from {this piece of cane|this cane}, and that is {not your doing|no fault of yours|nobody's fault}.",
            "this piece of cane has {given|shown} {all it has|what it can}{, and that is not your doing|, and more would be too much|}.",
        ],
        [VerdictKind.StoppedToProtectIt] =
        [
            "I {stopped|left off|went no further} {there|at that point|then} to {protect it|keep it safe|save what is good}.",
            "another {stroke|step} might have {cost more than it gave|taken more than it gave}, so I {stopped|left it|went no further}.",
            "{there|at that point} I {left it alone|went no further}, to {protect it|keep what is good in it}.",
        ],
        [VerdictKind.NeedsPlayingIn] =
        [
            "what {it|this one} {needs|wants} now is {to be played in, not to be scraped|playing in, not scraping|to be played in, and no knife}.",
            "the rest will come {from playing it in|with playing|as you play it in}{, not from the knife|, a little each day|}.",
            "{now it is your turn|the next step is yours|the rest is up to you}: {it|this one} {wants|needs|has} to be played in.",
        ],
        [VerdictKind.NotToBeSaved] =
        [
            "I am sorry{ to say|}: {this one|this reed} can't be saved{, but it {has taught us something|still has something to teach}|, and I know that it is a pity|}.",
            "{I am sorry|I am sorry for it|it is a pity}, but its playing days are {over|done}{; its staple can serve the next one|, and it has earned its rest|}.",
            "to my regret I could not {save|rescue} {this one|it}{; {what it shows us is still worth something|we can still learn from it}|, and I would have liked to|}.",
        ],
        [VerdictKind.ReturnedUnplayed] = ["it comes back to you unplayed.", "I {send|am sending} it back {unplayed|without having played it}."],
    };
}
