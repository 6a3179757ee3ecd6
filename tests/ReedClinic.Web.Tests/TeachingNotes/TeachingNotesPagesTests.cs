using System.Net;
using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;
using ReedClinic.Web.Tests.Letters;

namespace ReedClinic.Web.Tests.TeachingNotes;

public sealed class TeachingNotesPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_note_goes_from_its_form_into_a_letter_without_a_script_and_the_student_reads_it()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var title = await KeepAsync(teacher, "In {reeds}: <b>{place}</b> & {blade}.", "https://example.org/corners?a=1&b=2", "tip-corners-thick");
        var code = await BatchWorkedOn.Of(host, student);
        var path = $"/batches/{code}/letter";
        var page = await See(teacher, path);
        var note = page.QuerySelectorAll(".letter-note").Single(part => part.QuerySelector("summary")!.TextContent == title);
        Assert.Null(note.Closest(".letter-notes-rest"));
        Assert.Contains("found in reeds one and two.", note.TextContent, StringComparison.Ordinal);
        Assert.Contains("Still to be filled in by you: {blade}", note.TextContent, StringComparison.Ordinal);
        var id = note.QuerySelector("button")!.GetAttribute("value")!;

        using var nowhere = await (await Form.At(teacher, path)).Set("NotePut", id).Set("Block.habit", "Typed meanwhile.").Post();
        Assert.Contains("Choose the part that it should go into.", (await nowhere.Read()).Page, StringComparison.Ordinal);
        using var put = await (await Form.At(teacher, path)).Set("NotePut", id).Set("NotePart", "lesson").Set("Block.lesson", "Mine first.").Post();
        Assert.Equal($"{path}?done=saved", put.Leads());

        page = await See(teacher, path);
        Assert.Equal("Typed meanwhile.", Words(page, "habit"));
        Assert.Equal("Mine first.\n\nIn reeds one and two: <b>the corners of the tip</b> & {blade}.\n\nhttps://example.org/corners?a=1&b=2", Words(page, "lesson"));
        Assert.Equal("{blade}", page.QuerySelector(".letter-lesson mark")!.TextContent);
        Assert.Contains("still waits for your words", page.QuerySelector("#gaps")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.QuerySelector("#gaps a[href$='#f-Block-lesson']"));

        using var filled = await (await Form.At(teacher, path)).Set("Block.lesson", Words(page, "lesson").Replace("{blade}", "both blades", StringComparison.Ordinal)).Set("Verdict.verdict-two", "NeedsPlayingIn").Post();
        using var sent = await (await Form.At(teacher, path)).Set("Step", "send").Set("ReadThrough", "yes").Post();
        Assert.Equal($"{path}?done=sent", sent.Leads());
        var letter = await See(student, $"/letters/{code}");
        var link = letter.QuerySelector(".letter-lesson a")!;
        Assert.Equal(("https://example.org/corners?a=1&b=2", "https://example.org/corners?a=1&b=2", "noopener noreferrer nofollow"), (link.GetAttribute("href"), link.TextContent, link.GetAttribute("rel")));
        Assert.Null(letter.QuerySelector(".letter-lesson b"));
    }

    [Fact]
    public async Task A_note_that_cannot_be_put_in_says_why_and_the_rest_is_kept()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";

        using var gone = await (await Form.At(teacher, path)).Set("NotePut", Guid.Empty.ToString()).Set("NotePart", "lesson").Set("Block.habit", "Typed meanwhile.").Post();
        using var nowhere = await (await Form.At(teacher, path)).Set("NotePut", Guid.Empty.ToString()).Set("NotePart", "no-such-part").Post();

        Assert.Contains("offered any more, so nothing was put in", (await gone.Read()).Page, StringComparison.Ordinal);
        Assert.Contains("in the letter any more: choose another", (await nowhere.Read()).Page, StringComparison.Ordinal);
        Assert.Equal("Typed meanwhile.", Words(await See(teacher, path), "habit"));
    }

    [Fact]
    public async Task What_is_refused_stands_beside_its_field_and_nothing_typed_is_lost()
    {
        using var teacher = await host.Teacher();

        using var refused = await (await Form.At(teacher, "/notes/new")).Set("Form.Title", "").Set("Form.Text", "Dear {studnet}").Set("Form.Link", "https://a@evil.example/").Set("Form.Kinds", "tip-long").Set("Form.Step", "keep").Post();

        var page = new HtmlParser().ParseDocument((await refused.Read()).Page);
        Assert.NotNull(page.GetElementById("f-Form-Title-error"));
        Assert.Contains("{studnet}", page.GetElementById("f-Form-Text-error")!.TextContent, StringComparison.Ordinal);
        Assert.NotNull(page.GetElementById("f-Form-Link-error"));
        Assert.Equal("Dear {studnet}", page.GetElementById("f-Form-Text")!.TextContent.Trim());
        Assert.Equal("https://a@evil.example/", page.GetElementById("f-Form-Link")!.GetAttribute("value"));
        Assert.True(page.QuerySelector("input[name='Form.Kinds'][value='tip-long']")!.HasAttribute("checked"));
        Assert.DoesNotContain("href=\"https://a@", page.Source.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_is_shown_filled_in_before_it_is_kept()
    {
        using var teacher = await host.Teacher();

        using var shown = await (await Form.At(teacher, "/notes/new")).Set("Form.Title", "x").Set("Form.Text", "On {reeds}, {student}.").Set("Form.Step", "show").Post();

        var page = new HtmlParser().ParseDocument((await shown.Read()).Page);
        Assert.Contains("On reeds one and two, Mira.", page.QuerySelector(".note-preview")!.TextContent, StringComparison.Ordinal);
        Assert.Equal("On {reeds}, {student}.", page.GetElementById("f-Form-Text")!.TextContent.Trim());
    }

    [Fact]
    public async Task Of_two_teachers_the_second_sees_theirs_and_keeps_what_was_typed()
    {
        using var teacher = await host.Teacher();
        var title = await KeepAsync(teacher, "First words.", null, "tip-long");
        var address = await AddressOf(teacher, title);
        var mine = (await Form.At(teacher, address)).Set("Form.Text", "Mine.").Set("Form.Step", "keep");
        using var theirs = await (await Form.At(teacher, address)).Set("Form.Text", "Theirs.").Set("Form.Step", "keep").Post();

        using var late = await mine.Post();
        var page = (await late.Read()).Page;

        var document = new HtmlParser().ParseDocument(page);
        Assert.Equal("Theirs.", document.QuerySelector(".problems .as-written")!.TextContent);
        Assert.Equal("Mine.", document.GetElementById("f-Form-Text")!.TextContent.Trim());
        using var again = await Form.Of(teacher, address, page).Set("Form.Step", "keep").Post();
        Assert.Equal("/notes?done=kept", again.Leads());
        Assert.Equal("Mine.", (await See(teacher, address)).GetElementById("f-Form-Text")!.TextContent.Trim());
    }

    [Fact]
    public async Task It_is_retired_and_brought_back_and_stands_under_what_it_is_filed_under()
    {
        using var teacher = await host.Teacher();
        var title = await KeepAsync(teacher, "Words.", null, "tip-long");
        var address = await AddressOf(teacher, title);
        Assert.Equal("Tip too long", await GroupOf(teacher, title));

        using var retired = await (await Form.At(teacher, address)).Set("Form.Step", "retire").Post();
        Assert.Equal("/notes?done=retired", retired.Leads());
        Assert.Equal("Not offered any more", await GroupOf(teacher, title));
        using var back = await (await Form.At(teacher, address)).Set("Form.Step", "bring-back").Post();
        Assert.Equal("/notes?done=back", back.Leads());
        Assert.Equal("Tip too long", await GroupOf(teacher, title));
    }

    [Fact]
    public async Task It_is_deleted_after_it_was_asked_once_more_and_not_when_somebody_changed_it_meanwhile()
    {
        using var teacher = await host.Teacher();
        var title = await KeepAsync(teacher, "First words.", null, "tip-long");
        var address = await AddressOf(teacher, title);
        var stale = (await Form.At(teacher, address)).Set("Form.Step", "delete");
        Assert.NotNull((await See(teacher, address)).QuerySelector("details.note-delete:not([open]) button[value='delete']"));
        using var changed = await (await Form.At(teacher, address)).Set("Form.Text", "Theirs.").Set("Form.Step", "keep").Post();

        using var late = await stale.Post();
        var page = new HtmlParser().ParseDocument((await late.Read()).Page);
        Assert.Equal("Theirs.", page.QuerySelector(".problems .as-written")!.TextContent);
        Assert.Contains("Filed under: tip too long", page.QuerySelector(".problems")!.TextContent, StringComparison.Ordinal);
        Assert.Contains("you in another window", page.QuerySelector(".problems")!.TextContent, StringComparison.Ordinal);
        using var gone = await (await Form.At(teacher, address)).Set("Form.Step", "delete").Post();
        Assert.Equal("/notes?done=deleted", gone.Leads());
        using var after = await teacher.GetAsync(new Uri(address, UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Equal(HttpStatusCode.NotFound, after.StatusCode);
    }

    [Fact]
    public async Task Kept_twice_with_other_words_the_second_is_not_called_kept_and_goes_on_from_what_stands()
    {
        using var teacher = await host.Teacher();
        var title = $"Twice {Parcel.NewOperation().Value:N}";
        var form = (await Form.At(teacher, "/notes/new")).Set("Form.Title", title).Set("Form.Text", "First words.").Set("Form.Step", "keep");
        using var first = await form.Post();
        Assert.Equal("/notes?done=kept", first.Leads());

        using var second = await form.Set("Form.Text", "Second words.").Post();
        var page = (await second.Read()).Page;
        Assert.Equal("First words.", new HtmlParser().ParseDocument(page).QuerySelector(".problems .as-written")!.TextContent);
        var address = new HtmlParser().ParseDocument(page).QuerySelector("form.note-form")!.GetAttribute("action")!;
        using var again = await Form.Of(teacher, address, page).Set("Form.Step", "keep").Post();
        Assert.Equal("/notes?done=kept", again.Leads());
        Assert.Equal("Second words.", (await See(teacher, await AddressOf(teacher, title))).GetElementById("f-Form-Text")!.TextContent.Trim());
    }

    [Fact]
    public async Task What_is_wrong_with_the_filing_is_told_to_whoever_hears_its_fields()
    {
        using var teacher = await host.Teacher();

        using var refused = await (await Form.At(teacher, "/notes/new")).Set("Form.Title", "x").Set("Form.Text", "y").Set("Form.Kinds", "no-such-kind").Set("Form.Step", "keep").Post();

        var page = new HtmlParser().ParseDocument((await refused.Read()).Page);
        Assert.NotEmpty(page.GetElementById("f-Form-Kinds-error")!.TextContent);
        Assert.All(page.QuerySelectorAll(".note-kinds fieldset"), group => Assert.Equal("f-Form-Kinds-error", group.GetAttribute("aria-describedby")));
    }

    [Fact]
    public async Task Retired_in_two_windows_it_is_retired_and_what_was_typed_in_either_is_kept_or_stays_in_sight()
    {
        using var teacher = await host.Teacher();
        var title = await KeepAsync(teacher, "First words.", null, "tip-long");
        var address = await AddressOf(teacher, title);
        var same = await Form.At(teacher, address);
        var typed = (await Form.At(teacher, address)).Set("Form.Text", "Typed meanwhile.");
        using var first = await (await Form.At(teacher, address)).Set("Form.Text", "Typed first.").Set("Form.Step", "retire").Post();
        Assert.Equal("/notes?done=retired", first.Leads());

        using var again = await same.Set("Form.Text", "Typed first.").Set("Form.Step", "retire").Post();
        using var late = await typed.Set("Form.Step", "retire").Post();

        Assert.Equal("/notes?done=retired", again.Leads());
        Assert.Equal("Not offered any more", await GroupOf(teacher, title));
        var page = new HtmlParser().ParseDocument((await late.Read()).Page);
        Assert.Equal("Typed first.", page.QuerySelector(".problems .as-written")!.TextContent);
        Assert.Equal("Typed meanwhile.", page.GetElementById("f-Form-Text")!.TextContent.Trim());
    }

    [Theory]
    [InlineData("x", 300, "")]
    [InlineData("\U0001F3B5", 300, "")]
    [InlineData("x", 100, "Short words\n")]
    [InlineData("x", 100, "Many short words that go on for a while ")]
    public async Task A_long_word_without_a_space_shows_its_beginning_in_the_list(string letter, int times, string before)
    {
        using var teacher = await host.Teacher();
        var title = await KeepAsync(teacher, before + string.Concat(Enumerable.Repeat(letter, times)), null, "tip-long");

        var beginning = (await See(teacher, "/notes")).QuerySelectorAll("li").Single(line => line.QuerySelector("a")?.TextContent == title).QuerySelector(".hint")!.TextContent;

        Assert.EndsWith("…", beginning, StringComparison.Ordinal);
        Assert.InRange(beginning.Length, 20, 112);
        Assert.DoesNotContain('\uFFFD', beginning);
    }

    private static async Task<string> KeepAsync(HttpClient teacher, string text, string? link, string kind)
    {
        var title = $"Note {Parcel.NewOperation().Value:N}";
        using var kept = await (await Form.At(teacher, "/notes/new"))
            .Set("Form.Title", title).Set("Form.Text", text).Set("Form.Link", link ?? "").Set("Form.Kinds", kind).Set("Form.Step", "keep").Post();
        Assert.Equal("/notes?done=kept", kept.Leads());
        return title;
    }

    private static async Task<string> AddressOf(HttpClient teacher, string title) =>
        (await See(teacher, "/notes")).QuerySelectorAll("a").Single(link => link.TextContent == title).GetAttribute("href")!;

    private static async Task<string> GroupOf(HttpClient teacher, string title) =>
        (await See(teacher, "/notes")).QuerySelectorAll("a").Single(link => link.TextContent == title).Closest("section")!.QuerySelector("h2")!.TextContent;

    private static async Task<IHtmlDocument> See(HttpClient visitor, string path)
    {
        var (status, page, _) = await visitor.See(path);
        Assert.Equal(HttpStatusCode.OK, status);
        return new HtmlParser().ParseDocument(page);
    }

    private static string Words(IHtmlDocument page, string key) => page.QuerySelector($"textarea[name='Block.{key}']")!.TextContent.Trim();
}
