namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What the reeds had in common, and the likely habit behind it.</summary>
internal static class LessonWordings
{
    internal static IReadOnlyList<string> Lead { get; } =
    [
        "if you {take|keep|remember} {only one thing|just one thing|one thing} from {this letter|all this|these pages|what I write}, let it be this.",
        "{here is|this is|now comes} the {one thing|thing} {to keep in mind|to remember|to take with you|that matters most}{ when you make the next one| for your next reed| the next time you scrape|}.",
        "{of all that I write here|of everything in this letter|of all these things}, {this matters most|this is worth most|keep this in mind|take this with you}{ for the next reed| when you make the next one|}.",
        "{let me|I want to|I would like to} {pick out|choose|name} {one thing|a single thing} {for you to work on|that will help most|to carry into the next reed|to begin with}.",
        "{one thing|a single thing} {will help you more than the rest|is worth more of your time than the rest|deserves your attention first}{, I think| when you make the next one|}.",
    ];

    /// <summary>Behind it, where the teacher wrote no words of their own: the parts behind this one say what to do.</summary>
    internal static IReadOnlyList<string> WhatToDo { get; } = ["{how to check it, and what to do about it|how you can check it, and what to do next time}, {comes next|follows|you can read below}."];

    internal static IReadOnlyList<string> LeadMany { get; } =
    [
        "one thing runs through your reeds, and {it is good news|that is good news|I am glad of it}, because it can be {learnt|practised|mended in the next one}.",
        "when I {compared|looked back over|thought over} your reeds, one thing {stood out|came up again and again|showed more than once}.",
        "your reeds {tell|told} me the same {thing|story} more than once{, and that helps|, which helps}: it {gives|shows} you one clear thing to {work on|practise|try}.",
        "{one thing comes back|the same thing comes back|one thing shows} in more than one of these reeds{, and that makes it a good place to begin|, and that is where I would begin|}.",
    ];

    /// <summary>The lesson itself, with the reeds in which it was found.</summary>
    internal static IReadOnlyList<string> InReeds { get; } =
    [
        "<where> I {found|saw|noticed} that <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "{<where>|I found this <where>:} <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "{I found|I saw|I noticed} {this|the same} <where>: <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "<where> I {found|met|noticed} {this|the same}: <what>; {usually|often|mostly|as a rule} that <shows>.",
    ];

    /// <summary>The same where a reed’s own part has told what it does: that is told once.</summary>
    /// <param name="ways">The ways.</param>
    internal static IReadOnlyList<string> WithoutWhatItDoes(IReadOnlyList<string> ways) => [.. ways.Select(way => WhatItDoes.Aggregate(way, (text, end) => text.Replace(end, "", StringComparison.Ordinal))).Distinct()];

    /// <summary>The same without a word of when the reeds came.</summary>
    /// <param name="ways">The ways.</param>
    internal static IReadOnlyList<string> WithoutArrival(IReadOnlyList<string> ways) => [.. ways.Select(way => Arrivals.Aggregate(way, (text, arrival) => text.Replace(arrival + ", ", "", StringComparison.Ordinal).Replace(" " + arrival, "", StringComparison.Ordinal)))];

    private static readonly string[] Arrivals = ["{when <they> came|when <they> arrived|on arrival}", "{when <they> came|on arrival}"];

    private static readonly string[] WhatItDoes =
    [
        ", {and that|which} {usually|often|mostly|as a rule} <shows>", "; {usually|often|mostly|as a rule} that <shows>", ", which {usually|often|mostly|as a rule} <shows>",
    ];

    internal static IReadOnlyList<string> Alone { get; } =
    [
        "I found that <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.", "<what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
    ];

    /// <summary>The same for what was so when the reeds came, and is so no longer on one of them at least.</summary>
    internal static IReadOnlyList<string> InReedsThen { get; } =
    [
        "{when <they> came|when <they> arrived|on arrival}, I {found|saw|noticed} <where> that <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "<where> {I found this|I saw this|this was so} {when <they> came|when <they> arrived|on arrival}: <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "{when <they> came|when <they> arrived|on arrival}, I {found|saw|met} {this|the same} <where>: <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "<where> I {found|met|noticed} {this|the same} {when <they> came|on arrival}: <what>; {usually|often|mostly|as a rule} that <shows>.",
    ];

    /// <summary>The lesson where nobody is sure of it on any of the reeds.</summary>
    internal static IReadOnlyList<string> Suspected { get; } =
    [
        "{without being certain|without being sure}, I <suspect> <where> that <what>, which {usually|often|mostly|as a rule} <shows>.",
        "{perhaps|maybe} <where> <what>, which {usually|often|mostly|as a rule} <shows>; I <am> {not certain|not sure} of it.",
    ];

    internal static IReadOnlyList<string> SuspectedAlone { get; } =
    [
        "I <suspect>, {without being certain|though I could not be sure}, that <what>, which {usually|often|mostly|as a rule} <shows>.",
    ];

    /// <summary>On which of them nobody is sure of it, where the others are certain.</summary>
    internal static IReadOnlyList<string> NotCertainIn { get; } =
    [
        "{of|about} <reeds> I <am> not {certain|sure}: there I only <suspect> it.", "in <reeds> I {only <suspect> it|<suspect> it and no more|<am> not certain of it}.",
        "in <reeds> it <is> {only|no more than} a suspicion{ of mine|}.",
    ];

