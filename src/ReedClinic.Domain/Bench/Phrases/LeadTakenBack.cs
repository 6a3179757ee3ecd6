namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Nah, scratch that, left the heart alone”: what takes back at the beginning of a line is none of the words of what is said behind it.</summary>
internal static class LeadTakenBack
{
    private static readonly Doubt Alone = new("kind", "nothing was taken back by this: it is kept as a note");

    private static readonly Doubt Several = new("kind", "several things behind what takes back, so nothing is taken back and nothing recorded: say “scratch that” by itself, then each of them");

    /// <summary>How many of the first words only take back; 0 where none do, or nothing is said behind them.</summary>
    internal static int Count(List<Token> tokens)
    {
        var at = 0;
        while (at < tokens.Count && tokens[at].Text is not "?" && (tokens[at].Kind is TokenKind.Break || LastTakenBack.IsBeside(tokens[at].Text) || LastTakenBack.IsWhy(tokens[at].Text)))
        {
            at++;
        }

        if (at >= tokens.Count || !(LastTakenBack.IsEither(tokens[at].Text) || LastTakenBack.IsAway(tokens[at].Text) || tokens[at].Is("take")))
        {
            return 0;
        }

        var takes = tokens[at].Is("take");
        var first = ++at;
        while (at < tokens.Count && tokens[at].Text is not ("i" or "we" or "left") && (LastTakenBack.IsBeside(tokens[at].Text) || LastTakenBack.IsWhat(tokens[at].Text)))
        {
            at++;
        }

        // “Take that back, …”.
        if (takes && (at >= tokens.Count || !tokens[at++].Is("back")))
        {
            return 0;
        }

        var names = tokens.Skip(first).Take(at - first).Any(token => token.Text is "that" or "last" or "entry");
        var ends = at < tokens.Count && (tokens[at].Kind is TokenKind.Break ? tokens[at].Text is not "?" : tokens[at].Text is "i" or "we" && tokens[first - 1].Text is not "forget");
        if (!names || !ends)
        {
            return 0;
        }

        while (at < tokens.Count && tokens[at].Kind is TokenKind.Break)
        {
            at++;
        }

        return at < tokens.Count ? at : 0;
    }

    /// <summary>Whether several things are said behind it while something stands: to record them and take nothing back would be half of what was said.</summary>
    internal static bool IsHalf(PhraseReading behind, PhraseContext context) => behind.Entries.Count(entry => entry.Kind is not EntryKind.Note) > 1 && context.Log.Told.Any();

    /// <summary>All of it as one remark.</summary>
    internal static ReadEntry Whole(string text, List<Token> tokens) =>
        new(new TextSpan(tokens[0].Start, tokens[^1].End - tokens[0].Start), EntryKind.Note, ReadSlots.None, [Several]) { Said = text[tokens[0].Start..tokens[^1].End] };

    /// <summary>The words that take back, as a remark: they are in no entry, and none is gone by them.</summary>
    internal static ReadEntry Kept(string text, List<Token> lead)
    {
        var last = lead.FindLast(token => token.Kind is not TokenKind.Break);
        return new ReadEntry(new TextSpan(lead[0].Start, lead[^1].End - lead[0].Start), EntryKind.Note, ReadSlots.None, [Alone]) { Said = text[lead[0].Start..last.End] };
    }
}
