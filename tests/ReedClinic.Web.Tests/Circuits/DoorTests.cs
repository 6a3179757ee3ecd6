using System.Net;
using System.Net.WebSockets;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Circuits;
using ReedClinic.Web.Shared.Circuits;
using ReedClinic.Web.Tests.Bench;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>Who may open a socket, and how many. OWASP ASVS 5.0: 4.4.2 (the origin of a WebSocket is checked against a list).</summary>
public sealed class DoorTests(CircuitHost host) : IClassFixture<CircuitHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Theory]
    [InlineData("https://elsewhere.example")]
    [InlineData("null")]
    [InlineData("http://localhost")]
    [InlineData("https://localhost:{port}")]
    [InlineData("http://localhost.elsewhere.example:{port}")]
    public async Task A_socket_from_another_sites_page_is_refused(string origin)
    {
        using var teacher = await host.AtTheBench();
        var foreign = origin.Replace("{port}", $"{host.Site.Port}", StringComparison.Ordinal);

        Assert.Equal(HttpStatusCode.Forbidden, await KnockAsync(teacher, foreign));
        using var negotiate = new HttpRequestMessage(HttpMethod.Post, new Uri(host.Site, "_blazor/negotiate?negotiateVersion=1"));
        negotiate.Headers.Add("Origin", foreign);
        using var answer = await teacher.SendAsync(negotiate, Ct);
        Assert.Equal(HttpStatusCode.Forbidden, answer.StatusCode);
    }

    [Fact]
    public async Task A_socket_from_our_own_page_is_taken_and_one_of_nobody_is_not()
    {
        using var teacher = await host.AtTheBench();
        using var visitor = (CookieClient)host.Visitor();

        Assert.Equal(HttpStatusCode.SwitchingProtocols, await KnockAsync(teacher, host.Site.GetLeftPart(UriPartial.Authority)));
        Assert.Equal(HttpStatusCode.Unauthorized, await KnockAsync(visitor, host.Site.GetLeftPart(UriPartial.Authority)));
    }

    [Fact]
    public async Task Another_origin_is_let_in_when_the_settings_name_it()
    {
        var limits = new CircuitLimits { Origins = "https://bench.example, https://other.example" };

        Assert.True(limits.Allows("https://other.example", "http://inside"));
        Assert.False(limits.Allows("https://elsewhere.example", "http://inside"));
        await Task.CompletedTask;
    }

    [Fact]
    public async Task The_eleventh_tab_is_told_so_kindly_and_works_once_another_is_closed()
    {
        var scene = await BenchScene.Open(host, "Alma", "blue thread");
        using var teacher = await host.AtTheBench("Una");
        using var other = await host.AtTheBench("Jan");
        var tabs = new List<Circuit>();
        for (var i = 0; i < 10; i++)
        {
            tabs.Add(await teacher.BenchAsync(scene.Page));
        }

        await using (var eleventh = await Circuit.OpenAsync(teacher, scene.Page, null, Ct))
        {
            await eleventh.UntilAsync(c => c.Screen.Text.Contains("too many tabs", StringComparison.Ordinal), Ct);
            Assert.Null(eleventh.Entry());
            Assert.Contains("10 tabs or windows", eleventh.Screen.Text, StringComparison.Ordinal);
        }

        Assert.Contains("data-too-many", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);
        await using var bystander = await other.BenchAsync(scene.Page);

        await tabs[0].DisposeAsync();
        await BecomesAsync(async () => !(await teacher.See(scene.Page)).Page.Contains("data-too-many", StringComparison.Ordinal));

        await using var again = await teacher.BenchAsync(scene.Page);
        await Task.WhenAll(tabs.Select(tab => tab.DisposeAsync().AsTask()));
    }

    [Fact]
    public async Task Far_beyond_that_the_socket_itself_is_refused()
    {
        using var teacher = await host.AtTheBench("Vigdis");
        using var other = await host.AtTheBench("Jan");
        var lines = new List<Circuit>();
        for (var i = 0; i < 30; i++)
        {
            lines.Add(await Circuit.ConnectAsync(teacher, null, Ct));
        }

        // A connection is counted once the server is through with greeting it.
        var account = host.AccountOf("Vigdis");
        var open = host.Services.GetRequiredService<OpenCircuits>();
        await BecomesAsync(() => Task.FromResult(open.AreExhausted(account)));

        Assert.Equal(HttpStatusCode.TooManyRequests, await KnockAsync(teacher, host.Site.GetLeftPart(UriPartial.Authority)));
        Assert.Equal(HttpStatusCode.SwitchingProtocols, await KnockAsync(other, host.Site.GetLeftPart(UriPartial.Authority)));

        await Task.WhenAll(lines.Select(line => line.DisposeAsync().AsTask()));
        await BecomesAsync(() => Task.FromResult(!open.AreExhausted(account)));
    }

    // The server notices a moment later that a line was opened or cut.
    private static async Task BecomesAsync(Func<Task<bool>> wanted)
    {
        using var patience = CancellationTokenSource.CreateLinkedTokenSource(Ct);
        patience.CancelAfter(TimeSpan.FromSeconds(60));
        while (!await wanted())
        {
            patience.Token.ThrowIfCancellationRequested();
            await Task.Yield();
        }
    }

    private async Task<HttpStatusCode> KnockAsync(CookieClient client, string origin)
    {
        using var socket = new ClientWebSocket();
        socket.Options.Cookies = client.Cookies;
        socket.Options.CollectHttpResponseDetails = true;
        socket.Options.SetRequestHeader("Origin", origin);
        try
        {
            await socket.ConnectAsync(new UriBuilder(host.Site) { Scheme = "ws", Path = "/_blazor" }.Uri, Ct);
        }
        catch (WebSocketException)
        {
            // Refused: the answer says how.
        }

        return socket.HttpStatusCode;
    }
}
