namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a letter ends.</summary>
internal static class ClosingWordings
{
    private const string Ask =
        "{if|whenever} {something is unclear|anything is unclear|you have a question|a question comes up}, {ask|just ask|please ask|write to me}{; I am glad to answer|: I like questions|, and I will gladly answer|}.";

    internal static IReadOnlyList<string> Wish { get; } =
    [
        "play <them> for {a while|a week or two|some days}, and then {tell me|let me know|write to me} {how <they> <feel>|how you get on|how it goes}.",
        "{let me know|tell me|write and tell me} how {<they> <feel>|<they> <play>|you like <them>} after {a week|a few days|a week or so}{; your ears are part of this|, since your ears are part of this|}.",
        "I {look forward to hearing|am curious to hear|would love to hear|should like to hear} how {the next one turns out|your next one turns out|the next reed comes out}{, when it is made|}.",
        Ask,
        "{good luck|have fun} with <them>, and {take your time|be patient with yourself|trust your ears}{ with the next one| when you scrape the next|}.",
        "{your ears will tell you|you will hear|you will soon hear} what {has changed|is different now}{; please tell me|, and I would like to hear it from you|; let me know about it}.",
    ];

    /// <summary>The same where no reed has been here.</summary>
    internal static IReadOnlyList<string> WishWithoutReeds { get; } = [Ask];

    internal static IReadOnlyList<string> Bye { get; } =
    [
        "With {best|kind|warm|good|all good|my best|many good} wishes{ from the bench| from my bench| and good playing| and happy playing|},",
        "{Kind|Warm|Best|With kind|With warm|With best|Many kind} regards{ from the bench| from my bench| and good playing| and happy playing|},",
        "{All the best|Good playing|Happy playing}{, and {warm|kind|best} wishes|, and {warm|kind|best} regards|}{ from the bench| from my bench|},",
        "{Until next time|Until the next reed|Until your next letter}, with {warm|kind|best|good} {wishes|regards},",
        "{Yours|Warmly yours|Kindly yours}, with {good|best|warm|kind} wishes{ from the bench| from my bench|},",
    ];
}
