namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What the reeds had in common, and the likely habit behind it.</summary>
internal static class LessonWordings
{
    internal static IReadOnlyList<string> Lead { get; } =
    [
        "if you {take|keep|remember} {only one thing|just one thing|one thing} from {this letter|all this|these pages|what I write}, let it be this.",
        "{here is|this is|now comes} the {one thing|thing} {to keep in mind|to remember|to take with you|that matters most}{ when you make the next one| for your next reed| the next time you scrape|}.",
        "{of all that I write here|of everything in this letter|of all these things}, {this matters most|this is worth most|keep this|take this with you}{ for the next reed| next time|}.",
        "{let me|I want to|I would like to} {pick out|choose|name} {one thing|a single thing} {for you to work on|that will help most|to carry into the next reed|to begin with}.",
        "{one thing|a single thing} {will help you more than the rest|is worth more practice than the rest|deserves your attention first}{, and it can be learnt|; it can be learnt|}.",
    ];

    internal static IReadOnlyList<string> LeadMany { get; } =
    [
        "one thing runs through your reeds, and {it is good news|that is good news|I am glad of it}, because it can be {learnt|practised|mended in the next one}.",
        "when I {compared|looked back over|thought over} your reeds, one thing {stood out|came up again and again|showed more than once}.",
        "your reeds {tell|told} me the same {thing|story} more than once{, and that helps|, which helps}: it {gives|shows} you one clear thing to {work on|practise|try}.",
        "{what comes back|what I met more than once|what is common} in these reeds is {worth knowing|the best thing to learn from|good to know}{, since it can be learnt|, because you can change it|}.",
    ];

    /// <summary>The lesson itself, with the reeds in which it was found.</summary>
    internal static IReadOnlyList<string> InReeds { get; } =
    [
        "<where> I {found|saw|noticed} that <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "<where>{, I found,|} <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "{I found|I saw|I noticed} {this|the same} <where>: <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
        "<where> I {found|met|noticed} {this|the same}: <what>; {usually|often|mostly|as a rule} that <shows>.",
    ];

    internal static IReadOnlyList<string> Alone { get; } =
    [
        "I found that <what>, {and that|which} {usually|often|mostly|as a rule} <shows>.", "<what>, {and that|which} {usually|often|mostly|as a rule} <shows>.",
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
