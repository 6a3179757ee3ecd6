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
        "I {look forward to hearing|am curious to hear|would love to hear|should like to hear} how {the next one turns out|your next one turns out|the next reed comes out}{ one day|, when it is made|}.",
        Ask,
        "{good luck|have fun|enjoy yourself} with <them>, and {take your time|be patient with yourself|trust your ears}{ with the next one| when you scrape the next|}.",
        "{your ears will tell you|you will hear|you will soon hear} what {has changed|is different now}{; please tell me|, and I would like to hear it from you|; let me know about it}.",
    ];

    /// <summary>The same where no reed has been here.</summary>
    internal static IReadOnlyList<string> WishWithoutReeds { get; } = [Ask];

    internal static IReadOnlyList<string> Bye { get; } =
    [
        "With {warm wishes|kind wishes|all good wishes|my best wishes|good wishes|warm greetings|kind greetings|friendly greetings}{ from the bench| from my bench| to you| and good playing| until the next reed| for your playing|},",
        "{Kind|Warm|Best|Friendly} {regards|greetings}{ from the bench| from my bench| and good playing| until the next reed| to you|},",
        "{Yours|Warmly yours|Kindly yours|Yours as ever}, with {good wishes|warm wishes|kind regards}{ from the bench| from my bench| for your playing|},",
        "{All the best|Wishing you well|I wish you good playing|Until next time|Until the next reed}{ from the bench| from my bench|, and good playing|, with warm wishes|, with kind regards|},",
        "{Happy playing|Good playing|Good scraping}{, and| and|, with} {warm|kind|friendly} {wishes|regards|greetings}{ from the bench|},",
    ];
}
