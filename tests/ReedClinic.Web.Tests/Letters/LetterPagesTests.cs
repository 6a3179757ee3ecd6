using System.Net;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

public sealed class LetterPagesTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_letter_goes_from_draft_through_its_gaps_to_the_student()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await WorkedOn(student);
        var path = $"/batches/{code}/letter";

        var draft = (await teacher.See(path)).Page;
        Assert.Contains("Dear Sanne,", draft, StringComparison.Ordinal);
        Assert.Contains("One thing is still missing.", draft, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/letters/{code}")).Status);
        Assert.Contains("Not sent yet.", (await teacher.See($"/letters/{code}")).Page, StringComparison.Ordinal);

        using var mended = await Form.Of(teacher, path, draft).Set("Verdict.verdict-two", "NeedsPlayingIn").Post();
        Assert.Equal($"{path}?done=mended", mended.Leads());
        using var saved = await (await Form.At(teacher, path)).Set("Block.lesson", "Mind the corners & <b>nothing</b> else.").Post();
        Assert.Equal($"{path}?done=saved", saved.Leads());

        var ready = (await teacher.See(path)).Page;
        Assert.Matches("^(?s:(?!.*Nothing is missing).*The letter can go as it is[.])", ready);
        var send = Form.Of(teacher, path, ready).Set("Step", "send");
        using var unread = await send.Post();
        Assert.Contains("Please tick that you have read it through.", (await unread.Read()).Page, StringComparison.Ordinal);
        send.Set("ReadThrough", "yes");
        using var sent = await send.Post();
        using var again = await send.Post();
        Assert.Equal($"{path}?done=sent", sent.Leads());
        Assert.Equal($"{path}?done=sent", again.Leads());

        var (status, letter, _) = await student.See($"/letters/{code}");
        Assert.Equal(HttpStatusCode.OK, status);
        Assert.Contains("Mind the corners &amp; &lt;b&gt;nothing&lt;/b&gt; else.", letter, StringComparison.Ordinal);
        Assert.DoesNotContain("Not sent yet.", letter, StringComparison.Ordinal);
        Assert.Contains("doesn’t change any more", WebUtility.HtmlDecode((await teacher.See(path)).Page), StringComparison.Ordinal);
        Assert.DoesNotContain("<textarea", (await teacher.See(path)).Page, StringComparison.Ordinal);
        Assert.Equal(HttpStatusCode.OK, (await teacher.See($"{path}/1")).Status);
        await NobodyElseReads(code, path);
        await ThereIsAFile(student, code);
    }

    [Fact]
    public async Task Of_two_teachers_the_second_keeps_what_was_typed_and_sees_what_stands()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await WorkedOn(student);
        var path = $"/batches/{code}/letter";
        var mine = (await Form.At(teacher, path)).Set("Block.habit", "Mine, typed with care.");
        using var theirs = await (await Form.At(teacher, path)).Set("Block.habit", "Theirs.").Post();

        using var late = await mine.Post();
        var page = (await late.Read()).Page;

        Assert.Contains("by you in another window", page, StringComparison.Ordinal);
        Assert.Matches(@"Its newest words were kept by \p{L}[^.]* on \d+ \p{L}+ \d{4}, \d\d:\d\d;", page);
        Assert.Contains("<p>Theirs.</p>", page, StringComparison.Ordinal);
        Assert.Contains("Mine, typed with care.", page, StringComparison.Ordinal);
        using var decided = await Form.Of(teacher, path, page).Post();
        Assert.Equal($"{path}?done=saved", decided.Leads());
        Assert.Contains("<p>Mine, typed with care.</p>", (await teacher.See($"/letters/{code}")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_text_that_is_too_long_is_refused_beside_its_part_and_stays()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await WorkedOn(student)}/letter";

        using var refused = await (await Form.At(teacher, path)).Set("Block.plan", new string('x', 6001)).Post();
        var page = (await refused.Read()).Page;

        Assert.Contains("id=\"f-Block-plan-error\"", page, StringComparison.Ordinal);
        Assert.Contains(new string('x', 6001), page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_gap_is_left_open_with_a_reason_and_taken_up_again()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await WorkedOn(student)}/letter";

        using var waived = await (await Form.At(teacher, path))
            .Set("Reason.verdict-two", "it follows by mail").Post();
        var page = (await teacher.See(path)).Page;
        Assert.Contains("Left open: it follows by mail", page, StringComparison.Ordinal);
        Assert.Contains("The letter can go as it is.", page, StringComparison.Ordinal);

        using var again = await Form.Of(teacher, path, page).Set("Reopen.verdict-two", "yes").Post();
        Assert.DoesNotContain("The letter can go as it is.", (await teacher.See(path)).Page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("save")]
    [InlineData("mend")]
    public async Task Whichever_button_is_pressed_everything_that_was_typed_is_kept(string step)
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await WorkedOn(student);
        var path = $"/batches/{code}/letter";

        using var kept = await (await Form.At(teacher, path))
            .Set("Block.habit", "Mine, typed with care.").Set("Reason.verdict-two", "it follows by mail").Set("Step", step).Post();

        Assert.Equal($"{path}?done=saved", kept.Leads());
        var page = (await teacher.See(path)).Page;
        Assert.Contains("<p>Mine, typed with care.</p>", page, StringComparison.Ordinal);
        Assert.Contains("Left open: it follows by mail", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task When_one_thing_is_refused_the_rest_is_kept_and_nothing_is_lost()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await WorkedOn(student)}/letter";

        using var refused = await (await Form.At(teacher, path))
            .Set("Block.habit", "Mine, typed with care.").Set("Reason.verdict-two", new string('y', 301)).Set("Step", "send").Post();
        var page = (await refused.Read()).Page;
        Assert.Contains("<p>Mine, typed with care.</p>", page, StringComparison.Ordinal);
        Assert.Contains(new string('y', 301), page, StringComparison.Ordinal);

        using var other = await (await Form.At(teacher, path))
            .Set("Block.habit", new string('x', 6001)).Set("Reason.verdict-two", "it follows by mail").Post();
        page = (await other.Read()).Page;
        Assert.Contains(new string('x', 6001), page, StringComparison.Ordinal);
        Assert.Contains("Left open: it follows by mail", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Words_typed_before_sending_are_kept_and_shown_before_they_go_out()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await WorkedOn(student);
        var path = $"/batches/{code}/letter";
        using var mended = await (await Form.At(teacher, path)).Set("Verdict.verdict-two", "NeedsPlayingIn").Post();

        using var held = await (await Form.At(teacher, path))
            .Set("Block.closing", "My own goodbye.").Set("ReadThrough", "yes").Set("Step", "send").Post();

        Assert.Equal($"/letters/{code}?before=sending", held.Leads());
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/letters/{code}")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await student.See($"/letters/{code}/file")).Status);
        var (_, shown, _) = await teacher.See(held.Leads()!);
        Assert.Contains("the letter has not been sent yet", shown, StringComparison.Ordinal);
        Assert.Contains("<p>My own goodbye.</p>", shown, StringComparison.Ordinal);

        using var sent = await Form.Of(teacher, path, shown).Set("ReadThrough", "yes").Set("Step", "send").Post();
        Assert.Equal($"{path}?done=sent", sent.Leads());
        Assert.Contains("<p>My own goodbye.</p>", (await student.See($"/letters/{code}")).Page, StringComparison.Ordinal);
        Assert.Contains($"href=\"/letters/{code}\">Read the whole letter</a>", (await student.See("/intake")).Page, StringComparison.Ordinal);
        var after = (await teacher.See(path)).Page;
        Assert.Contains("Next: post the reeds back", after, StringComparison.Ordinal);
        Assert.Contains("Back to the batch", (await teacher.See($"/letters/{code}")).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Whoever_looks_at_a_letter_as_it_will_be_read_sees_the_words_just_typed()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var code = await WorkedOn(student);
        var path = $"/batches/{code}/letter";

        using var looked = await (await Form.At(teacher, path)).Set("Block.closing", "Seen before it is sent.").Set("Step", "see").Post();

        Assert.Equal($"/letters/{code}?before=looking", looked.Leads());
        Assert.Contains("<p>Seen before it is sent.</p>", (await teacher.See(looked.Leads()!)).Page, StringComparison.Ordinal);
        using var again = await (await Form.At(teacher, path)).Set("Step", "see").Post();
        Assert.Equal($"/letters/{code}?before=looking", again.Leads());
    }

    [Fact]
    public async Task What_was_typed_while_somebody_else_filled_it_in_or_sent_the_letter_stays_in_sight()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await WorkedOn(student)}/letter";
        var mine = (await Form.At(teacher, path)).Set("Reason.verdict-two", "my own reason").Set("Block.habit", "Mine.");
        using var theirs = await (await Form.At(teacher, path)).Set("Reason.verdict-two", "their reason").Post();

        using var late = await mine.Post();
        var page = WebUtility.HtmlDecode((await late.Read()).Page);
        Assert.Contains("“their reason” was filled in here meanwhile, by somebody else or in another window of yours", page, StringComparison.Ordinal);
        Assert.Contains("my own reason", page, StringComparison.Ordinal);
        using var decided = await Form.Of(teacher, path, (await late.Read()).Page).Post();
        Assert.Contains("Left open: my own reason", (await teacher.See(path)).Page, StringComparison.Ordinal);

        var open = (await Form.At(teacher, path)).Set("Block.lesson", "Written too late.");
        using var sent = await (await Form.At(teacher, path)).Set("ReadThrough", "yes").Set("Step", "send").Post();
        Assert.Equal($"{path}?done=sent", sent.Leads());
        using var lost = await open.Post();
        Assert.Contains("Written too late.", (await lost.Read()).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Words_for_a_part_that_the_letter_has_no_place_for_are_refused_and_stay_in_sight()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await WorkedOn(student)}/letter";

        using var refused = await (await Form.At(teacher, path)).Set("Block.reed-9-story", "It sang.").Set("Block.habit", "Mine.").Post();

        using var page = new HtmlParser().ParseDocument((await refused.Read()).Page);
        Assert.Equal("It sang.", page.GetElementById("f-Block-reed-9-story")!.TextContent);
        Assert.Contains("wasn’t kept", page.Body!.TextContent, StringComparison.Ordinal);
        Assert.Equal("Mine.", page.QuerySelector("textarea[name='Block.habit']")!.TextContent.Trim());
    }

    [Theory]
    [InlineData("12")]
    [InlineData("3")]
    public async Task A_number_typed_while_somebody_else_filled_it_in_stays_a_number(string typed)
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await WorkedOn(student)}/letter";
        var mine = (await Form.At(teacher, path)).Set("Reason.verdict-two", typed);
        using var theirs = await (await Form.At(teacher, path)).Set("Reason.verdict-two", "their reason").Post();

        using var late = await mine.Post();

        using var page = new HtmlParser().ParseDocument((await late.Read()).Page);
        Assert.Equal(typed, page.QuerySelector("textarea[name='Reason.verdict-two']")!.TextContent.Trim());
    }

    [Fact]
    public async Task Other_words_in_a_form_that_was_kept_already_are_not_taken_for_the_same()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await WorkedOn(student)}/letter";
        var form = (await Form.At(teacher, path)).Set("Block.habit", "First words.");
        using var first = await form.Post();
        using var repeated = await form.Post();
        Assert.Equal($"{path}?done=saved", repeated.Leads());

        using var again = await form.Set("Block.habit", "Second words.").Post();

        Assert.Contains("Second words.", (await again.Read()).Page, StringComparison.Ordinal);
    }

    private static async Task ThereIsAFile(HttpClient student, string code)
    {
        foreach (var paper in new[] { "", "?paper=us-letter" })
        {
            using var file = await student.GetAsync(new Uri($"/letters/{code}/file{paper}", UriKind.Relative), Ct);

            Assert.Equal("application/pdf", file.Content.Headers.ContentType?.ToString());
            Assert.Equal("attachment", file.Content.Headers.ContentDisposition?.DispositionType);
            Assert.EndsWith(paper.Length == 0 ? $"{code}.pdf" : "-us-letter.pdf", file.Content.Headers.ContentDisposition?.FileName, StringComparison.Ordinal);
            Assert.Contains("sandbox", Assert.Single(file.Headers.GetValues("Content-Security-Policy")), StringComparison.Ordinal);
            Assert.True((await file.Content.ReadAsByteArrayAsync(Ct)).AsSpan().StartsWith("%PDF-"u8));
        }
    }

    private async Task NobodyElseReads(string code, string path)
    {
        using var other = await host.Student("Tove");
        Assert.Equal(HttpStatusCode.NotFound, (await other.See($"/letters/{code}")).Status);
        Assert.Equal(HttpStatusCode.NotFound, (await other.See($"/letters/{code}/file")).Status);
        Assert.NotEqual(HttpStatusCode.OK, (await other.See(path)).Status);
    }

    private Task<string> WorkedOn(HttpClient student) => BatchWorkedOn.Of(host, student);
}
