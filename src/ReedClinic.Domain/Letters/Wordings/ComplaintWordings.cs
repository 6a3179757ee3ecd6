using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What is said first to what bothers the student.</summary>
internal static class ComplaintWordings
{
    // Where another test answers than the one that would: that is said first, and plainly.
    private const string Near =
        "{I made no test of {just|exactly} that|I did not test {just|exactly} that|I have no test of just that}, but {this comes near it|this is close to it|this may have to do with it}";

    internal static IReadOnlyList<string> AfterWork { get; } =
    [
        "{I tried just that|that I tried, too|I looked into that}: when it came, <was>, and {after the work|after my work|by the end} <now>.",
        "{to begin with that|to answer that}: <was> when it {came|arrived}, and {after the work|after my work|by the end} <now>.",
    ];

    /// <summary>Where no work lay between the two.</summary>
    internal static IReadOnlyList<string> LaterOn { get; } =
    [
        "{I tried just that|I looked into that}: when it came, <was>, and later <now>.",
        "{to begin with that|to answer that}: <was> when it {came|arrived}, and later <now>.",
    ];

    /// <summary>Where work came after the last time it was tried.</summary>
    internal static IReadOnlyList<string> BeforeLast { get; } =
    [
        "{I tried just that|I looked into that}: when it came, <was>, and when I last tried it, before <before>, <now>.",
        "{to begin with that|to answer that}: <was> when it {came|arrived}, and when I last tried it, before <before>, <now>.",
    ];

    internal static IReadOnlyList<string> Unchanged { get; } =
    [
        "{I tried just that|I looked into that}: when it came, <was>, and {there that stands|that is how it has stayed}.",
        "{to begin with that|to answer that}: <was> when it {came|arrived}, and that has not changed.",
    ];

    /// <summary>Tried when it came, and not after that.</summary>
    internal static IReadOnlyList<string> Met { get; } =
    [
        "{I met that too|I found the same|in my hands it was the same}: <was> when it {came|arrived}.", "{I tried just that|I looked into that}, and {met it too|found the same}: <was>.",
    ];

    /// <summary>The same where the reed was worked on and tried since, but not for this.</summary>
    internal static IReadOnlyList<string> MetNotAgain { get; } =
    [
        "{I met that too|I found the same|in my hands it was the same}: <was> when it {came|arrived}{, and|;} after the work I did not try it again.",
        "{I tried just that|I looked into that}, and {met it too|found the same}: <was>{, and|;} I did not try it again after the work.",
    ];

    /// <summary>Behind a likely reason: the thing itself was not tried.</summary>
    internal static IReadOnlyList<string> Untried { get; } = ["I {have|made} no test of <what>{ here| on this one|}, so this is {no more than|only} likely.", "{only likely, for|but} I {have|made} no test of <what>{ here| on this one|}."];

    /// <summary>Of a further complaint, where a test that bears on it too was told right before.</summary>
    internal static IReadOnlyList<string> NotItself { get; } = ["I {made|have made} no separate test of <what>{ here|}; what I {have just told|told just now} comes close to it."];

    /// <summary>The same where something was remarked of it later: only how it came is told.</summary>
    internal static IReadOnlyList<string> MetThen { get; } = ["{I tried just that|I looked into that}{ at first|}: <was> when it {came|arrived}.", "when it {came|arrived}, {I tried just that|I looked into that}: <was>."];

    /// <summary>The same of what was found.</summary>
    internal static IReadOnlyList<string> FoundThen { get; } = ["when it {came|arrived}, I {found|noticed|met} that too."];

    /// <summary>Where words of the teacher’s name it, and neither a test nor a finding tells it.</summary>
    internal static IReadOnlyList<string> Named { get; } =
    [
        "as for <what>: {please tell me|let me know|write to me} how <it is> when you have played {it|this one}<for>.",
        "as for <what>, {please tell me|let me know|write to me} how <it is> once you have played {it|this one}<little>.",
    ];

