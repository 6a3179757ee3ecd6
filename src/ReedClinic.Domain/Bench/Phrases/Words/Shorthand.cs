namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>Words written without their vowels: “hrt”, “strks”, “opnd”.</summary>
internal sealed class Shorthand
{
    private readonly Dictionary<string, string> whole = [];

    /// <summary>Adds words; the first that has a skeleton keeps it.</summary>
    internal void Add(IEnumerable<string> words)
    {
        foreach (var word in words.Where(word => word.Length > 2 && word.All(char.IsAsciiLetterLower) && word.Skip(1).Any(IsVowel)))
        {
            whole.TryAdd(Skeleton(word), word);
        }
    }

    /// <summary>The word that is meant; null when the word has vowels of its own or none is meant.</summary>
    internal string? Of(string word)
    {
        if (word.Length is < 3 or > 16)
        {
            return null;
        }

        var bare = !word.Skip(1).Any(IsVowel) && word[^1] is not 'y';
        if (!bare && word.Length < 6)
        {
            return null;
        }

        return whole.GetValueOrDefault(Skeleton(word)) is { } found && found.Length > word.Length && (bare || IsWithin(word, found)) ? found : null;
    }

    private static bool IsVowel(char c) => c is 'a' or 'e' or 'i' or 'o' or 'u';

    // Vowels after the first letter are left out, and doubled letters are one.
    private static string Skeleton(string word)
    {
        var kept = new System.Text.StringBuilder(word[..1]);
        foreach (var c in word.AsSpan(1))
        {
            if (!IsVowel(c) && c != kept[^1])
            {
                kept.Append(c);
            }
        }

        return kept.ToString();
    }

    private static bool IsWithin(string word, string whole)
    {
        var at = 0;
        foreach (var c in whole)
        {
            at += at < word.Length && word[at] == c ? 1 : 0;
        }

        return at == word.Length;
    }
}
