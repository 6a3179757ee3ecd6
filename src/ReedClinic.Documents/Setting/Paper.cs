namespace ReedClinic.Documents.Setting;

/// <summary>The two sizes of paper that letters are printed on.</summary>
public enum PaperSize
{
    /// <summary>210 mm by 297 mm (ISO 216).</summary>
    A4,

    /// <summary>8½ in by 11 in (ANSI/ASME Y14.1, size A).</summary>
    UsLetter,
}

/// <summary>A sheet and its margins, in points of 1/72 inch.</summary>
/// <param name="Width">Its width.</param>
/// <param name="Height">Its height.</param>
/// <param name="Left">The margin on the left.</param>
/// <param name="Right">The margin on the right.</param>
/// <param name="Top">The margin above.</param>
/// <param name="Bottom">The margin below, in which the page's number stands.</param>
public sealed record Paper(double Width, double Height, double Left, double Right, double Top, double Bottom)
{
    /// <summary>Points in a millimetre.</summary>
    public const double Mm = 72 / 25.4;

    /// <summary>The width between the margins.</summary>
    public double Measure => Width - Left - Right;

    /// <summary>Where the text ends.</summary>
    public double Foot => Height - Bottom;

    /// <summary>The sheet of a size, with a letter's margins.</summary>
    /// <param name="size">The size.</param>
    public static Paper Of(PaperSize size) => size == PaperSize.A4
        ? new(210 * Mm, 297 * Mm, 20 * Mm, 20 * Mm, 19 * Mm, 22 * Mm)
        : new(612, 792, 20 * Mm, 20 * Mm, 15 * Mm, 17 * Mm);
}
