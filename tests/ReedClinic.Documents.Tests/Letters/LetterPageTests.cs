using ReedClinic.Documents.Letters;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Documents.Tests.Letters;

public sealed partial class LetterPageTests
{
    private static readonly DateTimeOffset Day = new(2026, 3, 9, 12, 0, 0, TimeSpan.Zero);
    private static readonly ReedId One = new(Guid.CreateVersion7(Day));
    private static readonly ReedId Two = new(Guid.CreateVersion7(Day));

    [Fact]
    public void Blocks_about_the_same_reed_stand_together_and_empty_ones_are_left_out()
    {
        var sections = LetterPage.Sections(Letter());

        Assert.Equal([null, One, Two, null, null], sections.Select(section => section.Reed));
        Assert.Equal(["greeting", "reed", "reed", "plan", "closing"], sections.Select(section => section.Kind));
        Assert.Contains("Reed 1 <span class=\"letter-recognise\">green thread</span>", sections[1].Head, StringComparison.Ordinal);
        Assert.Contains("<p>It came well.</p>", sections[1].Body, StringComparison.Ordinal);
        Assert.Contains("<th scope=\"row\">crow</th><td>a C, 20 cents sharp</td><td>a C <span class=\"letter-nearer\">better</span>", sections[1].Table, StringComparison.Ordinal);
        Assert.Contains("<li>Play this one first.</li>", sections[1].Rest, StringComparison.Ordinal);
        Assert.Contains("<ol class=\"letter-list\">\n<li>Sharpen.</li>\n<li>Stop.</li>\n</ol>", sections[3].Body, StringComparison.Ordinal);
    }

