using ReedClinic.Domain.Bench.Phrases.Judging;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Cuts the tokens into segments: at marks, at joining words, and, as captions have neither, before a new subject.</summary>
internal sealed class Splitter
{
    private static readonly HashSet<string> Joints =
        ["and", "then", "but", "so", "though", "although", "because", "since", "while", "or", "which", "plus", "yet", "except", "whereas", "however", "otherwise", "nor"];

    private static readonly HashSet<string> Octaves = ["high", "low", "top", "bottom", "first", "then", "the", "a", "both", "and", "octave", "joins", "join", "one", "nothing", "only", "with"];

    private static readonly HashSet<string> Subordinate =
        ["than", "as", "that", "where", "what", "how", "when", "if", "like", "before", "until", "once", "after", "think", "way", "whether", "whenever", "say", "see", "hear", "if", "wish", "it", "and", "so", "tell", "think", "suspect", "believe", "feel", "guess", "because", "know", "did", "do", "should", "shall", "can", "could", "will", "would", "may", "might", "must", "have", "am", "much", "many", "afraid", "feared", "but", "or"];

    private readonly List<Token> tokens;
    private readonly List<Item> items;
    private readonly List<Segment> segments = [];
    private readonly bool[] joined;
    private readonly Judge? judge;
    private int first;
    private int sentence;
    private string joint = "";

    private Splitter(List<Token> tokens, List<Item> items, Judge? judge)
    {
        this.judge = judge;
        this.tokens = tokens;
        this.items = items;
        joined = new bool[tokens.Count];
        foreach (var item in items)
        {
            for (var i = item.First + 1; i < item.End; i++)
            {
                joined[i] = true;
            }
        }
    }

    /// <summary>Cuts the tokens; with a judge also where nothing but the words themselves says that a new thing begins.</summary>
    internal static List<Segment> Cut(List<Token> tokens, List<Item> items, Judge? judge)
    {
        var splitter = new Splitter(tokens, items, judge);
        splitter.Run();
        return splitter.segments;
    }

    private void Run()
    {
        for (var i = 0; i < tokens.Count; i++)
        {
            if (tokens[i].Kind == TokenKind.Break)
            {
                i = Mark(i);
            }
            else if (!joined[i] && i > first && Joints.Contains(tokens[i].Text) && !HoldsTogether(i))
            {
                Close(i);
                joint = tokens[i].Text;
            }
            else if (!joined[i] && i > first && (Openings.IsNewClause(tokens, items, first, i) || judge?.Begins(tokens, items, first, i) is true))
            {
                Close(i);
                joint = "";
            }
            else if (i == first && Joints.Contains(tokens[i].Text) && !joined[i])
            {
                joint = tokens[i].Text;
            }
        }

        Close(tokens.Count);
    }

    private int Mark(int at)
    {
        if (tokens[at].Is(",") && (HoldsOctaves(at) || IsHesitation(at)))
        {
            return at;
        }

        var last = at;
        while (last + 1 < tokens.Count && tokens[last + 1].Kind == TokenKind.Break)
        {
            last++;
        }

        var marks = tokens.GetRange(at, last - at + 1);
        Close(last + 1);
        joint = ",";
        if (marks.Any(mark => mark.Text is "?"))
        {
            foreach (var segment in segments.Where(segment => segment.Sentence == sentence))
            {
                segment.Asked = true;
            }
        }

        if (marks.Any(mark => mark.Text is "." or "!" or "?" or ";"))
        {
            sentence++;
            joint = "";
        }
        else if (marks.Any(mark => mark.Is(":")))
        {
            joint = ":";
        }

        return last;
    }

    // “Off the, um, off the ramp”: no place to stop.
    private bool IsHesitation(int at)
    {
        var last = at - 1;
        while (last > first && (tokens[last].Is(",") || tokens[last].Text is "um" or "uh" or "er" or "erm" or "hm" or ""))
        {
            last--;
        }

        return last >= first && tokens[last].Text is "the" or "a" or "an" or "my" or "your" or "of" or "very" && at + 1 < tokens.Count;
    }

