using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>From what the reeds have in common to a letter that is read.</summary>
public static class WritingHome
{
    public static async Task FirstLookAsync(this Visitor teacher, string code)
    {
        await teacher.GoToAsync($"/batches/{code}/first-look");
        await teacher.LookAsync("first look, nothing tried");
        await teacher.Page.GetByLabel("crow, reed 1", new() { Exact = true }).SelectOptionAsync(new SelectOptionValue { Label = "high and low all at once" });
        await teacher.Page.GetByLabel("pitch of the crow, reed 1").FillAsync("between B and C");
        await teacher.Button("Save everything, at reed 1").ClickAsync();
        await teacher.Page.Locator("#reed-1 .saved-row").WaitForAsync();
        await teacher.LookAsync("first look, one reed tried");
    }

    public static async Task ChooseTheThreadAsync(this Visitor teacher, string code)
    {
        await teacher.GoToAsync($"/batches/{code}/common-thread");
        await teacher.LookAsync("common thread");
        await teacher.Field("Say it to the student").FillAsync("Finish the corners of the tip: they should let light through before the middle does.");
        await teacher.Button("Keep this").ClickAsync();
        await teacher.Page.GetByText("Your choice is kept.").WaitForAsync();
        await teacher.LookAsync("common thread, kept");
        await teacher.GoToAsync($"/batches/{code}/common-thread/evidence");
        await teacher.LookAsync("common thread, evidence");
    }

    /// <summary>Fills what is missing, changes a sentence by hand, reads it through, and sends it once.</summary>
    public static async Task WriteAndSendAsync(this Visitor teacher, string code)
    {
        await teacher.GoToAsync($"/batches/{code}/letter");
        await teacher.LookAsync("letter, gaps");
        foreach (var answer in await teacher.Page.Locator("#gaps").GetByLabel("Your answer").AllAsync())
        {
            await answer.FillAsync("In clean water, for as long as it takes to assemble the instrument.");
        }

        await teacher.Button("Keep what I filled in").ClickAsync();
        await teacher.Page.Locator("#gaps .letter-ready").WaitForAsync();
        var part = teacher.Page.Locator(".letter-change").First;
        await part.Locator("summary").ClickAsync();
        await teacher.Page.Locator("[data-typing-ready]").WaitForAsync();
        await part.Locator("textarea").FillAsync("Thank you for trusting me with your two reeds, Pim.");
        await teacher.Page.ReloadAsync();
        await teacher.Page.GetByText("What you typed here and didn’t keep is back in its place").WaitForAsync();
        await teacher.Button("Keep these words").First.ClickAsync();
        await teacher.Page.GetByText("Your words are kept as a new version.").WaitForAsync();
        await teacher.LookAsync("letter, nothing missing");
        await teacher.SeeItAsItWillBeReadAsync(code);
        await teacher.GoToAsync($"/batches/{code}/letter");
        await teacher.Page.GetByLabel("I have read it as it will go out.").CheckAsync();
        await teacher.Button("Send the letter").ClickAsync();
        await teacher.Page.GetByText("This letter was sent on").WaitForAsync();
        await teacher.LookAsync("letter sent");
    }

    // Words that aren't kept yet are kept by looking; whoever comes here another way is told that they don't stand here.
    private static async Task SeeItAsItWillBeReadAsync(this Visitor teacher, string code)
    {
        var closing = teacher.Page.Locator("textarea[name='Block.closing']");
        await closing.EvaluateAsync("field => field.closest('details').open = true");
        await closing.FillAsync("Good winds, and soak it less.");
        await teacher.GoToAsync($"/letters/{code}");
        await teacher.Page.Locator("[data-typing-ready]").WaitForAsync();
        var away = teacher.Page.Locator("#letter-typed-away");
        await Assertions.Expect(away).ToContainTextAsync("that aren’t kept yet");
        await Assertions.Expect(teacher.Page.GetByText("This is how the student will read it.")).ToBeHiddenAsync();
        await teacher.Page.GetByLabel("I have read it as it will go out.").CheckAsync();
        await teacher.Button("Send the letter").ClickAsync();
        await Assertions.Expect(away).ToBeFocusedAsync();
        await teacher.LookAsync("letter as it will be read, words not kept");
        await teacher.FitsAsync();
        await away.GetByRole(AriaRole.Link, new() { Name = "Back to writing" }).ClickAsync();
        await teacher.Page.GetByText("What you typed here and didn’t keep is back in its place").WaitForAsync();
        await teacher.Button("See it as it will be read").First.ClickAsync();
        await teacher.Page.WaitForURLAsync("**/letters/*");
        await teacher.Page.Locator("[data-typing-ready]").WaitForAsync();
        await teacher.Page.GetByText("Good winds, and soak it less.").WaitForAsync();
        await Assertions.Expect(away).ToBeHiddenAsync();
        await teacher.LookAsync("letter as it will be read");
    }

    public static async Task ReadTheLetterAsync(this Visitor student, string code)
    {
        await student.GoToAsync($"/batches/{code}");
        await student.LookAsync("batch with a letter");
        await student.PressAsync(student.Link($"Read your letter about {code}").First, $"/letters/{code}");
        await student.Page.GetByText("Thank you for trusting me with your two reeds, Pim.").WaitForAsync();
        await student.Page.GetByText("they should let light through before the middle does").First.WaitForAsync();
        await student.FitsAsync();
        await student.LookAsync("the letter");
    }
}
