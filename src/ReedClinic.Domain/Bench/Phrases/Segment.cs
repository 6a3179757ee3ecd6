namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>A stretch of tokens that says one thing, or part of one.</summary>
internal sealed class Segment
{
    internal required IReadOnlyList<Token> Tokens { get; init; }

    /// <summary>The first token.</summary>
    internal required int First { get; init; }

    /// <summary>The token after the last; marks at its end are in it.</summary>
    internal required int End { get; init; }

    /// <summary>The word or mark before what it says: <c>, and then but so</c> …; empty at the start of a sentence.</summary>
    internal required string Joint { get; init; }

    /// <summary>The number of its sentence.</summary>
    internal required int Sentence { get; init; }

    /// <summary>What its tokens stand for, in order.</summary>
    internal required IReadOnlyList<Item> Items { get; init; }

    /// <summary>True when its sentence ends in a question mark.</summary>
    internal bool Asked { get; set; }

    internal TextSpan Span => new(Tokens[First].Start, Tokens[End - 1].End - Tokens[First].Start);

    internal bool Has(Cat cat) => IndexOf(cat) >= 0;

    internal bool Has(Cat cat, string value) => Items.Any(item => item.Is(cat, value));

    internal int IndexOf(Cat cat)
    {
        for (var i = 0; i < Items.Count; i++)
        {
            if (Items[i].Cat == cat)
            {
                return i;
            }
        }

        return -1;
    }

    internal Item? Find(Cat cat) => IndexOf(cat) is >= 0 and var index ? Items[index] : null;

    internal IEnumerable<Item> All(Cat cat) => Items.Where(item => item.Cat == cat);

    internal bool Covered(int token, Cat cat) => Items.Any(item => item.Cat == cat && item.First <= token && token < item.End);

    internal bool HasWord(string word) => IndexOfWord(word) >= 0;

    internal int IndexOfWord(string word)
    {
        for (var i = First; i < End; i++)
        {
            if (Tokens[i].Is(word))
            {
                return i;
            }
        }

        return -1;
    }

    internal string Word(int token) => token >= First && token < End ? Tokens[token].Text : "";

    /// <summary>This segment and a later one with all between them.</summary>
    internal Segment With(Segment later) => new()
    {
        Tokens = Tokens,
        First = First,
        End = later.End,
        Joint = Joint,
        Sentence = Sentence,
        Asked = Asked,
        Items = [.. Items, .. later.Items],
    };

    /// <summary>The same segment from one of its tokens on, or up to one.</summary>
    internal Segment Part(int first, int end) => new()
    {
        Tokens = Tokens,
        First = first,
        End = end,
        Joint = Joint,
        Sentence = Sentence,
        Asked = Asked,
        Items = [.. Items.Where(item => item.First >= first && item.End <= end)],
    };
}
