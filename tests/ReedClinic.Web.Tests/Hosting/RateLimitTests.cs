using System.Globalization;
using System.Net;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Audit;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Tests.Hosting;

/// <summary>
/// How often one address may knock, and whose word counts for what the address is (OWASP ASVS 5.0: 2.4.1, 6.3.1; RFC 6585,
/// section 4). The addresses are those of RFC 5737, which belong to nobody.
/// </summary>
public sealed class RateLimitTests(RateLimitTests.Limited host) : IClassFixture<RateLimitTests.Limited>
{
    private const int Most = 3;
    private const string Proxy = "192.0.2.1";

    [Fact]
    public async Task After_the_limit_a_sign_in_is_turned_away_kindly_for_a_while_and_a_passkey_is_still_asked_for()
    {
        using var visitor = host.From("198.51.100.1");
        await KnockAsync(visitor, Most);

        using var answer = await SignInAsync(visitor);
        var (status, page, _) = await answer.Read();

        Assert.Equal(HttpStatusCode.TooManyRequests, status);
        Assert.Contains("<h1>A moment, please</h1>", page, StringComparison.Ordinal);
        Assert.Contains("Wait a little and try again.", page, StringComparison.Ordinal);
        Assert.InRange(int.Parse(Assert.Single(answer.Headers.GetValues("Retry-After")), CultureInfo.InvariantCulture), 1, 300);

        // The page itself may be opened, and a passkey has a door of its own.
        var (open, signIn, _) = await visitor.See("/account/sign-in");
        Assert.Equal(HttpStatusCode.OK, open);
        using var passkey = await Form.Named(visitor, "/account/sign-in", signIn, "passkey").PostTo("/account/passkey/use");
        Assert.Equal(HttpStatusCode.OK, passkey.StatusCode);
        Assert.Contains("challenge", await passkey.Content.ReadAsStringAsync(TestContext.Current.CancellationToken), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_a_stranger_says_of_where_they_come_from_changes_nothing()
    {
        using var stranger = host.From("198.51.100.2");
        for (var i = 0; i < Most; i++)
        {
            Assert.Equal(HttpStatusCode.OK, await SignInAsync(stranger, $"203.0.113.{i}"));
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, await SignInAsync(stranger, "203.0.113.99"));
        Assert.Equal(HttpStatusCode.TooManyRequests, await SignInAsync(stranger, $"203.0.113.100, {Proxy}"));
    }

    [Fact]
    public async Task Another_door_and_another_person_are_open_all_the_same()
    {
        using var visitor = host.From("198.51.100.3");
        await KnockAsync(visitor, Most + 1);

        using var link = await (await Form.At(visitor, "/account/forgotten")).Set("Form.Email", ClinicHost.NewEmail("nobody")).Post();
        Assert.NotEqual(HttpStatusCode.TooManyRequests, link.StatusCode);

        using var neighbour = host.From("198.51.100.4");
        using var answer = await SignInAsync(neighbour);
        Assert.Equal(HttpStatusCode.OK, answer.StatusCode);
    }

    [Fact]
    public async Task Those_who_come_through_a_proxy_that_the_settings_name_count_apart()
    {
        using var proxy = host.From(Proxy);
        for (var i = 0; i < Most; i++)
        {
            Assert.Equal(HttpStatusCode.OK, await SignInAsync(proxy, "203.0.113.5"));
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, await SignInAsync(proxy, "203.0.113.5"));
        Assert.Equal(HttpStatusCode.OK, await SignInAsync(proxy, "203.0.113.6"));

        // The last address is the one the proxy saw itself; what stands before it, the visitor may have made up.
        Assert.Equal(HttpStatusCode.TooManyRequests, await SignInAsync(proxy, "203.0.113.7, 203.0.113.5"));
    }

    [Fact]
    public async Task However_many_are_turned_away_the_audit_says_so_once_a_minute()
    {
        using var visitor = host.From("198.51.100.9");
        await KnockAsync(visitor, Most + 12);

        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        await using var _ = await db.Database.BeginTransactionAsync(TestContext.Current.CancellationToken);
        var told = await db.Set<AuditNote>().CountAsync(note => note.Event == AuditEvent.TooMany, TestContext.Current.CancellationToken)
            + await db.Set<AuditEntry>().CountAsync(entry => entry.Event == AuditEvent.TooMany, TestContext.Current.CancellationToken);
        Assert.InRange(told, 1, 5); // the tests of this class take a few minutes at the most, and each was told once
    }

    [Fact]
    public async Task An_empty_or_mistyped_form_is_no_try_and_says_what_is_missing_beside_the_field()
    {
        using var visitor = host.From("198.51.100.5");
        for (var i = 0; i <= Most; i++)
        {
            using var empty = await (await Form.At(visitor, "/account/sign-in")).Post();
            var (status, page, _) = await empty.Read();
            Assert.Equal(HttpStatusCode.OK, status);
            Assert.Contains("id=\"f-Form-Email-error\"", page, StringComparison.Ordinal);
            Assert.Contains("id=\"f-Form-Password-error\"", page, StringComparison.Ordinal);
            using var mistyped = await (await Form.At(visitor, "/account/forgotten")).Set("Form.Email", "nobody").Post();
            Assert.Contains("id=\"f-Form-Email-error\"", (await mistyped.Read()).Page, StringComparison.Ordinal);
        }

        await KnockAsync(visitor, Most + 1);
    }

    [Fact]
    public async Task Each_door_has_a_budget_of_its_own()
    {
        await host.OpenStudio();
        using var visitor = host.From("198.51.100.6");
        for (var i = 0; i <= Most; i++)
        {
            using var forgotten = await (await Form.At(visitor, "/account/forgotten")).Set("Form.Email", ClinicHost.NewEmail("nobody")).Post();
            Assert.Equal(i < Most ? HttpStatusCode.OK : HttpStatusCode.TooManyRequests, forgotten.StatusCode);
        }

        foreach (var door in new[] { "/begin", "/account/sign-up" })
        {
            using var link = await (await Form.At(visitor, door)).Set("Form.Email", ClinicHost.NewEmail("nobody")).Post();
            Assert.Equal(HttpStatusCode.OK, link.StatusCode);
        }
    }

    [Fact]
    public async Task Letters_by_private_links_are_asked_for_so_often_and_not_on_and_on()
    {
        using var visitor = host.From("198.51.100.7");
        foreach (var place in new[] { "", "/file", $"/recordings/{Guid.Empty}" })
        {
            Assert.NotEqual(HttpStatusCode.TooManyRequests, (await visitor.See($"/read/{new string('x', 43)}{place}")).Status);
        }

        Assert.Equal(HttpStatusCode.TooManyRequests, (await visitor.See($"/read/{new string('y', 43)}")).Status);
        Assert.Equal(HttpStatusCode.TooManyRequests, (await visitor.See($"/READ/{new string('z', 43)}/file")).Status);
        Assert.Equal(HttpStatusCode.OK, (await visitor.See("/account/sign-in")).Status);
    }

    [Fact]
    public async Task A_class_of_thirty_behind_one_address_asks_for_links_begins_and_signs_in()
    {
        await using var usual = new Usual();
        await usual.OpenStudio();
        for (var i = 0; i < 30; i++)
        {
            using var pupil = usual.Visitor();
            foreach (var door in new[] { "/begin", "/account/sign-up", "/account/forgotten" })
            {
                using var asked = await (await Form.At(pupil, door)).Set("Form.Email", ClinicHost.NewEmail("pupil")).Post();
                Assert.Equal(HttpStatusCode.OK, asked.StatusCode);
            }

            using var begun = await Form.Of(pupil, "/begin/not-a-link-of-ours", (await pupil.See("/begin")).Page).PostTo("/begin/not-a-link-of-ours");
            Assert.NotEqual(HttpStatusCode.TooManyRequests, begun.StatusCode);
            using var signIn = await SignInAsync(pupil);
            Assert.Equal(HttpStatusCode.OK, signIn.StatusCode);
        }
    }

    private static async Task KnockAsync(HttpClient visitor, int times)
    {
        for (var i = 0; i < times; i++)
        {
            using var answer = await SignInAsync(visitor);
            Assert.Equal(i < Most ? HttpStatusCode.OK : HttpStatusCode.TooManyRequests, answer.StatusCode);
        }
    }

    private static async Task<HttpStatusCode> SignInAsync(HttpClient visitor, string forwardedFor)
    {
        visitor.DefaultRequestHeaders.Remove("X-Forwarded-For");
        visitor.DefaultRequestHeaders.Add("X-Forwarded-For", forwardedFor);
        using var answer = await SignInAsync(visitor);
        return answer.StatusCode;
    }

    private static async Task<HttpResponseMessage> SignInAsync(HttpClient visitor) =>
        await (await Form.At(visitor, "/account/sign-in")).Set("Form.Email", ClinicHost.NewEmail("nobody")).Set("Form.Password", "not this one").Post();

    /// <summary>The program with the limits it has unless the settings say otherwise; everybody comes from one address.</summary>
    private sealed class Usual : ClinicHost
    {
        protected override bool IsLimited => true;
    }

    /// <summary>The program with a small limit, behind a proxy that its settings name; who knocks says from which address.</summary>
    public sealed class Limited : ClinicHost
    {
        private const string Peer = "Peer-Of-This-Connection";

        /// <summary>A visitor whose connection comes from an address.</summary>
        public HttpClient From(string address)
        {
            var visitor = Visitor();
            visitor.DefaultRequestHeaders.Add(Peer, address);
            return visitor;
        }

        protected override void ConfigureWebHost(IWebHostBuilder builder)
        {
            base.ConfigureWebHost(builder);
            builder.UseSetting(RateLimits.SignIn, $"{Most}");
            builder.UseSetting(RateLimits.Forgotten, $"{Most}");
            builder.UseSetting(RateLimits.LetterLink, $"{Most}");
            builder.UseSetting(Doorway.Proxies, Proxy);
            builder.ConfigureTestServices(services => services.AddSingleton<IStartupFilter, Connections>());
        }

        // Before anything of the program: what a socket would say.
        private sealed class Connections : IStartupFilter
        {
            public Action<IApplicationBuilder> Configure(Action<IApplicationBuilder> next) => app =>
            {
                app.Use((context, inside) =>
                {
                    context.Connection.RemoteIpAddress = IPAddress.Parse(context.Request.Headers[Peer].ToString());
                    return inside(context);
                });
                next(app);
            };
        }
    }
}
