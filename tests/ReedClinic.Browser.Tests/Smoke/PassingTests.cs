using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Smoke;

public sealed class PassingTests(OneBrowser browser, SqliteClinic app) : IClassFixture<SqliteClinic>
{
    [Fact]
    public async Task What_a_page_shows_for_no_longer_than_a_moment_is_noted_words_and_attributes_alike()
    {
        await using var visitor = await browser.VisitAsync(app.Home, "passing");
        await visitor.Page.SetContentAsync("<html lang=en><title>x</title><p data-now=idle>3</p></html>");
        var part = visitor.Page.Locator("p");
        var (words, state) = (await Passing.NoteAsync(part), await Passing.NoteAsync(part, "data-now"));

        // One turn of the page's own loop for each, and nobody looks in between.
        await visitor.Page.EvaluateAsync(
            """
            async () => {
              const part = document.querySelector('p');
              for (const [count, now] of [['2', 'counting'], ['1', 'counting'], ['', 'sounding']]) {
                [part.textContent, part.dataset.now] = [count, now];
                await new Promise(done => { const turn = new MessageChannel(); turn.port1.onmessage = done; turn.port2.postMessage(0); });
              }
            }
            """);

        await words.UntilAsync("2");
        Assert.Equal(["3", "2", "1", ""], await words.ShownAsync());
        await state.UntilAsync("counting");
        Assert.Equal(["idle", "counting", "sounding"], await state.ShownAsync());
    }
}
