using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Tests.Letters.Drafts;

/// <summary>What a letter says to keep somebody from harm, beside its list of cautions: word for word, in every letter.</summary>
internal static partial class SaidCautions
{
    public const string NotAlone = "If you are not grown up yet, use a knife only with a parent or guardian and your teacher beside you.";

    public const string NotAloneYounger = "Use a knife only with a parent or guardian and your teacher beside you.";

    public const string NotYet = "Please take no knife to a reed that comes back from me: play it first, and scrape nothing on it before your next lesson or before you have asked me.";

    public const string KnifeBesideAnAnswer = "A knife is very sharp: if you are not grown up yet, never use one without a parent or guardian and your teacher beside you.";

    public const string MouldAtWork = "It has mould, so I neither played nor scraped it.";

    public const string MouldUse = "Please don’t play it: let the cane go, and keep the metal tube under the thread only if you can clean it well.";

    /// <summary>What is said of a reed with mould when the parcel was opened.</summary>
    /// <param name="reed">Its number in words.</param>
    public static string MouldOnArrival(string reed) =>
        $"There was mould on reed {reed}: I did not play it, and please don’t play it either, because mould can make you ill.";

    /// <summary>Whether a sentence is one of them.</summary>
    /// <param name="sentence">The sentence.</param>
    public static bool Hold(string sentence) => sentence is NotAlone or NotAloneYounger or NotYet or KnifeBesideAnAnswer or MouldAtWork or MouldUse || OnArrival().IsMatch(sentence);

    [GeneratedRegex("^There was mould on reed [a-z]+: I did not play it, and please don’t play it either, because mould can make you ill.$")]
    private static partial Regex OnArrival();
}
