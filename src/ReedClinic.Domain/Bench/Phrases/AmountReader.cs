namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>How much, as it was said.</summary>
/// <param name="Strokes">Whole strokes.</param>
/// <param name="Mm">Millimetres.</param>
/// <param name="Words">The phrase's own words.</param>
/// <param name="First">The first token.</param>
/// <param name="End">The token after the last.</param>
/// <param name="Bare">True for a number without a unit.</param>
internal readonly record struct SaidAmount(int? Strokes, decimal? Mm, string? Words, int First, int End, bool Bare = false)
{
    /// <summary>True for strokes, counted or “a few”.</summary>
    internal bool IsStrokes => Strokes is not null ? !Bare : Words is { } said && (said.EndsWith("strokes", StringComparison.Ordinal) || said.EndsWith("passes", StringComparison.Ordinal) || said.EndsWith("stroke", StringComparison.Ordinal) || said.EndsWith("scrapes", StringComparison.Ordinal));
}

/// <summary>Reads amounts.</summary>
internal static class AmountReader
{
    private static readonly HashSet<string> Adjectives =
        ["very", "tiny", "tiniest", "lightest", "slightest", "smallest", "little", "littlest", "wee", "small", "light", "good", "fair", "mere", "merest", "barest", "faintest", "gentlest", "gentle", "finest", "softest", "soft", "quick", "full", "extra", "thin", "thinnest", "fine", "briefest", "feather", "slight", "great", "whole", "single", "further", "more", "long", "short", "careful", "minute", "teeny", "last", "decent", "brief", "careful", "weeniest", "weeny", "bare", "modest", "generous", "proper", "real", "fairly", "final", "quick", "healthy", "goodish", "hefty", "tiniest", "narrow", "cautious", "delicate", "featherlight"];

    private static readonly HashSet<string> Nouns =
        ["hair", "bit", "touch", "little", "lot", "lick", "tad", "whisker", "smidgen", "smidge", "fraction", "shade", "sliver", "shaving", "shavings", "trifle", "dusting", "brush", "breath", "skim", "kiss", "wisp", "thought", "scrape", "pass", "crumb", "speck", "trace", "deal", "amount", "hint", "suspicion", "flick", "scratch", "whiff", "nibble", "spot", "tickle", "graze", "once", "stroke", "mite", "jot", "whit", "notch", "ghost", "dab", "peck", "peeling", "peel", "wipe", "sweep", "swipe", "rub", "trim", "iota", "atom", "particle", "scruple", "smattering", "caress", "stroking", "glance", "curl", "curls", "feathering", "whisper", "murmur", "sigh", "puff", "suggestion", "glimmer", "smear", "rumour", "nudge", "tap", "shadow", "dust", "featherweight", "blink", "once-over"];

    // “A day off”, “a way off”: no amounts.
    private static readonly HashSet<string> NoAmount = ["day", "way", "week", "month", "time", "long", "far", "cut", "show", "pay", "one", "corner", "long", "mile", "step", "break", "write", "piece", "chip", "bump", "ridge", "lump", "reed", "morning", "afternoon", "turn", "wire", "cork"];

    private static readonly HashSet<string> Adverbs = ["lightly", "gently", "slightly", "barely", "delicately", "heavily", "softly", "sparingly", "generously", "thoroughly", "properly", "firmly", "fractionally", "minutely", "minimally", "substantially", "considerably", "marginally", "modestly", "faintly"];

    private static readonly HashSet<string> AfterBare = ["off", "from", "on", "each", "more", "per", "a", "here", "there", "at", "in", "over", "for", "now", "this", "to", "both", "either", "apiece", "only", "too", "again", "out", "of", "down", "light", "the", "along", "across", "as", "well", "instead", "then", "but"];

    internal static SaidAmount? Read(Segment segment, int first, int end)
    {
        SaidAmount? words = null;
        for (var i = first; i < end; i++)
        {
            if (Counted(segment, i, end) is { } counted)
            {
                return counted;
            }

            words ??= Worded(segment, i, end);
        }

        return words;
    }

