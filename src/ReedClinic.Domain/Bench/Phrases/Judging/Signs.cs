namespace ReedClinic.Domain.Bench.Phrases.Judging;

/// <summary>What can be seen of a segment before it is understood: its words, what they stand for, and what stands around it.</summary>
internal static class Signs
{
    /// <summary>The signs of what a segment is about: its words and what they stand for; each is named once.</summary>
    internal static List<string> OfMatter(Segment segment)
    {
        HashSet<string> signs = ["bias"];
        Words(segment, signs);
        Meanings(segment, signs);
        return [.. signs];
    }

    /// <summary>Every sign of the segment that is read next, what stands around it and what was read before it among them.</summary>
    /// <param name="course">What was understood so far.</param>
    /// <param name="matter">The signs of what the segment is about.</param>
    internal static List<string> Of(Course course, IEnumerable<string> matter)
    {
        HashSet<string> signs = [.. matter];
        State(course, signs, First(course.Segment, signs));
        Around(course.Segments, course.At, signs);
        return [.. signs];
    }

    /// <summary>What the rules made of the segment.</summary>
    internal static IEnumerable<string> OfRules(Course course, Course ruled)
    {
        var said = Sight.SaidBy(course, ruled);
        yield return "r=" + said;
        yield return $"r={ruled.Way} {said}";
        yield return $"rl={said} {course.LastInSentence?.Kind} {course.Segment.Joint}";
        if (ruled.Drafts.LastOrDefault(draft => draft.Head >= course.At) is { Slots: { } slots } && (slots.Kind ?? slots.Test?.ToString()) is { } what)
        {
            yield return $"r={said} {what}";
        }
    }

    private static void Words(Segment segment, HashSet<string> signs)
    {
        var (last, earlier) = ("^", "");
        for (var i = segment.First; i < segment.End; i++)
        {
            if (Word(segment.Tokens, i) is not { } word)
            {
                continue;
            }

            var stem = Stem(word);
            signs.Add("w=" + word);
            signs.Add("s=" + stem);
            signs.Add($"b={last} {word}");
            if (earlier.Length > 0)
            {
                signs.Add($"k={earlier} {stem}");
            }

            Pieces(word, signs);
            (last, earlier) = (word, Stem(last));
        }

        signs.Add($"b={last} $");
    }

    // Four letters at a time, so that a word that nobody wrote yet is like those it is made as.
    private static void Pieces(string word, HashSet<string> signs)
    {
        if (word.Length < 4)
        {
            return;
        }

        var bounded = $"<{word}>";
        for (var i = 0; i + 4 <= bounded.Length; i++)
        {
            signs.Add(string.Concat("g=", bounded.AsSpan(i, 4)));
        }
    }

    // Its first words, and how many it has.
    private static int First(Segment segment, HashSet<string> signs)
    {
        var count = 0;
        for (var i = segment.First; i < segment.End; i++)
        {
            if (Word(segment.Tokens, i) is { } word)
            {
                if (count < 3)
                {
                    signs.Add($"f{count}={word}");
                }

                count++;
            }
        }

        signs.Add($"n={Math.Min(count, 9)}");
        return count;
    }

    private static void Meanings(Segment segment, HashSet<string> signs)
    {
        var last = "^";
        foreach (var item in segment.Items)
        {
            var value = $"{item.Cat}:{item.Value}";
            signs.Add("c=" + item.Cat);
            signs.Add("v=" + value);
            signs.Add($"cc={last} {item.Cat}");
            last = item.Cat.ToString();
        }

        var places = segment.Items.Where(item => item.Cat is Cat.Zone or Cat.Region).Select(item => item.Value).Distinct().ToList();
        foreach (var said in segment.Items.Where(item => item.Cat is Cat.Quality or Cat.Good or Cat.Verb or Cat.Not or Cat.Test or Cat.Stroke or Cat.Plan or Cat.Off).Select(item => $"{item.Cat}:{item.Value}").Distinct())
        {
            foreach (var place in places)
            {
                signs.Add($"p={place} {said}");
            }

            foreach (var cat in segment.Items.Where(item => item.Cat is Cat.Not or Cat.Plan or Cat.Habit or Cat.Other or Cat.Me or Cat.Hedge or Cat.Off or Cat.Stroke or Cat.Degree or Cat.Now).Select(item => item.Cat).Distinct())
            {
                signs.Add($"x={cat} {said}");
            }
        }

        if (HeadVerb.Of(segment) is { } head)
        {
            signs.Add("h=" + head.Value);
            signs.Add("hf=" + head.Value[^1]);
            signs.Add($"h-={Word(segment.Tokens, head.First - 1) ?? "."} {head.Value[^1]}");
        }
        else
        {
            signs.Add("h=none");
        }
    }

