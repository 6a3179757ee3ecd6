using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.TeachingNotes;

/// <summary>Fields of notes that nothing in the batch filled: they are gaps until somebody writes what belongs there.</summary>
public static class NoteGaps
{
    /// <summary>The gaps of a letter, part by part.</summary>
    /// <param name="letter">The letter as it would go out.</param>
    public static IReadOnlyList<LetterGap> Of(LetterDraft letter)
    {
        ArgumentNullException.ThrowIfNull(letter);
        return
        [
            .. letter.Blocks.Where(block => block.IsEdited).SelectMany(block => NoteField.NamesIn(block.Text).Select(name => new LetterGap(
                $"field-{name}-{block.Key}",
                GapKind.UnfilledField,
                $"In “{Name(block, letter)}”, {NoteField.Written(name)} still waits for your words.")
            {
                Reed = block.Reed,
                Part = block.Key,
            })),
        ];
    }

    private static string Name(LetterBlock block, LetterDraft letter) => block.Heading is { } heading ? heading
        : letter.Reeds.FirstOrDefault(reed => reed.Id == block.Reed) is { } known ? $"Reed {Prose.Number(known.Number)}"
        : block.Key.Replace('-', ' ');
}