    private static SaidAmount? Counted(Segment segment, int at, int end)
    {
        var tokens = segment.Tokens;
        if (tokens[at].Text is "a" or "another" or "one" or "single" && Unit(segment, Skip(segment, at + 1, end), out var unitEnd) is { } one)
        {
            return Vague(segment, at, unitEnd) ?? Of(segment, 1, one, at, unitEnd);
        }

        if (Numbers.At(tokens, at, end) is not { } number || number.Value <= 0)
        {
            return tokens[at].Text switch
            {
                "pair" when segment.Word(at + 1) is "of" && Unit(segment, at + 2, out var pair) is Cat.Stroke => new SaidAmount(2, null, null, at, pair),
                "lots" or "loads" or "plenty" or "heaps" when segment.Word(at + 1) is "of" && Unit(segment, at + 2, out var many) is Cat.Stroke => new SaidAmount(null, null, Text(segment, at, many), at, many),
                "few" or "several" when segment.Word(at - 1) is not ("a" or "another") && Unit(segment, Skip(segment, at + 1, end), out var few) is Cat.Stroke => new SaidAmount(null, null, Text(segment, at, few), at, few),
                "twice" => new SaidAmount(2, null, null, at, at + 1),
                "once" when at > segment.First && Ends(segment, at + 1) && segment.Word(at - 1) is not ("at" or "all" or "for") => new SaidAmount(1, null, null, at, at + 1),
                _ => null,
            };
        }

        if (number.End + 1 < end && tokens[number.End].Text is "or" or "to" && Numbers.At(tokens, number.End + 1, end) is { } upper
            && Unit(segment, Skip(segment, upper.End, end), out var rangeEnd) is not null)
        {
            return new SaidAmount(null, null, Text(segment, at, rangeEnd), at, rangeEnd);
        }

        if (Unit(segment, Skip(segment, number.End, end), out unitEnd) is { } unit)
        {
            return Of(segment, number.Value, unit, at, unitEnd);
        }

        return Bare(segment, number.Value, at, number.End, end);
    }

    /// <summary>“A stroke or two”.</summary>
    private static SaidAmount? Vague(Segment segment, int at, int end) =>
        segment.Word(end) is "or" && Numbers.At(segment.Tokens, end + 1, segment.End) is { } more
            ? new SaidAmount(null, null, Text(segment, at, more.End), at, more.End)
            : null;

    private static SaidAmount? Bare(Segment segment, decimal value, int at, int after, int end)
    {
        if (value < 1 || value != Math.Truncate(value))
        {
            return value < 1 && (segment.Tokens[at].Kind == TokenKind.Number || segment.Word(at) is "point") ? new SaidAmount(null, value, null, at, after, Bare: true) : null;
        }

        // “2x”: the times are no word of their own.
        while (after < end && segment.Tokens[after].Kind is TokenKind.Symbol && segment.Word(after).Length == 0)
        {
            after++;
        }

        var pronoun = segment.Word(at) is "one" && segment.Word(at - 1) is "the" or "this" or "that" or "left" or "right" or "upper" or "lower" or "other" or "first" or "second" or "last" or "each" or "no" or "your" or "new" or "fresh" or "good" or "my" or "bad" or "small" or "little" or "big" or "tiny" or "nice" or "fine" or "short" or "long" or "proper" or "which" or "any" or "some";
        var last = after >= end || segment.Tokens[after].Kind == TokenKind.Break;
        var place = segment.Items.Any(item => item.First == after && item.Cat is Cat.Side or Cat.Blade or Cat.More or Cat.Off or Cat.Also) || segment.Word(after) is "right" or "left";
        var fits = last || place || AfterBare.Contains(segment.Word(after));
        var length = value is >= 50 and <= 90 && segment.Word(at - 1) is "to" or "at" or "at" or "measures" or "is" or "'s";
        return !pronoun && !length && fits && value <= Amount.MostStrokes && segment.Word(at - 1) is not ("at" or "number" or "reed" or "pass" or "-" or "no") && segment.Tokens[at].Text is not ("+" or "-")
            ? new SaidAmount((int)value, null, null, at, after, Bare: true)
            : null;
    }

    private static SaidAmount? Of(Segment segment, decimal value, Cat unit, int at, int end) => unit switch
    {
        Cat.Stroke when value >= 1 && value <= Amount.MostStrokes && value == Math.Truncate(value) => new SaidAmount((int)value, null, null, at, end),
        Cat.Stroke => new SaidAmount(null, null, Text(segment, at, end), at, end),
        Cat.Mm when value <= Amount.MostMillimetres => new SaidAmount(null, value, null, at, end),
        Cat.Tenth when value < 100 => new SaidAmount(null, value / 10, null, at, end),
        Cat.Hundredth when value < 100 => new SaidAmount(null, value / 100, null, at, end),
        _ => null,
    };

    private static bool Ends(Segment segment, int at) => at >= segment.End || segment.Tokens[at].Kind is TokenKind.Break || segment.Word(at) is "only" or "each" or "on" or "over" or "with";

