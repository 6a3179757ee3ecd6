using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What is said first to what bothers the student.</summary>
internal static class ComplaintWordings
{
    internal static IReadOnlyList<string> AfterWork { get; } =
    [
        "{I tried just that|that is what I tried first|I looked into that}: when it came, <was>, and {after the work|after my work|by the end} <now>.",
        "{to begin with that|to that first}: <was> when it {came|arrived}, and {after the work|after my work|by the end} <now>.",
    ];

    /// <summary>Where no work lay between the two.</summary>
    internal static IReadOnlyList<string> LaterOn { get; } =
    [
        "{I tried just that|I looked into that}: when it came, <was>, and later <now>.",
        "{to begin with that|to that first}: <was> when it {came|arrived}, and later <now>.",
    ];

    internal static IReadOnlyList<string> Unchanged { get; } =
    [
        "{I tried just that|I looked into that}: when it came, <was>, and {there that stands|that is how it has stayed}.",
        "{to begin with that|to that first}: <was> when it {came|arrived}, and that has not changed.",
    ];

    /// <summary>Tried when it came, and not after that.</summary>
    internal static IReadOnlyList<string> Met { get; } =
    [
        "{I met that too|I found the same|in my hands it was the same}: <was> when it {came|arrived}.", "{I tried just that|I looked into that}, and {met it too|found the same}: <was>.",
    ];

    /// <summary>The same where it was as it should be.</summary>
    internal static IReadOnlyList<string> NotMet { get; } =
    [
        "{I tried just that|I looked into that}, and {in my hands|when I played it} it was otherwise: <was>.", "{in my hands|when I tried it} that did not show: <was>.",
    ];

    /// <summary>Tried only after the work.</summary>
    internal static IReadOnlyList<string> Later { get; } = ["{that I tried only later|I came to try that only later}: by then <now>.", "{I did not try that at first|at first I did not try that}; later <now>."];

    /// <summary>Where another test bears on it, before and after the work.</summary>
    internal static IReadOnlyList<string> NearAfterWork { get; } =
    [
        "{what bears on that|what I can say to that|nearest to that}: when it came, <was>, and {after the work|after my work|by the end} <now>.",
        "{to that I can say this much|this much I can say to that}: <was> when it {came|arrived}, and {after the work|after my work|by the end} <now>.",
    ];

    /// <summary>The same where no work lay between the two.</summary>
    internal static IReadOnlyList<string> NearLaterOn { get; } =
    [
        "{what bears on that|what I can say to that|nearest to that}: when it came, <was>, and later <now>.",
        "{to that I can say this much|this much I can say to that}: <was> when it {came|arrived}, and later <now>.",
    ];

    /// <summary>The same, tried once when it came.</summary>
    internal static IReadOnlyList<string> NearOnce { get; } = ["{what bears on that|what I can say to that|nearest to that}: <was> when it {came|arrived}."];

    /// <summary>The same, tried only later.</summary>
    internal static IReadOnlyList<string> NearLater { get; } = ["{what bears on that|what I can say to that|nearest to that} I tried only later: by then <now>."];

    internal static IReadOnlyList<string> FoundToo { get; } = ["I {found|noticed|met} that too.", "that is what I {found|noticed} as well.", "I can {only agree|bear that out}."];

    internal static IReadOnlyList<string> WorkedOn { get; } = ["I {found|noticed|met} that too, and worked on it.", "that is what I {found|noticed} as well, and I worked on it."];

    internal static IReadOnlyDictionary<FindingEnding, IReadOnlyList<string>> Ended { get; } = new Dictionary<FindingEnding, IReadOnlyList<string>>
    {
        [FindingEnding.Gone] = ["I {found|noticed|met} that too, and it is gone now.", "that is what I {found|noticed} as well, and it has been put right."],
        [FindingEnding.Better] = ["I {found|noticed|met} that too; it is better now, though not quite gone.", "that is what I {found|noticed} as well, and it is {mostly|largely} put right."],
        [FindingEnding.Unchanged] = ["I {found|noticed|met} that too, and it is as it was.", "that is what I {found|noticed} as well; it has not changed."],
        [FindingEnding.LeftOnPurpose] = ["I {found|noticed|met} that too, and left it as it is, on purpose.", "that is what I {found|noticed} as well; I left it alone on purpose."],
    };

