using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Scratch that last one”, “take that back”: words that take back what was said last, and say nothing else.</summary>
public static class LastTakenBack
{
    private static readonly HashSet<string> Away = ["undo", "delete", "erase"];

    // Cane is scratched and a reed scrapped, too, and much is ignored at a bench: these are of what was said only where they name it.
    private static readonly HashSet<string> Either = ["scratch", "scrap", "strike", "forget", "cancel", "ignore"];

    private static readonly HashSet<string> What = ["that", "it", "this", "last", "entry", "one"];

    private static readonly HashSet<string> Beside = [.. "no nope nah oops whoops sorry wait actually please can you i the my very just said thing bit out hang on hold well ok okay er um oh ah argh line".Split(' ')];

    // “That’s wrong, scratch that”, “my mistake, undo that”.
    private static readonly HashSet<string> Why = [.. "that it this one last entry is 's was wrong mistake error not right correct quite button a all".Split(' ')];

    internal static bool IsBeside(string word) => Beside.Contains(word);

    internal static bool IsWhy(string word) => Why.Contains(word);

    internal static bool IsWhat(string word) => What.Contains(word);

    internal static bool IsEither(string word) => Either.Contains(word);

    internal static bool IsAway(string word) => Away.Contains(word);

    /// <summary>Whether a line takes back what was said last.</summary>
    /// <param name="text">What was typed or said.</param>
    public static bool Says(string? text)
    {
        var words = Words(text);
        return words switch
        {
            ["undo"] => true,
            [var away, .. { Count: > 0 } rest] when (Away.Contains(away) || Either.Contains(away) && rest.Exists(word => word is "that" or "last" or "entry")) && rest.TrueForAll(What.Contains) => true,
            ["remove", .. var rest] when rest.Contains("entry") && rest.TrueForAll(What.Contains) => true,
            ["take", "back", .. { Count: > 0 } rest] when rest.TrueForAll(What.Contains) => true,
            ["take", .. var rest, "back"] when rest.Count > 0 && rest.TrueForAll(What.Contains) => true,
            _ => SeveralTakenBack.Count(words) > 1,
        };
    }

    /// <summary>
    /// Whether a line that takes back says what the key does, “undo” or “take that back”: said of what was taken back out of turn it brings that back. Whoever
    /// scratches or deletes means what stands.
    /// </summary>
    /// <param name="text">What was typed or said.</param>
    public static bool TurnsBack(string? text) => Says(text) && Words(text) is ["undo" or "take", ..] words && !words.Contains("entry") && !words.Contains("last");

    internal static List<string> Words(string? text)
    {
        if (PlainText.Tidy(text) is not { Length: <= PhraseReader.LongestPhrase } said || said.Contains('?', StringComparison.Ordinal))
        {
            return [];
        }

        var all = Tokenizer.Cut(said).Where(token => token.Kind is not TokenKind.Break).Select(token => token.Number?.ToString("0.##", System.Globalization.CultureInfo.InvariantCulture) ?? token.Text).ToList();
        // “I can undo that” and “can I undo that” speak of it; “can you undo that, please” and “please can …” ask for it.
        return all.Contains("can") && !all.Contains("please") && !all.Contains("you") ? [] : WithoutWhy([.. all.Where(word => !Beside.Contains(word))]);
    }

    // Why it is taken back, before it is and behind.
    private static List<string> WithoutWhy(List<string> words)
    {
        var verb = words.FindIndex(word => Away.Contains(word) || Either.Contains(word) || word is "take" or "remove");
        var said = verb > 0 && words.Take(verb).All(Why.Contains) ? words[verb..] : words;
        var why = said.FindIndex(1 < said.Count ? 1 : 0, word => word is "is" or "'s" or "was" or "wrong" or "mistake" or "error");
        return why < 2 || !said.Exists(word => word is "wrong" or "mistake" or "error") || !said.Skip(why).All(Why.Contains) ? said
            : said[..(said[why] is "is" or "'s" or "was" ? why - 1 : why)];
    }
}
