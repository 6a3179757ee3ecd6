using AngleSharp.Dom;
using Bunit;
using ReedClinic.Web.Shared;

namespace ReedClinic.Web.Tests.Forms;

public sealed class WordsTests : BunitContext
{
    [Fact]
    public void Marked_words_are_shown_with_their_marks()
    {
        var shown = Render<Words>(words => words.Add(component => component.Marked, "What we *keep*:\n\n- your name"));

        Assert.Equal("keep", shown.Find(".words em").TextContent);
        Assert.Equal("your name", shown.Find(".words li").TextContent);
        Assert.Equal("auto", shown.Find(".words").GetAttribute("dir"));
    }

    [Fact]
    public void Markup_in_them_is_only_letters_and_a_link_that_runs_something_only_its_words()
    {
        var shown = Render<Words>(words => words.Add(component => component.Marked, "<img src=x onerror=alert(1)> [click](javascript:alert(1))"));

        Assert.Empty(shown.FindAll("img, a, [onerror]"));
        Assert.Equal("<img src=x onerror=alert(1)> click", shown.Find(".words p").TextContent);
    }

    [Theory]
    [InlineData(null)]
    [InlineData("  ")]
    public void Without_words_there_is_nothing(string? none) =>
        Assert.Empty(Render<Words>(words => words.Add(component => component.Marked, none)).Nodes.OfType<IElement>());
}
