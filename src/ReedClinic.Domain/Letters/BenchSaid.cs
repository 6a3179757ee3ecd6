using System.Text.RegularExpressions;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>
/// What was typed at the bench, as it is read in a letter: as it stands where it is a sentence, with what it lacks where that is only its
/// subject or its verb, and else in quotation marks, as the words that it is.
/// </summary>
/// <remarks>The words are common English, from memory.</remarks>
internal static partial class BenchSaid
{
    /// <summary>One sentence or more.</summary>
    /// <param name="words">What was typed.</param>
    /// <param name="turn">Makes neighbours choose other words.</param>
    /// <param name="phrasing">Chooses the words.</param>
    /// <param name="past">Whether a verb that it lacks is of the time when it was seen.</param>
    public static string Sentence(string words, int turn, Phrasing phrasing, bool past = false) =>
        Whole(words, past) ?? phrasing.Say("bench-said", turn, phrasing.Statements.Contains("bench-said") ? StoryWordings.BenchSaidToo : StoryWordings.BenchSaid, ("quote", Prose.Quote(Prose.Whole(words))));

    /// <summary>The same where it is whole or can be made so; null where it can’t.</summary>
    /// <param name="words">What was typed.</param>
    /// <param name="past">Whether a verb that it lacks is of the time when it was seen.</param>
    public static string? Whole(string words, bool past = false)
    {
        List<string?> all = [.. SpokenOf.Sentences(words).Select(one => OneWhole(Prose.Whole(one).TrimEnd('.', '!'), past))];
        return all.Count == 0 || all.Contains(null) ? null : string.Join(' ', all);
    }

    /// <summary>What was typed as a reason, to stand behind “for this reason:”; null where it is no clause.</summary>
    /// <param name="words">What was typed.</param>
    public static string? Reason(string words)
    {
        var bare = Because().Replace(words.Trim(), "");
        return bare.Length == 0 || Order().IsMatch(bare) ? null
            : Aim().IsMatch(bare) ? Prose.Ended(Prose.Inside(bare))
            : Whole(bare) is { } whole ? Prose.Inside(whole) : null;
    }

    // “Because the tip was thin”, said alone, is no sentence; where more than one thing is said behind it, it may be part of one.
    private static string? OneWhole(string words, bool past) =>
        Because().IsMatch(words) && !words.Contains(',', StringComparison.Ordinal) ? OneWhole(Because().Replace(words, ""), past)
        : Halves().Split(words) is { Length: > 1 } halves ? InHalves(halves, past)
        : OneOnly(SmallI().Replace(words, "I"), past);

    // “The cane is soft; more work would only thin it” is whole where each half is.
    private static string? InHalves(string[] halves, bool past)
    {
        List<string?> all = [.. halves.Select(half => OneWhole(half, past)?.TrimEnd('.'))];
        return all.Contains(null) ? null : Prose.Sentence(string.Join("; ", all.Select((half, index) => index == 0 ? half! : Prose.Inside(half!))));
    }

    private static string? OneOnly(string words, bool past) =>
        words.Length == 0 ? null
        : Person().IsMatch(words) || Order().IsMatch(words) ? Prose.Sentence(words)
        : Deed().IsMatch(words) ? Prose.Sentence("I " + Prose.Inside(words))
        : Does().IsMatch(words) ? (IsInParts(words) ? null : Prose.Sentence("it " + Prose.Inside(words)))
        : Bare().Match(words) is { Success: true } bare ? (IsInParts(words) ? null : OfPart(words, bare, past))
        : Verb().IsMatch(words) ? Prose.Sentence(words)
        : Such().IsMatch(words) ? Prose.Sentence((past ? "it was " : "it is ") + Prose.Inside(words))
        : null;

    // “Wire a touch loose”: its article, and the verb where none stands.
    private static string? OfPart(string words, Match bare, bool past)
    {
        if (Verb().IsMatch(words))
        {
            return Prose.Sentence(bare.Groups["the"].Success ? words : "the " + Prose.Inside(words));
        }

        var many = bare.Groups["part"].Value.EndsWith('s');
        return Such().Match(words[bare.Length..]) is { Success: true } such
            ? Prose.Sentence($"{(bare.Groups["the"].Success ? "" : "the ")}{Prose.Inside(bare.Value.Trim())} {(past ? many ? "were" : "was" : many ? "are" : "is")} {such.Value.Trim()}")
            : null;
    }

    private static bool IsInParts(string words) => Parts().IsMatch(words);

    [GeneratedRegex(@"(?i)^(?:because|since|as|for the reason that)\s+(?!soon|long|far|far|then\b|of\b)")]
    private static partial Regex Because();

    [GeneratedRegex(@"(?i)^(?:(?:so as|in order) )?(?:not )?to \p{L}+|^for (?:fear|the sake)\b|^so that\b")]
    private static partial Regex Aim();

    [GeneratedRegex(@"\s*;\s+")]
    private static partial Regex Halves();

    [GeneratedRegex(@"(?<![\p{L}\p{N}.])i(?=['’]|\s|$)")]
    private static partial Regex SmallI();

