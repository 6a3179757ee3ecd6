using Microsoft.Playwright;

namespace ReedClinic.Browser.Tests.Running;

/// <summary>
/// What a part of a page shows, one thing after the other, noted by the page itself from before the press: what lasts a second isn’t
/// missed by a machine that is too busy to look each second.
/// </summary>
public sealed class Passing
{
    private const string Note = """
        (part, attribute) => {
          const shown = [];
          const look = () => {
            const now = attribute ? part.getAttribute(attribute) ?? '' : part.textContent.trim();
            if (now !== shown.at(-1)) shown.push(now);
          };
          look();
          new MutationObserver(look).observe(part, attribute ? { attributeFilter: [attribute] } : { childList: true, characterData: true, subtree: true });
          return shown;
        }
        """;

    private readonly IPage _page;
    private readonly IJSHandle _shown;

    private Passing(IPage page, IJSHandle shown) => (_page, _shown) = (page, shown);

    /// <summary>Begins to note what a part shows: its words, or one of its attributes.</summary>
    /// <param name="part">The part, which stays in the page.</param>
    /// <param name="attribute">The attribute.</param>
    public static async Task<Passing> NoteAsync(ILocator part, string? attribute = null) => new(part.Page, await part.EvaluateHandleAsync(Note, attribute));

    /// <summary>All that was shown until now, in order.</summary>
    public Task<string[]> ShownAsync() => _shown.JsonValueAsync<string[]>();

    /// <summary>Waits until words were among what it showed, whatever it shows since.</summary>
    public async Task UntilAsync(string words)
    {
        try
        {
            await _page.WaitForFunctionAsync("([shown, words]) => shown.some(one => one.includes(words))", new object[] { _shown, words }, new() { Timeout = 60_000 });
        }
        catch (TimeoutException)
        {
            Assert.Fail($"It never showed “{words}”, but: {string.Join(" | ", await ShownAsync())}");
        }
    }
}
