namespace ReedClinic.Domain.Bench.Phrases.Words;

/// <summary>Takes “don’t”, “I’ll”, “crow’s” and, as captions have them, “dont” and “ive” apart.</summary>
internal static class Contractions
{
    private static readonly (string Ending, string Word)[] Endings =
    [
        ("n't", "not"), ("'ll", "will"), ("'ve", "have"), ("'re", "are"), ("'m", "am"), ("'d", "would"), ("'s", "'s"),
    ];

    private static readonly Dictionary<string, (string First, string Second, int Cut)> Whole = new()
    {
        ["ul"] = ("upper", "left", 1),
        ["ur"] = ("upper", "right", 1),
        ["ll"] = ("lower", "left", 1),
        ["lr"] = ("lower", "right", 1),
        ["id"] = ("i", "would", 1),
        ["itll"] = ("it", "will", 2),
        ["itd"] = ("it", "would", 2),
        ["thatll"] = ("that", "will", 4),
        ["thatd"] = ("that", "would", 4),
        ["theyll"] = ("they", "will", 4),
        ["hes"] = ("he", "'s", 2),
        ["shes"] = ("she", "'s", 3),
        ["mustnt"] = ("must", "not", 4),
        ["neednt"] = ("need", "not", 4),
        ["shant"] = ("shall", "not", 3),
        ["aint"] = ("is", "not", 2),
        ["wdnt"] = ("would", "not", 2),
        ["wudnt"] = ("would", "not", 3),
        ["cdnt"] = ("could", "not", 2),
        ["cudnt"] = ("could", "not", 3),
        ["shdnt"] = ("should", "not", 3),
        ["dnt"] = ("do", "not", 1),
        ["didt"] = ("did", "not", 3),
        ["hvnt"] = ("have", "not", 2),
        ["havnt"] = ("have", "not", 3),
        ["doesn"] = ("does", "not", 4),
        ["weren"] = ("were", "not", 4),
        ["dont"] = ("do", "not", 2),
        ["doesnt"] = ("does", "not", 4),
        ["didnt"] = ("did", "not", 3),
        ["isnt"] = ("is", "not", 2),
        ["arent"] = ("are", "not", 3),
        ["wasnt"] = ("was", "not", 3),
        ["werent"] = ("were", "not", 4),
        ["havent"] = ("have", "not", 4),
        ["hasnt"] = ("has", "not", 3),
        ["hadnt"] = ("had", "not", 3),
        ["wont"] = ("will", "not", 2),
        ["cant"] = ("can", "not", 2),
        ["cannot"] = ("can", "not", 3),
        ["wouldnt"] = ("would", "not", 5),
        ["couldnt"] = ("could", "not", 5),
        ["shouldnt"] = ("should", "not", 6),
        ["im"] = ("i", "am", 1),
        ["ive"] = ("i", "have", 1),
        ["ill"] = ("i", "will", 1),
        ["youve"] = ("you", "have", 3),
        ["youre"] = ("you", "are", 3),
        ["youll"] = ("you", "will", 3),
        ["weve"] = ("we", "have", 2),
        ["theyve"] = ("they", "have", 4),
        ["theyre"] = ("they", "are", 4),
        ["thats"] = ("that", "'s", 4),
        ["theres"] = ("there", "'s", 5),
        ["heres"] = ("here", "'s", 4),
        ["lets"] = ("let", "'s", 3),
        ["whats"] = ("what", "'s", 4),
        ["gonna"] = ("going", "to", 3),
        ["wanna"] = ("want", "to", 3),
        ["gotta"] = ("got", "to", 3),
        ["won't"] = ("will", "not", 2),
        ["can't"] = ("can", "not", 2),
        ["shan't"] = ("shall", "not", 3),
        ["ain't"] = ("is", "not", 2),
    };

    internal static IEnumerable<(string Word, int From, int Length)> Split(string word)
    {
        if (Whole.TryGetValue(word, out var pair))
        {
            return [(pair.First, 0, pair.Cut), (pair.Second, pair.Cut, word.Length - pair.Cut)];
        }

        // “Bflat”, “fsharp”.
        if (word.Length is > 4 and < 9 && word[0] is >= 'a' and <= 'g' && word[1..] is "flat" or "sharp" or "natural")
        {
            return [(word[..1], 0, 1), (word[1..], 1, word.Length - 1)];
        }

        foreach (var (ending, said) in Endings)
        {
            if (word.Length > ending.Length && word.EndsWith(ending, StringComparison.Ordinal))
            {
                var cut = word.Length - ending.Length;
                return [(word[..cut], 0, cut), (said, cut, ending.Length)];
            }
        }

        return [(word, 0, word.Length)];
    }
}
