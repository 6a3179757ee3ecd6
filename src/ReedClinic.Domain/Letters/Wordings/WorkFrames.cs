namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How the work on a reed is told.</summary>
internal static class WorkFrames
{
    private const string Home = "{: it|, and it} {goes home|comes back to you|travels home} {as it came|just as it came|as you sent it|unchanged}";

    internal static IReadOnlyList<string> FirstTested { get; } =
    [
        "in <passes>, {with a test after each|trying it after each|with a test after every one}, I <work>.",
        "it {took|needed} <passes>, {with a test after each|each with a test after it}: I <work>.",
        "I {worked on it|went over it} in <passes>, {trying it after each|with a test after each}: I <work>.",
        "{over|in the course of} <passes> I <work>, {and tried it each time|with a test after each of them|and tried it after every one}.",
    ];

    internal static IReadOnlyList<string> FirstTestedOnce { get; } =
    [
        "in one pass, {with a test after it|and trying it afterwards}, I <work>.",
        "it {took|needed} {only |}one pass, {with a test after it|and then a test}: I <work>.",
        "I {worked on it|went over it} {once|in one pass}, and tried it {afterwards|again|after that}: I <work>.",
        "in {a single|one} pass I <work>, {and tried it afterwards|and then tried it again}.",
    ];

    internal static IReadOnlyList<string> First { get; } =
    [
        "in <passes> I <work>.",
        "I {worked on it|went over it} in <passes>: I <work>.",
        "it {took|needed} <passes>: I <work>.",
    ];

    internal static IReadOnlyList<string> Rhythm { get; } =
    [
        "I {worked on it|went over it} in <passes>{, with a test after each|, trying it after each|, and tried it after every one}.",
        "it {took|needed} <passes>, {with a test after each|each with a test after it|and a test after every one}.",
        "{there were|it came to} <passes>{ in all|}, {with a test after each|each with a test after it}.",
    ];

    /// <summary>What was done in some of the passes, behind the sentence that counts them.</summary>
    internal static IReadOnlyList<string> Began { get; } = ["{first|to begin with|to start with|at the beginning}{,|} I <work>.", "I <work> {first|to begin with|to start with}.", "{the work began with this|it began with this|this came first}: I <work>."];

    internal static IReadOnlyList<string> RhythmUntested { get; } = ["I {worked on it|went over it} in <passes>{ in all|}.", "it {took|needed} <passes>{ in all|}.", "{there were|it came to} <passes>{ in all|}."];

    /// <summary>Work of the studio’s own; its name is quoted, since it may read as an order.</summary>
    internal static IReadOnlyList<string> Own { get; } = ["I did this: <name><more>.", "{what I did|this is what I did}{ here|}: <name><more>.", "{then|next} I did this: <name><more>."];

    /// <summary>The same once more on the same reed.</summary>
    internal static IReadOnlyList<string> OwnAgain { get; } = ["{once more|again} I did this: <name><more>.", "{then|after that} <name> once more<more>."];

    /// <summary>What such work does, in the owner’s words.</summary>
    internal static IReadOnlyList<string> OwnDoes { get; } = ["what that does: <line>", "{this is what|here is what} it does: <line>"];

    internal static IReadOnlyList<string> Next { get; } =
    [
        "then I <work>.", "after that I <work>.", "next I <work>.", "I {then|also} <work>.",
    ];

    internal static IReadOnlyList<string> Later { get; } = ["later I <work>.", "{at a later time|when I came back to it|another time} I <work>."];

    internal static IReadOnlyList<string> StoppedAtFirst { get; } =
        ["there I stopped at first<why>", "{at that point|there} I {stopped for the time being|stopped for a while|stopped at first}<why>"];

    internal static IReadOnlyList<string> StoppedAgain { get; } = ["there I stopped again<why>", "{once more|again} I {stopped|stopped there}<why>"];

    internal static IReadOnlyList<string> Stopped { get; } =
    [
        "{then|there|at that point|here|after that} I {stopped|left off|went no further|ended the work}{, and this is why|, for this reason|, and my reason was this|}: <why>",
        "{my reason to|the reason to|what led me to} {stop|leave off|stop there|go no further} was this: <why>",
        "I {stopped|left off|went no further} {then|there|at that point|after that}{, and this is why|, for this reason|, with this in mind|}: <why>",
        "{this is why I|here is why I} {stopped|stopped there|left off|stopped at that point}: <why>",
    ];

    /// <summary>The same before a reason that stands as a sentence by itself.</summary>
    internal static IReadOnlyList<string> StoppedAlone { get; } =
        ["{then|there|at that point|after that} I {stopped|left off|ended the work|went no further}. <why>"];

