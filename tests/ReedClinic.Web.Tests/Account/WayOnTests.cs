using System.Net;
using AngleSharp.Html.Parser;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Routing;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account.Links;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>
/// Whoever opens their link once more comes to where they were going, and nowhere else. CWE-601: a way back is never another
/// site's.
/// </summary>
public sealed class WayOnTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Fact]
    public async Task Who_is_asked_to_open_their_link_again_goes_on_where_they_were_going()
    {
        var (phone, link) = await BegunAsync("anouk");
        var asks = (await phone.See("/account/email")).Location!;
        Assert.Equal("/account/again?back=/account/email", asks);
        var page = WebUtility.HtmlDecode((await phone.See(asks)).Page);
        Assert.Contains("Open it once more on this device", page, StringComparison.Ordinal);
        Assert.DoesNotContain("/account/claim", page, StringComparison.Ordinal); // it would ask for the same

        using var gone = await (await Form.At(phone, link)).Post();

        Assert.Equal("/account/email", gone.Leads());
        Assert.Equal(HttpStatusCode.OK, (await phone.See("/account/email")).Status);
        Assert.Equal("/account/email", (await phone.See(asks)).Location); // shown already
        using var again = await (await Form.At(phone, link)).Post();
        Assert.Equal("/", again.Leads());
    }

    [Fact]
    public async Task Who_was_about_to_choose_a_password_chooses_it_and_goes_on_where_they_were()
    {
        var (phone, link) = await BegunAsync("bente");
        var offered = WebUtility.HtmlDecode((await phone.See("/batches")).Page);
        Assert.DoesNotContain("/account/claim", offered, StringComparison.Ordinal);
        Assert.Contains("brings you back here", WebUtility.HtmlDecode((await phone.See("/account/claim?back=%2Fbatches")).Page), StringComparison.Ordinal);

        using var gone = await (await Form.At(phone, link)).Post();
        Assert.Equal("/account/claim?back=%2Fbatches", gone.Leads());
        using var chosen = await (await Form.At(phone, gone.Leads()!)).Set("Form.Password", ClinicHost.Password).Post();

        Assert.Equal("/account/claim?done=yes&back=%2Fbatches", chosen.Leads());
        using var done = new HtmlParser().ParseDocument((await phone.See(chosen.Leads()!)).Page);
        Assert.Equal("/batches", done.QuerySelector("main a.button")!.GetAttribute("href"));
    }

    [Theory]
    [InlineData("https://elsewhere.example/account")]
    [InlineData("//elsewhere.example")]
    [InlineData("/\\elsewhere.example")]
    [InlineData("/\t/elsewhere.example")]
    [InlineData("javascript:alert(1)")]
    public async Task No_way_on_leads_to_another_site(string way)
    {
        var asked = Uri.EscapeDataString(way);
        var (phone, link) = await BegunAsync("carin");
        Assert.DoesNotContain("elsewhere", Said((await phone.See($"/account/again?back={asked}")).Page), StringComparison.Ordinal);
        await phone.See($"/account/claim?back={asked}");
        using (var gone = await (await Form.At(phone, link)).Post())
        {
            Assert.Equal("/account/claim", gone.Leads());
        }

        Assert.Equal("/", (await phone.See($"/account/again?back={asked}")).Location);
        using var chosen = await (await Form.At(phone, $"/account/claim?back={asked}")).Set("Form.Password", ClinicHost.Password).Post();
        Assert.Equal("/account/claim?done=yes", chosen.Leads());
        using var done = new HtmlParser().ParseDocument((await phone.See($"/account/claim?done=yes&back={asked}")).Page);
        Assert.Equal("/", done.QuerySelector("main a.button")!.GetAttribute("href"));

        // A cookie can be written by whoever has the device, or a neighbour under the same name.
        Assert.Equal("/", host.Services.GetRequiredService<WayOn>().Take(Came(way)));
    }

    [Fact]
    public async Task Whoever_begins_by_their_first_link_begins_on_the_first_page()
    {
        await host.OpenStudio();
        using var phone = host.Visitor();
        await phone.See("/account/sign-in?back=/wards");
        using var begun = await (await Form.At(phone, await host.BeginLinkAsync(phone, ClinicHost.NewEmail("dorte")))).Set("Form.Name", "Dorte").Set("Form.Age", "OldEnough").Post();

        Assert.Equal("/", begun.Leads());
    }

    [Fact]
    public async Task Whoever_signs_in_or_out_leaves_nothing_behind_of_where_somebody_was_going()
    {
        var (shared, link) = await BegunAsync("ivar");
        var (_, email) = await host.AccountAsync("jette");
        await shared.See("/account/again?back=/account/email");
        using (await Form.Of(shared, "/", (await shared.See("/trouble")).Page, "/account/sign-out").Set("Sure", "yes").Post())
        {
        }

        using (var afterLeaving = await (await Form.At(shared, link)).Post())
        {
            Assert.Equal("/", afterLeaving.Leads());
        }

        using (await Form.Of(shared, "/", (await shared.See("/trouble")).Page, "/account/sign-out").Set("Sure", "yes").Post())
        {
        }

        const string Door = "/account/sign-in?back=/wards";
        using (var came = await Form.Named(shared, Door, (await shared.See(Door)).Page, "sign-in").Set("Form.Email", email).Set("Form.Password", ClinicHost.Password).Post())
        {
            Assert.Equal("/wards", came.Leads());
        }

        using var afterAnother = await (await Form.At(shared, link)).Post();
        Assert.Equal("/", afterAnother.Leads());
    }

    [Fact]
    public async Task Where_nobody_says_where_they_are_going_what_was_known_before_is_forgotten()
    {
        var (phone, link) = await BegunAsync("kaja");
        await phone.See("/account/again?back=/account/email");
        await phone.See("/account/again");

        using var gone = await (await Form.At(phone, link)).Post();

        Assert.Equal("/", gone.Leads());
    }

    [Fact]
    public void No_page_with_a_secret_in_its_address_is_remembered_or_gone_to()
    {
        var secret = host.Services.GetRequiredService<EndpointDataSource>().Endpoints.OfType<RouteEndpoint>()
            .Select(page => page.RoutePattern.RawText!).Where(page => page.Contains("{Secret}", StringComparison.Ordinal))
            .Select(page => page.Replace("{Secret}", "hush-hush", StringComparison.Ordinal)).Distinct().ToList();
        Assert.Contains("/guardian/answer/hush-hush", secret);
        foreach (var path in secret.SelectMany(Written))
        {
            Assert.Equal("", Remembered(path));
            Assert.Equal("/", host.Services.GetRequiredService<WayOn>().Take(Came(path)));
        }

        Assert.Equal("/batches", Remembered("/batches"));
        Assert.Equal("/batches", host.Services.GetRequiredService<WayOn>().Take(Came("/batches")));

        static IEnumerable<string> Written(string path) =>
            [path, path.ToUpperInvariant(), $"/{Uri.HexEscape(path[1])}{path[2..]}",
             "/" + path[1..].Replace('/', '\\'), $"/account/claim?back={Uri.EscapeDataString(path)}",
             $"/account/again?back={Uri.EscapeDataString($"/account/claim?back={Uri.EscapeDataString(path)}")}"];
    }

    [Theory]
    [InlineData("/account/email")]
    [InlineData("/account/codes")]
    [InlineData("/privacy/erase")]
    public async Task Not_now_leads_to_a_page_that_does_not_ask_again(string page)
    {
        var (account, email) = await host.AccountAsync("eske", page == "/account/codes" ? Role.Teacher : null);
        using var visitor = await host.SignedIn(account, SignInWay.Password);
        await host.GrowStaleAsync(email);
        using var asks = new HtmlParser().ParseDocument((await visitor.See($"/account/again?back={page}")).Page);

        var notNow = asks.QuerySelectorAll("main a").Single(link => link.TextContent == "Not now").GetAttribute("href")!;

        Assert.Equal(HttpStatusCode.OK, (await visitor.See(notNow)).Status);
    }

    [Fact]
    public async Task Nobody_without_a_password_is_told_to_change_it()
    {
        var (phone, _) = await BegunAsync("frida");
        Assert.DoesNotContain("change your password", WebUtility.HtmlDecode((await phone.See("/account")).Page), StringComparison.Ordinal);

        var (account, email) = await host.AccountAsync("gro");
        await host.AddPasskeyAsync(account);
        await host.ForgetPasswordAsync(email);
        using var gro = await host.SignedIn(account);
        Assert.Contains("remove each passkey that you don’t know", WebUtility.HtmlDecode((await gro.See("/account")).Page), StringComparison.Ordinal);
        using var choose = new HtmlParser().ParseDocument((await gro.See("/account/password")).Page);
        Assert.Equal(("Choose a password", "Choose a password"), (choose.Title, choose.QuerySelector("h1")!.TextContent));

        var (other, _) = await host.AccountAsync("hedda");
        using var hedda = await host.SignedIn(other);
        Assert.Contains("change your password", WebUtility.HtmlDecode((await hedda.See("/account")).Page), StringComparison.Ordinal);
    }

    // Somebody who began by a link more than ten minutes ago, and the link.
    private async Task<(HttpClient Phone, string Link)> BegunAsync(string name)
    {
        await host.OpenStudio();
        var phone = host.Visitor();
        var email = ClinicHost.NewEmail(name);
        var link = await host.BeginLinkAsync(phone, email);
        using var begun = await (await Form.At(phone, link)).Set("Form.Name", name).Set("Form.Age", "OldEnough").Post();
        await host.GrowStaleAsync(email);
        return (phone, link);
    }

    // What a browser is told to keep that knew another page before: “” when it is told to forget it.
    private string Remembered(string path)
    {
        var context = Came("/before");
        host.Services.GetRequiredService<WayOn>().Remember(context, path);
        var told = Assert.Single(context.Response.GetTypedHeaders().SetCookie);
        Assert.Equal(told.Value.Length == 0, told.Expires < DateTimeOffset.UnixEpoch.AddDays(1));
        return Uri.UnescapeDataString(told.Value.ToString());
    }

    private static DefaultHttpContext Came(string path)
    {
        var context = new DefaultHttpContext();
        context.Request.Headers.Cookie = $"__Host-reedclinic-way={Uri.EscapeDataString(path)}";
        return context;
    }

    private static string Said(string page) => page[page.IndexOf("<main", StringComparison.Ordinal)..page.IndexOf("</main", StringComparison.Ordinal)];
}
