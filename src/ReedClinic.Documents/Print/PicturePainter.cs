using PdfSharp.Drawing;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Documents.Print;

/// <summary>Reads pictures for print and draws them the right way up.</summary>
internal static class PicturePainter
{
    private const int FirstOnItsSide = 5;

    /// <summary>A picture that can be printed; null for a file that can't.</summary>
    /// <param name="file">The whole file, as it was read when it came in.</param>
    public static PrintPicture? Read(ReadOnlyMemory<byte> file)
    {
        try
        {
            using var image = Image(file);
            var wayUp = MediaFile.WayUp(file.Span);
            var (width, height) = wayUp >= FirstOnItsSide ? (image.PixelHeight, image.PixelWidth) : (image.PixelWidth, image.PixelHeight);
            return width > 0 && height > 0 ? new(file, width, height, wayUp) : null;
        }
        catch (Exception odd) when (odd is not OutOfMemoryException)
        {
            // What the printing library can't read is told in words.
            return null;
        }
    }

    /// <summary>Draws one.</summary>
    public static void Draw(XGraphics graphics, PlacedPicture placed)
    {
        using var image = Image(placed.Picture.File);
        var state = graphics.Save();
        graphics.TranslateTransform(placed.X, placed.Y);
        graphics.ScaleTransform(placed.Width, placed.Height);
        graphics.MultiplyTransform(Upright(placed.Picture.WayUp));
        graphics.DrawImage(image, 0, 0, 1, 1);
        graphics.Restore(state);
    }

    // Where the file's right and down come to lie: Exif 2.32 (CIPA DC-008), 4.6.4, Orientation.
    private static XMatrix Upright(int wayUp) => wayUp switch
    {
        2 => new(-1, 0, 0, 1, 1, 0),
        3 => new(-1, 0, 0, -1, 1, 1),
        4 => new(1, 0, 0, -1, 0, 1),
        5 => new(0, 1, 1, 0, 0, 0),
        6 => new(0, 1, -1, 0, 1, 0),
        7 => new(0, -1, -1, 0, 1, 1),
        8 => new(0, -1, 1, 0, 0, 1),
        _ => XMatrix.Identity,
    };

    private static XImage Image(ReadOnlyMemory<byte> file) => XImage.FromStream(new MemoryStream(file.ToArray()));
}
