using System.Net;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Domain.People;
using ReedClinic.Data.People;
using ReedClinic.KillDriver;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Published;

/// <summary>Which way one may come into the program as it would be installed.</summary>
public sealed class DoorwayTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_visit_by_plain_http_is_turned_away_in_plain_words_and_the_watcher_is_answered()
    {
        await using var app = await StartAsync([]);
        using var visitor = new HttpClient { BaseAddress = app.Address };

        foreach (var path in new[] { "/", "/account/sign-in", "/_blazor/negotiate" })
        {
            using var answer = await visitor.GetAsync(new Uri(path, UriKind.Relative), Ct);
            Assert.Equal(HttpStatusCode.MisdirectedRequest, answer.StatusCode);
            Assert.Equal("text/html", answer.Content.Headers.ContentType?.MediaType);
            Assert.Contains("<h1>Please come in by https</h1>", await answer.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
            Assert.False(answer.Headers.Contains("Set-Cookie"));
            Assert.False(answer.Headers.Contains("Server")); // OWASP ASVS 5.0: 13.4.6
        }

        await app.UntilReadyAsync(Ct);
        foreach (var path in new[] { "/health/live", "/health/ready" })
        {
            using var answer = await visitor.GetAsync(new Uri(path, UriKind.Relative), Ct);
            Assert.Equal("Healthy", await answer.Content.ReadAsStringAsync(Ct));
            Assert.False(answer.Headers.Contains("Server"));
        }

        Assert.DoesNotContain(app.Said, IsTrouble);
    }

    [Theory]
    [InlineData("", HttpStatusCode.MisdirectedRequest)]
    [InlineData("192.0.2.0/24, 2001:db8::1", HttpStatusCode.MisdirectedRequest)]
    [InlineData("192.0.2.0/24, 127.0.0.1", HttpStatusCode.OK)]
    public async Task Only_a_proxy_that_the_settings_name_is_believed(string proxies, HttpStatusCode expected)
    {
        await using var app = await StartAsync(new()
        {
            ["Web__Proxies"] = proxies,
            ["ASPNETCORE_FORWARDEDHEADERS_ENABLED"] = "true", // the framework's switch believes everybody; ours has the last word
        });
        using var visitor = new HttpClient(new SocketsHttpHandler { UseCookies = false }) { BaseAddress = app.Address };
        visitor.DefaultRequestHeaders.Add("X-Forwarded-Proto", "https");
        using var answer = await visitor.GetAsync(new Uri("/account/sign-in", UriKind.Relative), Ct);

        Assert.Equal(expected, answer.StatusCode);
        if (expected == HttpStatusCode.OK)
        {
            var cookie = Assert.Single(answer.Headers.GetValues("Set-Cookie"));
            Assert.StartsWith("__Host-reedclinic-form=", cookie, StringComparison.Ordinal);
            Assert.Contains("; secure", cookie, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Where_the_settings_allow_it_a_browser_on_this_machine_gets_in_by_plain_http_and_nobody_else()
    {
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        await using (var scope = db.Services.CreateAsyncScope())
        {
            await scope.ServiceProvider.GetRequiredService<AccountRegister>().AdmitAsync(
                new NewAccount("Sanne", "sanne@harbour.example", ClinicHost.Password), Role.Student, Parcel.NewOperation(), Ct);
        }

        await using var app = await StartAsync(db, new() { ["Web__PlainHttpOnLoopback"] = "true" });
        using var here = new HttpClient { BaseAddress = new UriBuilder(app.Address) { Host = "localhost" }.Uri };
        var form = await Form.At(here, "/account/sign-in");
        form.Set("Form.Email", "sanne@harbour.example").Set("Form.Password", ClinicHost.Password);
        using var welcome = await form.Post();
        Assert.Equal(HttpStatusCode.OK, welcome.StatusCode);
        Assert.Contains("/account/sign-out", await welcome.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);

        foreach (var name in new[] { "studio.example", "192.0.2.7", "localhost.studio.example" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, new Uri("/", UriKind.Relative));
            request.Headers.Host = name;
            using var answer = await here.SendAsync(request, Ct);
            Assert.Equal(HttpStatusCode.MisdirectedRequest, answer.StatusCode);
        }

        foreach (var header in new[] { "X-Forwarded-For", "Forwarded", "Via" })
        {
            using var request = new HttpRequestMessage(HttpMethod.Get, new Uri("/", UriKind.Relative));
            request.Headers.TryAddWithoutValidation(header, "192.0.2.7");
            using var answer = await here.SendAsync(request, Ct);
            Assert.Equal(HttpStatusCode.MisdirectedRequest, answer.StatusCode);
        }

        Assert.DoesNotContain(app.Said, IsTrouble);
    }

    [Fact]
    public async Task A_first_start_on_PostgreSQL_has_nothing_alarming_to_say()
    {
        var db = await databases.BareAsync(ClinicEngine.Postgres);
        await using var app = await StartAsync(db, []);
        await app.UntilReadyAsync(Ct);
        Assert.Single(app.Said, line => line.StartsWith("This studio has no owner yet.", StringComparison.Ordinal));
        Assert.DoesNotContain(app.Said, IsTrouble);
    }

    private static bool IsTrouble(string line) =>
        line.Contains("\"@l\":\"Error\"", StringComparison.Ordinal) || line.Contains("\"@l\":\"Fatal\"", StringComparison.Ordinal) || line.Contains("Exception", StringComparison.Ordinal);

    private async Task<RunningApp> StartAsync(Dictionary<string, string> settings) =>
        await StartAsync(await databases.FreshAsync(ClinicEngine.Sqlite), settings);

    private static async Task<RunningApp> StartAsync(TestDatabase db, Dictionary<string, string> settings)
    {
        settings.TryAdd("Web__Proxies", "");
        foreach (var (name, value) in db.Settings)
        {
            settings[name.Replace(":", "__", StringComparison.Ordinal)] = value!;
        }

        return await RunningApp.StartAsync(await PublishedApp.FolderAsync(), settings, Ct);
    }
}
