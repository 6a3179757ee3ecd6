using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Domain.Letters;

/// <summary>What a block of a letter is for.</summary>
public enum BlockKind
{
    /// <summary>Dear …, and thanks for the reeds.</summary>
    Greeting,

    /// <summary>What was good: it comes first.</summary>
    DoneWell,

    /// <summary>What was missing, extra, damaged, damp or mouldy when the parcel was opened.</summary>
    Arrival,

    /// <summary>Answers to questions about all the reeds.</summary>
    Answers,

    /// <summary>One reed: what arrived, what was found, what was done.</summary>
    ReedStory,

    /// <summary>One reed: how it played and how it plays now.</summary>
    ReedNow,

    /// <summary>One reed: answers to questions about it.</summary>
    ReedAnswers,

    /// <summary>One reed: when to play it, how long to soak it, where not to scrape.</summary>
    ReedUse,

    /// <summary>What all the reeds had in common.</summary>
    Lesson,

    /// <summary>The habit that may be behind it, always as “perhaps”.</summary>
    Habit,

    /// <summary>Two or three tests to do at home.</summary>
    CheckYourself,

    /// <summary>The stroke of the knife, described.</summary>
    Stroke,

    /// <summary>The plan for the next reed.</summary>
    Plan,

    /// <summary>Playing in and care.</summary>
    Care,

    /// <summary>Knives, hygiene, dust, health.</summary>
    Cautions,

    /// <summary>Good wishes and a name.</summary>
    Closing,
}

/// <summary>One sentence, and what it rests on.</summary>
/// <param name="Text">The sentence, with its full stop.</param>
/// <param name="From">The entries of the bench logs that it came from; empty for what the teacher wrote or the studio always says.</param>
public sealed record LetterSentence(string Text, IReadOnlyList<EntryId> From)
{
    /// <summary>A sentence that rests on no entry.</summary>
    /// <param name="text">The sentence.</param>
    public static LetterSentence Plain(string text) => new(text, []);
}

/// <summary>A paragraph, or one item of a list.</summary>
/// <param name="Sentences">Its sentences.</param>
public sealed record LetterParagraph(IReadOnlyList<LetterSentence> Sentences)
{
    /// <summary>The sentences as one text.</summary>
    public string Text => string.Join(' ', Sentences.Select(sentence => sentence.Text));

    /// <summary>A paragraph of one sentence that rests on no entry.</summary>
    /// <param name="text">The sentence.</param>
    public static LetterParagraph Plain(string text) => new([LetterSentence.Plain(text)]);
}

/// <summary>One test, as the reed arrived and as it plays now.</summary>
/// <param name="Test">The test's name.</param>
/// <param name="Before">As it arrived; null when it wasn't tried then.</param>
/// <param name="Now">As it plays now; null when it wasn't tried again.</param>
/// <param name="Movement">Whether it moved towards good.</param>
/// <param name="From">The entries it came from.</param>
public sealed record BeforeAndNow(string Test, string? Before, string? Now, Movement Movement, IReadOnlyList<EntryId> From);

/// <summary>A part of a letter that the teacher can edit by itself. A block without paragraphs and rows isn't shown.</summary>
/// <param name="Key">Its lasting name within the letter, such as “plan” or “reed-2-story”.</param>
/// <param name="Kind">What it is for.</param>
/// <param name="Paragraphs">Its paragraphs, or the items of its list.</param>
public sealed record LetterBlock(string Key, BlockKind Kind, IReadOnlyList<LetterParagraph> Paragraphs)
{
    /// <summary>The longest text of a block, in characters.</summary>
    public const int LongestText = 6000;

    /// <summary>Its heading; null for a block that needs none.</summary>
    public string? Heading { get; init; }

    /// <summary>The reed it is about; null for a block about all of them.</summary>
    public ReedId? Reed { get; init; }

    /// <summary>Whether the paragraphs are the items of a list.</summary>
    public bool IsList { get; init; }

    /// <summary>How the reed played and plays; these rows come from the log and aren't edited.</summary>
    public IReadOnlyList<BeforeAndNow> Rows { get; init; } = [];

