using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Letters;

namespace ReedClinic.Documents.Tests.Print;

/// <summary>Letters that are hard to set: very many reeds and very few, nothing to say, words without an end, other scripts, and texts that try to be more.</summary>
internal static class HardLetters
{
    private static readonly string Eighty = string.Concat(Enumerable.Repeat("abcdefghij", 8));

    private static readonly Dictionary<string, Func<LetterDraft>> Letters = new()
    {
        ["usual"] = () => PrintedLetter.Usual(),
        ["as it is composed"] = () => LetterComposer.Compose(LetterScene.Usual(new Guid("018f0000-0000-7000-8000-000000000001")).Material),
        ["one reed"] = () => PrintedLetter.Usual(1),
        ["twelve reeds"] = () => PrintedLetter.Usual(12),
        ["twelve marks"] = () => PrintedLetter.Marked(ScrapeStyle.ShortScrape, Instrument.CorAnglais, [.. Enumerable.Range(0, 12).Select(number => new ReedMark(new Place((Zone)(number + 1)), (MarkKind)(number % 5), "some words about it", "seen twice", number))]),
        ["no findings"] = () => Without(PrintedLetter.Usual(), sound: false, marks: false, common: false, rows: false),
        ["no sound"] = () => Without(PrintedLetter.Usual(), sound: false),
        ["nothing common"] = () => Without(PrintedLetter.Usual(), common: false),
        ["very long words"] = () => Saying("Donaudampfschifffahrtsgesellschaft", new string('m', 400), string.Join('-', Enumerable.Repeat("lime", 60)), $"https://example.org/{new string('x', 200)}"),
        ["eighty letters everywhere"] = () => Everywhere(PrintedLetter.Usual(2), Eighty),
        ["an address everywhere"] = () => Everywhere(PrintedLetter.Usual(2), $"https://example.org/{Eighty}?of={Eighty}"),
        ["emoji"] = () => Saying("Dear 😀👩‍👩‍👧, thank you 👍🏽!", "😀😀😀"),
        ["emoji everywhere"] = () => Everywhere(PrintedLetter.Usual(2), string.Concat(Enumerable.Repeat("😀👩‍👩‍👧", 20))),
        ["right to left"] = () => Saying("Dear שירה and ليلى,", "\u202Bשירה\u202C, your reed", "Ольга, Łucja, Őrs, Nguyễn Thế"),
        ["names of three scripts everywhere"] = () => Everywhere(PrintedLetter.Usual(2), "שירה לוי and ليلى حداد and 王小明 of Łódź"),
        ["much"] = () => Saying(string.Join(' ', Enumerable.Repeat("reed", LetterBlock.LongestText / 5)), new string('W', LetterBlock.LongestText), string.Concat(Enumerable.Repeat("ab\n", LetterBlock.LongestText / 3))),
        ["only spaces"] = () => Saying(" ", "\u00A0\u2003 ", "\n\n", "x"),
        // Control characters are left out: HTML reads some of them as other signs, and paper has none.
        ["hostile"] = () => Saying(HostileTexts.All.Select(text => string.Concat(text.Text.Where(sign => sign == '\n' || !char.IsControl(sign))))),
        ["hostile everywhere"] = () => Everywhere(PrintedLetter.Usual(2), "<script>alert('x')</script> & \"quoted\" \\( ) %PDF endobj") with { Code = "<b>7KP</b>" },
    };

    public static IEnumerable<string> Names => Letters.Keys;

    public static LetterDraft Of(string name) => Letters[name]();

    /// <summary>The same letter with a text in every place where somebody may have typed one.</summary>
    public static LetterDraft Everywhere(LetterDraft letter, string text) => letter with
    {
        Studio = text,
        Signature = text,
        LessonMarks = [.. letter.LessonMarks.Select(mark => mark with { Words = text, Detail = text })],
        Reeds =
        [
            .. letter.Reeds.Select(reed => reed with
            {
                HowToRecognise = text,
                Marks = [.. reed.Marks.Select(mark => mark with { Words = text, Detail = text })],
                Crow = reed.Crow! with { Sentence = text, Moves = [.. reed.Crow.Moves.Select(move => move with { Work = [text], Sentence = text })] },
            }),
        ],
        Blocks =
        [
            .. letter.Blocks.Select(block => block with
            {
                Heading = block.Heading is null ? null : text,
                Paragraphs = [LetterParagraph.Plain(text)],
                Rows = [.. block.Rows.Select(row => row with { Test = text, Before = text, Now = text })],
            }),
        ],
    };

    private static LetterDraft Without(LetterDraft letter, bool sound = true, bool marks = true, bool common = true, bool rows = true) => letter with
    {
        LessonKind = common ? letter.LessonKind : null,
        LessonMarks = common ? letter.LessonMarks : [],
        Reeds = [.. letter.Reeds.Select(reed => reed with { Marks = marks ? reed.Marks : [], Crow = sound ? reed.Crow : null })],
        Blocks =
        [
            .. letter.Blocks.Where(block => common || block.Kind is not (BlockKind.Lesson or BlockKind.Habit or BlockKind.CheckYourself or BlockKind.Stroke))
                .Select(block => rows ? block : block with { Rows = [] }),
        ],
    };

    private static LetterDraft Saying(params IEnumerable<string> texts)
    {
        var letter = PrintedLetter.Usual(1);
        List<string> all = [.. texts];
        return letter with { Blocks = [PrintedLetter.Block("greeting", BlockKind.Greeting, all), PrintedLetter.Block("plan", BlockKind.Plan, all) with { Heading = "For the next reed", IsList = true }, .. letter.Blocks.Skip(1)] };
    }
}
