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
        .. WishAtAnyTime,
    ];

    /// <summary>The same where a reed has advice of its own on how long it is to be played.</summary>
    internal static IReadOnlyList<string> WishAtAnyTime =>
    [
        "I {look forward to hearing|am curious to hear|would love to hear|should like to hear} how {the next one turns out|your next one turns out|the next reed comes out}{, when it is made|}.",
        Ask,
        "{good luck|have fun} with <them>, and {take your time|be patient with yourself|trust your ears}{ with the next one| when you scrape the next|}.",
        "{your ears will tell you|you will hear|you will soon hear} what {has changed|is different now}{; please tell me|, and I would like to hear it from you|; let me know about it}.",
    ];

    /// <summary>The same where no reed has been here.</summary>
    internal static IReadOnlyList<string> WishWithoutReeds { get; } = [Ask];

    /// <summary>What to send next time, where there is a plan.</summary>
    internal static IReadOnlyList<string> SendNext { get; } =
    [
        "{when you send reeds again|in your next parcel|with your next parcel|next time}, {please put in|please send|I would like to see} {one made by the plan{ above| in this letter}|a reed made by the plan{ above| in this letter}|the first reed made by the plan{ above| in this letter}}{, with a note of what the tests showed you|, just as you made it|, and write down with it what you saw and heard in the tests|}.",
        "{for the next parcel|for your next parcel|when the next parcel goes}, {keep|put aside|save} {a reed made by the plan{ above| in this letter}|one that follows the plan{ above| in this letter}|the first that follows the plan{ above| in this letter}}{, and send it just as it is|, and send <this> with it, to compare|, with a note of what you saw and heard}.",
        "{send me|please send} {a reed made by the plan{ above| in this letter}|the first reed made by the plan{ above| in this letter}|one that follows the plan{ above| in this letter}} {next time|in your next parcel|when you write again}{: it will tell us both how it went|; then we both hear what it did|, with <this> beside it, to compare}.",
    ];

    /// <summary>The same where the lesson is how reeds are kept, and none is made by it.</summary>
    internal static IReadOnlyList<string> SendNextKept { get; } =
    [
        "{when you send reeds again|in your next parcel|with your next parcel|next time}, {please put in|please send|let me see} {one that is still young|a reed in its first weeks|one that is still fresh}{ beside a tired one|, and not tired ones alone}.",
        "{for the next parcel|for your next parcel}, {keep|put aside|save} {one that is still young|a reed in its first weeks|one that is still fresh}{, and send it with a tired one|, to compare it with <these>}.",
    ];

    internal static IReadOnlyList<string> Bye { get; } =
    [
        "With {best|kind|warm|good|all good|my best|many good} wishes{ from the bench| from my bench| and good playing| and happy playing|},",
        "{Kind|Warm|Best|With kind|With warm|With best|Many kind} regards{ from the bench| from my bench| and good playing| and happy playing|},",
        "{All the best|Good playing|Happy playing}{, and {warm|kind|good} wishes|, and {warm|kind|many kind} regards|}{ from the bench| from my bench|},",
        "{Until next time|Until the next reed|Until your next letter}, with {warm|kind|best|good} {wishes|regards},",
        "{Yours|Warmly yours|Kindly yours}, with {good|best|warm|kind} wishes{ from the bench| from my bench|},",
    ];
}