    [Fact]
    public void What_care_says_of_a_knife_stands_outside_what_is_folded()
    {
        const string caution = "Please take no knife to it.";
        LetterBlock Care(params string[] paragraphs) => new("care", BlockKind.Care, [.. paragraphs.Select(LetterParagraph.Plain)]) { Heading = "Care" };

        var section = Assert.Single(LetterPage.Sections(Letter() with { Blocks = [Care("Soak it.", caution)] }));

        Assert.Equal(("<p>Soak it.</p>\n", $"<p>{caution}</p>\n"), (section.Body, section.Rest));
        Assert.Contains(caution, Assert.Single(LetterPage.Sections(Letter() with { Blocks = [Care(caution)] })).Body, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_asked_of_a_reed_has_an_address_of_its_own()
    {
        var letter = Letter();
        LetterBlock[] more = [.. letter.Blocks.TakeWhile(block => block.Reed != Two), new("reed-1-answers", BlockKind.ReedAnswers, [LetterParagraph.Plain("You asked: soak it briefly.")]) { Reed = One }];

        var reed = Assert.Single(LetterPage.Sections(letter with { Blocks = more }), section => section.Reed == One);

        Assert.Equal("part-reed-1-asked", reed.Asked);
        Assert.Contains("<div class=\"letter-asked\" id=\"part-reed-1-asked\">\n<h3>What you asked about reed 1</h3>\n<p>You asked: soak it briefly.</p>\n</div>", reed.Rest, StringComparison.Ordinal);
        Assert.All(LetterPage.Sections(letter), section => Assert.Null(section.Asked));
    }

    [Fact]
    public void What_may_be_behind_the_lesson_stands_in_its_part()
    {
        var letter = Letter();
        LetterBlock[] taught =
        [
            new("lesson", BlockKind.Lesson, [LetterParagraph.Plain("The corners are thick.")]) { Heading = "What they have in common" },
            new("habit", BlockKind.Habit, [LetterParagraph.Plain("Perhaps the knife turns back.")]),
        ];

        var sections = LetterPage.Sections(letter with { Blocks = [.. letter.Blocks, .. taught] });

        Assert.DoesNotContain(sections, section => section.Kind == "habit");
        Assert.Contains("Perhaps the knife", Assert.Single(sections, section => section.Kind == "lesson").Rest, StringComparison.Ordinal);
        Assert.Equal("habit", Assert.Single(LetterPage.Sections(letter with { Blocks = [taught[1]] })).Kind);
    }

    [Fact]
    public void Plain_text_counts_the_steps_of_the_plan_and_says_what_its_rows_are()
    {
        var plain = LetterFile.Plain(Letter(), Day);

        Assert.Contains("\n1. Sharpen.\n2. Stop.\n", plain, StringComparison.Ordinal);
        Assert.Contains("How it played when it came → how it plays now:\n- crow: a C, 20 cents sharp → a C\n", plain, StringComparison.Ordinal);
    }

    [Fact]
    public void A_letter_that_is_kept_elsewhere_has_its_drawings_and_tells_them_in_words()
    {
        var letter = Letter() with { Reeds = [new(One, 1, "green thread", [new ReedMark(new Place(Zone.Transition), MarkKind.Worked, "blended <b>")]), new(Two, 2, "plum", [])] };

        var page = LetterFile.Html(letter, Day, printed: "letter-X.pdf");

        Assert.Contains("<li>Worked: slope from heart to tip: blended &lt;b&gt;</li>", page, StringComparison.Ordinal);
        Assert.Contains("<a href=\"letter-X.pdf\">", page, StringComparison.Ordinal);
        var drawing = Assert.Single(Svg().Matches(page)).Value;
        Assert.Contains("blended &lt;b&gt;", drawing, StringComparison.Ordinal);
        Assert.Equal("svg", System.Xml.Linq.XElement.Parse(drawing).Name.LocalName);
        Assert.True(page.IndexOf("<svg", StringComparison.Ordinal) < page.IndexOf("<li>Worked", StringComparison.Ordinal));
        Assert.DoesNotContain("<svg", LetterFile.Html(Letter(), Day), StringComparison.Ordinal);
        Assert.DoesNotContain("<ol>", LetterFile.Html(Letter(), Day, printed: "letter-X.pdf").Replace("<ol class", "", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("letter-X.pdf", LetterFile.Html(Letter(), Day, printed: "letter-X.pdf"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_crows_way_is_drawn_after_the_words_that_explain_it_and_before_its_table()
    {
        var crow = new CrowPicture("C", 442, "From 20 cents above C to C in one pass", [new(0, 20, 20), new(1, 0, 0)], [new(["clip"], "20 cents down", "Clip: 20 cents down", false)]);
        var letter = Letter() with { Reeds = [new(One, 1, "green thread", []) { Crow = crow }, new(Two, 2, "plum", [])] };

        var page = LetterFile.Html(letter, Day);

        Assert.True(page.IndexOf("<p>It is better.</p>", StringComparison.Ordinal) < page.IndexOf("<svg", StringComparison.Ordinal));
        Assert.True(page.IndexOf("<svg", StringComparison.Ordinal) < page.IndexOf("<table", StringComparison.Ordinal));
        Assert.Contains("<li>pass 1: Clip: 20 cents down</li>", page, StringComparison.Ordinal);
        Assert.All(Svg().Matches(page), drawing => Assert.Equal("svg", System.Xml.Linq.XElement.Parse(drawing.Value).Name.LocalName));
    }

    [System.Text.RegularExpressions.GeneratedRegex("<svg.*?</svg>", System.Text.RegularExpressions.RegexOptions.Singleline)]
    private static partial System.Text.RegularExpressions.Regex Svg();

    [Fact]
    public void Two_parts_never_have_the_same_address()
    {
        var sections = LetterPage.Sections(Letter() with { Blocks = [.. Letter().Blocks, .. Letter().Blocks] });

        Assert.Equal(["part-reed-1", "part-reed-2"], sections.Where(section => section.Reed is not null).Select(section => section.Id).OfType<string>());
        Assert.Equal("Reed 1", sections.First(section => section.Id == "part-reed-1").Name);
    }

    [Fact]
    public void Whatever_was_typed_stays_text()
    {
        const string Typed = "<script>alert('x')</script> & \"quoted\" </p><img src=x onerror=y>";
        var letter = Letter() with
        {
            StudentName = Typed,
            Code = Typed,
            Reeds = [new(One, 1, Typed, []), new(Two, 2, Typed, [])],
            Blocks =
            [
                .. Letter().Blocks.Select(block => block with
                {
                    Heading = Typed,
                    Paragraphs = [LetterParagraph.Plain(Typed)],
                    Rows = [new(Typed, Typed, Typed, Movement.Same, [])],
                }),
            ],
        };

        var html = Html(letter);

        Assert.DoesNotContain("<script", html, StringComparison.Ordinal);
        Assert.DoesNotContain("<img", html, StringComparison.Ordinal);
        Assert.Contains("&lt;script&gt;", html, StringComparison.Ordinal);
    }

    [Fact]
    public void Letters_of_other_scripts_and_signs_of_music_stay_readable()
    {
        var html = Html(Letter() with { Blocks = [Block("greeting", BlockKind.Greeting, "Dear Łucja, Ольга, 王: B♭ and C♯ “so”\nand don't 'so'")] });

        Assert.Contains("Dear Łucja, Ольга, 王: B♭ and C♯ “so”<br>and don’t &#x27;so&#x27;", html, StringComparison.Ordinal);
    }

    [Fact]
    public void The_day_is_said_in_words() => Assert.Equal("9 March 2026", LetterPage.Day(Day));

    private static string Html(LetterDraft letter) =>
        string.Concat(LetterPage.Sections(letter).Select(section => section.Head + section.Body + section.BeforeCrow + section.Rest));

    private static LetterBlock Block(string key, BlockKind kind, params string[] paragraphs) =>
        new(key, kind, [.. paragraphs.Select(LetterParagraph.Plain)]);

    private static LetterDraft Letter() => new(
        new BatchId(Guid.CreateVersion7(Day)), "7KP-W3MQ", "Ines", "Mara", ScrapeStyle.LongScrape,
        [new(One, 1, "green thread", []), new(Two, 2, "blue thread", [])],
        [
            Block("greeting", BlockKind.Greeting, "Dear Ines,", "Thank you."),
            Block("done-well", BlockKind.DoneWell) with { Heading = "What you do well" },
            Block("reed-1-story", BlockKind.ReedStory, "It came well.") with { Reed = One, Heading = "Reed one" },
            Block("reed-1-now", BlockKind.ReedNow, "It is better.") with
            {
                Reed = One,
                Rows = [new("crow", "a C, 20 cents sharp", "a C", Movement.Nearer, [])],
            },
            Block("reed-1-use", BlockKind.ReedUse, "Play this one first.") with { Reed = One, IsList = true },
            Block("reed-2-story", BlockKind.ReedStory, "So did this.") with { Reed = Two, Heading = "Reed two" },
            Block("plan", BlockKind.Plan, "Sharpen.", "Stop.") with { Heading = "For the next reed", IsList = true },
            Block("closing", BlockKind.Closing, "Play well.", "Mara"),
        ]);
}
