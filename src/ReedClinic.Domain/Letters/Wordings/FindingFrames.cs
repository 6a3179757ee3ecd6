using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a finding becomes a sentence: what is there, what that does, how it is known, what became of it.</summary>
internal static class FindingFrames
{
    internal const string Usually = "{usually|often|mostly|as a rule|very often}";

    /// <summary>A fault that is told for the first time.</summary>
    internal static IReadOnlyList<string> Fault { get; } =
    [
        $"<what>, which {Usually} <shows>",
        $"<what>, and that {Usually} <shows>",
        $"<what>; {Usually} that <shows>",
        $"I {{found|noticed|saw}} that <what>, which {Usually} <shows>",
        $"<what>, something that {Usually} <shows>",
        $"{{what I found here is that|I {{wrote down|noted}} that}} <what>, which {Usually} <shows>",
    ];

    /// <summary>The same for what has gone or is better, and was there when the reed came.</summary>
    internal static IReadOnlyList<string> FaultThatWas { get; } =
    [
        $"{{when it came|on arrival|when it arrived|at first}} <what>, which {Usually} <shows>",
        $"<what> {{when it came|on arrival|when it arrived|at first}}, and that {Usually} <shows>",
        $"{{when it came|on arrival|when it arrived|at first}}, <what>; {Usually} that <shows>",
        $"<what> {{when it came|on arrival|when it arrived|at first}}, which {Usually} <shows>",
        $"I {{found|noticed|saw}} that <what>, which {Usually} <shows>",
    ];

    /// <summary>The same where what is there ends in a time of its own: then nothing is said of a time after it.</summary>
    internal static IReadOnlyList<string> FaultThatWasThen { get; } =
    [
        $"{{when it came|on arrival|when it arrived|at first}} <what>, which {Usually} <shows>",
        $"{{when it came|on arrival|when it arrived|at first}}, <what>; {Usually} that <shows>",
        $"I {{found|noticed|saw}} that <what>, which {Usually} <shows>",
    ];

    /// <summary>What was noted after a step: whether the reed came with it the log doesn’t say.</summary>
    internal static IReadOnlyList<string> SeenLater { get; } =
    [
        $"{{later|while I worked|in the course of the work}} I {{found|noticed|saw}} that <what>, which {Usually} <shows>",
        $"I {{found|noticed|saw}} {{later|only later|in the course of the work}} that <what>, which {Usually} <shows>",
    ];

    /// <summary>What was typed beside a fault, and no more than that.</summary>
    internal static IReadOnlyList<string> OnBothBlades { get; } = ["{it is|I found it|I saw it} so on both blades.", "{it is|I found it|I saw it} the same on both blades."];

    /// <summary>A fault that nobody is sure of.</summary>
    internal static IReadOnlyList<string> Suspected { get; } =
    [
        $"I suspect, {{without being certain|though I can't be sure|but am not certain}}, that <what>, which {Usually} <shows>",
        "it may be that <what>, but I am {not certain|not sure of it|not sure yet}",
        $"{{perhaps|maybe|it is possible that}} <what>, which {Usually} <shows>, but I {{only suspect it|am not certain of it|can't be sure of it}}",
        "I have a suspicion, {no more|and no more than one}, that <what>",
    ];

    /// <summary>The same where a test shows the very thing: then it isn’t called uncertain beside it.</summary>
    internal static IReadOnlyList<string> SuspectedShown { get; } = ["{the test of it|a test of it|what I tried} fits my suspicion: <what>", "I {suspected this|had my suspicion}, and {the test|a test} fits it: <what>"];

    /// <summary>What is there, where nothing is said of what it does.</summary>
    internal static IReadOnlyList<string> Only { get; } = ["<what>", "I {noticed|found|saw} that <what>", "{here|in this reed} <what>"];

    /// <summary>A fault that an earlier reed had already.</summary>
    internal static IReadOnlyList<string> Again { get; } =
    [
        "{here too|in this one too|here as well|in this one as well} <what>",
        "{as in|just as in} <earlier>, <what>",
        "{once more|again|here again|the same again}: <what>",
        "{you know this from|you have met this in|this is as in} <earlier>: <what>",
        "{what I said about|what I wrote about} <earlier> {holds|is true} here {too|as well}: <what>",
        "<what>, {as in|just as in|as you saw in} <earlier>",
        "{this is another one in which|this is one more reed in which|this is another reed where} <what>",
    ];

