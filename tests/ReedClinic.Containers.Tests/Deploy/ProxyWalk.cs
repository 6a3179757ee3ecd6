using System.Net;
using System.Security.Cryptography.X509Certificates;
using AngleSharp.Html.Parser;
using ReedClinic.Circuits;
using ReedClinic.Domain.People;

namespace ReedClinic.Containers.Tests.Deploy;

/// <summary>The owner comes from elsewhere: by https, through the proxy, with the certificate of its authority on their device.</summary>
internal sealed class ProxyWalk : IDisposable
{
    private const string Secret = "a-word-that-is-nobodys";

    private readonly Compose _compose;
    private readonly X509Certificate2 _authority;
    private readonly CookieClient _owner;
    private readonly CancellationToken _ct;
    private string _bench = "";

    private ProxyWalk(Compose compose, X509Certificate2 authority, CancellationToken ct) =>
        (_compose, _authority, _owner, _ct) = (compose, authority, CookieClient.For(compose.Site, authority), ct);

    /// <summary>Fetches the authority's certificate, as the text says, and looks at the door.</summary>
    public static async Task<ProxyWalk> BeginAsync(Compose compose, CancellationToken ct)
    {
        var pem = await compose.ComposeAsync(ct, "exec", "-T", "proxy", "cat", "/data/caddy/pki/authorities/local/root.crt");
        var walk = new ProxyWalk(compose, X509Certificate2.CreateFromPem(pem), ct);
        await walk.TheDoorIsSoundAsync();
        return walk;
    }

    /// <summary>Signs in, takes up codes, opens the bench over a socket, and says something there.</summary>
    public async Task WorksAtTheBenchAsync(string email, string password)
    {
        using (var into = await (await Form.At(_owner, "/account/sign-in")).Set("Form.Email", email).Set("Form.Password", password).Post())
        {
            Assert.Equal(HttpStatusCode.Found, into.StatusCode);
        }

        await TakeUpCodesAsync();
        var reed = await _compose.ComposeAsync(
            _ct, "exec", "-T", "database", "psql", "--username=reedclinic", "--tuples-only", "--no-align", "--command=SELECT \"Id\" FROM \"Reeds\" LIMIT 1");
        _bench = $"/bench/{reed.Trim()}";
        await SaysAsync("before the back-up");
    }

    /// <summary>Says something at the bench, over a socket, and sees it drawn.</summary>
    public async Task SaysAsync(string words)
    {
        await using var circuit = await _owner.BenchAsync(_bench);
        await circuit.TypeNoteAsync(words);
        var saved = await circuit.SaveAsync();
        Assert.True(saved.Succeeded, saved.Said);
        await circuit.UntilAsync(c => c.Screen.Text.Contains(words, StringComparison.Ordinal), _ct);
        await circuit.LeaveAsync(_owner, _ct);
    }

    /// <summary>What stands at the bench.</summary>
    public async Task<string> ReadAsync()
    {
        var (status, page, leads) = await _owner.See(_bench);
        Assert.True(status == HttpStatusCode.OK, $"{status} {leads}");
        return page;
    }

    /// <summary>While the program is away the proxy says so, and no address stands in what it writes: links carry secrets.</summary>
    public async Task NoAddressIsLoggedAsync()
    {
        await _compose.ComposeAsync(_ct, "stop", "web");
        using (var away = await _owner.GetAsync(new Uri($"/read/{Secret}", UriKind.Relative), _ct))
        {
            Assert.InRange((int)away.StatusCode, 502, 503);
        }

        var log = await _compose.ComposeAsync(_ct, "logs", "--no-color", "proxy");
        Assert.Contains("http.log.error", log, StringComparison.Ordinal); // or nothing was logged, and this proves nothing
        Assert.DoesNotContain(Secret, log, StringComparison.Ordinal);
        Assert.DoesNotContain("reedclinic-way=", log, StringComparison.Ordinal);
    }

    /// <inheritdoc />
    public void Dispose()
    {
        _owner.Dispose();
        _authority.Dispose();
    }

    private async Task TheDoorIsSoundAsync()
    {
        using var stranger = CookieClient.For(_compose.Site); // who was told of no authority
        await Assert.ThrowsAsync<HttpRequestException>(() => stranger.GetAsync(new Uri("/", UriKind.Relative), _ct));

        using var plain = CookieClient.For(_compose.Front);
        using var sentOn = await plain.GetAsync(new Uri("/account/sign-in", UriKind.Relative), _ct);
        Assert.Equal((HttpStatusCode.PermanentRedirect, "https://localhost/account/sign-in"), (sentOn.StatusCode, sentOn.Headers.Location?.ToString()));

        using var door = await _owner.GetAsync(new Uri("/account/sign-in", UriKind.Relative), _ct);
        Assert.Equal(HttpStatusCode.OK, door.StatusCode);
        Assert.False(door.Headers.Contains("Server"));
        var way = Assert.Single(door.Headers.GetValues("Set-Cookie"), cookie => cookie.StartsWith("reedclinic-way=", StringComparison.Ordinal));
        Assert.EndsWith("; Path=/; Secure; HttpOnly; SameSite=Lax", way, StringComparison.Ordinal);
    }

    private async Task TakeUpCodesAsync()
    {
        const string Page = "/account/codes";
        var (_, begun, _) = await (await Form.Named(_owner, Page, (await _owner.See(Page)).Page, "codes-begin").Post()).Read();
        using var read = new HtmlParser().ParseDocument(begun);
        var letters = read.QuerySelector(".key code")!.TextContent.Replace(" ", "", StringComparison.Ordinal);
        var code = TimeCode.Of(TimeCode.FromLetters(letters), TimeCode.StepAt(TimeProvider.System.GetUtcNow()));
        using var confirmed = await Form.Named(_owner, Page, begun, "codes-on").Set("Form.Code", code).Post();
        Assert.Equal(HttpStatusCode.OK, confirmed.StatusCode);
    }
}
