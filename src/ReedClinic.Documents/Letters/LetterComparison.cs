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
    /// <summary>Whether it is told as what went and then what came, because less than half of it stayed.</summary>
    public bool IsRewritten => Runs is [{ Fate: WordsFate.Removed }, { Fate: WordsFate.Added }];
}

/// <summary>Compares two versions of a letter, part by part and word by word.</summary>
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

    private static List<WordsRun> Runs(string earlier, string later)
    {
        List<WordsRun> runs = [];
        foreach (var piece in InlineDiffBuilder.Diff(Differ.Instance, earlier, later, ignoreWhiteSpace: false, ignoreCase: false, Words).Lines)
        {
            var fate = piece.Type switch { ChangeType.Inserted => WordsFate.Added, ChangeType.Deleted => WordsFate.Removed, _ => WordsFate.Kept };
            if (runs.Count > 0 && runs[^1].Fate == fate)
            {
                runs[^1] = runs[^1] with { Text = runs[^1].Text + piece.Text };
            }
            else
            {
                runs.Add(new(piece.Text, fate));
            }
        }

        // Word by word nobody can read what is mostly new.
        return Signs(runs.Where(run => run.Fate == WordsFate.Kept)) * 2 < Math.Max(Signs(earlier), Signs(later)) && earlier.Length > 0 && later.Length > 0
            ? [new(earlier, WordsFate.Removed), new(later, WordsFate.Added)]
            : runs;
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