    /// <summary>The same where it was stopped to protect it.</summary>
    internal static IReadOnlyList<string> StoppedToProtectAlone { get; } =
        ["to {protect it|keep it safe|keep what was good} I {stopped there|stopped then|went no further}. <why>"];

    internal static IReadOnlyList<string> StoppedToProtect { get; } =
    [
        "{then|there|at that point} I stopped, to {protect it|keep it safe|protect what was good}{, and this is why|, for this reason|}: <why>",
        "to {protect it|keep it safe|keep what was good} I {stopped there|stopped then|went no further}{, and this is why|, for this reason|}: <why>",
        "I {stopped|went no further} {there|then|at that point} {so as not to spoil it|so that nothing was lost|to protect it}: <why>",
    ];

    /// <summary>A reed that was put aside and not taken up again.</summary>
    internal static IReadOnlyList<string> PutAside { get; } =
        ["I {put|have put} it aside for now, and have not {come back to it|taken it up again}{ yet|}.", "for now I have put it aside, and I have not {come back to it|taken it up again}{ yet|}."];

    /// <summary>Behind it: it is sent home all the same.</summary>
    internal static IReadOnlyList<string> PutAsideHome { get; } = ["it {is in the parcel|comes home in the parcel} as it is now."];

    /// <summary>The same with the reason.</summary>
    internal static IReadOnlyList<string> PutAsideBecause { get; } =
        ["I {put|have put} it aside for now, and have not {come back to it|taken it up again}{ yet|}{, for this reason|; this is why|}: <why>"];

    internal static IReadOnlyList<string> AdviceOnly { get; } =
    [
        "you {asked|had asked} for advice only, so I {took nothing away|left the cane alone|scraped nothing}{ here| on this one|}.",
        "{as you wished|as you asked|just as you wanted}, I {left the cane alone|took nothing away|scraped nothing}{ here| on this one|}.",
        "{this one was for advice only|on this one you wanted advice only}, and {so|therefore} I {left the cane alone|took nothing away|scraped nothing}.",
    ];

    /// <summary>The same where the reed goes home as it came: that is said in the same breath.</summary>
    internal static IReadOnlyList<string> AdviceOnlyAsItCame { get; } =
    [
        $"you {{asked|had asked}} for advice only, so I {{took nothing away|left the cane alone|scraped nothing}}{Home}.",
        $"{{as you wished|as you asked|just as you wanted}}, I {{left the cane alone|took nothing away|scraped nothing}}{Home}.",
        $"{{this one was for advice only|on this one you wanted advice only}}, so I {{left the cane alone|took nothing away|scraped nothing}}{Home}.",
    ];

    /// <summary>The same where anything was allowed.</summary>
    internal static IReadOnlyList<string> UntouchedAsItCame { get; } =
    [
        $"I {{took nothing away|took no cane|have taken no cane}} from {{it|this one|this reed}}{{ this time|}}{Home}.",
        $"I {{left|have left}} {{its cane|the cane}} {{alone|as it was}}{{ here| on this one|}}{Home}.",
        $"I scraped nothing {{here|on this one|on this reed}}{{ this time|}}{Home}.",
    ];

    internal static IReadOnlyList<string> Untouched { get; } =
    [
        "I {took nothing away|took no cane|have taken no cane} from {it|this one|this reed}{ this time|}.", "I {left|have left} {its cane|the cane} {as it came|as it was|alone|in peace}{ here| on this one|}.",
        "{nothing was scraped|I scraped nothing|no cane was taken away} {here|on this one|on this reed}{ this time|}.",
    ];

    /// <summary>What was right of a reed on which nothing was done.</summary>
    internal static IReadOnlyList<string> GoodOfIt { get; } =
    [
        "{what I liked|what pleased me|what is good} {about it|about this one|about this reed}: <goods>.",
        "{I liked this|I was glad of this|I was pleased with this}: <goods>.",
        "{here is|this is} {what I liked|what pleased me|what is good}{ about it|}: <goods>.",
    ];

    internal static IReadOnlyList<string> RiskOpen { get; } =
    [
        "{one thing|something} to keep an eye on: <risk>.", "please {keep an eye on this|watch for one thing}: <risk>.",
    ];

    internal static IReadOnlyList<string> RiskHappened { get; } =
    [
        "before I began I had {written|noted} down a risk (<risk>), and {it did happen|it happened}{: I am sorry|; I am sorry for it|, and I am sorry for that}.",
        "a risk that I had {written down|noted} before I began (<risk>) {did come about|did happen}{: I am sorry|; I am sorry for it|, and I am sorry for that}.",
    ];
}
