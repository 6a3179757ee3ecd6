using System.Globalization;
using System.Text.RegularExpressions;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Setting;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Documents.Print;

/// <summary>A composed letter as the pieces that a printed one is set from; the same words in the same order as on the screen.</summary>
internal sealed class LetterFlow
{
    private const double MapColumn = 56 * Paper.Mm;
    private const double MapScale = 0.334;
    private const double PointsOfCrow = 105 * Paper.Mm / 680; // at this scale its words are read, whatever its width
    private const double PointsOfPixel = 72.0 / 150; // a picture isn't blown up: 150 pixels to the inch
    private const int MostBeside = 9;
    private const int MostLinesBeside = 20;
    private const int SignsBeside = 36;

    private static readonly TypeStyle Body = new(Face.Text, 9.7, 13.4);
    private static readonly TypeStyle Head = new(Face.Strong, 12.5, 17);
    private static readonly TypeStyle UnderHead = new(Face.Strong, 9.7, 13.4);
    private static readonly TypeStyle Recognise = new(Face.Slanted, 9.7, 13.4, Tone.Pencil);
    private static readonly TypeStyle Small = new(Face.Label, 8.4, 10.6);
    private static readonly TypeStyle Rows = new(Face.Label, 9.2, 12.4);

    private static readonly Regex Together = new("([0-9]) (mm|cents?|Hz|strokes?|minutes?|hours?|days?)\\b|\\b(a) ([A-G][♯♭]?)(?!\\p{L})", RegexOptions.CultureInvariant, TimeSpan.FromSeconds(1));

    private readonly List<FlowItem> flow = [];
    private readonly LetterDraft letter;
    private readonly IReadOnlyDictionary<string, ReadOnlyMemory<byte>> pictures;

    private LetterFlow(LetterDraft letter, IReadOnlyDictionary<string, ReadOnlyMemory<byte>>? pictures) =>
        (this.letter, this.pictures) = (letter, pictures ?? new Dictionary<string, ReadOnlyMemory<byte>>());

    /// <summary>The letter's pieces.</summary>
    /// <param name="letter">The letter.</param>
    /// <param name="day">The day at its head.</param>
    /// <param name="among">Where it stands among the letters about its batch; null for the only one.</param>
    /// <param name="pictures">The files of its pictures, by their keys.</param>
    public static IReadOnlyList<FlowItem> Of(LetterDraft letter, DateTimeOffset day, LetterAmong? among = null, IReadOnlyDictionary<string, ReadOnlyMemory<byte>>? pictures = null)
    {
        var made = new LetterFlow(letter, pictures);
        made.Begin(day, (among ?? LetterAmong.Only).Lines(day));
        foreach (var group in Parts(letter))
        {
            made.flow.Add(new FlowOpen(FlowRole.Section));
            made.Part(group);
            made.flow.Add(new FlowClose());
        }

        return made.flow;
    }

    // Blocks about the same reed stand together.
    private static List<List<LetterBlock>> Parts(LetterDraft letter)
    {
        List<List<LetterBlock>> parts = [];
        foreach (var block in letter.Blocks.Where(block => !block.IsEmpty))
        {
            if (block.Reed is not null && parts.Count > 0 && parts[^1][0].Reed == block.Reed)
            {
                parts[^1].Add(block);
            }
            else
            {
                parts.Add([block]);
            }
        }

        return parts;
    }

    private void Begin(DateTimeOffset day, IReadOnlyList<string> among)
    {
        if (letter.Studio is { Length: > 0 } studio)
        {
            Add(FlowRole.Title, studio, new(Face.Strong, 17, 23), after: 1);
        }

        Add(FlowRole.Paragraph, $"About batch {letter.Code} · {LetterPage.Day(day)}", new(Face.Label, 9.4, 13, Tone.Pencil), after: among.Count == 0 ? 5 : 1);
        foreach (var (line, index) in among.Select((line, index) => (line, index)))
        {
            Add(FlowRole.Paragraph, line, new(Face.Label, 9.4, 13), after: index == among.Count - 1 ? 5 : 1);
        }

        flow.Add(new FlowRule(14));
        if (LetterPage.Contents(letter) is { Count: > 0 } names)
        {
            Add(FlowRole.Paragraph, "In this letter: " + string.Join("\u00A0· ", names), new(Face.Label, 9.4, 13, Tone.Pencil), after: 9);
        }
    }

