namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Correct the last one: needs a push”: a line that says itself that it puts right an entry that stands, and records nothing new.</summary>
internal static class RightCommand
{
    private static readonly HashSet<string> Ahead = [.. "no nope nah sorry oops whoops wait ok okay please can could you i i'd like to let's let me should 'll".Split(' ')];

    private static readonly HashSet<string> Meant = ["the", "that", "this", "it", "my", "last", "one", "entry", "line", "previous", "thing"];

    private static readonly Doubt Which = new("kind", "unsure which entry this puts right, so it is kept as a note");

    /// <summary>What is to stand instead; null where a line is no such command.</summary>
    internal static string? Rest(string said, List<Token> tokens)
    {
        var at = 0;
        while (at < tokens.Count && (tokens[at].Kind is TokenKind.Break || Ahead.Contains(tokens[at].Text)))
        {
            at++;
        }

        if (at >= tokens.Count || tokens[at].Text is not ("correct" or "amend" or "fix" or "change" or "edit" or "replace"))
        {
            return null;
        }

        // Only an entry is the last one: “fix that, two strokes off the left” is work; no reed is amended.
        var names = tokens[at].Text is "amend" or "edit" or "change" or "correct" && at + 1 < tokens.Count && tokens[at + 1].Text is "that";
        var first = ++at;
        while (at < tokens.Count && Meant.Contains(tokens[at].Text))
        {
            names |= tokens[at].Text is "last" or "entry" or "previous" or "line";
            at++;
        }

        // “Correct: five strokes”; “fix: two strokes” is work.
        var bare = at == first && tokens[at - 1].Text is "correct" or "amend" or "edit" && at < tokens.Count && tokens[at].Is(":");
        if (at == first && !bare || at + 1 >= tokens.Count || !(tokens[at].Text is ":" or "to" || names && (tokens[at].Kind is TokenKind.Break && tokens[at].Text is not "?" || tokens[at].Text is "as" or "with")))
        {
            return null;
        }

        at++;
        while (at < tokens.Count && (tokens[at].Kind is TokenKind.Break || tokens[at].Text is "to" or "say" or "read" or "be"))
        {
            at++;
        }

        return at < tokens.Count && !said.Contains('?', StringComparison.Ordinal) ? said[tokens[at].Start..] : null;
    }

    /// <summary>Where no entry was found to stand for it, the line is a remark.</summary>
    internal static ReadEntry? Kept(string text, List<Token> tokens) => Rest(text, tokens) is null && SaidWrong.OnlyOne(text, tokens) is null
        ? MakeThat.Kept(text, tokens)
        : new ReadEntry(new TextSpan(tokens[0].Start, tokens[^1].End - tokens[0].Start), EntryKind.Note, ReadSlots.None, [Which]) { Said = text[tokens[0].Start..tokens[^1].End] };
}
