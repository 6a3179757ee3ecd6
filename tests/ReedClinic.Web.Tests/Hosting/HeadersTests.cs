using System.Net;
using System.Net.Http.Headers;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Routing;
using Microsoft.AspNetCore.StaticAssets;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>
/// The headers of every address the program serves, files, errors, redirects and what isn't there included (OWASP ASVS 5.0,
/// 3.3.1 to 3.3.4, 3.4.1, 3.4.3 to 3.4.6, 3.4.8, 13.4.6, 14.3.2).
/// </summary>
public sealed class HeadersTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static readonly string[] More = ["/", "/nothing-of-the-kind", "/trouble", "/stopped/403", "/css/nothing.css", "/batches/XXX", "/desk", "/_blazor/negotiate"];

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Every_address_answers_with_the_guard_headers_whoever_asks()
    {
        using var visitor = FromOutside(host.Visitor());
        using var student = FromOutside(await host.Student("Hedda"));
        var seen = new HashSet<HttpStatusCode>();
        foreach (var client in new[] { visitor, student })
        {
            foreach (var (path, isFile) in Served().Concat(More.Select(path => (path, false))))
            {
                using var answer = await client.GetAsync(new Uri(path, UriKind.Relative), HttpCompletionOption.ResponseHeadersRead, Ct);
                Guarded(answer, path, isFile);
                seen.Add(answer.StatusCode);
            }
        }

        Assert.Superset(new HashSet<HttpStatusCode> { HttpStatusCode.OK, HttpStatusCode.Found, HttpStatusCode.NotFound, HttpStatusCode.MethodNotAllowed }, seen);
    }

    [Fact]
    public async Task What_answers_a_form_is_guarded_too()
    {
        using var student = FromOutside(await host.Student("Hedwig"));
        using var lamp = await (await Form.At(student, "/trouble", "/lamp")).Set("lamp", "on").Post();
        using var stale = await (await Form.At(student, "/trouble", "/lamp")).Without("__RequestVerificationToken").Post();
        using var intake = await (await Form.At(student, "/intake")).Post();
        using var draft = await (await Form.At(student, intake.Leads()!)).PostTo(intake.Leads()!.Replace("/instrument", "/draft/instrument", StringComparison.Ordinal));

        Assert.All([lamp, stale, intake, draft], answer => Guarded(answer, $"{answer.RequestMessage!.RequestUri}", isFile: false));
    }

    [Fact]
    public async Task Every_cookie_is_kept_to_this_site_and_from_scripts()
    {
        using var student = host.Visitor();
        var link = await host.Invite(ClinicHost.NewEmail("heike"));
        var form = (await Form.At(student, link)).Set("Form.Name", "Heike").Set("Form.Age", "OldEnough").Set("Form.Password", ClinicHost.Password);
        using var page = await host.Visitor().GetAsync(new Uri(link, UriKind.Relative), Ct);
        using var welcome = await form.Post();
        using var lamp = await (await Form.At(student, "/trouble", "/lamp")).Set("lamp", "on").Post();
        var cookies = new[] { page, welcome, lamp }.SelectMany(answer => answer.Headers.TryGetValues("Set-Cookie", out var set) ? set : []).ToList();

        Assert.True(cookies.Count >= 3, $"{string.Join('\n', cookies)}, {lamp.StatusCode}");
        Assert.All(cookies, cookie =>
        {
            Assert.StartsWith("__Host-", cookie, StringComparison.Ordinal);
            Assert.Matches("; path=/(;|$)", cookie);
            Assert.Matches("; secure(;|$)", cookie);
            Assert.Matches("; httponly(;|$)", cookie);
            Assert.Matches("; samesite=(lax|strict)(;|$)", cookie);
        });
    }

    [Theory]
    [InlineData("TRACE", "/")]
    [InlineData("trace", "/")]
    [InlineData("TRACE", "/nothing-of-the-kind")]
    [InlineData("TRACE", "/health/live")]
    public async Task Nothing_is_sent_back_as_it_came(string method, string path)
    {
        using var visitor = FromOutside(host.Visitor());
        using var request = new HttpRequestMessage(new HttpMethod(method), path);
        request.Headers.Add("X-Secret", "heather");
        using var answer = await visitor.SendAsync(request, Ct);

        Assert.Equal(HttpStatusCode.MethodNotAllowed, answer.StatusCode);
        Assert.DoesNotContain("heather", await answer.Content.ReadAsStringAsync(Ct), StringComparison.Ordinal);
        Guarded(answer, "/", isFile: false);
    }

    [Fact]
    public async Task A_file_that_could_not_be_given_is_not_stored_as_one()
    {
        using var visitor = FromOutside(host.Visitor());
        using var request = new HttpRequestMessage(HttpMethod.Get, Served().First(served => served.IsFile).Path);
        request.Headers.Range = new RangeHeaderValue(99_999_999, null);
        using var answer = await visitor.SendAsync(request, Ct);

        Assert.Equal(HttpStatusCode.RequestedRangeNotSatisfiable, answer.StatusCode);
        Guarded(answer, $"{request.RequestUri}", isFile: true);
    }

    [Fact]
    public void Cookies_travel_over_https_alone_however_the_page_was_asked_for()
    {
        var cookies = host.Services.GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>();

        Assert.Equal(CookieSecurePolicy.Always, cookies.Get(IdentityConstants.ApplicationScheme).Cookie.SecurePolicy);
        Assert.Equal(CookieSecurePolicy.Always, cookies.Get(IdentityConstants.TwoFactorUserIdScheme).Cookie.SecurePolicy);
    }

    [Fact]
    public void Scripts_come_from_this_site_alone_and_nothing_is_framed_or_posted_elsewhere()
    {
        var policy = GuardHeaders.ContentPolicy.Split(';', StringSplitOptions.TrimEntries).Select(part => part.Split(' ', 2)).ToDictionary(part => part[0], part => part[1]);

        Assert.Equal("'self'", policy["script-src"]);
        Assert.Equal("'none'", policy["object-src"]);
        Assert.Equal("'none'", policy["frame-ancestors"]);
        Assert.Equal("'self'", policy["base-uri"]);
        Assert.Equal("'self'", policy["form-action"]);
        Assert.Equal("'self'", policy["connect-src"]);
        Assert.DoesNotContain(policy.Values, value => value.Contains("http", StringComparison.Ordinal) || value.Contains('*', StringComparison.Ordinal) || value.Contains("unsafe-eval", StringComparison.Ordinal));
    }

    private static void Guarded(HttpResponseMessage answer, string path, bool isFile)
    {
        string? One(string name) => answer.Headers.TryGetValues(name, out var values) ? Assert.Single(values) : null;

        var wanted = new (string Name, string? Value)[]
        {
            ("Content-Security-Policy", GuardHeaders.ContentPolicy),
            ("X-Content-Type-Options", "nosniff"),
            ("X-Frame-Options", "DENY"),
            ("Referrer-Policy", path.StartsWith("/read/", StringComparison.Ordinal) ? "no-referrer" : "same-origin"), // see LetterLinkPagesTests
            ("Cross-Origin-Opener-Policy", "same-origin"),
            ("Permissions-Policy", "camera=(), geolocation=(), microphone=(self), payment=(), usb=()"),
            ("Strict-Transport-Security", "max-age=31536000; includeSubDomains"),
            ("Server", null),
            ("X-Powered-By", null),
            ("Access-Control-Allow-Origin", null),
        };
        Assert.All(wanted, header => Assert.True(One(header.Name) == header.Value, $"{path} ({(int)answer.StatusCode}): {header.Name} is {One(header.Name) ?? "missing"}"));
        Assert.True((isFile && answer.IsSuccessStatusCode) || answer.Headers.CacheControl is { NoStore: true }, $"{path} ({(int)answer.StatusCode}) may be stored");
    }

    // Every address by its own pattern, with something in each hole; a file of the program is the only thing to be kept.
    private IEnumerable<(string Path, bool IsFile)> Served() =>
        host.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Select(endpoint => (Filled(endpoint.RoutePattern), endpoint.Metadata.GetMetadata<StaticAssetDescriptor>() is not null)).Distinct();

    private static string Filled(Microsoft.AspNetCore.Routing.Patterns.RoutePattern pattern) => "/" + string.Join('/', pattern.PathSegments.Select(segment =>
        string.Concat(segment.Parts.Select(part => part switch
        {
            Microsoft.AspNetCore.Routing.Patterns.RoutePatternLiteralPart literal => literal.Content,
            Microsoft.AspNetCore.Routing.Patterns.RoutePatternSeparatorPart separator => separator.Content,
            Microsoft.AspNetCore.Routing.Patterns.RoutePatternParameterPart hole when pattern.ParameterPolicies.TryGetValue(hole.Name, out var kinds) =>
                kinds.Any(kind => kind.Content == "guid") ? Guid.Empty.ToString() : kinds.Any(kind => kind.Content == "int") ? "404" : "x",
            _ => "x",
        }))));

    // HSTS leaves out what a browser calls its own machine.
    private static HttpClient FromOutside(HttpClient client)
    {
        client.DefaultRequestHeaders.Host = "studio.example";
        return client;
    }
}
