using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Domain.People;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Injection;

/// <summary>
/// Every hostile text where people type, and on every page that shows it: it is shown as it was typed or refused beside its
/// field, and no page is made of more than a page of harmless words (OWASP ASVS 5.0, 1.1.2, 1.2.1, 1.2.2).
/// </summary>
public sealed partial class HostilePagesTests(HostileHost host) : IClassFixture<HostileHost>
{
    private const string Harmless = "plain words";

    [Fact]
    public async Task What_a_student_types_is_shown_as_typed_or_refused()
    {
        var scene = new HostileScene(host, await host.Student(), await host.Teacher());
        var shape = new PageShape();
        await scene.Announce([Harmless, Harmless]);
        await EachPage(scene, (_, page) => shape.Learn(page));
        (await scene.Announce(["a\u0007bell", Harmless])).ForEach(answer => shape.Learn(answer.Page));
        var shown = 0;
        foreach (var texts in HostileTexts.Sendable.Select(vector => vector.Text).Chunk(HostileScene.MostReeds))
        {
            var refused = await scene.Announce(texts);
            Assert.All(refused, answer => Refused(shape, answer.Text, answer.Page));
            await EachPage(scene, (path, page) => shape.Holds(page, path));
            var read = PageShape.TextOf((await scene.Teacher.See($"/batches/{scene.Code}")).Page);
            foreach (var text in texts.Where(text => refused.Count(answer => answer.Text == text) < 2))
            {
                Assert.Contains(PageShape.Plain(text), read, StringComparison.Ordinal);
                shown++;
            }
        }

        Assert.InRange(shown, 120, int.MaxValue);
    }

