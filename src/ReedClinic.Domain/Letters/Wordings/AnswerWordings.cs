namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How an answer takes up what was asked.</summary>
internal static class AnswerWordings
{
    internal static IReadOnlyList<string> Asked { get; } =
    [
        "you {asked|wanted to know|asked me|wondered}{ this| one thing|}{, and I am glad that you did|, and rightly so|}: <question>",
        "{your question|one question of yours|a question that you sent|one thing that you asked} {was this|was|reads|is this}: <question>",
        "<question>{, you wrote|, you asked|, you wanted to know}{ in your list| when you sent the reeds|; here is what I think|}.",
        "{now to|on to|to answer|to come to|let me come to|let me answer} {your question|what you asked|a question of yours|what you wanted to know}: <question>",
        "{here is|this is|I come to} {your question|what you asked|what you wanted to know|a question that you sent}{ with the reeds|, in your own words|}: <question>",
    ];

    /// <summary>The same for a question that is left open: nothing here promises an answer.</summary>
    internal static IReadOnlyList<string> AskedOpen { get; } =
    [
        "you {asked|wanted to know|asked me|wondered}{ this| one thing|}{, and I am glad that you did|}: <question>",
        "{your question|one question of yours|a question that you sent|one thing that you asked} {was this|was|reads|is this}: <question>",
        "<question>{, you wrote|, you asked|, you wanted to know}{ in your list| when you sent the reeds|}.",
        "{you also sent me|there is also|I have not passed over} {your question|a question of yours|what you wanted to know}: <question>",
    ];

    internal static IReadOnlyList<string> LeftOpen { get; } =
    [
        "I leave that open for now: <reason>", "{that|this} I {can't|cannot} answer yet: <reason>", "{for now|for the moment} I leave that open: <reason>",
    ];
}