    private static int Skip(Segment segment, int at, int end)
    {
        while (at < end && (Adjectives.Contains(segment.Word(at)) || segment.Word(at) is "of" or "a" or "") && !segment.Items.Any(item => item.First == at && item.Cat is Cat.Stroke))
        {
            at++;
        }

        return at;
    }

    private static Cat? Unit(Segment segment, int at, out int end)
    {
        foreach (var item in segment.Items)
        {
            if (item.First == at && item.Cat is Cat.Stroke or Cat.Mm or Cat.Tenth or Cat.Hundredth)
            {
                end = item.End;
                return item.Cat;
            }
        }

        end = at;
        return null;
    }

    private static SaidAmount? Worded(Segment segment, int at, int end)
    {
        var word = segment.Word(at);
        if (word is "too" or "far" && segment.HasWord("much") && segment.Word(word == "far" ? at + 2 : at + 1) is "much")
        {
            var after = word == "far" ? at + 3 : at + 2;
            return new SaidAmount(null, null, Text(segment, at, after), at, after);
        }

        if (Nothing(segment, at) is > 0 and var nothing)
        {
            return new SaidAmount(null, null, Text(segment, at, at + nothing), at, at + nothing);
        }

        if (Adverbs.Contains(word))
        {
            var start = segment.Word(at - 1) is "very" or "quite" ? at - 1 : segment.Word(at - 1) is "so" && segment.Word(at - 2) is "ever" ? at - 2 : at;
            return new SaidAmount(null, null, Text(segment, start, at + 1), start, at + 1);
        }

        if (word is "very" or "ever" && segment.Word(word is "very" ? at + 1 : at + 2) is "little")
        {
            var after = word is "very" ? at + 2 : at + 3;
            return new SaidAmount(null, null, Text(segment, at, after), at, after);
        }

        if (at == segment.First && Nouns.Contains(word) && word is not ("once" or "pass" or "scrape") && segment.Word(at + 1) is "off" or "from" or "out" or "more")
        {
            return new SaidAmount(null, null, word, at, at + 1);
        }

        if (word is "hair" or "whisker" or "tad" or "smidge" or "fraction" && segment.Items.Any(item => item.Cat is Cat.Verb && item.End == at))
        {
            return new SaidAmount(null, null, word, at, at + 1);
        }

        return word is "a" or "an" or "the" or "another" or "some" ? Nouned(segment, at, end) : null;
    }

    // “Hardly anything”, “next to nothing”.
    private static int Nothing(Segment segment, int at) => (segment.Word(at), segment.Word(at + 1)) switch
    {
        ("hardly" or "barely" or "scarcely", "anything") or ("almost" or "practically", "nothing") => 2,
        ("next", "to") when segment.Word(at + 2) is "nothing" => 3,
        _ => 0,
    };

    private static SaidAmount? Nouned(Segment segment, int at, int end)
    {
        var noun = at + 1;
        for (var i = noun; i < end && (i == at + 1 || Adjectives.Contains(segment.Word(i - 1))); i++)
        {
            noun = Nouns.Contains(segment.Word(i)) ? i : noun;
        }

        if (segment.Word(at) is "a" && segment.Word(noun) is "few")
        {
            var strokes = Unit(segment, Skip(segment, noun + 1, end), out var after) is Cat.Stroke ? after : noun + 1;
            return new SaidAmount(null, null, Text(segment, at, strokes), at, strokes);
        }

        if (noun < end && Nouns.Contains(segment.Word(noun)))
        {
            if (segment.Word(at - 1) is "quite" or "just")
            {
                return new SaidAmount(null, null, Text(segment, segment.Word(at - 1) is "quite" ? at - 1 : at, noun + 1), at, noun + 1);
            }

            return segment.Word(at) is "the" && noun == at + 1 ? null : new SaidAmount(null, null, Text(segment, at, noun + 1), at, noun + 1);
        }

        if (segment.Word(at) is "a" or "another" && segment.Word(at + 2) is "off" && segment.Tokens[at + 1].Kind is TokenKind.Word && !NoAmount.Contains(segment.Word(at + 1)))
        {
            return new SaidAmount(null, null, Text(segment, at, at + 2), at, at + 2);
        }

        return segment.Word(at + 1) is "tiniest" or "smallest" or "slightest" or "lightest" or "merest" or "barest" or "faintest" or "finest" or "gentlest" or "tiny" or "teeny"
            ? new SaidAmount(null, null, Text(segment, at, at + 2), at, at + 2)
            : null;
    }

    internal static string Text(Segment segment, int first, int end) => PhraseText.Of(segment.Tokens, first, end);
}
