using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The teacher works on a reed: every kind of entry, said better, taken back.</summary>
public static class AtTheBench
{
    public static async Task OpenReedAsync(this Visitor teacher, string code, int number)
    {
        await teacher.GoToAsync($"/batches/{code}");
        await teacher.PressAsync(teacher.Link($"Bench: reed {number}"), "/bench/[^/]+");
        await teacher.LiveAsync();
        await teacher.OpenFieldsAsync();
    }

    /// <summary>Opens the fields, for whoever would rather choose than write.</summary>
    public static async Task OpenFieldsAsync(this Visitor teacher)
    {
        if (!await teacher.Page.Locator("#by-fields").EvaluateAsync<bool>("details => details.open"))
        {
            await teacher.Page.Locator("#by-fields > summary").ClickAsync();
        }
    }

    /// <summary>Tests as it arrived, findings, work in small steps with tests after, risk, leave alone, stop and verdict.</summary>
    public static async Task WorkOnFirstReedAsync(this Visitor teacher)
    {
        await teacher.LookAsync("bench, empty log");
        await teacher.TestAsync("crow", "high, then low joins", "B +20");
        await teacher.TestAsync("softest start", "needs a push");
        await teacher.FindAsync("tip corners too thick", "light");
        await teacher.LookAsync("bench, as it arrived");
        await teacher.RiskAsync("The tip may lose its support.");
        await teacher.LeaveAloneAsync("spine", "It carries the reed.");
        await teacher.AdjustAsync("thin the tip corners", "tip corners", strokes: "3");
        await teacher.TestAsync("crow", "high, then low joins", "C -5");
        await teacher.TestAsync("softest start", "starts softly");
        await teacher.EndAsync("tip corners too thick", "better");
        await teacher.CloseRiskAsync("The tip may lose its support.", "did not happen");
        await teacher.LookAsync("bench, after a pass");
    }

    /// <summary>A pitch that can't be read keeps its text; a slip is said better; a mistake is taken back and comes back.</summary>
    public static async Task MendAsync(this Visitor teacher)
    {
        await teacher.KindAsync("Test");
        await teacher.SelectAsync("Test", "peep");
        await teacher.Field("Pitch").FillAsync("H sharpish");
        await teacher.Button("Save").ClickAsync();
        await teacher.Page.GetByText("It isn’t saved yet. What you typed is all here.").WaitForAsync();
        Assert.Equal("H sharpish", await teacher.Field("Pitch").InputValueAsync());
        await teacher.LookAsync("bench, a pitch that can't be read");
        await teacher.Button("Clear").ClickAsync();

        await teacher.WriteAsync("Note", "Note", "The tall cse is by the door.");
        await teacher.Page.GetByRole(AriaRole.Button, new() { NameRegex = new("Correct: .*The tall cse is by the door") }).ClickAsync();
        var line = teacher.Page.Locator("#bench-line");
        await Assertions.Expect(line).ToHaveValueAsync("The tall cse is by the door.");
        await line.FillAsync("The tall case is by the door.");
        await line.PressAsync("Enter");
        await teacher.Log("The tall case is by the door.").WaitForAsync();
        await teacher.Button("Take back my last entry").ClickAsync();
        await teacher.Log("The tall cse is by the door.").WaitForAsync();
        await teacher.Button("Take back my last entry").ClickAsync();
        await teacher.Page.Locator(".log-line.taken-back").WaitForAsync();
        await teacher.LookAsync("bench, taken back");
    }

    public static async Task FinishAsync(this Visitor teacher, string why, string verdict, string words)
    {
        await teacher.WriteAsync("Stop", "Why now", why);
        await teacher.KindAsync("Verdict");
        await teacher.ChipAsync("Verdict", verdict);
        await teacher.Field("Remark").FillAsync(words);
        await teacher.SaveAsync();
    }