    /// <summary>The same for one that nobody is sure of.</summary>
    internal static IReadOnlyList<string> AgainSuspected { get; } =
    [
        "{here too|in this one too|here as well}, I suspect, <what>",
        "{perhaps|maybe} <what> here too, but I {only suspect it|am not certain}",
        "I suspect, {though I can't be sure|without being certain}, that <what>, {as in|just as in} <earlier>",
    ];

    /// <summary>A kind of the studio’s own; what it means is told after it, in the owner’s words.</summary>
    internal static IReadOnlyList<string> Own { get; } =
    [
        "{I found|I noticed|here I found|I noted} what {I call|is called here} <name>.",
        "{what I found|one thing that I found|what I noticed} {here|on this one|on this reed} is called <name>.",
    ];

    /// <summary>The same where an earlier reed had it.</summary>
    internal static IReadOnlyList<string> OwnAgain { get; } = ["{here too|here as well|on this one too} I found <name>, {as in|just as in} <earlier>.", "{as in|just as in} <earlier>, I {found|noticed} <name>."];

    /// <summary>The same where nobody is sure of it.</summary>
    internal static IReadOnlyList<string> OwnSuspected { get; } = ["I suspect <name>, {without being certain|though I can't be sure|but am not certain}."];

    /// <summary>The same for what is good.</summary>
    internal static IReadOnlyList<string> OwnStrength { get; } = ["{good here|well done here|what is good here}: <name>."];

    /// <summary>What was seen in one way, such as by light.</summary>
    internal static IReadOnlyDictionary<KnownBy, IReadOnlyList<string>> Known { get; } = new Dictionary<KnownBy, IReadOnlyList<string>>
    {
        [KnownBy.Light] = [$"{{against the light|against a lamp|with a light behind it}} I {{could see|saw}} that <what>, which {Usually} <shows>"],
        [KnownBy.Plaque] = [$"{{on the plaque|over the plaque|with a plaque between the blades}} I {{saw|could see}} that <what>, which {Usually} <shows>"],
        [KnownBy.Finger] = [$"{{my finger told me|I could feel with a finger|under my finger I felt}} that <what>, which {Usually} <shows>"],
        [KnownBy.Lip] = [$"{{my lips told me|I could feel with my lips|on my lips I felt}} that <what>, which {Usually} <shows>"],
        [KnownBy.Ear] = [$"{{from its sound I {{judged|took it}}|by ear I judged|I {{judged|took it}} from the sound}} that <what>, which {Usually} <shows>"],
        [KnownBy.Meter] = [$"{{when I measured it I saw|measuring it showed|I measured it and saw}} that <what>, which {Usually} <shows>"],
    };

    /// <summary>How a fault ended, to stand after its sentence.</summary>
    internal static IReadOnlyDictionary<FindingEnding, IReadOnlyList<string>> Endings { get; } =
        new Dictionary<FindingEnding, IReadOnlyList<string>>
        {
            [FindingEnding.Gone] =
            [
                "; {that|this} is no longer so", "; {that|this} has been put right", "; by now {that|this} is put right", "; {that|this} is in order now",
            ],
            [FindingEnding.Better] =
            [
                "; {that|this} is better now, though not quite as it should be", "; {that|this} is {mostly|largely} put right", "; {that|this} has improved, though not altogether",
                "; {that|this} shows less than it did",
            ],
            [FindingEnding.Unchanged] =
            [
                "; {that|this} is as it was", "; {that|this} has not changed", "; {that|this} is still so", "; {that|this} has stayed as it was",
            ],
            [FindingEnding.LeftOnPurpose] =
            [
                "; I left it as it is, on purpose", "; I did not touch it, on purpose", "; {that|this} I left alone on purpose",
                "; on purpose I {did nothing about it|let it be}",
            ],
        };

    /// <summary>The same where nobody was sure that it was there at all.</summary>
    internal static IReadOnlyDictionary<FindingEnding, IReadOnlyList<string>> EndingsSuspected { get; } = new Dictionary<FindingEnding, IReadOnlyList<string>>
    {
        [FindingEnding.Gone] = ["; {in any case|either way} I {see|find} no {more |}sign of it now", "; there is no sign of it now"],
        [FindingEnding.Better] = ["; {in any case|either way} there is less sign of it now", "; there is less sign of it now"],
        [FindingEnding.Unchanged] = ["; I {could not|can’t} say more about it", "; I {leave|must leave} that open"],
        [FindingEnding.LeftOnPurpose] = ["; so I left it as it is", "; so I {did nothing about it|let it be}"],
    };

