using System.Text.RegularExpressions;
using AngleSharp.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
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

    [Theory]
    [InlineData("recognise", "HowToRecognise", IntakeLimits.HowToRecognise, false)]
    [InlineData("bothers", "Bothers", IntakeLimits.Bothers, true)]
    public async Task What_a_student_types_is_shown_as_typed_or_refused(string step, string field, int longest, bool severalLines)
    {
        var scene = new HostileScene(host, await host.Student(), await host.Teacher());
        var shape = new PageShape();
        (string, string) Reed(string words, int number) => severalLines ? ($"{Harmless} {number}", words) : (words, Harmless);
        await scene.Announce([Reed(Harmless, 1), Reed(severalLines ? Harmless : $"{Harmless} too", 2)]);
        await EachPage(scene, (_, page) => shape.Learn(page));
        await scene.Try(step, field, ["a\u0007bell", Harmless], (_, _, page) => shape.Learn(page));

        var (plain, odd) = Sorted(longest, severalLines);
        foreach (var packs in Packed(plain, longest, severalLines ? "\n" : " ").Chunk(HostileScene.MostReeds))
        {
            await scene.Announce([.. packs.Select((pack, index) => Reed(pack.Words, index + 1))]);
            var read = "";
            await EachPage(scene, (path, page) => read = shape.Holds(page, path) is var text && path.EndsWith(scene.Code, StringComparison.Ordinal) ? text : read);
            Assert.All(packs.SelectMany(pack => pack.Texts), text => Assert.Contains(PageShape.Plain(text), read, StringComparison.Ordinal));
        }

        await scene.Try(step, field, odd, (text, taken, page) => Answered(shape, text, taken, page));
    }

    [Fact]
    public async Task What_a_teacher_notes_at_the_bench_is_shown_as_typed_or_refused()
    {
        var scene = new HostileScene(host, await host.Student(), await host.Teacher());
        await scene.Announce([(Harmless, Harmless)]);
        var bench = await scene.TakeIn();
        var shape = new PageShape();
        var form = await Form.At(scene.Teacher, bench, $"{bench}/entries");
        Task<(bool Kept, string Page)> NoteThis(string words) => Note(scene, bench, words, form.Set("Operation", Parcel.NewOperation().Value.ToString()));
        await NoteThis(Harmless);
        shape.Learn((await scene.Teacher.See(bench)).Page);
        shape.Learn((await NoteThis("a\u0007bell")).Page);

        // The draft is limited to what can be shown again: longer than that is turned away by the form itself.
        var (plain, odd) = Sorted(PlainText.LongestRemark, severalLines: true);
        foreach (var text in odd.Where(text => text.Length < 10_000))
        {
            var (kept, page) = await NoteThis(text);
            Answered(shape, text, kept, kept ? (await scene.Teacher.See(bench)).Page : page);
        }

        foreach (var pack in Packed(plain, PlainText.LongestRemark, "\n"))
        {
            Assert.True((await NoteThis(pack.Words)).Kept, $"refused: {pack.Words}");
        }

        var log = shape.Holds((await scene.Teacher.See(bench)).Page, bench);
        Assert.All(plain, text => Assert.Contains(PageShape.Plain(text), log, StringComparison.Ordinal));
    }

    [Fact]
    public async Task What_a_teacher_writes_in_a_letter_is_read_and_printed_as_typed_or_refused()
    {
        var scene = new HostileScene(host, await host.Student(), await host.Teacher());
        await scene.Announce([(Harmless, Harmless)]);
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

        var (plain, odd) = Sorted(LetterBlock.LongestText, severalLines: true);
        foreach (var pack in Packed(plain, LetterBlock.LongestText / 4, "\n\n"))
        {
            await Write(scene, letter, shape, pack.Words, pack.Texts);
        }

        foreach (var text in odd.Where(text => text.Length < 300))
        {
            await Write(scene, letter, shape, text, [text]);
        }
    }

    [Fact]
    public async Task A_name_is_set_apart_wherever_it_stands_or_refused_beside_its_field()
    {
        var shape = new PageShape();
        var form = await Uncookied();
        foreach (var wrong in new[] { "two\nlines", "a\0b" })
        {
            using var answer = await Join(form, wrong);
            shape.Learn((await answer.Read()).Page);
        }

        foreach (var vector in HostileTexts.Sendable.Where(vector => vector.Text.Length <= 1000))
        {
            using var answer = await Join(form, vector.Text);
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
        using var welcome = await Join(await Form.At(student, await host.Invite(ClinicHost.NewEmail("somebody"))), name);
        var scene = new HostileScene(host, student, await host.Teacher());
        await scene.Announce([(Harmless, Harmless)]);
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

    private static void Answered(PageShape shape, string text, bool taken, string page)
    {
        if (taken)
        {
            Assert.Contains(PageShape.Plain(text), shape.Holds(page, $"the page with {text}"), StringComparison.Ordinal);
        }
        else
        {
            Refused(shape, text, page);
        }
    }

    // Those that a field takes, and those that it may refuse: they are typed alone.
    private static (List<string> Plain, List<string> Odd) Sorted(int longest, bool severalLines)
    {
        bool IsPlain(string text) => text.Length <= longest && !text.Any(c => char.IsControl(c) && !(severalLines && c is '\n' or '\r' or '\t'));
        var all = HostileTexts.Sendable.Select(vector => vector.Text).ToLookup(IsPlain);
        Assert.InRange(all[true].Count(), 120, int.MaxValue);
        return ([.. all[true]], [.. all[false]]);
    }

    // Several texts to a field, so that few pages show them all.
    private static IEnumerable<(string Words, List<string> Texts)> Packed(IEnumerable<string> texts, int longest, string between)
    {
        var pack = new List<string>();
        foreach (var text in texts)
        {
            // A line feed is two characters in a form.
            if (pack.Count > 0 && pack.Append(text).Sum(one => one.Length + (2 * between.Length)) > longest)
            {
                yield return (string.Join(between, pack), pack);
                pack = [];
            }

            pack.Add(text);
        }

        yield return (string.Join(between, pack), pack);
    }

    private static async Task<(bool Kept, string Page)> Note(HostileScene scene, string bench, string words, Form form)
    {
        using var answer = await form.Set("Kind", "Note").Set("Words", words).Post();
        return answer.Leads() is not { } to ? (false, (await answer.Read()).Page)
            : Saved().IsMatch(to) ? (true, "")
            : (false, (await scene.Teacher.See(to)).Page);
    }

    private static async Task Write(HostileScene scene, string letter, PageShape shape, string words, IEnumerable<string> texts)
    {
        using var answer = await (await Form.At(scene.Teacher, letter)).Set("Block.closing", words).Post();
        if (answer.Leads() is null)
        {
            Assert.All(texts, text => Assert.Contains(text, char.IsControl));
            Refused(shape, words, (await answer.Read()).Page);
            return;
        }

        shape.Holds((await scene.Teacher.See(letter)).Page, letter);
        var read = shape.Holds((await scene.Teacher.See($"/letters/{scene.Code}")).Page, "the letter");
        Assert.All(texts.SelectMany(text => text.Split("\n\n")), paragraph => Assert.Contains(PageShape.Plain(paragraph), read, StringComparison.Ordinal));
    }

    // The form of somebody whose browser never keeps what joining brings.
    private async Task<Form> Uncookied()
    {
        var visitor = host.CreateClient(new() { BaseAddress = new Uri("https://localhost"), HandleCookies = false, AllowAutoRedirect = false });
        var link = await host.Invite(ClinicHost.NewEmail("somebody"));
        using var page = await visitor.GetAsync(new Uri(link, UriKind.Relative), TestContext.Current.CancellationToken);
        visitor.DefaultRequestHeaders.Add("Cookie", page.Headers.GetValues("Set-Cookie").Select(cookie => cookie.Split(';')[0]));
        return Form.Of(visitor, link, (await page.Read()).Page);
    }

    // Each by a link of their own.
    private async Task<HttpResponseMessage> Join(Form form, string name) => await form
        .Set("Form.Operation", Parcel.NewOperation().Value.ToString())
        .Set("Form.Name", name).Set("Form.Age", "OldEnough").Set("Form.Password", ClinicHost.Password)
        .PostTo(await host.Invite(ClinicHost.NewEmail("somebody")));

    [GeneratedRegex("#entry-[0-9]+$")]
    private static partial Regex Saved();
}
