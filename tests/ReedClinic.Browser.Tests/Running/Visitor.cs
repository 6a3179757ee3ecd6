using System.Text.RegularExpressions;
using Microsoft.Playwright;

namespace ReedClinic.Browser.Tests.Running;

/// <summary>One person at one window: goes to pages, fills forms, and has every page looked at on the way.</summary>
public sealed partial class Visitor : IAsyncDisposable
{
    private readonly IBrowserContext _context;
    private readonly string _screens;
    private readonly List<string> _complaints = [];
    private int _shots;

    public Visitor(IBrowserContext context, IPage page, string screens)
    {
        _context = context;
        Page = page;
        _screens = Artifacts.Fresh("screens", screens);
        page.Console += (_, message) =>
        {
            if (message.Type == "error" && !message.Text.Contains("the server responded with a status of 4", StringComparison.Ordinal))
            {
                _complaints.Add($"{page.Url}: {message.Text}");
            }
        };
        page.PageError += (_, error) => _complaints.Add($"{page.Url}: {error}");
    }

    public IPage Page { get; }

    /// <summary>False for somebody who only passes by pages that another visitor looks at in the same window.</summary>
    public bool Looks { get; set; } = true;

    /// <summary>Allows pages what a browser asks its user for, such as the microphone.</summary>
    public Task AllowAsync(string what) => _context.GrantPermissionsAsync([what]);

    public async Task GoToAsync(string path)
    {
        var response = await Page.GotoAsync(path);
        Assert.True(response is { Ok: true }, $"{path} answered {response?.Status}");
    }

    /// <summary>Follows a link or presses a button of a plain form, and waits for the page that comes.</summary>
    public async Task PressAsync(ILocator what, string thenAt)
    {
        await what.ClickAsync();
        await ArriveAsync(thenAt);
    }

    /// <summary>Waits until the address is the given path (without the query), or matches it as a pattern.</summary>
    public Task ArriveAsync(string pathPattern)
    {
        var pattern = new Regex($"^https?://[^/]+{pathPattern}(\\?.*)?(#.*)?$");
        return WaitForAddressAsync(pattern.IsMatch, $"to arrive at {pathPattern}");
    }

    /// <summary>Waits until another address than this stands in the window.</summary>
    public Task LeaveAsync(string address) => WaitForAddressAsync(url => url != address, "to have gone on");

    /// <summary>Waits until the page's circuit is up, so that the first press is heard.</summary>
    public Task LiveAsync() => Page.Locator("[data-circuit=up]").First.WaitForAsync(new LocatorWaitForOptions { State = WaitForSelectorState.Attached });

    /// <summary>Takes the page's picture and has axe read it: no serious or critical violation may stand.</summary>
    public async Task LookAsync(string name)
    {
        if (Looks)
        {
            await ShotAsync(name);
            var violations = await Axe.ReadAsync(Page);
            Assert.True(violations.Count == 0, $"{Page.Url} ({name}):\n{string.Join('\n', violations)}");
        }

        Assert.True(_complaints.Count == 0, $"The console complains:\n{string.Join('\n', _complaints)}");
    }

    /// <summary>At this width, nothing may stand out to the right: a page is never scrolled sideways.</summary>
    public async Task FitsAsync()
    {
        var widest = await Page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        Assert.True(widest <= Page.ViewportSize!.Width, $"{Page.Url} is {widest} px wide in a window of {Page.ViewportSize.Width} px");
    }

    private async Task WaitForAddressAsync(Func<string, bool> isThere, string wish)
    {
        try
        {
            await Page.WaitForURLAsync(isThere, new PageWaitForURLOptions { WaitUntil = WaitUntilState.DOMContentLoaded });
        }
        catch (TimeoutException)
        {
            await ShotAsync("stuck");
            Assert.Fail($"Expected {wish}, but is at {Page.Url}:\n{await Page.Locator("main").InnerTextAsync()}");
        }
    }

    public ILocator Button(string name) => Page.GetByRole(AriaRole.Button, new() { Name = name, Exact = true });

    public ILocator Link(string name) => Page.GetByRole(AriaRole.Link, new() { Name = name, Exact = true });

    public ILocator Field(string label) => Page.GetByLabel(label, new() { Exact = true });

    public ILocator Heading(string text) => Page.GetByRole(AriaRole.Heading, new() { Name = text });

    public Task ShotAsync(string name) => ShotAsync(name, whole: true);

    private async Task ShotAsync(string name, bool whole)
    {
        _shots++;
        await Page.ScreenshotAsync(new PageScreenshotOptions
        {
            Path = Path.Combine(_screens, $"{_shots:00}-{NotForFiles().Replace(name, "-")}.png"),
            FullPage = whole,
        });
    }

    /// <summary>Leaves, with a last picture: when something went wrong, it shows where.</summary>
    public async ValueTask DisposeAsync()
    {
        if (!Page.IsClosed)
        {
            await ShotAsync("last", whole: false);
        }

        await _context.DisposeAsync();
    }

    [GeneratedRegex(@"[^\w]+")]
    private static partial Regex NotForFiles();
}