    /// <summary>A fault that this reed has in another place as well.</summary>
    internal static IReadOnlyList<string> SameHere { get; } = ["I {found|saw|noticed} the same <place>", "the same {was to be seen|showed} <place>"];

    /// <summary>The same where something else was told in between.</summary>
    internal static IReadOnlyList<string> SameElsewhere { get; } = ["{in another place|in one more place}, <place>, I {found|saw} this again: <what>", "{this|it} {was to be seen|showed} in another place, too, <place>: <what>"];

    /// <summary>The same as a sentence of its own, after the teacher's own words.</summary>
    internal static IReadOnlyDictionary<FindingEnding, IReadOnlyList<string>> EndingsAlone { get; } = new Dictionary<FindingEnding, IReadOnlyList<string>>
    {
        [FindingEnding.Gone] = ["{that|this} is no longer so.", "{that|this} has been put right.", "{by now|now} {that|this} is put right."],
        [FindingEnding.Better] = ["{that|this} is better now, though not quite as it should be.", "{that|this} is {mostly|largely} put right.", "{that|this} has improved, though not altogether."],
        [FindingEnding.Unchanged] = ["{that|this} is as it was.", "{that|this} {has not changed|is still so}."],
        [FindingEnding.LeftOnPurpose] = ["I left {that|this} as it is, on purpose.", "{that|this} I {left alone|did not touch}, on purpose."],
    };

    /// <summary>What something does in general, behind the teacher’s own sentence about it.</summary>
    internal static IReadOnlyList<string> ShowsAlone { get; } =
    [
        $"{Usually} {{that|this}} <shows>.", $"{{that|this}} {Usually} <shows>.", $"{{on a reed|in a reed|with reeds}} {{that|this}} {Usually} <shows>.",
    ];

    /// <summary>A part that is praised in the teacher’s words, and of which a fault is told: before it.</summary>
    internal static IReadOnlyList<string> ButForWhatFollows { get; } = ["{apart from|but for} what {follows|comes next}, <what>.", "<what>, {apart from|but for} what {follows|comes next}."];

    /// <summary>The same after it.</summary>
    internal static IReadOnlyList<string> Otherwise { get; } = ["{otherwise|apart from that|but for that}, <what>."];

    /// <summary>What came about at the bench and not at home.</summary>
    internal static IReadOnlyList<string> AtMyBench { get; } =
    [
        "this came about at my bench, not at yours, and I {want|would like} you to know {it|that}.",
        "{that|this} {happened|came about} at my bench{: it is not your doing|, so it is none of your doing|, and I am sorry for it|, not at yours}.",
        "I want to be {honest|open} {about it|with you}: {this|that} came about at my bench{, not at yours|}.",
    ];

    /// <summary>What is a matter of taste.</summary>
    internal static IReadOnlyList<string> Taste { get; } =
    [
        "<what>, but that is {a matter of taste|only a matter of taste|taste}, and {yours counts|your taste counts|it is you who plays it}.",
        "<what>; that is your own {choice|choice to make} and {no fault|nothing to put right|not a fault}.",
        "<what>, which may be just what you like: {it is no fault|that is no fault|that is taste}.",
        "<what>{, for my own taste|}; but {it is you who decides|you decide|the reed is yours}, {and there is no fault in it|and it is no fault|and that is no fault}.",
    ];

    /// <summary>The same where the student marked it, too.</summary>
    internal static IReadOnlyList<string> TasteShared { get; } =
    [
        "<what>{, for my own taste|}: {in this|here} {we agree|our tastes agree|we think alike}.",
        "<what>, and {in this|here} {we agree|our tastes agree|we think alike}, {by what you marked|from what you marked|as your mark tells me}.",
    ];

    /// <summary>What is good about a reed and is told for the first time.</summary>
    internal static IReadOnlyList<string> Strength { get; } =
    [
        "<what>, {and that|which} <shows>.",
        "{it is good that|I like it that|I was glad to see that|I was pleased that} <what>, which <shows>.",
        "{well done: |good: |this is well done: }<what>, {and that|which} <shows>.",
        "{here|in this reed|in this one} <what>, {and that|which} <shows>.",
        "<what>{: that <shows>|; that <shows>}.",
    ];

    /// <summary>What is good here and was told before.</summary>
    internal static IReadOnlyList<string> StrengthAgain { get; } =
    [
        "{here|in this one|in this reed} <whats>.", "{it is good|I like it|I am glad} that <whats>.", "{good here|well done here|what is good here}: <whats>.",
        "I {was glad|was pleased|liked} to see that <whats>.",
    ];
}
