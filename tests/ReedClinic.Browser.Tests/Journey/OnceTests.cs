using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>A form that must not be sent twice: recovery codes are shown in one answer, and a second press would show other ones.</summary>
public sealed class OnceTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    // Pressed, and pressed again as soon as a hand could; what is sent is counted and goes nowhere.
    private const string PressTwice = """
        async form => {
          let sent = 0;
          form.addEventListener('submit', event => { event.preventDefault(); sent++; });
          const button = form.querySelector('button');
          button.click();
          await new Promise(done => setTimeout(done));
          button.click();
          return sent;
        }
        """;

    [Fact]
    public async Task However_fast_its_button_is_pressed_it_is_sent_once()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Student, "once");
        await student.GoToAsync("/account/codes");
        await student.Page.Locator("form:has(input[value=codes-begin]) button").ClickAsync();
        var form = student.Page.Locator("form[data-once]");
        await form.WaitForAsync();
        await student.Page.WaitForLoadStateAsync();

        Assert.Equal(1, await form.EvaluateAsync<int>(PressTwice));
    }
}
