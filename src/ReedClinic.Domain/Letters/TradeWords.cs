using System.Text.RegularExpressions;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>Explains each word of the trade once, where a letter says it first. What somebody typed is left as it is.</summary>
internal sealed class TradeWords
{
    private const int MostWords = 38;
    private const int MostBrackets = 2;
    private const int FewestWordsBetween = 2;

    private static readonly IReadOnlyList<(TradeWord Word, Regex Where)> Words =
        [.. TradeWordings.All.Select(word => (word, new Regex(word.Pattern, RegexOptions.CultureInvariant)))];

    private readonly HashSet<string> _explained = [];
    private readonly HashSet<ReedId> _drawn;
    private readonly IReadOnlyList<string> _typed;
    private readonly IReadOnlyList<string> _students;
    private readonly Phrasing _phrasing;

    private TradeWords(HashSet<ReedId> drawn, IReadOnlyList<string> typed, IReadOnlyList<string> students, Phrasing phrasing) => (_drawn, _typed, _students, _phrasing) = (drawn, typed, students, phrasing);

    /// <summary>Explains the words of a letter.</summary>
    /// <param name="blocks">Its blocks, in order.</param>
    /// <param name="reeds">Its reeds, some of them with a drawing of their crow.</param>
    /// <param name="typed">What was typed, the longest first.</param>
    /// <param name="students">What of it the student typed, who knows what that means.</param>
    /// <param name="phrasing">Chooses the words.</param>
    public static IReadOnlyList<LetterBlock> Explain(IReadOnlyList<LetterBlock> blocks, IReadOnlyList<LetterReed> reeds, IReadOnlyList<string> typed, IReadOnlyList<string> students, Phrasing phrasing)
    {
        var words = new TradeWords([.. reeds.Where(reed => reed.Crow is not null).Select(reed => reed.Id)], typed, students, phrasing);
        return [.. blocks.Select(block => block.Kind is BlockKind.Cautions or BlockKind.Closing ? block : words.In(block))];
    }

    private LetterBlock In(LetterBlock block)
    {
        List<LetterParagraph> paragraphs = [.. block.Paragraphs.Select(paragraph => new LetterParagraph([.. paragraph.Sentences.SelectMany(In)]))];
        List<TradeWord> rows =
        [
            .. block.Rows.SelectMany(row => TradeWordings.All.Where(word => word.StandsIn(row)))
                .Concat(HasCrow(block) ? TradeWordings.All.Where(word => word.IsInCrow) : []).Where(word => _explained.Add(word.Name)),
        ];
        if (rows.Count > 0)
        {
            var explained = Alone(rows, TradeWordings.Below, TradeWordings.BelowForTwo);
            paragraphs = paragraphs.Count == 0
                ? [new([.. explained])]
                : [.. paragraphs.SkipLast(1), new([.. paragraphs[^1].Sentences, .. explained])];
        }

        return block with { Paragraphs = paragraphs };
    }

    private bool HasCrow(LetterBlock block) => block is { Kind: BlockKind.ReedNow, Rows.Count: > 0, Reed: { } reed } && _drawn.Contains(reed);

    // Brackets where there is room for them; a sentence of its own for the rest.
    private IEnumerable<LetterSentence> In(LetterSentence sentence)
    {
        List<TradeWord> rest = [];
        var text = sentence.Text;
        var (added, brackets, last) = (0, 0, 0);
        foreach (var (word, end, isTyped) in Said(text))
        {
            var means = $" ({word.Lead}{Means(word, word.Means)})";
            if (!word.IsSynonym && !isTyped && brackets < MostBrackets && Fits(text, end + added, means) && (brackets == 0 || Count(text[last..(end + added)]) > FewestWordsBetween))
            {
                text = text.Insert(end + added, means);
                added += means.Length;
                (brackets, last) = (brackets + 1, end + added);
            }
            else
            {
                rest.Add(word);
            }
        }

        return rest.Count == 0 ? [sentence with { Text = text }] : [sentence with { Text = text }, .. Alone(rest, TradeWordings.OwnSentence, TradeWordings.OwnSentenceForTwo)];
    }

    // The words that are said here for the first time, each with the end of its place; the first place comes first.
    private List<(TradeWord Word, int End, bool IsTyped)> Said(string text)
    {
        var said = new List<(TradeWord Word, int End, bool IsTyped)>();
        var likely = Words.Where(pair => !_explained.Contains(pair.Word.Name) && pair.Where.IsMatch(text)).ToList();
        var hidden = likely.Count == 0 ? "" : Hidden(text, _typed);
        var teachers = likely.Count == 0 ? "" : Hidden(text, _students, quotes: false);
        foreach (var (word, where) in likely)
        {
            if (where.Match(word.IsSynonym ? text : hidden) is { Success: true } match && !said.Exists(other => other.Word.Name == word.Name))
            {
                said.Add((word, match.Index + match.Length, false));
            }
            else if (where.Match(teachers) is { Success: true } typed && !said.Exists(other => other.Word.Name == word.Name))
            {
                said.Add((word, typed.Index + typed.Length, true));
            }
        }

        said.ForEach(pair => _explained.Add(pair.Word.Name));
        return [.. said.OrderBy(pair => pair.End)];
    }

    // Whatever was typed, and what stands in brackets already, as blanks of the same length.
    private static string Hidden(string text, IReadOnlyList<string> all, bool quotes = true)
    {
        var hidden = text.ToCharArray();
        foreach (var typed in all)
        {
            for (var at = text.IndexOf(typed, StringComparison.OrdinalIgnoreCase); at >= 0; at = text.IndexOf(typed, at + 1, StringComparison.OrdinalIgnoreCase))
            {
                hidden.AsSpan(at, Math.Min(typed.Length, text.Length - at)).Fill(' ');
            }
        }

        var depth = 0;
        for (var at = 0; at < text.Length; at++)
        {
            depth += text[at] == '(' || (quotes && text[at] == '“') ? 1 : text[at] == ')' || (quotes && text[at] == '”') ? -1 : 0;
            if (depth > 0)
            {
                hidden[at] = ' ';
            }
        }

        return new string(hidden);
    }

    private static bool Fits(string text, int end, string means) =>
        Count(text) + Count(means) <= MostWords && !text[end..].TrimStart().StartsWith('(');

    private static int Count(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;

    private string Means(TradeWord word, string means) => _phrasing.Clause("means-" + word.Name, 0, [means], false);

    private string Means(TradeWord word) => Means(word, word.Alone ?? word.Means);

    // At most two in one sentence.
    private IEnumerable<LetterSentence> Alone(List<TradeWord> words, IReadOnlyList<string> one, IReadOnlyList<string> both) => words.Chunk(2).Select((two, index) =>
    {
        var turn = _explained.Count + words.IndexOf(two[0]);
        (string, string)[] slots = [("word", two[0].Name), ("means", Means(two[0])), ("other", two[^1].Name), ("also", Means(two[^1]))];
        var ways = (two.Length, index) switch
        {
            (1, 0) => one,
            (_, 0) => both,
            (1, _) => TradeWordings.OwnSentence,
            _ => TradeWordings.OwnSentenceForTwo,
        };
        return LetterSentence.Plain(_phrasing.Say("word-" + two[0].Name, turn, ways, slots));
    });
}
