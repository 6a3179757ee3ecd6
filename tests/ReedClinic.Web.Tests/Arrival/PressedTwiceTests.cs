using System.Net;
using AngleSharp.Html.Parser;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Arrival;

/// <summary>The arrival form sent twice: by a double press, or by loading its answer again.</summary>
public sealed class PressedTwiceTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task Adding_an_unannounced_reed_twice_adds_one_and_the_rest_is_saved_without_a_clash()
    {
        var (teacher, path) = await OpenAsync("Aukje");
        var form = (await Form.At(teacher, path)).Set("Form.Reeds[1].Presence", "Missing").Set("Form.Extra.HowToRecognise", "bare cork").Set("Form.Step", "extra");
        using var once = await form.Post();
        using var twice = await form.Post();
        var page = (await twice.Read()).Page;
        Assert.Contains("Reed 2 is in the batch.", page, StringComparison.Ordinal);

        using var saved = await Form.Of(teacher, path, page).Set("Form.Reeds[2].Fitness", "Fit").Post();

        Assert.Equal(path + "?saved=true", saved.Leads());
        Assert.DoesNotContain("Reed 3", (await teacher.See(path)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Removing_an_unannounced_reed_twice_says_so_twice_and_the_rest_is_saved_without_a_clash()
    {
        var (teacher, path) = await OpenAsync("Baukje");
        using var added = await (await Form.At(teacher, path)).Set("Form.Extra.HowToRecognise", "bare cork").Set("Form.Step", "extra").Post();
        var shown = (await added.Read()).Page;
        var form = Form.Of(teacher, path, shown).Set("Form.Reeds[1].Presence", "Missing").Set("Form.Step", Removing(shown, 2));
        using var once = await form.Post();
        using var twice = await form.Post();
        var page = (await twice.Read()).Page;
        Assert.Contains("Reed 2 isn’t in the batch any more.", WebUtility.HtmlDecode(page), StringComparison.Ordinal);

        using var saved = await Form.Of(teacher, path, page).Post();

        Assert.Equal(path + "?saved=true", saved.Leads());
    }

    [Fact]
    public async Task A_reed_that_has_the_number_of_one_that_was_removed_elsewhere_stays_and_that_is_said()
    {
        var (teacher, path) = await OpenAsync("Femke");
        using var added = await (await Form.At(teacher, path)).Set("Form.Extra.HowToRecognise", "bare cork").Set("Form.Step", "extra").Post();
        var shown = (await added.Read()).Page;
        using var other = await host.Teacher("Gijs");
        using var gone = await (await Form.At(other, path)).Set("Form.Step", Removing(shown, 2)).Post();
        using var anew = await (await Form.At(other, path)).Set("Form.Extra.HowToRecognise", "green thread").Set("Form.Step", "extra").Post();
        Assert.Contains("Reed 2 (green thread)", (await anew.Read()).Page, StringComparison.Ordinal);

        using var late = await Form.Of(teacher, path, shown).Set("Form.Step", Removing(shown, 2)).Post();

        var page = WebUtility.HtmlDecode((await late.Read()).Page);
        Assert.Contains("This reed isn’t in the batch any more.", page, StringComparison.Ordinal);
        Assert.Contains("Reed 2 (green thread)", page, StringComparison.Ordinal);
        Assert.Contains("green thread", (await other.See(path)).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task One_page_that_removes_two_reeds_at_once_says_of_the_second_that_it_stands_and_removes_it_when_pressed_again()
    {
        var (teacher, path) = await OpenAsync("Hanneke");
        using var one = await (await Form.At(teacher, path)).Set("Form.Extra.HowToRecognise", "bare cork").Set("Form.Step", "extra").Post();
        using var two = await Form.Of(teacher, path, (await one.Read()).Page).Set("Form.Extra.HowToRecognise", "green thread").Set("Form.Step", "extra").Post();
        var shown = (await two.Read()).Page;
        using var first = await Form.Of(teacher, path, shown).Set("Form.Step", Removing(shown, 2)).Post();
        using var second = await Form.Of(teacher, path, shown).Set("Form.Step", Removing(shown, 3)).Post();

        var page = (await second.Read()).Page;
        Assert.DoesNotContain("Reed 3 isn’t in the batch any more.", WebUtility.HtmlDecode(page), StringComparison.Ordinal);
        Assert.Contains("Press once more", WebUtility.HtmlDecode(page), StringComparison.Ordinal);

        using var again = await Form.Of(teacher, path, page).Set("Form.Step", Removing(page, 3)).Post();
        Assert.Contains("Reed 3 isn’t in the batch any more.", WebUtility.HtmlDecode((await again.Read()).Page), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_another_teacher_saved_before_the_reed_was_added_still_clashes_however_often_it_is_sent()
    {
        var (teacher, path) = await OpenAsync("Dieuwke");
        var form = (await Form.At(teacher, path)).Set("Form.Reeds[1].Presence", "Missing").Set("Form.Extra.HowToRecognise", "bare cork").Set("Form.Step", "extra");
        using var other = await host.Teacher("Bram");
        using var theirs = await (await Form.At(other, path)).Set("Form.Reeds[1].Presence", "Here").Set("Form.Reeds[1].Fitness", "Fit").Post();
        Assert.Equal(path + "?saved=true", theirs.Leads());
        using var once = await form.Post();
        using var twice = await form.Post();

        using var clashed = await Form.Of(teacher, path, (await twice.Read()).Page).Set("Form.Reeds[2].Fitness", "Fit").Post();

        Assert.Contains("Reed 1: here", (await clashed.Read()).Page, StringComparison.Ordinal);
    }

    /// <summary>What the button beside an unannounced reed sends.</summary>
    internal static string Removing(string page, int number)
    {
        using var read = new HtmlParser().ParseDocument(page);
        return read.QuerySelectorAll("button[name='Form.Step']").Single(button => button.TextContent == $"Remove reed {number}").GetAttribute("value")!;
    }

    private async Task<(HttpClient Teacher, string Path)> OpenAsync(string student)
    {
        using var sender = await host.Student(student);
        var parcel = await host.Announce(student, "white thread");
        return (await host.Teacher(), $"/batches/{parcel.Batch.Code}/arrival");
    }
}
