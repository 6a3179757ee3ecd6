using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What waits in a tab goes with it, so the browser asks before the tab is closed; from page to page nothing is lost, and nothing is asked.</summary>
public sealed class BenchClosingTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task A_tab_with_something_behind_a_question_is_asked_about_before_it_is_closed_and_not_on_the_way_to_another_reed()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "closing-question");
        var asked = Dismissed(teacher.Page);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.SayAsync("c+40");
        await hands.TypeAsync("clip a hair");
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");
        await teacher.Page.Locator("#bench-line").FillAsync("crow c+35");
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator(".told-beside")).ToContainTextAsync("until it is answered: crow c+35");
        await hands.LeaveLineAsync();

        await CloseAsync(teacher.Page, asked, 1);
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("safe changes only");

        // The next reed is one key away as ever; the tab still holds what waits on the first.
        var here = teacher.Page.Url;
        await hands.PressAsync("n");
        await teacher.LeaveAsync(here);
        await hands.ReadyAsync();
        Assert.Single(asked);
        await CloseAsync(teacher.Page, asked, 2);

        await hands.PressAsync(",");
        await teacher.ArriveAsync(new Uri(here).AbsolutePath);
        await hands.ReadyAsync();
        await hands.PickAsync("r", 2);
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("crow");
        await ClosesUnaskedAsync(teacher.Page, asked);
    }

    [Fact]
    public async Task A_tab_with_half_a_line_or_an_unsent_one_is_asked_about_and_an_empty_one_closes()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "closing-typed");
        var asked = Dismissed(teacher.Page);
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await hands.TypeAsync("remember the tall ca");
        await CloseAsync(teacher.Page, asked, 1);
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("remember the tall ca");

        await teacher.Page.Context.SetOfflineAsync(true);
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("waiting")).ToContainTextAsync("1 waiting");
        await CloseAsync(teacher.Page, asked, 2);

        await teacher.Page.Context.SetOfflineAsync(false);
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync("tall ca");
        await ClosesUnaskedAsync(teacher.Page, asked);
    }

    // Whoever is asked stays.
    private static List<string> Dismissed(IPage page)
    {
        List<string> asked = [];
        page.Dialog += (_, dialog) =>
        {
            asked.Add(dialog.Type);
            _ = dialog.DismissAsync();
        };
        return asked;
    }

    private static async Task CloseAsync(IPage page, List<string> asked, int times)
    {
        var dialog = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        void Heard(object? sender, IDialog one) => dialog.TrySetResult();
        page.Dialog += Heard;
        await page.CloseAsync(new() { RunBeforeUnload = true });
        await dialog.Task.WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
        page.Dialog -= Heard;
        Assert.Equal(Enumerable.Repeat(DialogType.BeforeUnload, times), asked);
        Assert.False(page.IsClosed);
    }

    private static async Task ClosesUnaskedAsync(IPage page, List<string> asked)
    {
        var before = asked.Count;
        var closed = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);
        page.Close += (_, _) => closed.TrySetResult();
        await page.CloseAsync(new() { RunBeforeUnload = true });
        await closed.Task.WaitAsync(TimeSpan.FromSeconds(30), TestContext.Current.CancellationToken);
        Assert.Equal(before, asked.Count);
    }
}
