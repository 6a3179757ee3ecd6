using ReedClinic.Domain.Bench.Phrases.Words;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Every form of the word tables in one tree, walked word by word.</summary>
internal sealed class Lexicon
{
    /// <summary>Words that may stand inside a form without being in it.</summary>
    private static readonly HashSet<string> Small = ["the", "a", "an", "of", "my", "your", "its", "this", "that", "'s", "quite", "rather", "well", "really", "simply"];

    /// <summary>Words that are left out at speed.</summary>
    private static readonly HashSet<string> Articles = ["the", "a", "an", "my", "your", "its"];

    private const int LongestForm = 14;

    private readonly Node root = new();
    private readonly HashSet<string> words = [];
    private readonly Shorthand shorthand = new();
    private readonly Typos typos;

    private Lexicon()
    {
        foreach (var table in (string[])[PlaceWords.Table, QualityWords.Table, TestWords.Table, DeedWords.Table, MoodWords.Table, MoodWords.More])
        {
            AddTable(table);
        }

        AddVerbs(DeedWords.Verbs);
        shorthand.Add(root.Next.Where(pair => pair.Value.Meanings.Any(meaning => meaning.Cat is Cat.Zone or Cat.Region or Cat.Side or Cat.Blade or Cat.Stroke)).Select(pair => pair.Key));
        shorthand.Add(["crow", "note", "notes", "thick", "thin", "opened", "clipped", "dusted", "scraped", "left", "right", "with", "from", "then"]);
        shorthand.Add(root.Next.Where(pair => pair.Value.Meanings.Count > 0).Select(pair => pair.Key));
        shorthand.Add(words);
        typos = new Typos(words, root.Next.Where(pair => pair.Value.Meanings.Count > 0).Select(pair => pair.Key));
    }

    internal static Lexicon All { get; } = new();

    /// <summary>Adds to the list what begins at a token: for each kind of thing the longest form.</summary>
    internal void Match(List<Token> tokens, int start, List<Item> into)
    {
        var walker = new Walker(tokens, start, into, into.Count);
        Walk(walker, root, start, new Trail(false, false));
        if (tokens[start].Text is "'s" && root.Next.TryGetValue("is", out var form))
        {
            Walk(walker, form, start + 1, new Trail(false, false));
        }
    }

    // Depth is bounded by the longest form and the few small words between; each step tries at most two ways.
    private void Walk(Walker walker, Node node, int at, Trail trail)
    {
        if (at >= walker.Tokens.Count)
        {
            return;
        }

        var token = walker.Tokens[at];
        if (token.Kind is not (TokenKind.Word or TokenKind.Symbol) || (token.Text.Length == 0 && at == walker.Start))
        {
            return;
        }

        if (at > walker.Start && (token.Text.Length == 0 || Small.Contains(token.Text)) && at - walker.Start < LongestForm)
        {
            Walk(walker, node, at + 1, trail with { Skipped = true });
        }

        if (token.Text is "'s" && at > walker.Start)
        {
            Follow(walker, node.Next.GetValueOrDefault("is"), at, trail);
            Follow(walker, node.Next.GetValueOrDefault("has"), at, trail);
        }

        var next = node.Next.GetValueOrDefault(token.Text);
        if (next is null && typos.Corrected(token.Text) is { } word)
        {
            next = node.Next.GetValueOrDefault(word);
            trail = trail with { Guessed = true };
        }

        Follow(walker, next, at, trail);
    }

    private void Follow(Walker walker, Node? next, int at, Trail trail)
    {
        if (next is not null)
        {
            Note(walker, next, at, trail);
            Walk(walker, next, at + 1, trail);
        }
    }

    /// <summary>The word that one without its vowels stands for: “hrt”.</summary>
    internal string? Whole(string word) => Typos.Drawn(word) ?? (words.Contains(word) || CommonWords.Has(word) ? null : shorthand.Of(word) ?? typos.Swapped(word));

