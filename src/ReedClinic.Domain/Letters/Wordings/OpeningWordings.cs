namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>How a letter begins.</summary>
internal static class OpeningWordings
{
    internal static IReadOnlyList<string> Thanks { get; } =
    [
        "{thank you|many thanks|thank you very much|warm thanks} for {your|sending me your|trusting me with your|letting me look at your} <reeds>.",
        "it was {good|a pleasure|nice|lovely} to {open|unpack} your parcel and {find|see} your <reeds>{ in it|}.",
        "your <reeds> {arrived|came|reached me|are here}, and {I have enjoyed getting to know <them>|it was good to get to know <them>|it was a pleasure to get to know <them>}.",
        "{I was glad to have|I was happy to have|I was pleased to have|it was good to have} your <reeds> {here|at my bench|on my bench|in the studio|with me}{ for a while|}.",
    ];

    /// <summary>Where something was written about the reeds.</summary>
    internal static IReadOnlyList<string> ThanksForWords { get; } =
    [
        "{thank you|many thanks|thank you very much} for {your|sending me your|trusting me with your} <reeds>, and for what you wrote about <them>.",
        "your <reeds> {and your words about <them>|and what you wrote about <them>} {have reached me|are here|arrived}{; thank you for both|: thank you|, and I thank you for both}.",
    ];

    /// <summary>Where much was written about them.</summary>
    internal static IReadOnlyList<string> ThanksForManyWords { get; } =
    [
        "{thank you|many thanks} for {writing so clearly about|telling me so much about|describing so well what you notice about} your <reeds>.",
    ];

    internal static IReadOnlyList<string> TriedFirst { get; } =
    [
        "I {tried|played} them {next to each other|one beside the other|one after the other} before I {touched|worked on|changed} any of them{, because reeds explain each other|, since one reed explains another|}.",
        "before I {touched|changed|worked on} any of them I {tried|played} them all, {one beside the other|one after the other}, and {wrote down|set down} {what I noticed|what I heard|how each one answered}.",
        "{first I|I first} {tried|played} {all of them|every one of them|each of them} {as they came|just as they were|as you sent them}, {so that I could compare them|because comparing them teaches the most|and only then began to work}.",
    ];

    /// <summary>Where each of them was tried at the bench.</summary>
    internal static IReadOnlyList<string> LookedClosely { get; } =
    [
        "I have spent some {quiet|unhurried} time {with <them>|over <them>} at the bench, and {this is what I found out|here is what I found|this is what I can tell you}.",
    ];

    internal static IReadOnlyList<string> Looked { get; } =
    [
        "{this|here} is what I {can tell you|have to tell you|found out} about <each>{, step by step|, one thing after the other|, in plain words|}.",
        "{below|on these pages} {I tell you|I write down|you can read} what I {found|noticed|saw and heard}{ and why|, and what follows from it|}.",
        "I have {written down|set down} what I {noticed|found}, {so that you can see it for yourself|so that you can look for it yourself|and you can check all of it yourself}.",
        "{let me|I want to|I would like to} tell you what I {noticed|found}{ about <each>|}, {and what you can make of it|and what I would do next|as plainly as I can}.",
    ];

    internal static IReadOnlyList<string> HowWithGood { get; } =
    [
        "{first comes|I begin with} what is good, then {each reed by itself|one reed after the other|each reed in turn}, and {near the end|towards the end|further on} {what I would try on the next one|a plan for the next one|what to try next time}.",
        "you will find each reed by {its number|the number on its tag}, {and near the end|and after them|and further on} {a short plan|a plan in a few steps|a few steps} for the next one.",
    ];

    internal static IReadOnlyList<string> HowWithPlan { get; } =
    [
        "you will find each reed by {its number|the number on its tag}, {and near the end|and after them|and further on} {a short plan|a plan in a few steps|a few steps} for the next one.",
        "{each reed has|I have given each reed} {a part of its own|a part to itself}{, under the number on its tag|, under its number|}; {near the end|after that|further on} comes {a short plan|a plan} for the next one.",
        "{it is easiest to read|read} this letter with the reeds {beside you|in front of you|at hand}{, if you can|, since you can then look at each|}: {they carry the same numbers as here|the numbers are those on their tags|their tags have the same numbers}.",
    ];

