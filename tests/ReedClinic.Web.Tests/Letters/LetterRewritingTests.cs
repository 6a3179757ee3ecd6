using AngleSharp.Html.Dom;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Letters;

public sealed class LetterRewritingTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task A_part_is_written_afresh_beside_words_that_were_not_kept_yet_and_taken_back()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        Assert.Null(Button((await See(teacher, path)), "afresh:0:lesson"));
        using var kept = await (await Form.At(teacher, path)).Set("Block.lesson", "My own lesson.").Post();

        using var anew = await (await Form.At(teacher, path))
            .Set("Block.lesson", "Typed last, not kept yet.").Set("Block.habit", "Typed in another part.").Set("Anew", "afresh:0:lesson").Post();

        Assert.Equal($"{path}?done=afresh&part=lesson&from=2", anew.Leads());
        var page = await See(teacher, anew.Leads()!);
        Assert.DoesNotContain("My own lesson.", Words(page, "lesson"), StringComparison.Ordinal);
        Assert.DoesNotContain("Typed last", Words(page, "lesson"), StringComparison.Ordinal);
        Assert.Equal("Typed in another part.", Words(page, "habit"));
        Assert.Null(Button(page, "afresh:0:lesson"));
        Assert.NotNull(Button(page, "afresh:0:habit"));
        Assert.True(Button(page, "back:2:lesson")!.HasAttribute("autofocus"));

        using var back = await Form.Of(teacher, path, page.Source.Text).Set("Anew", "back:2:lesson").Post();

        Assert.Equal($"{path}?done=back&part=lesson&from=3", back.Leads());
        page = await See(teacher, back.Leads()!);
        Assert.Equal("Typed last, not kept yet.", Words(page, "lesson"));
        Assert.Equal("Typed in another part.", Words(page, "habit"));
    }

    [Fact]
    public async Task Other_words_stay_through_the_next_visit_and_where_there_are_none_it_is_said_beside_the_part()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        var before = Words(await See(teacher, path), "reed-1-story");

        using var other = await (await Form.At(teacher, path)).Set("Anew", "other:0:reed-1-story").Post();

        Assert.Equal($"{path}?done=other&part=reed-1-story&from=0", other.Leads());
        var after = Words(await See(teacher, path), "reed-1-story");
        Assert.NotEqual(before, after);
        using var back = await (await Form.At(teacher, path)).Set("Anew", "back:0:reed-1-story").Post();
        Assert.Equal(before, Words(await See(teacher, back.Leads()!), "reed-1-story"));

        using var none = await (await Form.At(teacher, path)).Set("Anew", "other:0:cautions").Set("Block.habit", "Typed meanwhile.").Post();
        var (_, page, _) = await none.Read();
        Assert.Contains("There are no other words for this part.", page, StringComparison.Ordinal);
        Assert.Contains("id=\"f-Block-cautions-error\"", page, StringComparison.Ordinal);
        Assert.Equal("Typed meanwhile.", Words(await See(teacher, path), "habit"));
    }

    [Fact]
    public async Task Of_two_teachers_the_second_writes_nothing_afresh_over_what_stands()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        using var kept = await (await Form.At(teacher, path)).Set("Block.lesson", "Mine.").Post();
        var open = (await Form.At(teacher, path)).Set("Anew", "afresh:0:lesson");
        using var theirs = await (await Form.At(teacher, path)).Set("Block.lesson", "Theirs.").Post();

        using var late = await open.Post();

        Assert.Contains("by you in another window", (await late.Read()).Page, StringComparison.Ordinal);
        Assert.Equal("Theirs.", Words(await See(teacher, path), "lesson"));
    }

    [Fact]
    public async Task A_reason_typed_in_the_same_press_is_nobody_elses_change_and_only_the_last_change_is_taken_back()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        using var kept = await (await Form.At(teacher, path)).Set("Block.lesson", "Mine.").Post();

        using var anew = await (await Form.At(teacher, path)).Set("Reason.verdict-two", "It is tried tomorrow.").Set("Anew", "afresh:0:lesson").Post();

        Assert.Equal($"{path}?done=afresh&part=lesson&from=1", anew.Leads());
        Assert.NotNull(Button(await See(teacher, anew.Leads()!), "back:1:lesson"));
        using var theirs = await (await Form.At(teacher, path)).Set("Block.habit", "Theirs.").Post();
        var page = await See(teacher, anew.Leads()!);
        Assert.Null(Button(page, "back:1:lesson"));
        Assert.Null(page.QuerySelector("#f-Block-lesson-anew"));
    }

    [Fact]
    public async Task Enter_in_a_field_keeps_the_words_and_writes_nothing_afresh()
    {
        using var student = await host.Student();
        using var teacher = await host.Teacher();
        var path = $"/batches/{await BatchWorkedOn.Of(host, student)}/letter";
        using var kept = await (await Form.At(teacher, path)).Set("Block.lesson", "Mine.").Post();

        // HTML, 4.10.21.2 Implicit submission: the first button of the form is the one that Enter presses.
        var first = (await See(teacher, path)).QuerySelector("form.letter-desk button[type='submit']");

        Assert.Equal(("Step", "save"), (first!.GetAttribute("name"), first.GetAttribute("value")));
    }

    private static async Task<IHtmlDocument> See(HttpClient teacher, string path) => new HtmlParser().ParseDocument((await teacher.See(path)).Page);

    private static string Words(IHtmlDocument page, string key) => page.QuerySelector($"textarea[name='Block.{key}']")!.TextContent.Trim();

    private static AngleSharp.Dom.IElement? Button(IHtmlDocument page, string value) => page.QuerySelector($"button[name='Anew'][value='{value}']");
}