    private static void Note(Walker walker, Node node, int at, Trail trail)
    {
        foreach (var (cat, value) in node.Meanings)
        {
            // “In case” is no “in the case”.
            if (!(trail.Skipped && cat is Cat.Cond))
            {
                Put(walker.Into, walker.From, new Item(cat, value, walker.Start, at + 1, trail.Guessed));
            }
        }
    }

    private static void Put(List<Item> into, int from, Item item)
    {
        for (var i = from; i < into.Count; i++)
        {
            if (into[i].Cat == item.Cat)
            {
                into[i] = into[i].End < item.End ? item : into[i];
                return;
            }
        }

        into.Add(item);
    }

    private void AddTable(string table)
    {
        foreach (var line in table.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            var space = line.IndexOf(' ', StringComparison.Ordinal);
            var cat = Enum.Parse<Cat>(line[..space]);
            var value = line[(space + 1)..colon];
            foreach (var form in line[(colon + 1)..].Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
            {
                foreach (var way in Ways(form.Split(' '), 0))
                {
                    Add([.. way], cat, value);
                }
            }
        }
    }

    /// <summary>“run|runs into each_other|one” stands for every way through it; an empty way leaves the word out.</summary>
    private static IEnumerable<IEnumerable<string>> Ways(string[] slots, int at) => at == slots.Length
        ? [[]]
        : slots[at].Split('|').SelectMany(way => Ways(slots, at + 1).Select(rest => way.Split('_', StringSplitOptions.RemoveEmptyEntries).Concat(rest)));

    private void AddVerbs(string table)
    {
        foreach (var line in table.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            var colon = line.IndexOf(':', StringComparison.Ordinal);
            foreach (var verb in line[(colon + 1)..].Split(',', StringSplitOptions.TrimEntries))
            {
                var forms = verb.Split(' ');
                AddParted(forms, line[..colon]);
                Add(forms[0].Split('_'), Cat.Verb, line[..colon] + "/B");
                Add((forms[0] + "s").Split('_'), Cat.Verb, line[..colon] + "/S");
                Add(forms[1].Split('_'), Cat.Verb, line[..colon] + "/P");
                Add(forms[2].Split('_'), Cat.Verb, line[..colon] + (forms[2] == forms[1] ? "/P" : "/N"));
                Add(forms[3].Split('_'), Cat.Verb, line[..colon] + "/G");
            }
        }
    }

    // “Threw it away”: what it is done to stands between the verb and its particle.
    private void AddParted(string[] forms, string action)
    {
        foreach (var (form, sign) in forms.Zip((string[])["B", "P", "N", "G"]))
        {
            if (form.Split('_') is not [var verb, var particle] || particle is not ("away" or "out" or "off" or "up" or "down" or "on" or "over" or "back" or "aside" or "through" or "in"))
            {
                continue;
            }

            foreach (var it in (string[])["it", "this", "that", "them", "those"])
            {
                Add([verb, it, particle], Cat.Verb, $"{action}/{(sign == "N" && forms[2] == forms[1] ? "P" : sign)}");
            }
        }
    }

    private void Add(string[] form, Cat cat, string value)
    {
        Put(form, cat, value);
        if (form.Length > 3 && cat is not (Cat.Cond or Cat.Wordy) && form.Skip(1).Take(form.Length - 2).Any(Articles.Contains))
        {
            Put([.. form.Where((word, at) => at == 0 || at == form.Length - 1 || !Articles.Contains(word))], cat, value);
        }
    }

    private void Put(string[] form, Cat cat, string value)
    {
        var node = root;
        foreach (var word in form.SelectMany(word => Contractions.Split(word)).Select(part => part.Word))
        {
            words.Add(word);
            if (!node.Next.TryGetValue(word, out var next))
            {
                node.Next[word] = next = new Node();
            }

            node = next;
        }

        if (!node.Meanings.Contains((cat, value)))
        {
            node.Meanings.Add((cat, value));
        }
    }

    private readonly record struct Walker(List<Token> Tokens, int Start, List<Item> Into, int From);

    private readonly record struct Trail(bool Skipped, bool Guessed);

    private sealed class Node
    {
        internal Dictionary<string, Node> Next { get; } = [];

        internal List<(Cat Cat, string Value)> Meanings { get; } = [];
    }
}
