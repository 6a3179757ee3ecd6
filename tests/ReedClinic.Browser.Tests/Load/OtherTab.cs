using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Http.Json;
using ReedClinic.Circuits;
using ReedClinic.Domain.Reeds;
using ReedClinic.KillDriver;

namespace ReedClinic.Browser.Tests.Load;

/// <summary>How long something that was said took: until it was recorded, and until the log on the screen had it.</summary>
/// <param name="Recorded">Milliseconds.</param>
/// <param name="Sent">Milliseconds.</param>
internal sealed record OtherTimes(double Recorded, double Sent);

/// <summary>An open bench without a browser: a page with its circuit, where something is typed and said as the page does it.</summary>
internal sealed class OtherTab : IAsyncDisposable
{
    private const string Token = "__RequestVerificationToken";

    private readonly CookieClient _teacher;
    private readonly Circuit _circuit;
    private readonly ReedId _reed;
    private readonly string _token;

    private OtherTab(CookieClient teacher, Circuit circuit, ReedId reed, string token) => (_teacher, _circuit, _reed, _token) = (teacher, circuit, reed, token);

    /// <summary>What the server said went wrong, and whether it has ended the connection.</summary>
    public IReadOnlyList<string> Troubles => _circuit.IsClosed ? [.. _circuit.Errors, "the connection has ended"] : _circuit.Errors;

    /// <summary>Signs somebody in by the form.</summary>
    /// <param name="site">Where the program listens.</param>
    /// <param name="email">Who it is.</param>
    /// <param name="ct">Gives up.</param>
    public static async Task<CookieClient> SignInAsync(Uri site, string email, CancellationToken ct)
    {
        var client = CookieClient.For(site);
        var form = Visit.FormWith("Form.Password", await client.GetStringAsync(new Uri(site, "account/sign-in"), ct));
        (form["Form.Email"], form["Form.Password"]) = (email, LoadScene.Password);
        using var body = new FormUrlEncodedContent(form);
        using var answer = await client.PostAsync(new Uri(site, "account/sign-in"), body, ct);
        Assert.True(answer.StatusCode is HttpStatusCode.Found or HttpStatusCode.SeeOther, $"Signing in gave {(int)answer.StatusCode}.");
        return client;
    }

    /// <summary>Opens the bench on a reed.</summary>
    /// <param name="teacher">Who works on it.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="ct">Gives up.</param>
    public static async Task<OtherTab> OpenAsync(CookieClient teacher, ReedId reed, CancellationToken ct)
    {
        var page = await CircuitPage.ReadAsync(teacher, $"/bench/{reed.Value}", ct);
        Assert.Equal(HttpStatusCode.OK, page.Status);
        var circuit = await Circuit.ConnectAsync(teacher, null, ct);
        await circuit.StartAsync(page, ct);
        await circuit.UntilAsync(c => Line(c) is not null, ct);
        return new OtherTab(teacher, circuit, reed, Visit.FormWith("Text", page.Html)[Token]);
    }

    /// <summary>Types a line, word by word, sends it, and waits until it stands in the log on this screen.</summary>
    /// <param name="line">The line.</param>
    /// <param name="ct">Gives up.</param>
    public async Task<OtherTimes> SayAsync(string line, CancellationToken ct)
    {
        for (var end = line.IndexOf(' ', StringComparison.Ordinal); end > 0; end = line.IndexOf(' ', end + 1))
        {
            await TypeAsync(line[..end], ct);
        }

        await TypeAsync(line, ct);
        await TypeAsync("", ct);
        var since = Stopwatch.GetTimestamp();
        using var body = new FormUrlEncodedContent(new Dictionary<string, string>
        {
            ["Text"] = line,
            ["Operation"] = Guid.CreateVersion7(TimeProvider.System.GetUtcNow()).ToString(),
            [Token] = _token,
        });
        using var request = new HttpRequestMessage(HttpMethod.Post, new Uri(_teacher.BaseAddress!, $"bench/{_reed.Value}/line")) { Content = body };
        request.Headers.Add("Accept", "application/json");
        using var answer = await _teacher.SendAsync(request, ct);
        Assert.Equal(HttpStatusCode.Created, answer.StatusCode);
        var saved = (await answer.Content.ReadFromJsonAsync<Saved>(ct))!;
        var recorded = Stopwatch.GetElapsedTime(since).TotalMilliseconds;
        var id = string.Create(CultureInfo.InvariantCulture, $"entry-{saved.Sequence}");
        await _circuit.UntilAsync(c => c.Screen.Find("li", one => one["id"] == id) is not null, ct);
        return new OtherTimes(recorded, Stopwatch.GetElapsedTime(since).TotalMilliseconds);
    }

    /// <summary>Closes the tab as a browser does.</summary>
    public async ValueTask DisposeAsync()
    {
        await _circuit.LeaveAsync(_teacher, CancellationToken.None);
        await _circuit.DisposeAsync();
    }

    private async Task TypeAsync(string text, CancellationToken ct) => await await _circuit.SendAsync(Line(_circuit)!.Handlers["oninput"], "input", text, ct);

    private static ScreenNode? Line(Circuit circuit) => circuit.Screen.Find("input", one => one["id"] == "bench-line");

    private sealed record Saved(int Sequence);
}