    private void Close(int end)
    {
        if (end <= first)
        {
            return;
        }

        segments.Add(new Segment
        {
            Tokens = tokens,
            First = first,
            End = end,
            Joint = joint,
            Sentence = sentence,
            Items = [.. items.Where(item => item.First >= first && item.End <= end)],
        });
        first = end;
        joint = "";
    }

    private bool HoldsTogether(int at)
    {
        if (tokens[at].Is("so") && at + 1 < tokens.Count && IsAt(at + 1, Cat.Quality) && !IsAt(at + 1, Cat.Verb))
        {
            return true;
        }

        // “Nothing but a breath”, “all but one”.
        if (tokens[at].Is("but") && at > 0 && tokens[at - 1].Text is "nothing" or "all" or "anything" or "none" or "everything")
        {
            return true;
        }

        // “Ever so slightly”, “a dozen or so”, “so-so”.
        if (tokens[at].Is("so") && at > 0 && (tokens[at - 1].Text is "ever" or "or" or "not" or "so" || (at + 1 < tokens.Count && tokens[at + 1].Text is "slightly" or "so" or "far" or "little")))
        {
            return true;
        }

        if (tokens[at].Text is "while" && at > 0 && tokens[at - 1].Is("a"))
        {
            return true;
        }

        if (tokens[at].Text is "or" or "since" or "though")
        {
            return false;
        }

        return HoldsBetween(at) || HoldsTone(at) || HoldsOctaves(at) || HoldsPraise(at) || HoldsRest(at);
    }

    private bool HoldsBetween(int at)
    {
        if (!tokens[at].Is("and"))
        {
            return false;
        }

        for (var i = at - 1; i >= first && at - i < 8; i--)
        {
            if (tokens[i].Is("between"))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>“The sound is dark and covered”: the word before says nothing of its own.</summary>
    private bool HoldsTone(int at) => tokens[at].Is("and") && at - 1 > first && at + 1 < tokens.Count && IsAt(at + 1, Cat.Test) && !items.Any(item => item.First <= at - 1 && at - 1 < item.End && item.Cat is not Cat.Filler)
        && items.Any(item => item.Cat is Cat.Sound && item.First >= first && item.End <= at - 1 && at - item.End <= 3);

    /// <summary>“Nice and clear”.</summary>
    private bool HoldsPraise(int at) => tokens[at].Is("and") && at > first && at + 1 < tokens.Count
        && IsAt(at - 1, Cat.Good) && (IsAt(at + 1, Cat.Good) || IsAt(at + 1, Cat.Quality));

    /// <summary>“High first, and then the low joins”: one crow, however it is joined.</summary>
    private bool HoldsOctaves(int at)
    {
        var before = at - 1;
        var after = at + 1;
        if (before < first || after >= tokens.Count || !IsOctave(before))
        {
            return false;
        }

        while (after < tokens.Count && tokens[after].Text is "then" or "and" or "the" or "a" or "")
        {
            after++;
        }

        return after < tokens.Count && IsOctave(after) && tokens[after].Text is not ("only" or "first");
    }

    /// <summary>“To dry and rest”.</summary>
    private bool HoldsRest(int at) => tokens[at].Is("and") && items.Any(item => item.End == at && item.Value is "dry/B" or "wait/B") && items.Any(item => item.First == at + 1 && item.Value is "dry/B" or "wait/B" && at > 1)
        && tokens[at - 2].Is("to");

    private bool IsOctave(int at) => Octaves.Contains(tokens[at].Text)
        && (tokens[at].Text is "high" or "low" or "top" or "bottom" or "octave" or "octaves" or "first" or "joins" or "one")
        && !items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Test or Cat.Zone or Cat.Blade && item.Value != "Crow");

    private bool IsAt(int at, Cat cat) => items.Any(item => item.Cat == cat && item.First <= at && at < item.End);

    internal static bool Binds(string word) => Subordinate.Contains(word);
}
