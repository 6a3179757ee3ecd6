using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The teacher opens the parcel: a mistyped code first, then each reed ticked off.</summary>
public static class UnpackingReeds
{
    public static async Task UnpackAsync(this Visitor teacher, string code)
    {
        await teacher.GoToAsync("/desk");
        await teacher.LookAsync("desk, one batch on its way");
        await teacher.GoToAsync("/arrival");
        await teacher.Field("Code on the slip").FillAsync(Mistyped(code));
        await teacher.Button("Open this batch").ClickAsync();
        await teacher.Page.Locator(".near-codes").GetByRole(AriaRole.Link, new() { Name = code }).WaitForAsync();
        await teacher.LookAsync("arrival, mistyped code");
        await teacher.Field("Code on the slip").FillAsync(code);
        await teacher.PressAsync(teacher.Button("Open this batch"), $"/batches/{code}/arrival");
        await teacher.LookAsync("arrival, nothing noted");
        await teacher.NoteAsync(1, "pencil dot near the thread", damage: null);
        await teacher.NoteAsync(2, "scratch above the thread", damage: "one corner of the tip is chipped");
        await teacher.Button("Save the arrival").ClickAsync();
        await teacher.Page.GetByText("The arrival is saved.").WaitForAsync();
        await teacher.Page.GetByText("Reed 2 arrived damaged").WaitForAsync();
        await teacher.LookAsync("arrival, noted");
    }

    private static async Task NoteAsync(this Visitor teacher, int number, string upperMark, string? damage)
    {
        var reed = teacher.Page.GetByRole(AriaRole.Region, new() { Name = $"Reed {number}", Exact = true });
        await reed.GetByText("Yes, it is here", new() { Exact = true }).ClickAsync();
        await reed.GetByText("Fit to handle", new() { Exact = true }).ClickAsync();
        await reed.GetByLabel("How do you tell the upper blade?").FillAsync(upperMark);
        await reed.GetByText("Thread and overlap").ClickAsync();
        await reed.GetByText("A left hand", new() { Exact = true }).ClickAsync();
        if (damage is not null)
        {
            await reed.GetByLabel("Anything damaged?").FillAsync(damage);
        }
    }

    /// <summary>The code with one character replaced by another that codes may have.</summary>
    private static string Mistyped(string code) => code[..2] + (code[2] == 'W' ? 'M' : 'W') + code[3..];
}
