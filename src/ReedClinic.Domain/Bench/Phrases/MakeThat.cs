namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Make that C” says what was meant; “make that blow freely” and “make that easier to blow” are wishes, and nothing is put right by them.</summary>
internal static class MakeThat
{
    private static readonly HashSet<string> Ahead = [.. "no nope sorry actually oops wait please".Split(' ')];

    private static readonly HashSet<string> Articles = ["a", "an", "to", "it", "be", "the"];

    // What a reed is wished to do.
    private static readonly HashSet<string> Deeds = [.. ("blow respond pop peep speak sound match drop come go rise fall sing ring play fit seal hold stand feel be become get work do answer vibrate project stay sit look buzz "
        + "squeak honk tune settle move lie meet slur change last give take sink climb behave equal follow agree open close crow start stop speed").Split(' ')];

    // Before these it is no verb: “half a turn”, “a soft start”, “half open”.
    private static readonly HashSet<string> Nouns = [.. "a an half quarter one two three soft clean slow more very too bit little quite full loose tight".Split(' ')];

    private static readonly HashSet<string> NoComparers = [.. "upper lower other corner either quarter never number centre center over under after rather water nearer closer millimeter whisker".Split(' ')];

    private static readonly Doubt Wish = new("kind", "unsure whether this says what was meant or what is wished for, so it is kept as a note");

    /// <summary>Whether these words wish for something of “that”.</summary>
    internal static bool IsWish(List<Token> tokens)
    {
        var at = After(tokens);
        return at >= 0 && Enumerable.Range(at, tokens.Count - at).Any(one => IsDeed(tokens, at, one) || IsComparer(tokens, one) || tokens[one].Text is "same" or "match" or "so");
    }

    /// <summary>“Make that needs a push”: what that was; null where it is said of a part of the reed, or nothing is.</summary>
    internal static string? Rest(string said, List<Token> tokens)
    {
        var at = After(tokens);
        if (at < 0 || !tokens[at - 1].Is("that") || IsWish(tokens) || IsOfReed(tokens, at))
        {
            return null;
        }

        while (at < tokens.Count && (tokens[at].Kind is TokenKind.Break || tokens[at].Text is "a" or "an" or "to"))
        {
            at++;
        }

        return at < tokens.Count ? said[tokens[at].Start..] : null;
    }

    /// <summary>Whether what is said behind “make that” is of the same test or the same work as what stands; “needs a push” is no wish, and takes the place of how it blew.</summary>
    internal static bool IsSame(BenchEntry before, BenchEntry entry, string rest) => (before, entry) switch
    {
        (not (Test { Pitch: not null } or Test { Millimetres: not null } or Adjustment or Finding { Character: FindingCharacter.Fault }), Test { Step: not null })
            when rest.Split(' ')[0] is "needs" or "blows" or "speaks" or "starts" or "feels" or "sounds" or "responds" => true,
        (Test was, Test { } now) => was.TestKind == now.TestKind && (now.Step is not null || now.Pitch is not null || now.Millimetres is not null),
        (Adjustment was, Adjustment now) => was.AdjustmentKind == now.AdjustmentKind || IsClip(was) && IsClip(now),
        _ => false,
    };

    /// <summary>Whether work takes off the end of the reed: it is measured, and has no strokes.</summary>
    internal static bool IsClip(Adjustment work) => work.AdjustmentKind.Value is "clip" or "clip-hair";

    /// <summary>Where nothing stands that it puts right, or it is a wish, a short line is a remark.</summary>
    internal static ReadEntry? Kept(string text, List<Token> tokens)
    {
        var at = After(tokens);
        return at < 0 || tokens.Skip(at).Any(token => token.Kind is TokenKind.Break) || !(IsWish(tokens) || Rest(text, tokens) is not null) || IsOfReed(tokens, at) ? null
            : new ReadEntry(new TextSpan(tokens[0].Start, tokens[^1].End - tokens[0].Start), EntryKind.Note, ReadSlots.None, [Wish]) { Said = text[tokens[0].Start..tokens[^1].End] };
    }

    // “Make that corner thinner” is a wish, too, and says of what.
    private static bool IsOfReed(List<Token> tokens, int at) => tokens[at].Text is "reed" or "one"
        || Scanner.Scan(tokens).Exists(item => item.First == at && item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Side or Cat.Blade or Cat.Thing);

    private static int After(List<Token> tokens)
    {
        var at = tokens.FindIndex(token => token.Kind is not TokenKind.Break && !Ahead.Contains(token.Text));
        return at >= 0 && at + 2 < tokens.Count && tokens[at].Is("make") && tokens[at + 1].Text is "that" or "it" ? at + 2 : -1;
    }

    private static bool IsDeed(List<Token> tokens, int first, int at) => Deeds.Contains(tokens[at].Text)
        && !(tokens[at].Is("be") && at == first)
        && !(tokens[at].Is("crow") && at + 1 < tokens.Count)
        && !(tokens[at].Text is "open" or "close" && at == first)
        && (at == first || !Nouns.Contains(tokens[at - 1].Text));

    private static bool IsComparer(List<Token> tokens, int at) => tokens[at] is { Kind: TokenKind.Word } word
        && (word.Text.Length > 4 && word.Text.EndsWith("er", StringComparison.Ordinal) && !NoComparers.Contains(word.Text)
            || word.Text is "less" or "worse" || word.Text is "more" && !BareCount.IsMoreLike(tokens, at));
}
