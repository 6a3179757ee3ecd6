using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>Words that were typed a little wrong.</summary>
internal sealed class Typos
{
    private const int LongWord = 6;

    private readonly HashSet<string> words;
    private readonly Dictionary<string, string> nearly = [];
    private readonly Dictionary<string, string> swaps = [];

    internal Typos(HashSet<string> words, IEnumerable<string> meant)
    {
        this.words = words;
        foreach (var word in meant.Where(word => word.Length is 4 or 5))
        {
            for (var i = 1; i + 1 < word.Length; i++)
            {
                swaps.TryAdd(word[..i] + word[i + 1] + word[i] + word[(i + 2)..], word);
            }
        }

        foreach (var word in words.Where(word => word.Length >= LongWord))
        {
            foreach (var shorter in OneLess(word))
            {
                nearly.TryAdd(shorter, word);
            }
        }
    }

    /// <summary>The short word of which two letters were changed round.</summary>
    internal string? Swapped(string word) => swaps.GetValueOrDefault(word);

    /// <summary>The trade's word for a long word that is in no table: one letter more or less, or two changed round.</summary>
    internal string? Corrected(string word)
    {
        if (word.Length < LongWord - 1 || words.Contains(word) || CommonWords.Has(word))
        {
            return null;
        }

        if (word.Length < PlainText.LongestRemark / 40 && nearly.GetValueOrDefault(word) is { } longer && longer[0] == word[0])
        {
            return longer;
        }

        if (word.Length > 24)
        {
            return null;
        }

        foreach (var shorter in OneLess(word))
        {
            var found = words.Contains(shorter) && shorter.Length >= LongWord ? shorter : nearly.GetValueOrDefault(shorter);
            if (found is not null && found[0] == word[0] && (found == shorter || IsSwap(found, word) || (found.Length > 7 && found.Length == word.Length)))
            {
                return found;
            }
        }

        return null;
    }

    /// <summary>“Aaand”, “sooo”: the word without the letter that is drawn out.</summary>
    internal static string? Drawn(string word)
    {
        for (var i = 2; i < word.Length; i++)
        {
            if (word[i] == word[i - 1] && word[i] == word[i - 2])
            {
                var kept = new System.Text.StringBuilder();
                foreach (var c in word)
                {
                    if (kept.Length == 0 || kept[^1] != c)
                    {
                        kept.Append(c);
                    }
                }

                return kept.ToString();
            }
        }

        return null;
    }

    private static bool IsSwap(string one, string other)
    {
        if (one.Length != other.Length)
        {
            return false;
        }

        var i = 0;
        while (i < one.Length && one[i] == other[i])
        {
            i++;
        }

        return i + 1 < one.Length && one[i] == other[i + 1] && one[i + 1] == other[i] && one.AsSpan(i + 2).SequenceEqual(other.AsSpan(i + 2));
    }

    private static IEnumerable<string> OneLess(string word)
    {
        for (var i = 1; i < word.Length; i++)
        {
            yield return word.Remove(i, 1);
        }
    }
}
