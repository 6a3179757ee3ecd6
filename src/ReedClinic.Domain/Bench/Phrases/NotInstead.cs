namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Forget that, last reed needs a push”, “undo that, it has to be B”: what is said behind what takes back, and stands for nothing of it.</summary>
internal static class NotInstead
{
    private static readonly HashSet<string> Gone = [.. "yesterday earlier ago tomorrow later monday tuesday wednesday thursday friday saturday sunday".Split(' ')];

    private static readonly HashSet<string> Times = [.. "week night time lesson month year term batch morning afternoon evening autumn spring summer winter".Split(' ')];

    /// <summary>Whether words are of another reed, of another day, or of what has to be.</summary>
    internal static bool SpeaksElsewhere(List<Token> tokens) => tokens.Where((token, at) => Gone.Contains(token.Text)
        || token.Text is "reed" or "reeds" && (Word(tokens, at - 1) is not ("this" or "the" or "a") || Word(tokens, at + 1) is "one" or "two" or "three" or "four" or "five" or "six" || at + 1 < tokens.Count && char.IsAsciiDigit(tokens[at + 1].Text[0]))
        || token.Text is "last" or "next" or "this" && Times.Contains(Word(tokens, at + 1))
        || token.Text is "last" or "next" or "previous" or "first" or "second" && Word(tokens, at + 1) is "one"
        || token.Text is "has" or "have" or "had" or "needs" or "need" or "want" or "wants" or "ought" or "going" && Word(tokens, at + 1) is "to"
        || token.Text is "must" or "will" or "'ll" or "would" or "thinking" or "someone" or "somebody").Any();

    /// <summary>Whether work has no place of its own, and stood where the fault that is given up was found: “scratch that, two strokes off it”.</summary>
    internal static bool LeansOn(BenchEntry before, BenchEntry entry, string rest) => before is not Adjustment && entry is Adjustment work && Before.PlaceOf(before) is { } place
        && (work.Place.Zone == place.Zone || Points(Tokenizer.Cut(rest))) && !Scanner.Scan(Tokenizer.Cut(rest)).Exists(item => item.Cat is Cat.Zone or Cat.Region or Cat.Part);

    private static bool Points(List<Token> tokens) => tokens.Where((token, at) => token.Text is "it" or "that" or "them" or "there" && Word(tokens, at - 1) is "off" or "from" or "of" or "on" or "at" or "in" or "to").Any();

    private static string Word(List<Token> tokens, int at) => at >= 0 && at < tokens.Count ? tokens[at].Text : "";
}
