using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Documents.Letters;
using ReedClinic.Documents.Print;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>
/// All that a printed letter should say, worked out from the letter on the screen: its text in its order, and where a drawing stands,
/// the drawing's words and its list. White space is left out, and so are the signs before “better” and “gave way”.
/// </summary>
internal static class LetterAsSaid
{
    public static string Of(LetterDraft letter)
    {
        List<string> said = [letter.Studio ?? "", $"About batch {letter.Code} · {LetterPage.Day(PrintedLetter.Day)}"];
        var names = LetterPage.Sections(letter).SelectMany(section => new[] { section.Name, section.AskedName }).OfType<string>().ToList();
        said.Add(LetterPage.Sections(letter).Count(section => section.Name is not null) > 3 ? "In this letter: " + string.Join("\u00A0· ", names) : "");
        foreach (var section in LetterPage.Sections(letter))
        {
            var reed = letter.Reeds.FirstOrDefault(known => known.Id == section.Reed);
            said.AddRange(Texts(section.Head));
            if (reed is { Marks.Count: > 0 })
            {
                said.AddRange([.. Drawn(LetterPictures.Reed(letter, reed)), .. Listed(letter, reed.Marks)]);
            }

            if (section.Kind == "lesson")
            {
                said.AddRange([.. Drawn(LetterPictures.Lesson(letter)), .. Listed(letter, letter.LessonMarks)]);
            }

            if (section.Kind == "stroke")
            {
                said.AddRange(Drawn(LetterPictures.Stroke(letter, StrokeShow.Letter)));
            }

            said.AddRange(Texts(section.Body + section.BeforeCrow + section.Table + section.Rest, reed?.Crow, reed is null ? null : LetterPictures.Crow(letter, reed, CrowShow.Paper), reed is null ? null : LetterPictures.CrowTold(letter, reed)));
        }

        return Bare(string.Concat(said.Select(PrintText.Of)));
    }

    public static string Bare(string text) =>
        string.Concat(text.Where(sign => !char.IsWhiteSpace(sign) && sign is not ('●' or '▸' or '\f'))).Replace('\'', '’');

    private static IEnumerable<string> Texts(string html, CrowPicture? crow = null, Sketch? way = null, string? steps = null)
    {
        var body = new HtmlParser().ParseDocument($"<body>{html}</body>").Body!;
        var cells = body.QuerySelectorAll("td");
        foreach (var element in body.QuerySelectorAll("h2, h3, p, li, caption, th, td"))
        {
            yield return Mark(element);
            yield return element.TextContent;
            if (crow is not null && cells.Length > 0 && element == cells[^1])
            {
                yield return $"The crow through the work. {crow.Sentence}.";
                foreach (var words in Drawn(way).Append(steps!))
                {
                    yield return words;
                }
            }
        }
    }

    private static string Mark(IElement element) => (element.LocalName, element.ParentElement?.LocalName) switch
    {
        ("li", "ol") => $"{element.ParentElement!.Children.Index(element) + 1}.",
        ("li", _) => "–",
        _ => "",
    };

    private static IEnumerable<string> Drawn(Sketch? drawing) => drawing?.Parts.OfType<SketchWords>().Select(words => words.Text) ?? [];

    private static IEnumerable<string> Listed(LetterDraft letter, IReadOnlyList<ReedMark> marks) =>
        marks.Select((mark, index) => $"{index + 1}{LetterPictures.Line(letter, mark)}");
}