    /// <summary>The same where a remark of when it came says just what the student wrote.</summary>
    internal static IReadOnlyList<string> NamedAndMet { get; } =
    [
        "as for <what>, I {noticed|met|found} the same when it {came|arrived}: {please tell me|let me know|write to me} how <it is> when you have played {it|this one}<for>.",
        "as for <what>, I {noticed|met|found} the same when it {came|arrived}; {please tell me|let me know|write to me} how <it is> once you have played {it|this one}<little>.",
    ];

    /// <summary>The same where it isn’t to be played.</summary>
    internal static IReadOnlyList<string> NamedAndMetAlone { get; } = ["as for <what>, I {noticed|met|found} the same when it {came|arrived}."];

    /// <summary>The same where it was as it should be.</summary>
    internal static IReadOnlyList<string> NotMet { get; } =
    [
        "{I tried just that|I looked into that}, and {in my hands|when I played it} it was otherwise: <was>.", "{in my hands|when I tried it} that did not show: <was>.",
    ];

    /// <summary>The same where its opposite was told behind it, and is what was met.</summary>
    internal static IReadOnlyList<string> OppositeMet { get; } =
    [
        "{of the two|of these two} I {met|found} the {second|latter}: <was> when it {came|arrived}.", "{it was the second of the two that I {met|found}|I {met|found} the second of the two}: <was>.",
    ];

    /// <summary>Where a time or an occasion stands with the complaint that nothing here could be tried at.</summary>
    internal static IReadOnlyList<string> When { get; } =
    [
        "{how it is|how that is|what becomes of it} <when>, {my tests don't tell|a test at the bench doesn't tell}: {please tell me|let me know|write to me} {if it is so again|whether you meet it again|whether it still happens}.",
        "no test {of mine|at the bench|that I made} tells {how it is|how that is} <when>; {please tell me|let me know|write to me} {if you meet it again|whether you meet it again|whether it still happens}.",
        "{one thing|this much} {no test at the bench can tell|I could not try at the bench}: {how it is|how that is} <when>. {Please tell me|Let me know|Write to me} {if you meet it again|whether it still happens}.",
    ];

    /// <summary>The same where it isn’t to be played.</summary>
    internal static IReadOnlyList<string> WhenAlone { get; } = ["{how it is|how that is} <when>, my tests don't tell."];

    /// <summary>What was found and has gone, and nothing was done for it.</summary>
    internal static IReadOnlyList<string> GoneByItself { get; } = ["I {found|noticed|met} that too; {it is|this is} no longer so."];

    /// <summary>Tried only after the work.</summary>
    internal static IReadOnlyList<string> Later { get; } = ["{that I tried only later|I came to try that only later}: by then <now>.", "{I did not try that at first|at first I did not try that}; later <now>."];

    /// <summary>The same where words at the bench name it: then it isn’t called untried.</summary>
    /// <param name="ways">The ways.</param>
    internal static IReadOnlyList<string> WithoutUntried(IReadOnlyList<string> ways) =>
        [.. ways.Select(way => way.Replace(Near, "{this comes near it|this is close to it|this may have to do with it}", StringComparison.Ordinal))];

    /// <summary>Where another test bears on it, before and after the work.</summary>
    internal static IReadOnlyList<string> NearAfterWork { get; } =
    [
        Near + ": when it {came|arrived}, <was>, and {after the work|after my work|by the end} <now>.",
        Near + ": <was> when it {came|arrived}, and {after the work|after my work|by the end} <now>.",
    ];

    /// <summary>The same where work came after the last time that it was tried.</summary>
    internal static IReadOnlyList<string> NearBeforeLast { get; } =
    [
        Near + ": when it {came|arrived}, <was>, and when I last tried, before <before>, <now>.",
    ];

