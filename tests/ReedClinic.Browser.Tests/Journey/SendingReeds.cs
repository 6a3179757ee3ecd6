using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The student's way from "send reeds" to the printed slip: one question a screen.</summary>
public static class SendingReeds
{
    /// <summary>Announces two reeds and gives the batch code.</summary>
    public static async Task<string> SendTwoReedsAsync(this Visitor student)
    {
        await student.BeginAsync();
        await student.TellAboutMeAsync();
        await student.TellAboutReedAsync(1, "green thread, one dot on the cork", "The low notes come late and it goes flat when I play softly.", "Take risks");
        await student.TellAboutReedAsync(2, "red thread, two dots on the cork", "It feels fine but the top notes sag.", "Safe changes only");
        await student.Field("Your questions, one a line").FillAsync("How do I know when a reed is too old?\nShould I soak them in water or in my mouth?");
        await student.PassAsync("questions");
        return await student.LookOverAndSendAsync();
    }

    public static async Task BeginAsync(this Visitor student)
    {
        await student.GoToAsync("/intake");
        await student.PassByAsync("intake begins");
        await student.PressAsync(student.Button("Begin"), "/intake/[^/]+/instrument");
    }

    public static async Task TellAboutMeAsync(this Visitor student)
    {
        await student.ChooseAsync("Oboe");
        await student.PassAsync("instrument");
        await student.ChooseAsync("A = 442");
        await student.PassAsync("tuning");
        await student.ChooseAsync("Long scrape");
        await student.PassAsync("scrape");
        await student.Field("Country").FillAsync("Portugal");
        await student.Page.GetByText("Saved at").WaitForAsync(); // what was saved by itself doesn't stand in the way of "Next"
        await student.PassAsync("country");
        await student.ChooseAsync("2");
        await student.PassAsync("how many");
    }

    public static async Task TellAboutReedAsync(this Visitor student, int number, string known, string bothers, string permission)
    {
        await student.Field($"Reed {number} is the one with …").FillAsync(known);
        await student.PassAsync($"reed {number} known by");
        await student.Field("In your own words").FillAsync(bothers);
        await student.MarkAsync("When you start a note, does it come?", "too hard to start");
        await student.MarkAsync("How wide is the gap at the tip?", "too closed");
        await student.PassAsync($"reed {number} bothers");
        await student.ChooseAsync(permission);
        await student.PassAsync($"reed {number} permission");
    }

    /// <summary>Chooses one row of a list by its word.</summary>
    public static Task ChooseAsync(this Visitor visitor, string what) =>
        visitor.Page.Locator("label", new() { Has = visitor.Page.GetByText(what, new() { Exact = true }) }).First.ClickAsync();

    /// <summary>Has the screen looked at, and goes on to the next.</summary>
    private static async Task PassAsync(this Visitor student, string name)
    {
        await student.PassByAsync(name);
        var here = student.Page.Url;
        await student.Button("Next").ClickAsync();
        await student.LeaveAsync(here);
    }

    private static async Task PassByAsync(this Visitor student, string name)
    {
        await student.FitsAsync();
        await student.LookAsync(name);
    }

    private static Task MarkAsync(this Visitor student, string question, string end) =>
        student.Page.GetByRole(AriaRole.Group, new() { Name = question }).Locator("label", new() { HasText = end }).Last.ClickAsync();

    private static async Task<string> LookOverAndSendAsync(this Visitor student)
    {
        await student.Heading("Look it over").WaitForAsync();
        await student.PassByAsync("look over");
        await student.PressAsync(student.Button("Send it"), "/batches/[^/]+");
        await student.PassByAsync("batch sent");
        var code = new Uri(student.Page.Url).Segments[^1];
        await student.GoToAsync($"/batches/{code}/slip");
        await student.PassByAsync("slip");
        Assert.Equal(2, await student.Page.Locator(".tags > li").CountAsync());
        await student.GoToAsync("/batches");
        await student.PassByAsync("my reeds");
        await student.GoToAsync("/");
        await student.PassByAsync("my reed case");
        return code;
    }
}
