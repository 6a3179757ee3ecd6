using DiffPlex;
using DiffPlex.Chunkers;
using DiffPlex.DiffBuilder;
using DiffPlex.DiffBuilder.Model;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Documents.Letters;

/// <summary>What became of some words between two versions.</summary>
public enum WordsFate
{
    /// <summary>They stand in both.</summary>
    Kept,

    /// <summary>They stand only in the later one.</summary>
    Added,

    /// <summary>They stand only in the earlier one.</summary>
    Removed,
}

/// <summary>A run of words.</summary>
/// <param name="Text">The words, with the spaces between them.</param>
/// <param name="Fate">What became of them.</param>
public sealed record WordsRun(string Text, WordsFate Fate);

/// <summary>A part of a letter that differs between two versions.</summary>
/// <param name="Key">The part's key.</param>
/// <param name="Title">What it is called.</param>
/// <param name="Runs">Its words, in order.</param>
public sealed record PartChange(string Key, string Title, IReadOnlyList<WordsRun> Runs)
{
    /// <summary>Whether it is told as what went and then what came, because no sentence of it stayed.</summary>
    public bool IsRewritten => Runs is [{ Fate: WordsFate.Removed }, { Fate: WordsFate.Added }];
}

/// <summary>Compares two versions of a letter, part by part, sentence by sentence, and a mended sentence word by word.</summary>
public static class LetterComparison
{
    private static readonly WordChunker Words = new();

    /// <summary>The parts that differ, in the order of the later version; parts that are gone come last.</summary>
    /// <param name="earlier">The earlier version.</param>
    /// <param name="later">The later version.</param>
    public static IReadOnlyList<PartChange> Of(LetterDraft earlier, LetterDraft later)
    {
        ArgumentNullException.ThrowIfNull(earlier);
        ArgumentNullException.ThrowIfNull(later);
        var before = earlier.Blocks.ToDictionary(block => block.Key);
        var after = later.Blocks.Select(block => block.Key).ToHashSet();
        return
        [
            .. later.Blocks
                .Select(block => (block, Old: before.GetValueOrDefault(block.Key)))
                .Where(pair => Text(pair.Old) != Text(pair.block))
                .Select(pair => new PartChange(pair.block.Key, Title(pair.block, later), Runs(Text(pair.Old), Text(pair.block)))),
            .. earlier.Blocks
                .Where(block => !after.Contains(block.Key) && Text(block).Length > 0)
                .Select(block => new PartChange(block.Key, Title(block, earlier), Runs(Text(block), ""))),
        ];
    }

    // Sentence by sentence first: what stayed is seen to have stayed, however much stands between. A sentence that was mended is told word by word.
    private static List<WordsRun> Runs(string earlier, string later)
    {
        List<WordsRun> runs = [];
        List<string> gone = [], come = [];
        foreach (var (text, fate) in Pieces(earlier, later, SentenceChunker.Instance))
        {
            if (fate == WordsFate.Kept)
            {
                Mend(runs, gone, come);
                Add(runs, text, fate);
            }
            else
            {
                (fate == WordsFate.Removed ? gone : come).Add(text);
            }
        }

        Mend(runs, gone, come);
        return runs;
    }

    // Of what went and what came in one place, each sentence is held against the first that is like it; the rest is told whole.
    private static void Mend(List<WordsRun> runs, List<string> gone, List<string> come)
    {
        var from = 0;
        List<string> whole = [];
        foreach (var text in come)
        {
            var at = gone.FindIndex(from, old => IsLike(old, text));
            if (at < 0)
            {
                whole.Add(text);
                continue;
            }

            Add(runs, string.Concat(gone[from..at]), WordsFate.Removed);
            Add(runs, string.Concat(whole), WordsFate.Added);
            Pieces(gone[at], text, Words).ForEach(piece => Add(runs, piece.Text, piece.Fate));
            (from, whole) = (at + 1, []);
        }

        Add(runs, string.Concat(gone[from..]), WordsFate.Removed);
        Add(runs, string.Concat(whole), WordsFate.Added);
        gone.Clear();
        come.Clear();
    }

    // Word by word nobody can read what is mostly new.
    private static bool IsLike(string earlier, string later) =>
        Signs(Pieces(earlier, later, Words).Where(piece => piece.Fate == WordsFate.Kept)) * 2 >= Math.Max(Signs(earlier), Signs(later));

    private static List<WordsRun> Pieces(string earlier, string later, IChunker chunks) =>
    [
        .. InlineDiffBuilder.Diff(Differ.Instance, earlier, later, ignoreWhiteSpace: false, ignoreCase: false, chunks).Lines.Select(piece => new WordsRun(
            piece.Text, piece.Type switch { ChangeType.Inserted => WordsFate.Added, ChangeType.Deleted => WordsFate.Removed, _ => WordsFate.Kept })),
    ];

    private static void Add(List<WordsRun> runs, string text, WordsFate fate)
    {
        if (text.Length == 0)
        {
            return;
        }

        if (runs.Count > 0 && runs[^1].Fate == fate)
        {
            runs[^1] = runs[^1] with { Text = runs[^1].Text + text };
        }
        else
        {
            runs.Add(new(text, fate));
        }
    }

    private static int Signs(IEnumerable<WordsRun> runs) => runs.Sum(run => Signs(run.Text));

    private static int Signs(string text) => text.Count(sign => !char.IsWhiteSpace(sign));

    // What was found and played stands in rows that follow the log; it is compared like words.
    private static string Text(LetterBlock? block) => block is null
        ? ""
        : string.Join("\n", block.Rows.Select(row => $"{row.Test}: {row.Before ?? "not tried"} → {row.Now ?? "not tried again"}").Prepend(block.Text)).Trim();

    private static string Title(LetterBlock block, LetterDraft letter)
    {
        var part = block.Kind switch
        {
            BlockKind.Greeting => "Beginning",
            BlockKind.ReedStory => "story",
            BlockKind.ReedNow => "how it plays now",
            BlockKind.ReedAnswers => "answers",
            BlockKind.ReedUse => "how to use it",
            BlockKind.Habit => "The likely habit",
            BlockKind.Closing => "End",
            _ => block.Heading ?? block.Key.Replace('-', ' '),
        };
        return letter.Reeds.FirstOrDefault(reed => reed.Id == block.Reed) is { } known ? FormattableString.Invariant($"Reed {known.Number}: {part}") : part;
    }
}