    /// <summary>The same where no work lay between the two.</summary>
    internal static IReadOnlyList<string> NearLaterOn { get; } =
    [
        Near + ": when it {came|arrived}, <was>, and later <now>.",
        Near + ": <was> when it {came|arrived}, and later <now>.",
    ];

    /// <summary>The same, tried once when it came.</summary>
    internal static IReadOnlyList<string> NearOnce { get; } = [Near + ": <was> when it {came|arrived}."];

    /// <summary>The same, tried only later.</summary>
    internal static IReadOnlyList<string> NearLater { get; } = [Near + ", which I tried only later: by then <now>."];

    internal static IReadOnlyList<string> FoundToo { get; } = ["I {found|noticed|met} that too.", "that is what I {found|noticed} as well."];

    /// <summary>The same where nothing that was tried speaks against it.</summary>
    internal static IReadOnlyList<string> Agreed { get; } = ["I can {only agree|bear that out}."];

    /// <summary>Where it was suspected, and not found for certain.</summary>
    internal static IReadOnlyList<string> SuspectedToo { get; } = ["I {suspect|suspected} that too.", "that is what I {suspect|suspected} as well."];

    /// <summary>Where what was found is like it, and may be something else.</summary>
    internal static IReadOnlyList<string> FoundAlike { get; } = ["I {found|noticed} something of the kind, too.", "something of that kind I {found|noticed} as well."];

    internal static IReadOnlyList<string> WorkedOn { get; } = ["I {found|noticed|met} that too, and worked on it.", "that is what I {found|noticed} as well, and I worked on it."];

    internal static IReadOnlyDictionary<FindingEnding, IReadOnlyList<string>> Ended { get; } = new Dictionary<FindingEnding, IReadOnlyList<string>>
    {
        [FindingEnding.Gone] = ["I {found|noticed|met} that too, and it {has been|is} put right.", "that is what I {found|noticed} as well, and it has been put right."],
        [FindingEnding.Better] = ["I {found|noticed|met} that too; it is better now, though not quite as it should be.", "that is what I {found|noticed} as well, and it is {mostly|largely} put right."],
        [FindingEnding.Unchanged] = ["I {found|noticed|met} that too, and it is as it was.", "that is what I {found|noticed} as well; it has not changed."],
        [FindingEnding.LeftOnPurpose] = ["I {found|noticed|met} that too, and left it as it is, on purpose.", "that is what I {found|noticed} as well; I left it alone on purpose."],
    };

    /// <summary>Where the log says nothing of it, and the reed goes home to be played.</summary>
    internal static IReadOnlyList<string> NotNoted { get; } =
    [
        "I {wrote nothing down|made no note} about <what>: {please tell me|let me know|write to me} how <it is> when you have played {it|this one}<for>.",
        "I {have no note|wrote down nothing|noted nothing} about <what>; {please tell me|let me know|write to me} how <it is> once you have played {it|this one}<little>.",
    ];

    /// <summary>The same where something else was answered, or became better.</summary>
    internal static IReadOnlyList<string> AskedBack { get; } =
    [
        "I {made|have} no test of <what>{ here| on this one|}: {please tell me|let me know|write to me} how <it is> when you have played {it|this one}<for>.",
        "{I made|I have made} no {separate test|test} of <what>; {please tell me|let me know|write to me} how <it is> once you have played {it|this one}<little>.",
    ];

    /// <summary>Why it is left open, in the teacher’s words.</summary>
    internal static IReadOnlyList<string> LeftOpen { get; } = ["{I leave that open for now|for now I leave that open|that much I leave open}: <reason>"];

    /// <summary>The same where it isn’t to be played.</summary>
    internal static IReadOnlyList<string> NotNotedAlone { get; } =
    [
        "I {wrote nothing down|made no note} about <what>.", "I {have no note|noted nothing} about <what>.",
    ];

