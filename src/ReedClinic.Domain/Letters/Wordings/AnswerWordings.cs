namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How an answer takes up what was asked.</summary>
internal static class AnswerWordings
{
    internal static IReadOnlyList<string> Asked { get; } =
    [
        "you {asked|asked me|wanted to know}{ this|}{ in your list| when you sent the reeds|}{, and I am glad that you did|, and it is a good question|}: <question>",
        "{your question|one question of yours|a question that you sent|one thing that you asked|what you asked} {was this|was|reads|is this}: <question>",
        "<question>{, you wrote|, you asked|, you wanted to know}{ in your list| when you sent the reeds|; here is what I think|}.",
        "{now to|on to|let me answer} {your question|what you asked|what you wanted to know}: <question>",
        "{with the reeds came|with your reeds came|you sent me} {this question|this question of yours}: <question>",
    ];

    /// <summary>The same for a question that is left open: nothing here promises an answer.</summary>
    internal static IReadOnlyList<string> AskedOpen { get; } =
    [
        "you {asked|asked me|wanted to know}{ this|}{ in your list| when you sent the reeds|}{, and I am glad that you did|}: <question>",
        "{your question|one question of yours|a question that you sent|one thing that you asked} {was this|was|reads|is this}: <question>",
        "<question>{, you wrote|, you asked|, you wanted to know}{ in your list| when you sent the reeds|}.",
        "{you also sent me|there is also|I have not passed over} {your question|a question of yours|what you wanted to know}: <question>",
    ];

    /// <summary>A question that was answered further up, in the same words.</summary>
    internal static IReadOnlyList<string> Above { get; } =
    [
        "<question>{, you asked here too|, you asked here as well|, you also asked here}; {that is answered|you will find that answered|I have answered that} {above|further up}.",
        "{here too you asked|you asked this again here}: <question> {That is answered|You will find that answered|I have answered that} {above|further up}.",
    ];

    /// <summary>A question that is all that was written of a reed, and was quoted at the head of its part.</summary>
    internal static IReadOnlyList<string> AskedThere { get; } =
    [
        "{to your question|to what you asked|to the question in your words}{ itself|}: <answer>", "{my answer to your question|my answer to what you asked}{ is this|}: <answer>",
    ];

    internal static IReadOnlyList<string> LeftOpen { get; } =
    [
        "I leave that open for now: <reason>", "{that|this} I {can't|cannot} answer yet: <reason>", "{for now|for the moment} I leave that open: <reason>",
    ];
}
