using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>Putting a teaching note into a letter at the cursor.</summary>
public sealed class LetterNotesTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string Begin = "Thank you. ";
    private const string End = "With good wishes.";

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_note_goes_in_at_the_cursor_and_the_browsers_own_undo_takes_it_back(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"letter-notes-{width}", width);
        await teacher.GoToAsync("/notes");
        await teacher.LookAsync("notes");
        await teacher.GoToAsync("/notes/new");
        await teacher.LookAsync("a new note");
        await teacher.GoToAsync("/desk");
        var batch = await teacher.Page.Locator("a[href^='/batches/']").First.GetAttributeAsync("href");
        await teacher.GoToAsync($"/batches/{batch!.Split('/')[2]}/letter");
        await teacher.Page.Locator("[data-notes-ready]").WaitForAsync();
        var part = teacher.Page.Locator("textarea[name='Block.closing']");
        await teacher.Page.Locator(".letter-notes-rest").EvaluateAsync("list => list.open = true");
        var note = teacher.Page.Locator(".letter-note", new() { HasText = "The opening after a rest" });
        await note.Locator("summary").ClickAsync();
        await note.GetByRole(AriaRole.Button).ClickAsync();
        await teacher.Page.GetByText("Put the cursor into a part of the letter first").WaitForAsync();

        await part.EvaluateAsync("field => field.closest('details').open = true");
        await part.FillAsync(Begin + End);
        await part.EvaluateAsync($"field => field.setSelectionRange({Begin.Length}, {Begin.Length})");
        await note.GetByRole(AriaRole.Button).FocusAsync();
        await teacher.Page.Keyboard.PressAsync("Enter");

        await Assertions.Expect(teacher.Page.Locator("#letter-note-said")).ToContainTextAsync("is in.");
        await Assertions.Expect(part).ToBeFocusedAsync();
        var words = await part.InputValueAsync();
        Assert.StartsWith(Begin + "Soak {reed}, let it lie", words, StringComparison.Ordinal);
        Assert.EndsWith("was only thirsty. " + End, words, StringComparison.Ordinal);
        Assert.Equal(words.Length - End.Length - 1, await part.EvaluateAsync<int>("field => field.selectionStart"));
        await teacher.LookAsync("a note put in");
        await teacher.FitsAsync();

        await teacher.Page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(part).ToHaveValueAsync(Begin + End);
    }
}