    /// <summary>Where nobody here can say what such words are about, and the reed goes home to be played: it is asked back.</summary>
    internal static IReadOnlyList<string> NotRecognised { get; } =
    [
        "whether {it comes from what I found|what I found has to do with it|what I found is the cause}, I {can't|cannot} say {for certain|for sure}: {please tell me|let me know|write to me} {whether it is still so|how it is now} when you have played {it|this one}<for>.",
        "I {can't|cannot} say {for certain|for sure} whether {it comes from what I found|what I found has to do with it|what I found is the cause}; {please tell me|let me know|write to me} {whether it is still so|how it is now} once you have played {it|this one}<little>.",
    ];

    /// <summary>The same where no fault was found.</summary>
    internal static IReadOnlyList<string> NotExplained { get; } =
    [
        "I {found|met|noted} {nothing|no fault} {here |on this one |}{to explain it|which would explain it}: {please tell me|let me know|write to me} {whether it is still so|how it is now} when you have played {it|this one}<for>.",
        "{at my bench|in my hands} {nothing|no fault} {showed|came to light} {to explain it|which would explain it}; {please tell me|let me know|write to me} {whether it is still so|how it is now} once you have played {it|this one}<little>.",
    ];

    /// <summary>The same where it isn’t to be played.</summary>
    internal static IReadOnlyList<string> NotRecognisedAlone { get; } =
        ["where {it comes from|it came from}, I {can't|cannot} say {for certain|for sure}.", "I {can't|cannot} say {for certain|for sure} where {it comes from|it came from}."];

    /// <summary>How a fault is told before all else.</summary>
    /// <param name="Place">Where it is said.</param>
    /// <param name="Found">The frames.</param>
    /// <param name="Only">The same where nothing is said of what it does.</param>
    /// <param name="Again">The same where an earlier reed had it.</param>
    internal sealed record FirstFrames(string Place, IReadOnlyList<string> Found, IReadOnlyList<string> Only, IReadOnlyList<string> Again);

    /// <summary>Where nothing bothers: what was found first.</summary>
    internal static FirstFrames First { get; } = new(
        "first",
        [
            $"{{what I found|one thing that I found|what I met|what I noted}} {{here|on it|on this one|on this reed}}: <what>, {{and that|which}} {FindingFrames.Usually} <shows>",
            $"{{on this one|here|on this reed}} I {{found|noticed|saw}} that <what>, which {FindingFrames.Usually} <shows>",
        ],
        [
            "{what I found|one thing that I found|what I met|what I noted} {here|on it|on this one|on this reed}: <what>",
            "{on this one|here|on this reed} I {found|noticed|saw} that <what>",
        ],
        [
            "{what I found|one thing that I found|what I met|what I noted} {here|on it|on this one|on this reed} {you know from|is as in} <earlier>: <what>",
            "{on this one|here|on this reed} {too|as well} I {found|noticed|saw} that <what>, {as in|just as in} <earlier>",
        ]);

    /// <summary>Where a fault was found that is known to bring the complaint about.</summary>
    internal static FirstFrames Cause { get; } = new(
        "cause",
        [
            $"{{what may lie behind it|what may well lie behind it|what I would look to first|a likely reason}}: <what>, {{and that|which}} {FindingFrames.Usually} <shows>",
            $"{{perhaps it comes from this|this may well be the reason|this may be where it comes from|I would look for the reason here}}: <what>, {{and that|which}} {FindingFrames.Usually} <shows>",
        ],
        [
            "{what may lie behind it|what may well lie behind it|what I would look to first|a likely reason}: <what>",
            "{perhaps it comes from this|this may well be the reason|this may be where it comes from|I would look for the reason here}: <what>",
        ],
        [
            "{what may lie behind it|what may well lie behind it|a likely reason}, {as in|just as in} <earlier>: <what>",
            "{perhaps it comes from this|this may well be the reason|this may be where it comes from}, {as in|just as in} <earlier>: <what>",
        ]);

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