    private void Part(List<LetterBlock> blocks)
    {
        var reed = letter.Reeds.FirstOrDefault(known => known.Id == blocks[0].Reed);
        if (reed is not null || blocks[0].Kind is not (BlockKind.Habit or BlockKind.CheckYourself))
        {
            flow.Add(new FlowClear());
        }

        if (reed is not null)
        {
            Heading($"Reed {reed.Number.ToString(CultureInfo.InvariantCulture)}", after: 0);
            Add(FlowRole.Paragraph, reed.HowToRecognise, Recognise, after: 5, keep: true);
            Beside(LetterPictures.Reed(letter, reed), reed.Marks);
        }
        else if (blocks[0].Heading is { } heading)
        {
            Heading(heading, after: 4);
        }

        if (blocks[0].Kind == BlockKind.Lesson)
        {
            Beside(LetterPictures.Lesson(letter), letter.LessonMarks);
        }

        foreach (var block in blocks)
        {
            Block(block, reed);
        }
    }

    private void Beside(Sketch? drawing, IReadOnlyList<Domain.Reeds.ReedMark> marks)
    {
        if (drawing is null)
        {
            return;
        }

        List<string> list = [.. marks.Select(mark => Printed(LetterPictures.Line(letter, mark)))];
        flow.Add(new FlowAside(drawing, MapScale * drawing.Width, MapColumn, list, Small)
        {
            Patches = [.. marks.Select(ReedSketch.Patch)],
            IsListLong = list.Count > MostBeside || list.Sum(item => 1 + (item.Length / SignsBeside)) > MostLinesBeside,
        });
    }

    private void Block(LetterBlock block, LetterReed? reed)
    {
        if (block.Kind == BlockKind.Stroke && LetterPictures.Stroke(letter, StrokeShow.Letter) is { } stroke)
        {
            flow.Add(new FlowFigure(stroke, 140 * Paper.Mm));
        }

        if (block.Kind == BlockKind.ReedAnswers)
        {
            Add(FlowRole.Under, LetterPage.AskedName(LetterPage.ReedName(reed)), UnderHead, after: 2, keep: true, before: 2);
        }

        if (block.IsList && block.Paragraphs.Count > 0)
        {
            Items(block);
        }
        else
        {
            Paragraphs(block);
        }

        if (block is { Kind: BlockKind.ReedNow, Rows.Count: > 0 })
        {
            flow.Add(new FlowTogether(reed?.Crow is { } crow && LetterPictures.Crow(letter, reed, CrowShow.Paper) is { } drawn
                ? [Crow(reed, crow, drawn, Table(block.Rows)), Steps(reed)]
                : [Table(block.Rows)]));
        }
    }

    // The narrow drawings have the same words: where one of them stands, nothing is lost.
    private FlowBeside Crow(LetterReed reed, CrowPicture crow, Sketch drawn, FlowTable table)
    {
        var words = Printed($"The crow through the work. {crow.Sentence}.");
        var style = Rows with { Tone = Tone.Pencil };
        return new(
            table,
            words,
            style,
            [.. CrowShow.BesideOnPaper.Where(show => CrowSketch.HasRoom(crow, show)).Select(show => new FlowSide(LetterPictures.Crow(letter, reed, show)!, show.Width * PointsOfCrow))],
            [
                new FlowText(FlowRole.Paragraph, words, style) { Before = 2, After = 3, KeepsWithNext = true },
                new FlowFigure(drawn, drawn.Width * PointsOfCrow),
            ]);
    }

