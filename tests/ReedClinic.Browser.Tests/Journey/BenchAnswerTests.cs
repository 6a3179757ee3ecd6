using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What a press on the bench answers, where the hand is: on a phone as at a desk.</summary>
public sealed class BenchAnswerTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Theory]
    [InlineData(390)]
    [InlineData(1280)]
    public async Task A_refusal_leads_to_the_first_thing_to_mend_and_a_save_is_answered_beside_its_button(int width)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"bench-answer-{width}", width);
        await OpenAsync(teacher);
        await Kind(teacher, "Found").ClickAsync();
        await teacher.Field("What it is").WaitForAsync();
        await teacher.Button("Save").ClickAsync();

        await Assertions.Expect(teacher.Field("What it is")).ToBeFocusedAsync();
        await Assertions.Expect(teacher.Field("What it is")).ToBeInViewportAsync();
        await Assertions.Expect(teacher.Page.Locator("#f-FindingKind-error")).ToBeInViewportAsync();
        await teacher.LookAsync("refused");

        await Kind(teacher, "Note").ClickAsync();
        await teacher.Field("Note").FillAsync($"Seen at {width}.");
        await teacher.Button("Save").ClickAsync();

        await Assertions.Expect(teacher.Page.Locator("#entry-answer .saved")).ToContainTextAsync($"Seen at {width}.");
        await Assertions.Expect(teacher.Page.Locator("#entry-answer .saved")).ToBeInViewportAsync();
        await Assertions.Expect(teacher.Page.Locator("#entry-answer .problems")).ToHaveCountAsync(0);
        await teacher.FitsAsync();
        await teacher.LookAsync("saved");
    }

    [Fact]
    public async Task On_a_phone_a_place_that_was_tapped_is_told_in_words_and_leads_to_the_form()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "bench-tapped", width: 390);
        await OpenAsync(teacher);

        await teacher.Page.Locator(".pressable[data-reed-zone=HeartSides]").First.ClickAsync();

        await Assertions.Expect(teacher.Page.Locator(".chosen-place strong")).ToHaveTextAsync("sides of the heart, upper blade, left");
        await Assertions.Expect(teacher.Page.Locator(".chosen-place strong")).ToBeInViewportAsync();
        await teacher.LookAsync("a place, tapped");
        await teacher.Link("Say what you found").ClickAsync();
        await Assertions.Expect(teacher.Heading("What did you find?")).ToBeInViewportAsync();
        await Assertions.Expect(teacher.Field("Part of the reed")).ToHaveValueAsync("HeartSides");
    }

    [Fact]
    public async Task Nothing_of_the_form_lies_under_anything_else_on_a_small_laptop()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "bench-laptop", width: 1280);
        await OpenAsync(teacher);
        await Kind(teacher, "Test").ClickAsync();
        await teacher.Field("Test").SelectOptionAsync(new SelectOptionValue { Label = "crow" });
        await teacher.Field("Pitch").FillAsync("H flattish");
        await teacher.Button("Save").ClickAsync();
        await Assertions.Expect(teacher.Field("Pitch")).ToBeFocusedAsync();

        foreach (var field in new[] { teacher.Field("Pitch"), teacher.Page.Locator("#f-Pitch-error"), teacher.Field("Remark"), teacher.Button("Save") })
        {
            await field.ScrollIntoViewIfNeededAsync();
            Assert.True(await field.EvaluateAsync<bool>("""
                element => {
                  const box = element.getBoundingClientRect();
                  const top = document.elementFromPoint(box.left + box.width / 2, box.bottom - 3);
                  return element === top || element.contains(top);
                }
                """));
        }

        Assert.Equal("visible", await teacher.Page.EvaluateAsync<string>("getComputedStyle(document.querySelector('.bench-line')).overflowY"));
    }

    private async Task OpenAsync(Visitor teacher)
    {
        await teacher.GoToAsync(await app.BenchOfAsync("Tomas Arden", 3, TestContext.Current.CancellationToken));
        await teacher.LiveAsync();
        await teacher.OpenFieldsAsync();
    }

    private static ILocator Kind(Visitor teacher, string name) =>
        teacher.Page.Locator(".entry-kinds").GetByRole(AriaRole.Button, new() { Name = name, Exact = true });
}