    [GeneratedRegex(@"[,;:]\s|\s[–-]\s")]
    private static partial Regex Parts();

    [GeneratedRegex(@"(?i)^(?:(?:and|but|so|now|then|here|still|perhaps|maybe|yes|no|at last),? )?(?:I|it|they|you|we|he|she|there|nothing|everything|something|nobody)(?:['’](?:s|re|ve|d|ll|m))? \p{L}|^(?:I|it|they|you|we|that|this|there|here|what)['’](?:s|re|ve|d|ll|m) \p{L}")]
    private static partial Regex Person();

    [GeneratedRegex(@"(?i)^(?:please |do not |don['’]t |never |always |only )*(?:play|keep|use|give|leave|let|try|take|soak|rest|bring|send|wait|put|watch|look|listen|write|tell|ask|stop|begin|hold|turn|remember|mind|wet)\b(?! (?:a|an)? ?(?:bit|little|touch)\b)")]
    private static partial Regex Order();

    [GeneratedRegex(@"(?i)^(?:(?:also|then|only|just|again) )?(?:scraped|thinned|clipped|shaved|dusted|eased|blended|narrowed|smoothed|squeezed|pressed|pushed|turned|wound|rewound|tied|retied|sealed|polished|filed|sanded|evened|took|gave|cut|put|set|bent|drew|cleaned|soaked|tried|moved|straightened|opened (?:it|the)|closed (?:it|the)) (?!by\b)\p{L}")]
    private static partial Regex Deed();

    [GeneratedRegex(@"(?i)^(?:(?:still|now|just|only|hardly|barely|already) )?(?:holds|speaks|plays|sounds|feels|looks|seems|comes|goes|gets|starts|needs|wants|gives|leaks|closes|opens|crows|responds|answers|sags|sinks|drops|stays|keeps|sits|has|had|is|was|does|did|will|would|can|could|may|might|should|isn['’]t|wasn['’]t|doesn['’]t|didn['’]t|won['’]t|wouldn['’]t|can['’]t|cannot|couldn['’]t) (?!\p{L}+ notes? (?:is|are|was|were)\b)\p{L}")]
    private static partial Regex Does();

    // A part of the reed, with its article or, as one speaks at the bench, without it.
    [GeneratedRegex(@"(?i)^(?<the>the )?(?:(?:left|right|upper|lower|top|bottom|both|whole|other) )*(?<part>tip|corners?|wings?|heart|back|spine|rails?|windows?|bark|opening|crow|cork|thread|edges?|sides?|scrape|blades?|staple|half|wire|lay|cane|halves)(?: (?<part>corners?|sides?|edges?|rails?|half|halves|window|windows))?(?: (?:of|on|in|at) the (?:\p{L}+ )?(?:tip|heart|back|reed|left|right|blade|blades))?\s+")]
    private static partial Regex Bare();

    [GeneratedRegex(
        @"(?i)^(?:(?:a (?:touch|bit|little|shade|hair|tad)|slightly|rather|quite|very|too|much|far|still|now|already|somewhat|clearly|just|not|perhaps|maybe) )*"
        + @"(?:loose|tight|thick|thin|heavy|light|long|short|wide|narrow|open|closed|large|big|small|high|low|even|uneven|rough|smooth|soft|hard|stiff|worn|dirty|clean|crooked|straight|ragged|frayed|chipped|cracked|split|bent|wavy|dark|bright|dry|damp|firm|weak|strong|flat|sharp|right|fine|good|square|slanted|(?:thick|thinn|heavi|light|long|short|wid|narrow|high|low|strong|weak)er)"
        + @"(?: (?:and \p{L}+|enough|now|still|already|there|here|again|all (?:over|round|along)|at (?:the )?\p{L}+|on (?:the|one) \p{L}+(?: \p{L}+)?|than (?:the )?\p{L}+(?: \p{L}+)?|for (?:\p{L}+ ){0,4}\p{L}+))*$")]
    private static partial Regex Such();

    [GeneratedRegex(
        @"(?i)\p{L}.*\b(?:is|are|was|were|am|has|have|had|does|do|did|can|could|cannot|will|would|may|might|must|should|needs?|wants?|wanted|feels?|felt|looks|looked|seems?|seemed|sounds|sounded|plays|played|speaks?|spoke|comes?|came|goes|went|gets|got|gives?|gave|holds?|held|keeps?|kept|stays?|stayed|starts|started|leaks|leaked|closes|closed first|opens|crows|crowed|moves|moved|takes|took|makes|made|lets|responds?|responded|answers|answered|drops|dropped|falls?|fell|rises?|rose|sags?|sagged|sinks?|sank|sits?|sat|stands?|stood|lies|lay|leans|runs|ran|shows?|showed|begins?|began|ends|helps|helped|worked|wavers?|wobbles?|floats?|blends?)\b|\p{L}n['’]t\b|\b(?:that|who|which|tip|heart|back|spine|crow|opening|thread|cork|one|reed|cane)['’]s \p{L}")]
    private static partial Regex Verb();
}
