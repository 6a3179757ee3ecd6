namespace ReedClinic.Domain.Drawings;

/// <summary>For what place a stroke of the knife is drawn: its two views stand beside each other, or one below the other.</summary>
/// <param name="IsBeside">Whether they stand beside each other.</param>
/// <param name="Width">How wide the drawing is, in drawing units.</param>
/// <param name="MiddleX">Where the blade’s centre line lies, seen from above.</param>
/// <param name="BladeWidth">How wide a blade may become.</param>
/// <param name="NotesEnd">Where the words beside the blade end.</param>
/// <param name="SideX">Where the view from the side begins.</param>
public sealed record StrokeShow(bool IsBeside, double Width, double MiddleX, double BladeWidth, double NotesEnd, double SideX)
{
    /// <summary>No letter of the faces that are used is wider on the average, at the size of the drawing’s words.</summary>
    internal const double SignWidth = 7.5;

    /// <summary>For a letter on the screen and on paper.</summary>
    public static StrokeShow Letter { get; } = new(IsBeside: true, 660, 122, 200, 436, 440);

    /// <summary>For a letter in a narrow window.</summary>
    public static StrokeShow LetterNarrow { get; } = new(IsBeside: false, 300, 86, 146, 300, 46);
}
