namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>What can be seen of a gap between two words where a new thing may begin to be said, without a mark or a joining word.</summary>
internal static class Gaps
{
    /// <summary>The answer for a gap where a new thing begins.</summary>
    internal const string New = "new";

    /// <summary>The answer for any other gap.</summary>
    internal const string Same = "same";

    private const int Reach = 3;

    /// <summary>Every sign of the gap.</summary>
    /// <param name="tokens">The phrase.</param>
    /// <param name="items">What its tokens stand for.</param>
    /// <param name="first">The first token since the last place where the phrase was cut.</param>
    /// <param name="at">The token after the gap.</param>
    internal static List<string> SignsOf(IReadOnlyList<Token> tokens, IReadOnlyList<Item> items, int first, int at)
    {
        var end = at;
        while (end < tokens.Count && tokens[end].Kind is not TokenKind.Break)
        {
            end++;
        }

        List<string> signs = ["bias"];
        var (left, right) = (Words(tokens, at - 1, first - 1, -1), Words(tokens, at, end, 1));
        for (var i = 0; i < Reach; i++)
        {
            signs.Add($"l{i}={left.ElementAtOrDefault(i) ?? "^"}");
            signs.Add($"r{i}={right.ElementAtOrDefault(i) ?? "$"}");
        }

        var (l, r) = (left.FirstOrDefault() ?? "^", right.FirstOrDefault() ?? "$");
        signs.Add($"lr={l} {r}");
        signs.Add($"ll={left.ElementAtOrDefault(1) ?? "^"} {l}");
        signs.Add($"rr={r} {right.ElementAtOrDefault(1) ?? "$"}");
        signs.Add($"ls={Signs.Stem(l)}");
        signs.Add($"rs={Signs.Stem(r)}");
        signs.Add($"ln={Math.Min(left.Count, 8)}");
        signs.Add($"rn={Math.Min(right.Count, 8)}");
        Meanings(items, (first, at, end), signs);
        return [.. signs.Distinct()];
    }

    private static void Meanings(IReadOnlyList<Item> items, (int First, int At, int End) gap, List<string> signs)
    {
        var left = items.Where(item => item.First >= gap.First && item.End <= gap.At).ToList();
        var right = items.Where(item => item.First >= gap.At && item.End <= gap.End).ToList();
        var (last, next) = (left.Where(item => item.End == gap.At).ToList(), right.Where(item => item.First == gap.At).ToList());
        signs.AddRange(last.Select(item => $"lc={item.Cat}").DefaultIfEmpty("lc=none"));
        signs.AddRange(next.Select(item => $"rc={item.Cat}").DefaultIfEmpty("rc=none"));
        signs.AddRange(last.Select(item => $"lv={item.Cat}:{item.Value}"));
        signs.AddRange(next.Select(item => $"rv={item.Cat}:{item.Value}"));
        signs.AddRange(last.SelectMany(one => next.Select(other => $"cc={one.Cat} {other.Cat}")));
        signs.AddRange(left.Select(item => $"lh={item.Cat}"));
        signs.AddRange(right.Select(item => $"rh={item.Cat}"));
        signs.AddRange(left.Select(item => item.Cat).Distinct().SelectMany(one => next.Select(item => item.Cat).Distinct().Select(other => $"hc={one} {other}")));
        signs.AddRange(left.Select(item => item.Cat).Distinct().SelectMany(one => right.Select(item => item.Cat).Distinct().Select(other => $"hh={one} {other}")));
    }

    private static List<string> Words(IReadOnlyList<Token> tokens, int from, int to, int step)
    {
        List<string> words = [];
        for (var i = from; i != to; i += step)
        {
            if (Signs.Word(tokens, i) is { } word)
            {
                words.Add(word);
            }
        }

        return words;
    }
}
