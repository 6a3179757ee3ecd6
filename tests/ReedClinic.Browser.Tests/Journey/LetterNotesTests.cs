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
        var (part, put) = await OpenAsync(teacher.Page, teacher.GoToAsync);
        await put.ClickAsync();
        await teacher.Page.GetByText("Put the cursor into a part of the letter first").WaitForAsync();

        await PutAsync(teacher.Page, part, put);

        var words = await part.InputValueAsync();
        Assert.StartsWith(Begin + "Soak {reed}, let it lie", words, StringComparison.Ordinal);
        Assert.EndsWith("was only thirsty. " + End, words, StringComparison.Ordinal);
        Assert.Equal(words.Length - End.Length - 1, await part.EvaluateAsync<int>("field => field.selectionStart"));
        await teacher.LookAsync("a note put in");
        await teacher.FitsAsync();

        await teacher.Page.Keyboard.PressAsync("Control+z");
        await Assertions.Expect(part).ToHaveValueAsync(Begin + End);
        await teacher.Page.Keyboard.PressAsync("Control+Shift+z");
        await Assertions.Expect(part).ToHaveValueAsync(words);
    }

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task A_button_takes_it_out_again_for_whoever_has_no_such_keys(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"letter-notes-back-{width}", width);
        var (part, put) = await OpenAsync(teacher.Page, teacher.GoToAsync);
        var back = teacher.Page.GetByRole(AriaRole.Button, new() { Name = "Take it out again" });
        await Assertions.Expect(back).ToBeHiddenAsync();
        await PutAsync(teacher.Page, part, put);
        await Assertions.Expect(teacher.Page.Locator("#letter-notes")).Not.ToContainTextAsync("Ctrl");

        await back.FocusAsync();
        await teacher.Page.Keyboard.PressAsync("Enter");

        await Assertions.Expect(part).ToHaveValueAsync(Begin + End);
        await Assertions.Expect(part).ToBeFocusedAsync();
        await Assertions.Expect(teacher.Page.Locator("#letter-note-said")).ToContainTextAsync("is out again.");
        await Assertions.Expect(back).ToBeHiddenAsync();
        await PutAsync(teacher.Page, part, put);
        await teacher.Page.Keyboard.TypeAsync("Now");
        await Assertions.Expect(back).ToBeHiddenAsync();
    }

    [Fact]
    public async Task A_note_goes_behind_the_sentence_in_which_the_cursor_stands_and_breaks_no_sentence_in_two()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "letter-notes-sentence", 1280);
        var (part, put) = await OpenAsync(teacher.Page, teacher.GoToAsync);

        await PutAsync(teacher.Page, part, put, at: 3);

        var words = await part.InputValueAsync();
        Assert.StartsWith(Begin + "Soak {reed}, let it lie", words, StringComparison.Ordinal);
        Assert.EndsWith("was only thirsty. " + End, words, StringComparison.Ordinal);
    }

    private static async Task<(ILocator Part, ILocator Put)> OpenAsync(IPage page, Func<string, Task> goToAsync)
    {
        await goToAsync("/desk");
        var batch = await page.Locator("a[href^='/batches/']").First.GetAttributeAsync("href");
        await goToAsync($"/batches/{batch!.Split('/')[2]}/letter");
        await page.Locator("[data-notes-ready]").WaitForAsync();
        await page.Locator(".letter-notes-rest").EvaluateAsync("list => list.open = true");
        var note = page.Locator(".letter-note", new() { HasText = "The opening after a rest" });
        await note.Locator("summary").ClickAsync();
        return (page.Locator("textarea[name='Block.closing']"), note.GetByRole(AriaRole.Button));
    }

    // In the middle of a paragraph, by keys alone.
    private static async Task PutAsync(IPage page, ILocator part, ILocator put, int at = 11)
    {
        await part.EvaluateAsync("field => field.closest('details').open = true");
        await part.FillAsync(Begin + End);
        await part.EvaluateAsync($"field => field.setSelectionRange({at}, {at})");
        await put.FocusAsync();
        await page.Keyboard.PressAsync("Enter");
        await Assertions.Expect(page.Locator("#letter-note-said")).ToContainTextAsync("is in.");
        await Assertions.Expect(part).ToBeFocusedAsync();
    }
}
