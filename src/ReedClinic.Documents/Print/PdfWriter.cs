using PdfSharp.Drawing;
using PdfSharp.Pdf;
using PdfSharp.Pdf.Annotations;
using PdfSharp.UniversalAccessibility;
using ReedClinic.Documents.Setting;

namespace ReedClinic.Documents.Print;

/// <summary>Writes set pages as a PDF that says what each part is: tagged, with a title, a language, and words for every drawing.</summary>
public sealed class PdfWriter : IDisposable
{
    private static readonly XColor Ink = XColor.FromArgb(0x1E, 0x2A, 0x2F);
    private static readonly XColor Pencil = XColor.FromArgb(0x4B, 0x57, 0x5C);
    private static readonly XColor Moss = XColor.FromArgb(0x2F, 0x6B, 0x4F);
    private static readonly XColor Clay = XColor.FromArgb(0xA8, 0x45, 0x2E);

    // Below the base line, within the line.
    private const double LinkUnder = 0.86;

    private readonly PdfDocument document = new();
    private readonly Paper paper;
    private readonly StructureBuilder structure;

    private PdfWriter(Paper paper, string title, string author)
    {
        this.paper = paper;
        document.Info.Title = title;
        document.Info.Author = author;
        document.ViewerPreferences.DisplayDocTitle = true;

        // PDFsharp's own compression leaves streams that strict readers complain of; it is done when all is written.
        document.Options.CompressContentStreams = false;
        document.Options.NoCompression = true;
        var manager = UAManager.ForDocument(document);
        manager.SetDocumentLanguage("en-GB");
        structure = manager.StructureBuilder;
    }

    /// <summary>Writes a document.</summary>
    /// <param name="pages">Its pages.</param>
    /// <param name="paper">The sheet.</param>
    /// <param name="title">Its title.</param>
    /// <param name="author">Who wrote it.</param>
    public static byte[] Write(IReadOnlyList<IReadOnlyList<Placed>> pages, Paper paper, string title, string author)
    {
        using var writer = new PdfWriter(paper, title, author);
        foreach (var page in pages)
        {
            writer.Page(page);
        }

        using var file = new MemoryStream();
        writer.document.Save(file, closeStream: false);
        return PackedFile.Of(file.ToArray());
    }

    /// <summary>Lets the document go.</summary>
    public void Dispose() => document.Dispose();

    private void Page(IReadOnlyList<Placed> items)
    {
        var page = document.AddPage();
        page.Width = XUnit.FromPoint(paper.Width);
        page.Height = XUnit.FromPoint(paper.Height);
        using var graphics = XGraphics.FromPdfPage(page);
        foreach (var item in items)
        {
            Put(graphics, item);
        }
    }

    private void Put(XGraphics graphics, Placed item)
    {
        switch (item)
        {
            case PlacedOpen open:
                Open(open);
                break;
            case PlacedLink link:
                Link(graphics, link);
                break;
            case PlacedClose:
                structure.End();
                break;
            case PlacedText text:
                Text(graphics, text);
                break;
            case PlacedSketch sketch:
                new SketchPainter(graphics).Draw(sketch.Drawing, sketch.X, sketch.Y, sketch.Scale);
                break;
            case PlacedPicture picture:
                PicturePainter.Draw(graphics, picture);
                break;
            case PlacedRule rule:
                graphics.DrawLine(new XPen(XColor.FromArgb(0xDE, 0xD5, 0xC4), 0.7), rule.X, rule.Y, rule.X + rule.Length, rule.Y);
                break;
        }
    }

    private void Open(PlacedOpen open)
    {
        switch (open.Role)
        {
            case FlowRole.Furniture:
                structure.BeginArtifact();
                break;
            case FlowRole.Figure:
                structure.BeginElement(PdfIllustrationElementTag.Figure, PrintText.Of(open.Words ?? ""), new XRect(open.X, paper.Height - open.Y - open.Height, open.Width, open.Height));
                break;
            case FlowRole.Section:
                structure.BeginElement(PdfGroupingElementTag.Section);
                break;
            case FlowRole.Caption:
                structure.BeginElement(PdfGroupingElementTag.Caption);
                break;
            default:
                structure.BeginElement(Tag(open.Role));
                break;
        }
    }

    // Its words are the address itself, so that it says where it leads (ISO 14289-1, 7.18.5).
    private void Link(XGraphics graphics, PlacedLink link)
    {
        var place = new PdfRectangle(new XRect(link.X, paper.Height - link.Y - link.Height, link.Width, link.Height));
        structure.BeginElement(PdfLinkAnnotation.CreateWebLink(place, link.Address), link.Address);
        var under = link.Y + (link.Height * LinkUnder);
        graphics.DrawLine(new XPen(Pencil, 0.5), link.X, under, link.X + link.Width, under);
    }

    private static PdfBlockLevelElementTag Tag(FlowRole role) => role switch
    {
        FlowRole.Title => PdfBlockLevelElementTag.Heading1,
        FlowRole.Heading => PdfBlockLevelElementTag.Heading2,
        FlowRole.Under => PdfBlockLevelElementTag.Heading3,
        FlowRole.List => PdfBlockLevelElementTag.List,
        FlowRole.Item => PdfBlockLevelElementTag.ListItem,
        FlowRole.Mark => PdfBlockLevelElementTag.Label,
        FlowRole.ItemBody => PdfBlockLevelElementTag.ListBody,
        FlowRole.Table => PdfBlockLevelElementTag.Table,
        FlowRole.Row => PdfBlockLevelElementTag.TableRow,
        FlowRole.Head => PdfBlockLevelElementTag.TableHeaderCell,
        FlowRole.Cell => PdfBlockLevelElementTag.TableDataCell,
        _ => PdfBlockLevelElementTag.Paragraph,
    };

    private static void Text(XGraphics graphics, PlacedText text)
    {
        var brush = new XSolidBrush(text.Style.Tone switch { Tone.Pencil => Pencil, Tone.Good => Moss, Tone.Less => Clay, _ => Ink });
        var (x, left) = (text.X, text.Text.Length);
        foreach (var (part, sign) in PrintText.Parts(PrintText.WithPlainSpaces(text.Text), text.Style.Face))
        {
            var font = PrintMeasure.Font(sign, text.Style.Face, text.Style.Size);
            graphics.DrawString(part, font, brush, x, text.Y, XStringFormats.BaseLineLeft);
            left -= part.Length;
            x += left == 0 ? 0 : graphics.MeasureString(part, font).Width;
        }
    }
}
