namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>What arrived, in the student's words and as it was tied.</summary>
internal static class StoryWordings
{
    internal static IReadOnlyList<string> Bothers { get; } =
    [
        "about {this one|this reed|it} you {wrote|told me|noted|said}{ in your list| when you sent it| beforehand|}: <quote>",
        "{your note on|your words on|your note about|your words about} {it|this one|this reed}: <quote>",
        "in your {words|own words}, {what bothers you|what is the matter} {with it|with this one|with this reed}{ is this|}: <quote>",
        "{what bothers you|what troubles you|what you would like to change} {here|in this one|about it|about this one}, {in your words|in your own words|as you put it}: <quote>",
        "{this is how|here is how} you described {it|this one|this reed}{ at home| in your own words| to me|}: <quote>",
        "I {read|had read|began with|have read} what you {wrote|said|noted} about {it|this one|this reed}: <quote>",
        "with this {one|reed} you {sent me this note|sent these words|wrote this to me|wrote}: <quote>",
    ];

    /// <summary>What was typed at the bench and is no sentence: as the words that it is.</summary>
    internal static IReadOnlyList<string> BenchSaid { get; } =
    [
        "{I noted at the bench|at the bench I noted|I wrote at the bench}: <quote>",
        "{my words at the bench|my note at the bench|what I wrote down at the bench}: <quote>",
        "{in my words at the bench|as I put it at the bench|as I noted it at the bench}: <quote>",
    ];

    /// <summary>The same once more in a letter.</summary>
    internal static IReadOnlyList<string> BenchSaidToo { get; } =
    [
        "{I also noted|I noted, too|another note of mine|a further note of mine}: <quote>",
        "{beside that|further|of this one} I {wrote|put down|noted}: <quote>",
    ];

    /// <summary>The same with what the reed is for.</summary>
    internal static IReadOnlyList<string> BothersInUse { get; } =
    [
        "you {use|keep} {it|this one|this reed} <use>, and {wrote|told me|noted}{ this|}: <quote>",
        "{this is one|this is a reed} that you {use|keep} <use>; {your words were|you wrote|your note was}: <quote>",
        "about {it|this one|this reed}, which you {use|keep} <use>, you {wrote|told me|said|noted}: <quote>",
    ];

    /// <summary>The same with how long it was played.</summary>
    internal static IReadOnlyList<string> BothersAfter { get; } =
    [
        "after {about |roughly |}<hours> of playing you {wrote|told me|noted}{ about it|}: <quote>",
        "{it has|this one has} been played for {about |roughly |}<hours>, and you {wrote|told me|noted}: <quote>",
        "you have played {it|this one} for {about |roughly |}<hours>, and {wrote|noted|told me}: <quote>",
    ];

    internal static IReadOnlyList<string> Likes { get; } =
    [
        "{you also told me|you told me, too,|you added} what you {like about it|like in it|enjoy in it|want to keep in it}: <quote>",
        "{there is|you name|you also name} {something|one thing} that you like {about it|in it}: <quote>",
        "{and this|this} is what you {like about it|like in it|enjoy in it|want to keep in it}{, in your words|}: <quote>",
        "what you {like about it|like in it|enjoy in it|want to keep in it} {you noted, too|you told me as well|is this}: <quote>",
    ];

    /// <summary>Where the student wrote nothing: of a reed that nobody announced.</summary>
    internal static IReadOnlyList<string> Plain { get; } =
    [
        "this is the {reed|one} that you had {not written about|said nothing of}.",
        "you had {not written about|said nothing of} {this one|this reed}, so I {took it as it came|looked at it as it came}.",
    ];

    /// <summary>That the overlap is right, and so nothing is to be done.</summary>
    private const string Right = "{, which is right|, as it should|, and that is as it should be}{: there is nothing to change|; nothing need be done about it|: leave it so|}";

    internal static IReadOnlyList<string> WindingAgrees { get; } =
    [
        $"the thread is wound <hand>-handed, and the overlap {{goes with that|fits that|agrees with it}}{Right}.",
        $"the overlap {{goes with|fits}} the way the thread is wound, which is <hand>-handed{{, and so it is right|: that is right|, and that is as it should be}}.",
        $"{{here|on this one|on this reed}} the overlap {{goes with|fits|agrees with}} the <hand>-handed {{thread|winding}}{Right}.",
    ];

    /// <summary>The same where the student tied it.</summary>
    internal static IReadOnlyList<string> WindingAgreesYours { get; } =
    [
        $"you {{wound|have wound}} the thread <hand>-handed, and the overlap {{goes with that|fits that}}{{, which is right|, as it should|: just right}}{{: keep tying them so|; go on tying them like this|}}.",
        "{the thread shows|I can tell from the thread} that you {wound it|wind} <hand>-handed, and the overlap {goes with it|agrees with it|fits}, as it should{: keep to that|; go on like this|}.",
        "the overlap {goes with|fits} the way the thread is wound{, and that is right|, as it should}; you wound it <hand>-handed{, and can go on so|}.",
        "{this is well tied|this is as I like to see it}: the overlap {goes with|fits} your <hand>-handed {thread|winding}.",
    ];

    internal static IReadOnlyList<string> WindingAgreesAgain { get; } =
    [
        "{here too|in this one, too,|here as well|on this one, too,} the overlap {goes with|fits} {the thread|the way the thread is wound}, {as it should|and that is right|which is right}.",
        "the overlap {goes with|fits} {the thread|the way the thread is wound} {here too|in this one too|on this one as well|here as well}, {as it should|and is right|which is right}.",
        "{again|once more} the overlap {goes with|fits} {the thread|the way the thread is wound}, {and that is right|as it should|which is right}.",
    ];

    internal static IReadOnlyList<string> WindingDisagrees { get; } =
    [
        "the thread is wound <hand>-handed, but the blades overlap the other way; they {tend to|may} creep back, and that is settled {in the tying|when a reed is tied}, not with the knife.",
        "the thread is wound <hand>-handed, and the blades overlap {against it|against its push}; such blades {tend to|may} creep back, {which only tying can settle|and only new tying helps}{: on this one leave it be|}.",
        "the overlap goes {against|the other way from} the <hand>-handed thread, {which isn't as it should be|and that isn't right}; {it is a thing|it is a matter} of tying, not of {scraping|the knife}.",
    ];

    /// <summary>The same where the student tied it.</summary>
    internal static IReadOnlyList<string> WindingDisagreesYours { get; } =
    [
        "you {wound|have wound} the thread <hand>-handed, but the blades overlap {the other way|against its push}; they {tend to|may} creep back, and that is settled {in the tying|when you tie the next one}, not with the knife.",
        "the overlap goes {against|the other way from} the thread, which you wound <hand>-handed; {when you tie the next one, let it go with the thread|on the next one, let the blades lie as the thread pushes them}.",
    ];

    internal static IReadOnlyList<string> WindingDisagreesAgain { get; } =
    [
        "{here too|in this one too|here as well} the blades overlap {against the thread|against the push of the thread}, {which isn't right|which they shouldn't}.",
        "{again|once more} the overlap goes {against|the other way from} the thread, {which isn't right|which it shouldn't}.",
    ];
}
