using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>What one teacher typed or said and the studio hasn’t got yet stays theirs, whoever signs in next in the same tab.</summary>
public sealed class OwnWordsTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string Said = "remember the tall case";

    [Fact]
    public async Task What_one_teacher_said_is_not_sent_by_the_next_one_in_the_same_tab_and_waits_for_its_own()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "own-words-bench");
        teacher.Page.Dialog += (_, dialog) => _ = dialog.AcceptAsync();
        var (here, other) = (await BenchAsync(2), await BenchAsync(3));
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 2);
        await hands.PressAsync("v");
        await teacher.Page.Locator("[data-bench-name=verdict][aria-pressed=true]").WaitForAsync();
        await hands.PressAsync("1");
        await hands.Answer("before").WaitForAsync();
        await UnsentAsync(teacher, hands);

        await BecomeAsync(teacher, DemoClinic.Owner);
        await teacher.GoToAsync(other);
        await hands.ReadyAsync();
        await Assertions.Expect(teacher.Page.Locator($"[data-left-open='{here.Split('/')[^1]}']")).ToBeEmptyAsync();
        await teacher.GoToAsync(here);
        await hands.ReadyAsync();
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("");
        await Assertions.Expect(teacher.Page.Locator("#line-answer")).ToBeEmptyAsync();
        await hands.SayAsync("the drawer by the stove");
        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = Said })).ToHaveCountAsync(0);

        await BecomeAsync(teacher, DemoClinic.Teacher);
        await teacher.GoToAsync(here);
        await hands.ReadyAsync();
        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = Said })).ToContainTextAsync("Edda");
        await Assertions.Expect(teacher.Page.Locator("#bench-line")).ToHaveValueAsync("half a thou");
        await Assertions.Expect(hands.Answer("before")).ToHaveCountAsync(1);
    }

    [Fact]
    public async Task A_page_that_stayed_open_while_somebody_else_signed_in_sends_nothing_until_its_own_teacher_is_back()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "own-words-beside");
        var hands = await BenchHands.OpenAsync(teacher, app, "Tomas Arden", 1);
        await BecomeAsync(teacher, DemoClinic.Owner);

        await hands.TypeAsync(Said);
        await hands.PressAsync("Enter");
        await Assertions.Expect(hands.Answer("refused")).ToContainTextAsync("You are signed out.");
        // However long that takes.
        for (var asked = 0; asked < 8; asked++)
        {
            var answer = await teacher.Page.RunAndWaitForResponseAsync(
                () => teacher.Page.EvaluateAsync("() => dispatchEvent(new Event('online'))"), response => response.Url.EndsWith("/line", StringComparison.Ordinal));
            Assert.Equal(401, answer.Status);
        }

        await BecomeAsync(teacher, DemoClinic.Teacher);

        await Assertions.Expect(teacher.Page.Locator(".log-line", new() { HasText = Said })).ToHaveCountAsync(1);
        await Assertions.Expect(hands.Answer("saved")).ToContainTextAsync(Said);
    }

    [Fact]
    public async Task What_one_teacher_typed_in_a_letter_is_not_put_into_the_letter_of_the_next_one_in_the_same_tab()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "own-words-letter");
        await teacher.GoToAsync("/desk");
        var batch = await teacher.Page.Locator("a[href^='/batches/']").First.GetAttributeAsync("href");
        var code = batch!.Split('/')[2];
        await LetterAsync(teacher, code);
        var closing = teacher.Page.Locator("textarea[name='Block.closing']");
        await closing.EvaluateAsync("field => field.closest('details').open = true");
        await closing.FillAsync("Good winds, from me alone.");

        await BecomeAsync(teacher, DemoClinic.Owner);
        await LetterAsync(teacher, code);
        await Assertions.Expect(closing).Not.ToHaveValueAsync("Good winds, from me alone.");
        await Assertions.Expect(teacher.Page.Locator("#letter-typed")).ToBeHiddenAsync();
        await teacher.GoToAsync($"/letters/{code}");
        await teacher.Page.Locator("[data-typing-ready]").WaitForAsync();
        await Assertions.Expect(teacher.Page.Locator("#letter-typed-away")).ToBeHiddenAsync();

        await BecomeAsync(teacher, DemoClinic.Teacher);
        await teacher.GoToAsync($"/letters/{code}");
        await teacher.Page.Locator("[data-typing-ready]").WaitForAsync();
        await Assertions.Expect(teacher.Page.Locator("#letter-typed-away")).ToBeVisibleAsync();
        await LetterAsync(teacher, code);
        await Assertions.Expect(closing).ToHaveValueAsync("Good winds, from me alone.");
    }

    // Said and not sent, and half a thought in the line; then the page is left.
    private static async Task UnsentAsync(Visitor teacher, BenchHands hands)
    {
        await teacher.Page.RouteAsync("**/bench/*/line", route => route.AbortAsync());
        await hands.TypeAsync(Said);
        await hands.PressAsync("Enter");
        await Assertions.Expect(teacher.Page.Locator("#line-answer")).ToContainTextAsync("1 waiting");
        await hands.TypeAsync("half a thou");
        await teacher.GoToAsync("/desk");
        await teacher.Page.UnrouteAsync("**/bench/*/line");
    }

    private static async Task LetterAsync(Visitor teacher, string code)
    {
        await teacher.GoToAsync($"/batches/{code}/letter");
        await teacher.Page.Locator("[data-typing-ready]").WaitForAsync();
    }

    private async Task BecomeAsync(Visitor teacher, string email) =>
        await teacher.Page.Context.AddCookiesAsync([await app.CookieOfAsync(email, TestContext.Current.CancellationToken)]);

    private Task<string> BenchAsync(int reed) => app.BenchOfAsync("Tomas Arden", reed, TestContext.Current.CancellationToken);
}