    /// <summary>Where the log says nothing of it, and the reed goes home to be played.</summary>
    internal static IReadOnlyList<string> NotNoted { get; } =
    [
        "my notes from the bench {say nothing of|hold nothing on} <what>: {please tell me|let me know|write to me} how it is when you have played {it|this one} for a few days.",
        "of <what> I {noted|wrote down} nothing; {please tell me|let me know|write to me} how it is once you have played {it|this one} {a little|for a day or two}.",
    ];

    /// <summary>The same where something else was answered, or became better.</summary>
    internal static IReadOnlyList<string> AskedBack { get; } =
    [
        "{as for|as to} <what>, I have no test {of my own |}to tell you of: {please tell me|let me know|write to me} how it is when you have played {it|this one} for a few days.",
        "{I did not test|I have not tested} <what> {by itself|apart}; {please tell me|let me know|write to me} how it is once you have played {it|this one} {a little|for a day or two}.",
    ];

    /// <summary>Why it is left open, in the teacher’s words.</summary>
    internal static IReadOnlyList<string> LeftOpen { get; } = ["{I leave that open for now|for now I leave that open|that much I leave open}: <reason>"];

    /// <summary>The same where it isn’t to be played.</summary>
    internal static IReadOnlyList<string> NotNotedAlone { get; } =
    [
        "my notes from the bench {say nothing of|hold nothing on} <what>.", "of <what> I {noted|wrote down} nothing.",
    ];

    /// <summary>What isn’t recognised is answered by what was found first, and what became of it.</summary>
    internal static IReadOnlyList<string> FoundFirst { get; } =
    [
        $"{{what I found first|the first thing that I found|what I met first|what I noted first}} {{here|on it|on this one|on this reed}}: <what>, {{and that|which}} {FindingFrames.Usually} <shows>",
        $"{{on this one|here|on this reed}} I {{found|noticed|saw}} first {{of all |}}that <what>, {{and that|which}} {FindingFrames.Usually} <shows>",
    ];

    /// <summary>The same where nothing is said of what it does.</summary>
    internal static IReadOnlyList<string> FoundFirstOnly { get; } =
    [
        "{what I found first|the first thing that I found|what I met first|what I noted first} {here|on it|on this one|on this reed}: <what>",
        "{on this one|here|on this reed} I {found|noticed|saw} first {of all |}that <what>",
    ];

    /// <summary>The same where an earlier reed had it.</summary>
    internal static IReadOnlyList<string> FoundFirstAgain { get; } =
    [
        "{what I found first|the first thing that I found|what I met first|what I noted first} {here|on it|on this one|on this reed} {you know from|is as in} <earlier>: <what>",
        "{on this one|here|on this reed} {too|as well} I {found|noticed|saw} first {of all |}that <what>, {as in|just as in} <earlier>",
    ];

    internal static IReadOnlyList<string> NoFault { get; } =
    [
        "{at the bench|with the reed before me|when I looked it over|when it lay before me|in my hands} I {noted|found|met|saw} no fault {on it|in it|on this one|on this reed}.",
        "no fault {was to be found|came to light|showed|was to be seen} {on it|in it|on this one|on this reed}{ at the bench| here|}.",
    ];

    /// <summary>Where nothing was named as a fault, and a test came out otherwise than it should.</summary>
    internal static IReadOnlyList<string> Tests { get; } =
    [
        "{what the tests told me|what I met in the tests|how it did in the tests|what came of the tests} {on it|on this one|on this reed|here} {comes next|follows|stands below|you can read below}.",
    ];

    /// <summary>Where what was found has words of its own.</summary>
    internal static IReadOnlyList<string> Follows { get; } =
    [
        "{what I found|what I noted|what I saw} {on it|on this one|on this reed|here} {comes next|follows|you can read next|stands below}.",
    ];
}