    public static async Task TestAsync(this Visitor teacher, string test, string step, string? pitch = null)
    {
        await teacher.KindAsync("Test");
        await teacher.SelectAsync("Test", test);
        await teacher.ChipAsync("How it was", step);
        if (pitch is not null)
        {
            await teacher.Field("Pitch").FillAsync(pitch);
        }

        await teacher.SaveAsync();
    }

    public static async Task FindAsync(this Visitor teacher, string finding, string knownBy)
    {
        await teacher.KindAsync("Found");
        await teacher.SelectAsync("What it is", finding);
        await teacher.ChipAsync("Known by", knownBy);
        await teacher.SaveAsync();
    }

    private static async Task RiskAsync(this Visitor teacher, string words) => await teacher.WriteAsync("Risk", "What may go wrong", words);

    private static async Task LeaveAloneAsync(this Visitor teacher, string zone, string why)
    {
        await teacher.KindAsync("Leave alone");
        await teacher.SelectAsync("Part of the reed", zone);
        await teacher.Field("Why it is left alone").FillAsync(why);
        await teacher.SaveAsync();
    }

    private static async Task AdjustAsync(this Visitor teacher, string what, string zone, string strokes)
    {
        await teacher.KindAsync("Done");
        await teacher.SelectAsync("What you did", what);
        await teacher.SelectAsync("Part of the reed", zone);
        await teacher.Field("Strokes a quadrant").FillAsync(strokes);
        await teacher.SaveAsync();
    }

    private static async Task EndAsync(this Visitor teacher, string finding, string how)
    {
        await teacher.KindAsync("How it ended");
        await teacher.SelectAsync("Finding", finding);
        await teacher.ChipAsync("How it ended", how);
        await teacher.SaveAsync();
    }

    private static async Task CloseRiskAsync(this Visitor teacher, string risk, string outcome)
    {
        await teacher.KindAsync("Risk closed");
        await teacher.SelectAsync("Risk", risk);
        await teacher.ChipAsync("What became of it", outcome);
        await teacher.SaveAsync();
    }

    private static async Task WriteAsync(this Visitor teacher, string kind, string field, string words)
    {
        await teacher.KindAsync(kind);
        await teacher.Field(field).FillAsync(words);
        await teacher.SaveAsync();
    }

    // Its fields are there once it is the chosen one.
    private static async Task KindAsync(this Visitor teacher, string kind)
    {
        var button = teacher.Page.Locator(".entry-kinds").GetByRole(AriaRole.Button, new() { Name = kind, Exact = true });
        await button.ClickAsync();
        await Assertions.Expect(button).ToHaveAttributeAsync("aria-pressed", "true");
    }

    /// <summary>Chooses the option that is, or begins with, these words.</summary>
    private static async Task SelectAsync(this Visitor teacher, string list, string words)
    {
        var field = teacher.Page.Locator("form.entry").GetByLabel(list, new() { Exact = true }).First;
        var value = await field.Locator("option", new() { HasText = words }).First.GetAttributeAsync("value");
        await field.SelectOptionAsync(value!);
    }

    private static Task ChipAsync(this Visitor teacher, string group, string words) =>
        teacher.Page.GetByRole(AriaRole.Group, new() { Name = group, Exact = true }).GetByLabel(words, new() { Exact = true }).CheckAsync();

    /// <summary>Saves, and waits until it is in the log and the form is ready for the next entry.</summary>
    private static async Task SaveAsync(this Visitor teacher)
    {
        var before = await teacher.Page.Locator("form.entry input[name=Operation]").InputValueAsync();
        await teacher.Button("Save").ClickAsync();
        await teacher.Page.WaitForFunctionAsync(
            "before => document.querySelector('form.entry input[name=Operation]').value !== before || document.querySelector('.bench-line .error, .bench-line .problems')",
            before);
        var trouble = await teacher.Page.Locator(".bench-line .error, .bench-line .problems").AllInnerTextsAsync();
        if (trouble.Count > 0)
        {
            await teacher.ShotAsync("not saved");
        }

        Assert.Empty(trouble);
    }

    private static ILocator Log(this Visitor teacher, string words) => teacher.Page.Locator(".log .title", new() { HasText = words });
}
