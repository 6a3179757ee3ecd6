using PdfSharp.Drawing;
using ReedClinic.Domain.Drawings;

namespace ReedClinic.Documents.Print;

/// <summary>Puts a drawing on paper. Every kind of mark has a pattern of its own, so that it is told apart in black and white too.</summary>
internal sealed class SketchPainter(XGraphics graphics)
{
    private const double LeastNumber = 6.5;
    private const double WidthOfTwo = 1.12; // of two digits, to their size

    private double least;

    private static readonly XColor Ink = XColor.FromArgb(0x1E, 0x2A, 0x2F);
    private static readonly XColor Pencil = XColor.FromArgb(0x4B, 0x57, 0x5C);
    private static readonly XColor Cane = XColor.FromArgb(0xC8, 0x96, 0x3E);
    private static readonly XColor CanePale = XColor.FromArgb(0xF3, 0xE3, 0xC3);
    private static readonly XColor Moss = XColor.FromArgb(0x2F, 0x6B, 0x4F);
    private static readonly XColor Clay = XColor.FromArgb(0xA8, 0x45, 0x2E);
    private static readonly XColor Slate = XColor.FromArgb(0x3F, 0x56, 0x6E);
    private static readonly XColor Plum = XColor.FromArgb(0x6A, 0x44, 0x70);

    /// <summary>Draws it.</summary>
    /// <param name="sketch">The drawing.</param>
    /// <param name="x">Its left, in points.</param>
    /// <param name="y">Its top.</param>
    /// <param name="scale">Points for each of its units.</param>
    public void Draw(Sketch sketch, double x, double y, double scale)
    {
        var state = graphics.Save();
        graphics.TranslateTransform(x, y);
        graphics.ScaleTransform(scale);
        graphics.IntersectClip(new XRect(-40, 0, sketch.Width + 80, sketch.Height));
        least = LeastNumber / scale;
        var disc = default(SketchDot);
        foreach (var part in sketch.Parts)
        {
            // The disc of a number of two digits is as wide as they are.
            if (part is SketchWords { Type: SketchType.Number, Text.Length: > 1 } && disc is { Ink: SketchInk.Disc } round)
            {
                Wide(round);
            }

            disc = part as SketchDot;
            Draw(part, sketch.Type);
        }

        graphics.Restore(state);
    }

    private void Draw(SketchPart part, double type)
    {
        switch (part)
        {
            case SketchPath { Data.Length: > 0 } path:
                var state = graphics.Save();
                graphics.TranslateTransform(path.X, path.Y);
                var (paths, box) = PathData.Read(path.Data);
                foreach (var one in paths)
                {
                    Path(path.Ink, one, box);
                }

                graphics.Restore(state);
                break;
            case SketchDot dot:
                Dot(dot);
                break;
            case SketchWords words:
                Words(words, type);
                break;
        }
    }

    private void Path(SketchInk ink, XGraphicsPath path, XRect box)
    {
        if (Fill(ink) is { } fill)
        {
            graphics.DrawPath(new XSolidBrush(fill), path);
        }

        if (SketchPattern.Of(ink) is { } pattern)
        {
            var state = graphics.Save();
            graphics.IntersectClip(path);
            pattern.Draw(graphics, box, Tone(ink));
            graphics.Restore(state);
        }

        if (Pen(ink) is { } pen)
        {
            graphics.DrawPath(pen, path);
        }
    }

    private static XColor Tone(SketchInk ink) => ink switch
    {
        SketchInk.Strength or SketchInk.StrengthSuspected => Moss,
        SketchInk.Fault or SketchInk.FaultSuspected => Clay,
        SketchInk.Taste or SketchInk.TasteSuspected => Plum,
        SketchInk.Worked or SketchInk.WorkedTwice or SketchInk.WorkedOften => Slate,
        _ => Ink,
    };

    private static XColor? Fill(SketchInk ink) => ink switch
    {
        SketchInk.Cane => CanePale,
        SketchInk.Bark => XColor.FromArgb(107, Cane),
        SketchInk.Pale => XColor.FromArgb(0xFA, 0xF4, 0xE6),
        SketchInk.Gap => XColors.White,
        SketchInk.Thread => XColor.FromArgb(0xF2, 0xEA, 0xDB),
        SketchInk.Metal => XColor.FromArgb(0xDD, 0xE2, 0xE6),
        SketchInk.Plaque => Ink,
        SketchInk.Hand => XColor.FromArgb(0xF7, 0xEE, 0xE4),
        SketchInk.Band => XColor.FromArgb(0xE4, 0xEF, 0xE6),
        _ => null,
    };