    /// <summary>The same where no sign of it is left.</summary>
    internal static IReadOnlyList<string> NotCertainAndGone { get; } =
    [
        "in <reeds> I only suspected it, and {there is no sign of it now|no sign of it is left}.", "{of|about} <reeds> I was not {certain|sure}{; by now there is no sign of it|, and there is no sign of it now}.",
    ];

    internal static IReadOnlyList<string> AloneThen { get; } =
    [
        "{when <they> came|when <they> arrived|on arrival}, <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "{when <they> came|when <they> arrived|on arrival}, I {found|saw|noticed} that <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
    ];

    private const string TheNext = "{your next reed|the next reed|the next one you make|the reeds you make next|the next reed you scrape}";

    private const string Here = "{here|here at the bench|at my bench|on my bench}";

    /// <summary>What became of it here, where that is the same for every reed that had it.</summary>
    internal static IReadOnlyDictionary<FindingCourse, IReadOnlyList<string>> Mended { get; } = new Dictionary<FindingCourse, IReadOnlyList<string>>
    {
        [FindingCourse.PutRight] =
        [
            $"{{that was|that has been}} put right {Here}, so {{the lesson|this lesson|what it teaches|what follows}} is for {TheNext}.",
            $"I {{put that right|have put that right|set that right|have set that right}} {Here}; {{the lesson|this lesson|what it teaches}} is {{meant for|for}} {TheNext}.",
            $"in <these> {{you have nothing to do about it|nothing is left to do about it|it needs nothing more from you}}, for I put it right {Here}: {{take it as a lesson|it is a lesson|keep the lesson}} for {TheNext}.",
        ],
        [FindingCourse.Better] =
        [
            $"{{that is|it is}} {{better|less}} now than {{it was|on arrival}}, {{though not quite put right|if not quite put right|but not quite as it should be}}; {{the lesson|this lesson|what it teaches}} is for {TheNext}.",
            $"I {{eased that|made that better|put most of that right}} {Here}, {{though not all of it|as far as was safe|but not the whole of it}}; {{the lesson|this lesson|what it teaches}} is for {TheNext}.",
        ],
        [FindingCourse.TestedBetter] =
        [
            $"I {{worked on that|did some work on that|saw to that}} {Here}, and <reeds> <have> tested better since; {{the lesson|this lesson|what it teaches}} is for {TheNext}.",
            $"{{that was|that has been}} worked on {Here}, and the tests {{have come|came}} out better {{for it|since|after it}}, so {{the lesson|this lesson|what it teaches}} is for {TheNext}.",
        ],
    };

    /// <summary>What became of it on some of the reeds, to stand in a list.</summary>
    internal static IReadOnlyDictionary<FindingCourse, IReadOnlyList<string>> MendedIn { get; } = new Dictionary<FindingCourse, IReadOnlyList<string>>
    {
        [FindingCourse.PutRight] = ["<where> I {put that right|have put that right|set that right} {here|here at the bench|at my bench}", "<where> {that was|that has been} put right {here|here at the bench|at my bench}"],
        [FindingCourse.Better] = ["<where> it is better {now|than it was} but not {quite put right|as it should be}"],
        [FindingCourse.TestedBetter] = ["<where> I worked on it here and <reeds> <have> tested better since"],
        [FindingCourse.Still] = ["<where> it is {still so|as it was|still there}"],
    };

    /// <summary>For whom the lesson is, after that list.</summary>
    internal static IReadOnlyList<string> ForTheNext { get; } =
    [
        $"{{either way|in any case|all the same}}, {{the lesson|this lesson|what it teaches}} is {{for|meant for}} {TheNext}.",
        $"{{the lesson|this lesson|what it teaches}} is {{for|meant for}} {TheNext}.",
        $"{{keep|save|remember}} {{the lesson|this lesson|what it teaches}} for {TheNext}.",
    ];

    /// <summary>The same where no reed of this batch has it.</summary>
    internal static IReadOnlyList<string> ToWatchFor { get; } =
    [
        "{watch for this|look out for this|keep an eye on this}{ next time| in your next reed|}: when <what>, that {usually|often|mostly|as a rule} <shows>.",
    ];

    internal static IReadOnlyList<string> NotSeen { get; } =
    [
        "I {did not see|was not there to see} you {work|at work|scrape}, so you {will know|know} better than I {whether that is so|whether it is so|whether I am right}.",
        "you {know|will know} better than I {whether that is so|whether I am right|whether it is so}, {since|because} I {was not there|did not see you work|was not beside you when you scraped}.",
        "{that is only|it is only|this is no more than} {a guess|my guess|a thought of mine}{: you know your own hands|, and you know your own hands better|}{; tell me if it is not so|; tell me what you think|}.",
        "please take {it|that|this} as {a guess|a question}{, no more|}: I {did not see|was not there to see} {you scrape|your hands at work|you at work}.",
        "{look|watch} for yourself whether {that is so|it is so|I am right}{ the next time you scrape| next time|}, because I can only {guess|judge} {from here|from the reeds}.",
    ];
}
