namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>Whether what the last letter taught shows again.</summary>
internal static class EarlierWordings
{
    private const string Found = "{I found|I saw|I noticed}";

    /// <summary>It was looked for, and is on none of them.</summary>
    internal static IReadOnlyList<string> Gone { get; } =
    [
        $"last time {Found} <then> that <what>; this time I looked for it <where>, and {{did not find it|found nothing of the kind|saw no sign of it}}.",
        $"{{when I last wrote to you|in your last batch|in the last batch}}, {Found} <then> that <what>; now I {{looked again|looked for it again}} <where>, {{and did not find it|and found nothing of the kind|without finding it}}.",
        "{you may remember|perhaps you remember} that <what> <then> last time: this time I looked for it <where> and {did not find it|found nothing of the kind}.",
    ];

    /// <summary>The same where each reed was looked at for it.</summary>
    internal static IReadOnlyList<string> GoneFromAll { get; } =
    [
        $"last time {Found} <then> that <what>; this time <none>.",
        $"{{in your last batch|in the last batch}} {Found} <then> that <what>; {{now|this time}} <none>.",
        "{you may remember|perhaps you remember} that <what> <then> last time: this time <none>.",
    ];

    internal static IReadOnlyList<string> Glad { get; } =
    [
        "{I was|I am} {glad of that|pleased about that|happy about that|glad to see that|glad to know that}.",
        "that {was good to know|was good to see|is good news|pleased me}{, and I hope it stays so|: please keep it so|; may it stay so|}.",
        "{it was good|it was a pleasure|I was glad} to write that down.",
    ];

    /// <summary>It is on some of them, and the lesson is about something else.</summary>
    internal static IReadOnlyList<string> Again { get; } =
    [
        $"last time {Found} <then> that <what>; this time I {{found it|saw it|met it}} again <where>.",
        "{one thing you know from the last letter|something from the last letter|one thing from last time} {came again|showed again|came back} <where>: then, <then>, <what>.",
        "{you may remember|perhaps you remember} that <what> <then> last time: this time I {found it|saw it|met it} <where>.",
    ];

    /// <summary>The same where it is only suspected.</summary>
    internal static IReadOnlyList<string> Suspected { get; } =
    [
        $"last time {Found} <then> that <what>; this time I {{only suspect it|suspect it, and no more,|am not certain of it, but suspect it}} <where>.",
        "{you may remember|perhaps you remember} that <what> <then> last time: this time I {only suspect it|suspect it, and no more,} <where>.",
    ];

    /// <summary>It is on some of them, and is the lesson again.</summary>
    internal static IReadOnlyList<string> Same { get; } =
    [
        "{you know this|you have met this|you have read of this} {already|before}: last time I {found|saw|noticed} it <then>.",
        "{this is not new to you|this will not be new to you|this is nothing new to you}: {in your last batch|last time} I {found|saw|noticed} it <then>.",
        "{the last letter|my last letter to you|last time the letter} was about {the same thing|this too|this as well}: I had {found|seen|noticed} it <then>.",
    ];

    /// <summary>What the last letter taught in the teacher’s words.</summary>
    internal static IReadOnlyList<string> Words { get; } =
    [
        "{last time|in my last letter} {I gave you this to take with you|this was what I asked you to take with you|I asked you to keep this in mind}: <quote> {How did you get on with it|How has that gone|Did it help}?",
        "{do you remember what I wrote last time|perhaps you remember this from my last letter}: <quote> {Tell me|Let me know|I would like to hear} how {you got on with it|that has gone}.",
    ];

    /// <summary>The same where this letter says it once more.</summary>
    internal static IReadOnlyList<string> WordsAgain { get; } =
    [
        "{you have read this before|this is not new to you|I wrote you the same last time}, and it {still holds|is still the best that I can tell you}: {tell me|let me know} how {you got on with it|it has gone so far}.",
    ];

    /// <summary>On fewer than last time.</summary>
    internal static IReadOnlyList<string> Fewer { get; } =
    [
        "{that is|this time it is} less than {last time|before}, {and I was glad of it|which is good to see|and that is good to see}.",
        "so there is less of it {now|this time|than before}, {and the rest can be learnt too|which is good to see|and I was glad to see that}.",
        "{it has become less|it is less now}, {and I was glad of it|which is good to see|and the rest can be learnt too}.",
    ];

    /// <summary>As often as last time, or nobody can tell.</summary>
    internal static IReadOnlyList<string> TakesTime { get; } =
    [
        "{that is no reason to worry|that need not worry you|don't worry about that}: {such a thing|a thing like this} takes {a few|several} reeds to {change|learn}.",
        "{that is quite usual|it is so for nearly everybody|that is how it goes for most people}: {a hand|any hand} {needs|takes} {a few|several} reeds to learn {something new|a new way}.",
        "{give it time|be patient with it|take your time over it}: {such a thing|a thing like this} {changes|is learnt} over {a few|several} reeds, not in one.",
    ];
}
