using Microsoft.Playwright;

[assembly: AssemblyFixture(typeof(ReedClinic.Browser.Tests.Running.OneBrowser))]

namespace ReedClinic.Browser.Tests.Running;

/// <summary>One Chromium for the whole run. Each visitor gets a context of their own: nothing is shared but the process.</summary>
public sealed class OneBrowser : IAsyncLifetime
{
    /// <summary>Names another Chromium than Debian’s.</summary>
    public const string PathVariable = "REEDCLINIC_TEST_BROWSER";

    // The shell is the same engine without a browser's windows round it: much less work for the machine.
    private static readonly string[] Places = ["/usr/bin/chromium-headless-shell", "/usr/bin/chromium"];

    private static readonly string[] Flags =
    [
        "--no-sandbox", "--disable-gpu", "--no-first-run", "--disable-background-networking", "--disable-component-update", "--disable-sync", "--use-fake-device-for-media-stream", "--use-fake-ui-for-media-stream",
    ];

    private readonly TemporaryFolder _sounds = new();
    private IPlaywright? _playwright;
    private IBrowser? _browser;

    /// <summary>Writes what is heard where a page asks for a microphone.</summary>
    public Action<string> Hears { get; init; } = FakeMicrophone.Write;

    public async ValueTask InitializeAsync()
    {
        var heard = Path.Combine(_sounds.Path, "microphone.wav");
        Hears(heard);
        _playwright = await Playwright.CreateAsync();
        Assertions.SetDefaultExpectTimeout(60_000); // a busy machine: what comes is waited for, and nothing waits where it is there
        _browser = await _playwright.Chromium.LaunchAsync(new BrowserTypeLaunchOptions
        {
            ExecutablePath = Environment.GetEnvironmentVariable(PathVariable) ?? Places.FirstOrDefault(File.Exists) ?? Places[^1],
            Args = [.. Flags, $"--use-file-for-fake-audio-capture={heard}"],
        });
    }

    public async ValueTask DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.CloseAsync();
        }

        _playwright?.Dispose();
        _sounds.Dispose();
    }

    /// <summary>A new visitor who is signed in already; how people sign in is a test of its own.</summary>
    /// <param name="app">The program.</param>
    /// <param name="email">Who it is.</param>
    /// <param name="screens">The folder under tests/artifacts/screens for this visitor's pictures.</param>
    /// <param name="width">Of the window, in CSS pixels.</param>
    public async Task<Visitor> VisitAsync(ClinicApp app, string email, string screens, int width = 1280)
    {
        var cookie = await app.CookieOfAsync(email, TestContext.Current.CancellationToken);
        var visitor = await VisitAsync(app.Home, screens, width);
        await visitor.Page.Context.AddCookiesAsync([cookie]);
        return visitor;
    }

    /// <summary>A new visitor with an empty cookie jar.</summary>
    /// <param name="home">Where the program listens.</param>
    /// <param name="screens">The folder under tests/artifacts/screens for this visitor's pictures.</param>
    /// <param name="width">Of the window, in CSS pixels.</param>
    /// <param name="anyCertificate">True where the program has a certificate of an authority that nobody told this browser of.</param>
    public async Task<Visitor> VisitAsync(Uri home, string screens, int width = 1280, bool anyCertificate = false)
    {
        var context = await _browser!.NewContextAsync(new BrowserNewContextOptions
        {
            BaseURL = home.ToString(),
            Locale = "en-GB",
            IgnoreHTTPSErrors = anyCertificate,
            ReducedMotion = ReducedMotion.Reduce,
            ViewportSize = new ViewportSize { Width = width, Height = width < 600 ? 844 : 900 },
        });
        context.SetDefaultTimeout(60_000);
        context.SetDefaultNavigationTimeout(60_000);
        return new Visitor(context, await context.NewPageAsync(), screens);
    }
}