    private static void State(Course course, HashSet<string> signs, int words)
    {
        signs.Add(course.Before.Last is { } entry ? "leans=" + entry.GetType().Name : "fresh");
        signs.Add("ls=" + course.LastInSentence?.Kind);
        signs.Add($"lj={course.LastInSentence?.Kind} {course.Segment.Joint}");
        signs.Add($"ln={course.LastInSentence?.Kind} {course.Segment.Joint} {Math.Min(words, 9)}");
        signs.Add($"lf={course.LastInSentence?.Kind} {FirstWord(course.Segment)}");
        signs.Add("ld=" + course.Last?.Kind);
        signs.Add("m=" + course.Carried);
        signs.Add(course.Pending is null ? "settled" : "pending");
        var said = course.LastInSentence?.Kind;
        foreach (var cat in course.Segment.Items.Select(item => item.Cat).Distinct())
        {
            signs.Add($"lc={said} {cat}");
        }

        if (course.Segment.Items.Count == 0)
        {
            signs.Add($"lc={said} none");
        }
    }

    private static void Around(IReadOnlyList<Segment> segments, int at, HashSet<string> signs)
    {
        var segment = segments[at];
        signs.Add("j=" + segment.Joint);
        if (segment.Asked)
        {
            signs.Add("asked");
        }

        var first = at == 0 || segments[at - 1].Sentence != segment.Sentence;
        var final = at + 1 >= segments.Count || segments[at + 1].Sentence != segment.Sentence;
        signs.Add($"pos={(first ? "f" : "m")}{(final ? "l" : "m")}");
        if (!first)
        {
            foreach (var item in segments[at - 1].Items)
            {
                signs.Add("pc=" + item.Cat);
            }

            Neighbour(segments[at - 1], "pw=", signs);
        }

        if (!final)
        {
            signs.Add("nj=" + segments[at + 1].Joint);
            foreach (var item in segments[at + 1].Items)
            {
                signs.Add("nc=" + item.Cat);
            }

            Neighbour(segments[at + 1], "nw=", signs);
        }

        Earlier(segments, at, signs);
    }

    // A plan, a habit, a condition, another’s deed, said earlier in the sentence.
    private static void Earlier(IReadOnlyList<Segment> segments, int at, HashSet<string> signs)
    {
        for (var i = at - 1; i >= 0 && segments[i].Sentence == segments[at].Sentence; i--)
        {
            foreach (var item in segments[i].Items.Where(item => item.Cat is Cat.Plan or Cat.Habit or Cat.Cond or Cat.Other))
            {
                signs.Add("sc=" + item.Cat);
            }
        }
    }

    private static string? FirstWord(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First).Select(at => Word(segment.Tokens, at)).FirstOrDefault(word => word is not null);

    // The words of a segment beside this one; “0” before its first.
    private static void Neighbour(Segment segment, string side, HashSet<string> signs)
    {
        var count = 0;
        for (var i = segment.First; i < segment.End; i++)
        {
            if (Word(segment.Tokens, i) is { } word)
            {
                signs.Add(side + word);
                if (count == 0)
                {
                    signs.Add(side + "0" + word);
                }

                count++;
            }
        }

        signs.Add($"{side}#{Math.Min(count, 9)}");
    }

    internal static string? Word(IReadOnlyList<Token> tokens, int at) => at < 0 ? null : tokens[at] switch
    {
        { Kind: TokenKind.Number } => "#",
        { Kind: TokenKind.Note } => "NOTE",
        { Kind: TokenKind.Break, Text: "?" } => "?",
        { Kind: TokenKind.Word, Text.Length: > 0 } token => token.Text,
        _ => null,
    };

    /// <summary>A word without the ending of its form.</summary>
    internal static string Stem(string word)
    {
        foreach (var ending in (string[])["ing", "edly", "ed", "ies", "es", "s", "ly", "er", "est", "y", "e"])
        {
            if (word.Length - ending.Length >= 3 && word.EndsWith(ending, StringComparison.Ordinal))
            {
                var stem = word[..^ending.Length];
                return stem.Length > 3 && stem[^1] == stem[^2] ? stem[..^1] : stem;
            }
        }

        return word;
    }
}
