using Bunit;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Web.Shared.Forms;

namespace ReedClinic.Web.Tests.Forms;

public sealed class FieldTests : BunitContext
{
    public FieldTests() => Services.AddLocalization();

    [Fact]
    public void A_problem_stands_beside_its_field_and_is_read_out_with_it()
    {
        var field = Render<TextField>(p => p
            .AddCascadingValue(new ProblemList([new Problem("Form.Name", "Say a name."), new Problem("Form.Other", "Something else.")]))
            .Add(f => f.Name, "Form.Name").Add(f => f.Label, "Name").Add(f => f.Hint, "A first name is enough.").Add(f => f.Value, "<b>x</b>"));

        var input = field.Find("input");
        Assert.Equal("true", input.GetAttribute("aria-invalid"));
        Assert.Equal("f-Form-Name-hint f-Form-Name-error", input.GetAttribute("aria-describedby"));
        Assert.Equal("Say a name.", field.Find("#f-Form-Name-error").TextContent);
        Assert.Equal("<b>x</b>", input.GetAttribute("value"));
        Assert.Equal("f-Form-Name", field.Find("label").GetAttribute("for"));
    }

    [Fact]
    public void A_field_without_a_problem_says_nothing_of_one()
    {
        var field = Render<TextField>(p => p.Add(f => f.Name, "Form.Name").Add(f => f.Label, "Name"));

        Assert.Empty(field.FindAll(".error"));
        Assert.Null(field.Find("input").GetAttribute("aria-invalid"));
    }

    [Fact]
    public void Words_keep_a_first_line_that_is_empty()
    {
        var field = Render<WordsField>(p => p.Add(f => f.Name, "Words").Add(f => f.Label, "Words").Add(f => f.Value, "\nsecond line"));

        // A parser drops one line end right after the opening tag, so one must be there to be dropped.
        Assert.Equal("\nsecond line", field.Find("textarea").TextContent);
    }

    [Theory]
    [InlineData("-2", 0)]
    [InlineData("0", 2)]
    [InlineData("2", 4)]
    [InlineData("", 5)]
    [InlineData(null, -1)]
    public void A_scale_shows_the_mark_that_was_made_and_has_a_word_for_every_stop(string? value, int marked)
    {
        var scale = Render<ScaleField>(p => p
            .Add(f => f.Name, "Response").Add(f => f.Label, "When you start a note, does it come?")
            .Add(f => f.Low, "too easily").Add(f => f.Middle, "just right").Add(f => f.High, "too hard").Add(f => f.RatherLow, "a little too easily").Add(f => f.RatherHigh, "a little hard").Add(f => f.Value, value));

        var stops = scale.FindAll("input[type=radio]");
        Assert.Equal(6, stops.Count);
        Assert.Equal(marked, stops.ToList().FindIndex(stop => stop.HasAttribute("checked")));
        Assert.Equal(
            ["too easily", "a little too easily", "just right", "a little hard", "too hard", "I don’t know"],
            scale.FindAll("label").Select(l => l.TextContent.Trim()));
    }

    [Fact]
    public void Every_choice_is_a_row_with_its_meaning_and_nothing_is_chosen_beforehand()
    {
        var choices = Render<ChoiceField>(p => p
            .Add(f => f.Name, "Permission").Add(f => f.Label, "How far may we go?").Add(f => f.Value, "none")
            .Add(f => f.Choices, [new Choice("A", "Only advise", "Nothing is taken away."), new Choice("B", "Take risks")]));

        Assert.Empty(choices.FindAll("input[checked]"));
        Assert.Equal("Nothing is taken away.", choices.Find(".choice .means").TextContent);
        Assert.Equal("How far may we go?", choices.Find("legend").TextContent);
    }

    [Fact]
    public void The_note_above_a_form_leads_to_each_field()
    {
        var note = Render<ProblemNote>(p => p.AddCascadingValue(new ProblemList([new Problem("Reeds[0].Bothers", "Say what bothers you."), new Problem("", "Try again.")])));

        Assert.EndsWith("#f-Reeds-0-Bothers", note.Find("a").GetAttribute("href"), StringComparison.Ordinal);
        Assert.Equal(2, note.FindAll("li").Count);
        Assert.Equal("alert", note.Find(".problems").GetAttribute("role"));
    }
}