    internal static IReadOnlyList<string> How { get; } =
    [
        "you will find each reed by {its number|the number on its tag}; {near the end|towards the end} {comes|stands} {how to look after them|how to take care of them|how to treat them well}.",
        "{it is easiest to read|read} this letter with the reeds {beside you|in front of you|at hand}: {they carry the same numbers as here|the numbers are those on their tags|their tags have the same numbers}.",
    ];

    internal static IReadOnlyList<string> HowOneWithPlan { get; } =
    [
        "{near|towards} the end {you will find|comes|there is} a {short plan|plan} for the next one{, in a few steps|}.",
        "{after that comes|towards the end comes|further down you will find} {a plan|a short plan|a few steps} for the {next reed|next one|reed after it}.",
    ];

    internal static IReadOnlyList<string> HowOne { get; } =
    [
        "{near the end|further down|towards the end} {you will find|I tell you|you can read} how to {look after it|take care of it|treat it well}{ from now on| at home|}.",
    ];

    /// <summary>Where no reed is for playing, and there is no plan.</summary>
    internal static IReadOnlyList<string> HowBare { get; } = ["you will find each reed by {its number|the number on its tag}."];

    internal static IReadOnlyList<string> NothingYet { get; } =
    [
        "none of your reeds has {been in my hands|reached my bench} yet, so this letter is {a short one|short}.",
    ];

    internal static IReadOnlyList<string> GoodFirst { get; } =
    [
        "{let me begin|I want to begin|I would like to begin|I shall begin|let me start} with what {you do well|is good|pleased me|has come out well|you can be glad of}.",
        "{some|a few|several} things are {just as they should be|as good as they need be|right already}, and {I hope you will keep them so|I hope they stay so|you can keep doing them}.",
        "{first of all|first|before anything else|to begin with}, {here is|this is} what {is good|you do well|pleased me|has turned out well}.",
        "before {I come to|we get to|we look at} the {work|rest|details}, {here is what|let me say what} {is good|you do well|pleased me}.",
    ];

    /// <summary>The same before one thing alone.</summary>
    internal static IReadOnlyList<string> GoodFirstAlone => [.. GoodFirst.Where(way => !way.Contains("things", StringComparison.Ordinal))];

    internal static IReadOnlyList<string> GoodEnd { get; } =
    [
        "{that is worth a lot|that counts for a lot|all that is worth much}, and it is {yours|your own doing|your own work}.",
        "keep {that|all that|all of it}{; it is|: it is|, since it is} the part that is {hard to teach|hardest to teach|hardest to learn}.",
        "{please keep|do keep|hold on to} {that|all that|all of that}{: it will carry you far|; the rest can be learnt|, and the rest will follow}.",
    ];

    /// <summary>A strength with the reeds that have it.</summary>
    internal static IReadOnlyList<string> GoodInReeds { get; } =
    [
        "<where> <what>, {and that|which} <shows>.",
        "<what> <where>, {and that|which} <shows>.",
        "{it is good|I was glad to see|I like it} that <where> <what>, which <shows>.",
        "<where> <what>; that <shows>.",
    ];

    /// <summary>The same where nothing need be said of the reeds.</summary>
    internal static IReadOnlyList<string> Good { get; } =
    [
        "<what>, {and that|which} <shows>.",
        "{it is good|I was glad to see|I like it} that <what>, which <shows>.",
        "<what>; that <shows>.",
    ];

    /// <summary>In which reeds something typed was seen.</summary>
    internal static IReadOnlyList<string> SeenIn { get; } =
    [
        "I {saw|found|met|noticed} {this|that} <where>.",
        "{this|that} {holds|is so|is the case} <where>.",
        "you {will find|can see|will see} {this|it} <where>.",
    ];
}
