using ReedClinic.Domain.Letters;

namespace ReedClinic.Domain.TeachingNotes;

/// <summary>Fields of notes that nothing in the batch filled, and pictures that aren't there: they are gaps until somebody writes what belongs there.</summary>
public static class NoteGaps
{
    /// <summary>The gaps of a letter, part by part.</summary>
    /// <param name="letter">The letter as it would go out.</param>
    /// <param name="pictures">The keys of the pictures that there are.</param>
    public static IReadOnlyList<LetterGap> Of(LetterDraft letter, IReadOnlySet<string> pictures)
    {
        ArgumentNullException.ThrowIfNull(letter);
        return
        [
            .. letter.Blocks.Where(block => block.Paragraphs.Any(paragraph => PictureMark.IsMeant(block, paragraph)
                && !(PictureMark.Of(block, paragraph) is { } mark && pictures.Contains(mark.Key)))).Select(block => new LetterGap(
                $"picture-{block.Key}",
                GapKind.UnknownPicture,
                $"In “{Name(block, letter)}”, a picture isn’t known: it stands in a paragraph of its own as [picture, its key, a colon, what it shows]. Put it in again, or take it out.")
            {
                Reed = block.Reed,
                Part = block.Key,
            }),
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
