using PdfSharp.Drawing;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Print;

/// <summary>Tells how wide text will be on paper. For one document: what it measured once it remembers.</summary>
internal sealed class PrintMeasure : ITypeMeasure, IDisposable
{
    // Widths grow with the size, so each word is measured once, large.
    private const double Large = 100;

    private readonly Dictionary<(string Text, Face Face), double> known = [];
    private readonly XGraphics graphics = XGraphics.CreateMeasureContext(new XSize(10000, 10000), XGraphicsUnit.Point, XPageDirection.Downwards);

    public double Width(string text, TypeStyle style)
    {
        if (!known.TryGetValue((text, style.Face), out var wide))
        {
            wide = PrintText.Parts(text, style.Face).Sum(part => graphics.MeasureString(part.Text, Font(part.Sign, style.Face, Large), XStringFormats.BaseLineLeft).Width);
            known[(text, style.Face)] = wide;
        }

        return wide * style.Size / Large;
    }

    public static XFont Font(bool sign, Face face, double size) => sign ? PrintFonts.SignsOf(size) : PrintFonts.Of(face, size);

    public void Dispose() => graphics.Dispose();
}
