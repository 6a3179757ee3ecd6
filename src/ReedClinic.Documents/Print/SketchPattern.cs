using PdfSharp.Drawing;
using ReedClinic.Domain.Drawings;

namespace ReedClinic.Documents.Print;

/// <summary>The pattern of one kind of mark: dots, hatching, rings, strokes or dashes, as on the screen.</summary>
/// <param name="Draw">Fills a box with it, in a tone. Whoever calls it has cut the box to a shape.</param>
internal sealed record SketchPattern(Action<XGraphics, XRect, XColor> Draw)
{
    private static readonly SketchPattern Dots = new((graphics, box, tone) => Grid(box, 9, 9, (x, y) => graphics.DrawEllipse(new XSolidBrush(tone), x - 2.1, y - 2.1, 4.2, 4.2)));
    private static readonly SketchPattern Rings = new((graphics, box, tone) => Grid(box, 12, 12, (x, y) => graphics.DrawEllipse(new XPen(tone, 1.7), x - 3.6, y - 3.6, 7.2, 7.2)));
    private static readonly SketchPattern Dashes = new((graphics, box, tone) => Grid(box, 14, 6, (x, y) => graphics.DrawLine(new XPen(tone, 1.6), x - 4, y, x + 4, y)));

    private static readonly SketchPattern Hatching = new((graphics, box, tone) =>
    {
        Slanted(graphics, box, new XPen(tone, 1.5), 8, 1);
        Slanted(graphics, box, new XPen(tone, 1.5), 8, -1);
    });

    // What is only suspected has half of its sign, and wider apart.
    private static readonly SketchPattern FewDots = new((graphics, box, tone) => Grid(box, 14, 14, (x, y) => graphics.DrawEllipse(new XSolidBrush(tone), x - 1.7, y - 1.7, 3.4, 3.4)));
    private static readonly SketchPattern HalfHatching = new((graphics, box, tone) => Grid(box, 12, 6, (x, y) => graphics.DrawLine(new XPen(tone, 1.5), x - 2.5, y - 2.5, x + 2.5, y + 2.5)));
    private static readonly SketchPattern HalfRings = new((graphics, box, tone) => Grid(box, 14, 12, (x, y) => graphics.DrawArc(new XPen(tone, 1.7), x - 3.6, y - 3.6, 7.2, 7.2, 180, 180)));

    /// <summary>The pattern of an ink; null where it has none.</summary>
    /// <param name="ink">The ink.</param>
    public static SketchPattern? Of(SketchInk ink) => ink switch
    {
        SketchInk.Strength => Dots,
        SketchInk.Fault => Hatching,
        SketchInk.Taste => Rings,
        SketchInk.StrengthSuspected => FewDots,
        SketchInk.FaultSuspected => HalfHatching,
        SketchInk.TasteSuspected => HalfRings,
        SketchInk.Worked => Strokes(9),
        SketchInk.WorkedTwice => Strokes(5.5),
        SketchInk.WorkedOften => Strokes(3.8),
        SketchInk.LeaveAlone => Dashes,
        _ => null,
    };

    private static SketchPattern Strokes(double apart) => new((graphics, box, tone) => Slanted(graphics, box, new XPen(tone, apart < 5 ? 2 : 2.4), apart, -1.4));

    private static void Grid(XRect box, double across, double down, Action<double, double> draw)
    {
        var row = 0;
        for (var y = Math.Floor(box.Top / down) * down; y < box.Bottom + down; y += down, row++)
        {
            for (var x = (Math.Floor(box.Left / across) * across) + (row % 2 * across / 2); x < box.Right + across; x += across)
            {
                draw(x, y);
            }
        }
    }

    private static void Slanted(XGraphics graphics, XRect box, XPen pen, double apart, double slope)
    {
        var shift = box.Height / Math.Abs(slope);
        var step = apart * Math.Sqrt(1 + (1 / (slope * slope)));
        for (var x = Math.Floor((box.Left - shift) / step) * step; x < box.Right + shift; x += step)
        {
            graphics.DrawLine(pen, x, slope > 0 ? box.Top : box.Bottom, x + shift, slope > 0 ? box.Bottom : box.Top);
        }
    }
}