    private static XPen? Pen(SketchInk ink) => ink switch
    {
        SketchInk.Cane or SketchInk.Bark or SketchInk.Pale or SketchInk.Gap or SketchInk.Band or SketchInk.Plaque => null,
        SketchInk.Grain => new XPen(XColor.FromArgb(204, Cane), 1) { LineCap = XLineCap.Round },
        SketchInk.SoftLine => new XPen(Cane, 1.1),
        SketchInk.ZoneLine => new XPen(Ink, 1.5) { LineCap = XLineCap.Round },
        SketchInk.Thread or SketchInk.Metal or SketchInk.Hand => new XPen(Ink, 1.4) { LineJoin = XLineJoin.Round },
        SketchInk.Turns => new XPen(Pencil, 1.3) { LineCap = XLineCap.Round },
        SketchInk.StrengthSuspected or SketchInk.FaultSuspected or SketchInk.TasteSuspected => new XPen(Tone(ink), 1.8) { DashPattern = [0.1, 2], LineCap = XLineCap.Round },
        SketchInk.LeaveAlone => new XPen(Ink, 1.5) { DashPattern = [3, 2] },
        SketchInk.Leader => new XPen(Ink, 0.9),
        SketchInk.Arrow => new XPen(Ink, 2.2) { LineCap = XLineCap.Round, LineJoin = XLineJoin.Round },
        SketchInk.Aim => new XPen(Moss, 1.5) { DashPattern = [1.5, 2.5] },
        SketchInk.Way => new XPen(Ink, 2.2) { LineJoin = XLineJoin.Round },
        SketchInk.WayGap => new XPen(Pencil, 1.4) { DashPattern = [2.5, 3.5] },
        SketchInk.Range => new XPen(XColor.FromArgb(90, Ink), 6) { LineCap = XLineCap.Round },
        SketchInk.Line => new XPen(Ink, 1.9) { LineJoin = XLineJoin.Round },
        _ => new XPen(Tone(ink), 1.5) { LineJoin = XLineJoin.Round },
    };

    private void Dot(SketchDot dot)
    {
        if (dot.Ink == SketchInk.Measured)
        {
            graphics.DrawEllipse(new XPen(Ink, 1.2), dot.X - dot.Radius, dot.Y - dot.Radius, 2 * dot.Radius, 2 * dot.Radius);
            return;
        }

        var fill = dot.Ink == SketchInk.LastPoint ? Ink : XColors.White;
        graphics.DrawEllipse(new XPen(Ink, dot.Ink == SketchInk.Disc ? 1.2 : 2.2), new XSolidBrush(fill), dot.X - dot.Radius, dot.Y - dot.Radius, 2 * dot.Radius, 2 * dot.Radius);
    }

    private void Wide(SketchDot disc)
    {
        var reach = Math.Max(disc.Radius, (least * WidthOfTwo / 2) + 2);
        graphics.DrawRoundedRectangle(new XPen(Ink, 1.2), XBrushes.White, disc.X - reach, disc.Y - disc.Radius, 2 * reach, 2 * disc.Radius, 2 * disc.Radius, 2 * disc.Radius);
    }

    private void Words(SketchWords words, double type)
    {
        var (face, size, tone) = words.Type switch
        {
            SketchType.Name => (Setting.Face.Slanted, 16.0, Pencil),
            SketchType.Number => (Setting.Face.LabelStrong, Math.Max(words.Text.Length == 1 ? 15.0 : 12, least / type), Ink), // as large as its disc holds, and never too small to be read
            SketchType.Step => (Setting.Face.Slanted, 15.0, Pencil),
            _ => (Setting.Face.Label, 15.0, Pencil),
        };
        var parts = PrintText.Parts(PrintText.WithPlainSpaces(PrintText.Of(words.Text)), face).Select(part => (part.Text, Font: PrintMeasure.Font(part.Sign, face, size * type))).ToList();
        var widths = parts.ConvertAll(part => graphics.MeasureString(part.Text, part.Font).Width);
        var x = words.X - (widths.Sum() * words.Align switch { SketchAlign.Start => 0, SketchAlign.Middle => 0.5, _ => 1 });
        foreach (var (part, width) in parts.Zip(widths))
        {
            graphics.DrawString(part.Text, part.Font, new XSolidBrush(tone), x, words.Y);
            x += width;
        }
    }
}