    /// <summary>What stood here before the teacher changed it; null while nothing was changed.</summary>
    public string? ComposedText { get; init; }

    /// <summary>Whether the teacher changed it.</summary>
    public bool IsEdited => ComposedText is not null;

    /// <summary>Whether there is nothing to show.</summary>
    public bool IsEmpty => Paragraphs.Count == 0 && Rows.Count == 0;

    /// <summary>The text as it is edited: paragraphs with an empty line between them, or one item a line.</summary>
    public string Text => string.Join(IsList ? "\n" : "\n\n", Paragraphs.Select(paragraph => paragraph.Text));

    /// <summary>
    /// The block with another text. Sentences that are still there word for word keep what they rest on; the rest is the
    /// teacher's own.
    /// </summary>
    /// <param name="text">The text as it was edited; empty leaves the block out.</param>
    /// <param name="composed">The block as it would be composed now, for the sentences that the text may hold.</param>
    public LetterBlock EditedTo(string text, LetterBlock composed)
    {
        ArgumentNullException.ThrowIfNull(text);
        ArgumentNullException.ThrowIfNull(composed);
        var plain = text.Replace("\r\n", "\n", StringComparison.Ordinal).Trim();
        if (plain == composed.Text)
        {
            return composed;
        }

        var known = Paragraphs.Concat(composed.Paragraphs)
            .SelectMany(paragraph => paragraph.Sentences)
            .DistinctBy(sentence => sentence.Text)
            .OrderByDescending(sentence => sentence.Text.Length)
            .ToList();
        var pieces = IsList ? Items(plain) : [.. plain.Split("\n\n", StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries)];
        return composed with
        {
            Paragraphs = [.. pieces.Select(piece => new LetterParagraph(Recognise(piece, known)))],
            ComposedText = composed.Text,
        };
    }

    // One a line; a link by itself is no point of a list, but belongs to what stands before it.
    private static List<string> Items(string text)
    {
        List<string> items = [];
        foreach (var line in text.Split('\n', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries))
        {
            if (items.Count > 0 && NoteLink.Is(line) && !NoteLink.Is(items[^1]))
            {
                items[^1] += " " + line;
            }
            else
            {
                items.Add(line);
            }
        }

        return items;
    }

    /// <summary>The block when nothing would be composed for it any more: what the teacher wrote stays, and rests on nothing.</summary>
    internal LetterBlock AsOwnWords() => this with
    {
        Paragraphs = [.. Paragraphs.Select(paragraph => new LetterParagraph([.. paragraph.Sentences.Select(sentence => LetterSentence.Plain(sentence.Text))]))],
        Rows = [],
        ComposedText = "",
    };

    /// <summary>The block with nothing in it.</summary>
    internal LetterBlock AsNothing() => this with { Paragraphs = [], Rows = [], ComposedText = null };

    private static List<LetterSentence> Recognise(string text, List<LetterSentence> known)
    {
        if (text.Length == 0)
        {
            return [];
        }

        foreach (var sentence in known)
        {
            if (PlaceOf(sentence.Text, text) is var at and >= 0)
            {
                var rest = known.Where(other => other != sentence).ToList();
                return
                [
                    .. Recognise(text[..at].Trim(), rest),
                    sentence,
                    .. Recognise(text[(at + sentence.Text.Length)..].Trim(), rest),
                ];
            }
        }

        return [LetterSentence.Plain(text)];
    }

    // Where a sentence stands by itself: inside another it is the teacher's own words, which are kept letter for letter.
    private static int PlaceOf(string sentence, string text)
    {
        // An empty line, such as a name that nobody signed with, stands nowhere.
        var at = sentence.Length == 0 ? -1 : text.IndexOf(sentence, StringComparison.Ordinal);
        while (at >= 0 && !(IsEdge(text, at - 1) && IsEdge(text, at + sentence.Length)))
        {
            at = text.IndexOf(sentence, at + 1, StringComparison.Ordinal);
        }

        return at;
    }

    private static bool IsEdge(string text, int at) => at < 0 || at >= text.Length || text[at] == ' ';
}