    // What is a list on the screen runs on here: so a letter of three reeds takes a page less.
    private FlowText Steps(LetterReed reed) =>
        new(FlowRole.Paragraph, Printed(LetterPictures.CrowTold(letter, reed)), Small) { After = 6 };

    private static FlowTable Table(IReadOnlyList<BeforeAndNow> rows) => new(
        "How it played, and how it plays now",
        [
            [new("Test"), new("When it came"), new("Now")],
            .. rows.Select(row => (IReadOnlyList<FlowCell>)
            [
                new(Printed(row.Test)),
                new(Printed(row.Before ?? "not tried")),
                new(Printed((row.Now ?? "not tried again") + Moved(row.Movement)), row.Movement switch { Movement.Nearer => Tone.Good, Movement.Further => Tone.Less, _ => Tone.Ink }),
            ]),
        ],
        [0.26, 0.36, 0.38],
        Rows);

    private static string Moved(Movement movement) => movement switch
    {
        Movement.Nearer => " ●\u00A0better",
        Movement.Further => " ▸\u00A0gave\u00A0way\u00A0a\u00A0little",
        _ => "",
    };

    private void Heading(string text, double after) => flow.Add(new FlowText(FlowRole.Heading, Printed(text), Head) { Before = 10, After = after, KeepsWithNext = true });

    private void Item(string text, string mark, TypeStyle style, double after) =>
        flow.Add(new FlowText(FlowRole.ItemBody, text, style) { Mark = mark, Indent = 14, After = after });

    private void Add(FlowRole role, string text, TypeStyle style, double after, bool keep = false, double before = 0) =>
        flow.Add(new FlowText(role, Printed(text), style) { Before = before, After = after, KeepsWithNext = keep });

    // A picture parts its list.
    private void Items(LetterBlock block)
    {
        flow.Add(new FlowOpen(FlowRole.List));
        foreach (var (item, index) in block.Paragraphs.Select((item, index) => (item, index)))
        {
            if (Picture(block, item) is { } picture)
            {
                flow.AddRange([new FlowClose(), picture, new FlowOpen(FlowRole.List)]);
                continue;
            }

            Item(Printed(PictureMark.SaidIn(block, item)), block.Kind == BlockKind.Plan ? FormattableString.Invariant($"{index + 1}.") : "–", Body, after: index == block.Paragraphs.Count - 1 ? 6 : 2);
            Lead(NoteLink.Of(block, item));
            flow[^1] = NoteLink.AtEnd(block, item) is { } end ? ((FlowText)flow[^1]) with { Link = end } : flow[^1];
        }

        flow.Add(new FlowClose());
    }

    private void Paragraphs(LetterBlock block)
    {
        foreach (var (paragraph, index) in block.Paragraphs.Select((paragraph, index) => (paragraph, index)))
        {
            if (Picture(block, paragraph) is { } picture)
            {
                flow.Add(picture);
                continue;
            }

            var closing = block.Kind == BlockKind.Closing;
            Add(FlowRole.Paragraph, PictureMark.SaidIn(block, paragraph), Body, after: 6, keep: closing && index < block.Paragraphs.Count - 1, before: closing && index == 0 ? 9 : 0);
            Lead(NoteLink.Of(block, paragraph));
        }
    }

    private FlowPicture? Picture(LetterBlock block, LetterParagraph paragraph) =>
        PictureMark.Of(block, paragraph) is { } mark && pictures.TryGetValue(mark.Key, out var file) && PicturePainter.Read(file) is { } picture
            ? new(picture, mark.Words, picture.Width * PointsOfPixel)
            : null;

    // What was added last leads to an address, which stands there letter for letter.
    private void Lead(string? address)
    {
        if (address is not null)
        {
            flow[^1] = ((FlowText)flow[^1]) with { Text = address, Link = address };
        }
    }

    // A number stays with its unit, and “a” with its note.
    private static string Printed(string text) => Together.Replace(PrintText.Of(Escaped.Apostrophes(text)), "$1$3\u00A0$2$4");
}