    [Fact]
    public async Task What_a_teacher_notes_at_the_bench_is_shown_as_typed_or_refused()
    {
        var scene = new HostileScene(host, await host.Student(), await host.Teacher());
        await scene.Announce([Harmless]);
        var bench = await scene.TakeIn();
        var shape = new PageShape();
        await Note(scene, bench, Harmless);
        shape.Learn((await scene.Teacher.See(bench)).Page);
        shape.Learn((await Note(scene, bench, "a\u0007bell")).Page);
        var kept = new List<string>();
        var form = await Form.At(scene.Teacher, bench, $"{bench}/entries");
        foreach (var vector in HostileTexts.Sendable.Where(vector => vector.Text.Length < 10_000))
        {
            var (saved, page) = await Note(scene, bench, vector.Text, form.Set("Operation", Parcel.NewOperation().Value.ToString()));
            if (saved)
            {
                kept.Add(vector.Text);
            }
            else
            {
                Refused(shape, vector.Text, page);
            }
        }

        var log = (await scene.Teacher.See(bench)).Page;
        shape.Holds(log, bench);
        Assert.InRange(kept.Count, 120, int.MaxValue);
        Assert.All(kept, text => Assert.Contains(PageShape.Plain(text), PageShape.TextOf(log), StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_a_teacher_writes_in_a_letter_is_read_and_printed_as_typed_or_refused()
    {
        var scene = new HostileScene(host, await host.Student(), await host.Teacher());
        await scene.Announce([Harmless]);
        await scene.TakeIn();
        var (letter, shape) = ($"/batches/{scene.Code}/letter", new PageShape());
        using (var saved = await (await Form.At(scene.Teacher, letter)).Set("Block.closing", Harmless).Post())
        {
            Assert.Equal($"{letter}?done=saved", saved.Leads());
        }

        shape.Learn((await scene.Teacher.See(letter)).Page);
        shape.Learn((await scene.Teacher.See($"/letters/{scene.Code}")).Page);
        using (var refused = await (await Form.At(scene.Teacher, letter)).Set("Block.closing", "a\u0007bell").Post())
        {
            shape.Learn((await refused.Read()).Page);
        }

        foreach (var text in HostileTexts.Sendable.Select(vector => vector.Text).Where(text => text.Length < 300).Chunk(10))
        {
            foreach (var words in text.Any(one => one.Any(char.IsControl)) ? text : [string.Join("\n\n", text)])
            {
                await Write(scene, letter, shape, words);
            }
        }
    }

    [Fact]
    public async Task A_name_is_set_apart_wherever_it_stands_or_refused_beside_its_field()
    {
        using var teacher = await host.Teacher();
        var shape = new PageShape();
        var visitor = host.Visitor();
        foreach (var wrong in new[] { "two\nlines", "a\0b" })
        {
            using var answer = await Join(visitor, wrong);
            shape.Learn((await answer.Read()).Page);
        }

        foreach (var vector in HostileTexts.Sendable.Where(vector => vector.Text.Length <= 1000))
        {
            using var someone = host.Visitor();
            using var answer = await Join(someone, vector.Text);
            Assert.Equal(PersonName.Read(vector.Text) is null, answer.Leads() != "/");
            if (answer.Leads() != "/")
            {
                Refused(shape, vector.Text, (await answer.Read()).Page);
            }
        }
    }

    [Theory]
    [InlineData("Sanne")]
    [InlineData("שרה 12")]
    [InlineData("<b>Mies</b> \" onmouseover=\"alert(1)")]
    [InlineData("{1} {0}")]
    public async Task On_every_page_a_students_name_stands_in_an_element_of_its_own(string name)
    {
        var student = host.Visitor();
        using var welcome = await Join(student, name);
        var scene = new HostileScene(host, student, await host.Teacher());
        await scene.Announce([Harmless]);
        var bench = await scene.TakeIn();
        string[] paths =
        [
            "/desk", "/arrival", $"/batches/{scene.Code}", $"/batches/{scene.Code}/arrival", $"/batches/{scene.Code}/first-look",
            $"/batches/{scene.Code}/common-thread", $"/batches/{scene.Code}/common-thread/evidence", $"/batches/{scene.Code}/letter", bench,
        ];
        var seen = 0;
        foreach (var path in paths)
        {
            using var page = new HtmlParser().ParseDocument((await scene.Teacher.See(path)).Page);
            foreach (var text in page.Body!.Descendants<IText>().Where(text => text.Text.Contains(name, StringComparison.Ordinal)))
            {
                // What the letter says, the teacher may change: there a name is part of the words.
                var inWords = text.Ancestors<IElement>().Any(element => element.LocalName == "textarea" || element.ClassName?.StartsWith("letter-", StringComparison.Ordinal) == true);
                Assert.True(inWords || text.ParentElement!.LocalName == "bdi", $"{path}: {text.ParentElement!.OuterHtml}");
                seen += inWords ? 0 : 1;
            }
        }

        Assert.InRange(seen, 7, int.MaxValue);
    }

    private static async Task EachPage(HostileScene scene, Action<string, string> look)
    {
        var batch = $"/batches/{scene.Code}";
        foreach (var path in new[] { batch, $"{batch}/slip" })
        {
            look(path, (await scene.Student.See(path)).Page);
        }

        foreach (var path in new[] { batch, $"{batch}/arrival", $"{batch}/first-look" })
        {
            look(path, (await scene.Teacher.See(path)).Page);
        }
    }

    // The words are still in their field, the field says why not, and nothing else has come of them.
    private static void Refused(PageShape shape, string text, string page)
    {
        shape.Holds(page, $"the answer to {text[..Math.Min(30, text.Length)]}");
        using var document = new HtmlParser().ParseDocument(page);
        var turnedAway = text.Contains('\0', StringComparison.Ordinal) && document.QuerySelector("h1")?.TextContent == "That page had been open too long";
        Assert.True(turnedAway || document.QuerySelector("[aria-invalid=true]") is not null, $"nothing is said of {text[..Math.Min(30, text.Length)]}");
    }

    private static async Task<(bool Kept, string Page)> Note(HostileScene scene, string bench, string words, Form? form = null)
    {
        using var answer = await (form ?? await Form.At(scene.Teacher, bench, $"{bench}/entries")).Set("Kind", "Note").Set("Words", words).Post();
        return answer.Leads() is not { } to ? (false, (await answer.Read()).Page)
            : Saved().IsMatch(to) ? (true, "")
            : (false, (await scene.Teacher.See(to)).Page);
    }

    private static async Task Write(HostileScene scene, string letter, PageShape shape, string words)
    {
        using var answer = await (await Form.At(scene.Teacher, letter)).Set("Block.closing", words).Post();
        if (answer.Leads() is null)
        {
            Refused(shape, words, (await answer.Read()).Page);
            return;
        }

        var read = (await scene.Teacher.See($"/letters/{scene.Code}")).Page;
        shape.Holds((await scene.Teacher.See(letter)).Page, letter);
        shape.Holds(read, "the letter");
        foreach (var paragraph in words.Split("\n\n"))
        {
            Assert.Contains(PageShape.Plain(paragraph), PageShape.TextOf(read), StringComparison.Ordinal);
        }
    }

    private async Task<HttpResponseMessage> Join(HttpClient visitor, string name) =>
        await (await Form.At(visitor, await host.Invite(ClinicHost.NewEmail("somebody"))))
            .Set("Form.Name", name).Set("Form.Age", "OldEnough").Set("Form.Password", ClinicHost.Password).Post();

    [GeneratedRegex("#entry-[0-9]+$")]
    private static partial Regex Saved();
}
