using System.Text.RegularExpressions;

namespace ReedClinic.Domain.Letters.Wordings;

/// <summary>A word of the trade, and what it means to somebody who is fourteen.</summary>
/// <param name="Name">The word.</param>
/// <param name="Pattern">Where it stands in a sentence, as a regular expression; the end of the match is where an explanation may follow.</param>
/// <param name="Means">What it means, to stand in brackets or after “I mean”.</param>
/// <remarks>
/// Common practice, in our own words. Reed, cane, blade, thread, cork and knife are known to whoever makes reeds, and are not
/// explained.
/// </remarks>
internal sealed record TradeWord(string Name, string Pattern, string Means)
{
    /// <summary>Its name in the table of tests, when it is a test; null when it isn't.</summary>
    public string? Row { get; init; }

    /// <summary>Where it stands in what a test gave, as a regular expression; null where it doesn’t.</summary>
    public string? IsInRows { get; init; }

    /// <summary>What leads to its meaning in brackets, where the word stands there in another number.</summary>
    public string Lead { get; init; } = "";

    /// <summary>What it means where the word stands by itself, after “I mean”; null where that is the same.</summary>
    public string? Alone { get; init; }

    /// <summary>Whether it is another name for what a letter calls otherwise: only what somebody typed says it, and it is told once behind that.</summary>
    public bool IsSynonym { get; init; }

    /// <summary>Whether the drawing of a crow’s way says it.</summary>
    public bool IsInCrow { get; init; }

    /// <summary>Whether a row of the table says it.</summary>
    /// <param name="row">The row.</param>
    public bool StandsIn(BeforeAndNow row) => Row == row.Test
        || (IsInRows is { } where && Regex.IsMatch($"{row.Before} {row.Now}", where, RegexOptions.CultureInvariant));
}

/// <summary>The words themselves.</summary>
internal static class TradeWordings
{
    internal static IReadOnlyList<TradeWord> All { get; } =
    [
        new("tip", @"\btips?\b", "the {thin|thinnest} {part at the end|end}"),
        new("heart", @"\bheart\b", "the {thick|thicker} {part|middle} {just behind|right behind|behind} the thin end"),
        new("back", @"\bthe back\b(?! of)", "the {scraped part|part} {nearer to|towards} the thread"),
        new("spine", @"\bspine\b", "the {thick|thicker|raised} line {down|along} the middle"),
        new("rails", @"\brails?\b", "the narrow strips {along|down} {the|both} sides of the blade"),
        new("windows", @"\bwindows?\b", "the {hollows|scraped hollows|thinner places} {left and right|on either side} of the middle line, towards the thread"),
        new("bark", @"\bbark\b", "the {shiny|smooth} skin of the cane"),
        new("pass", @"(?<=\b(one|two|three|four|five|six|seven|eight|nine|ten|eleven|twelve|\d+|each|every|single) )pass(es)?\b", "{a|one} {short |}round of work") { Lead = "a pass is " },
        new("staple", @"\bstaple\b", "the {small |}{metal tube|tube} {that the cane is tied to|under the thread}"),
        new("plaque", @"\bplaque\b", "the {small|thin} flat {plate|tongue} that {goes|is slipped} between the blades"),
        new("crow", @"\b[Cc]row it\b", "blow {it alone|it by itself}, with your lips {at|right up to} the thread") { Alone = "blowing the reed by itself, with your lips {at|right up to} the thread" },
        new("crow", @"\bcrow\b(?! it)", "the {sound|noise} of the reed {alone|on its own}, {blown with|with} your lips {at|right up to} the thread") { Row = "crow" },
        new("peep", @"\bpeep\b", "one {short |}note on the reed alone, {with your lips where they are when you play|with your lips as you play}") { Row = "peep" },
        new("seal", @"\bseals?\b", "{letting no air out|keeping the air in} at the sides") { Row = "seal" },
        new("opening", @"\bopening\b", "the gap between the blades{ at the end| at the front|}") { Row = "opening" },
        new("overlap", @"\b(?<=[Tt]he )overlap\b", "{how far|by how much} one blade {sits|lies} to the side of the other"),
        new("overlap", @"\b(?<=blades |to |straight and |don’t |didn’t )overlap\b", "one {sits|lies} a {hair|hair’s breadth} to the side of the other") { Alone = "{how far|by how much} one blade {sits|lies} to the side of the other" },
        new("edge", @"\bedge of the sound\b", "how {bright|clear} and {clearly cut|sharply drawn} it is") { Row = "edge of the sound", Alone = "how {bright|clear} and {clearly cut|sharply drawn} the sound is" },
        new("swell", @"\bswell\b", "one long note from soft to loud and back") { Row = "swell" },
        new("cent", @"\bcents?\b", "a hundredth of a semitone{, the step from B to C|, such as the step from B to C|}") { Lead = "a cent is ", IsInRows = @"\bcents?\b", IsInCrow = true },
        new("rooftop", @"\b[Rr]oof ?tops?\b", "the line between heart and tip") { IsSynonym = true },
        new("transition", @"\b[Tt]ransitions?\b", "the slope from heart to tip") { IsSynonym = true },
        new("closing order", @"\bclosing order\b", "which part of the blades meets first {when they are pressed|under a light press}") { Row = "closing order" },
    ];

    /// <summary>A sentence of its own for a word that has no room for brackets.</summary>
    internal static IReadOnlyList<string> OwnSentence { get; } =
    [
        "{by|with the word} “<word>” I mean <means>.", "the word “<word>” {means|stands for|is used for} <means>.",
        "{when I say|when I write|where I write} “<word>”, I mean <means>.",
    ];

    /// <summary>The same for a word that stands in the table or the drawing below.</summary>
    internal static IReadOnlyList<string> Below { get; } = ["{in its tests|in the tests of this reed}, “<word>” {means|stands for|is} <means>."];

    /// <summary>The same for two of them.</summary>
    internal static IReadOnlyList<string> BelowForTwo { get; } = ["{in its tests|in the tests of this reed}, “<word>” {means|stands for|is} <means>, and “<other>” <also>."];

    /// <summary>The same for two words.</summary>
    internal static IReadOnlyList<string> OwnSentenceForTwo { get; } =
    [
        "{by “<word>” I mean <means>, and by|with the word “<word>” I mean <means>, and with} “<other>” <also>.", "the word “<word>” {means|stands for} <means>; “<other>” is <also>.",
        "{when I say|when I write|where I write} “<word>”, I mean <means>; “<other>” is <also>.",
    ];
}
