using System.Net;
using Microsoft.AspNetCore.Hosting;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Tests.Hosting;

public sealed class ShellTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    [Theory]
    [InlineData("/", HttpStatusCode.OK)]
    [InlineData("/nothing-of-the-kind", HttpStatusCode.NotFound)]
    [InlineData("/trouble", HttpStatusCode.OK)]
    public async Task Every_page_carries_the_guard_headers_and_is_never_stored(string path, HttpStatusCode expected)
    {
        using var visitor = host.Visitor();
        using var response = await visitor.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(expected, response.StatusCode);
        Assert.Equal(GuardHeaders.ContentPolicy, Assert.Single(response.Headers.GetValues("Content-Security-Policy")));
        Assert.Equal("nosniff", Assert.Single(response.Headers.GetValues("X-Content-Type-Options")));
        Assert.True(response.Headers.CacheControl?.NoStore);
        Assert.False(response.Headers.Contains("Server"));
    }

    [Theory]
    [InlineData("/")]
    [InlineData("/nothing-of-the-kind")]
    [InlineData("/trouble")]
    public async Task A_page_has_one_heading_of_the_first_rank_one_main_part_and_a_way_to_skip_to_it(string path)
    {
        using var visitor = host.Visitor();
        var page = await (await visitor.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken))
            .Content.ReadAsStringAsync(TestContext.Current.CancellationToken);

        Assert.Single(Seen("<h1", page));
        Assert.Single(Seen("<main", page));
        Assert.Contains("#main\">", page, StringComparison.Ordinal);
        Assert.Contains("lang=\"en-GB\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task It_starts_in_development_too_where_every_service_is_checked_for_its_lifetime()
    {
        await using var developing = host.WithWebHostBuilder(builder => builder.UseEnvironment("Development").UseSetting("Demo:Seed", "false"));
        using var visitor = developing.CreateClient(new() { BaseAddress = new Uri("https://localhost") });

        Assert.Equal(HttpStatusCode.OK, (await visitor.See("/")).Status);
    }

    [Theory]
    [InlineData("/health/live")]
    [InlineData("/health/ready")]
    public async Task The_watcher_is_answered(string path)
    {
        using var visitor = host.Visitor();
        using var response = await visitor.GetAsync(new Uri(path, UriKind.Relative), TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.OK, response.StatusCode);
    }

    [Fact]
    public async Task Lamp_mode_is_remembered_and_leads_back_to_the_page_it_was_switched_on()
    {
        using var visitor = host.Visitor();
        var form = await Form.At(visitor, "/nothing-of-the-kind", "/lamp");
        form.Set("lamp", "on");
        using var answer = await form.Post();

        Assert.Equal(HttpStatusCode.Found, answer.StatusCode);
        Assert.Equal("/nothing-of-the-kind", answer.Leads());
        var page = await visitor.GetStringAsync(new Uri("/", UriKind.Relative), TestContext.Current.CancellationToken);
        Assert.Contains("data-lamp=\"on\"", page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_form_without_its_token_is_refused()
    {
        using var visitor = host.Visitor();
        using var fields = new FormUrlEncodedContent([new("lamp", "on")]);
        using var answer = await visitor.PostAsync(new Uri("/lamp", UriKind.Relative), fields, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
    }

    [Theory]
    [InlineData("Form.Name", null)]
    [InlineData("Form.Name", "a\0b")]
    [InlineData("__RequestVerificationToken", "of another day")]
    public async Task A_page_that_turns_a_form_away_says_so_in_words(string field, string? typed)
    {
        using var visitor = host.Visitor();
        var form = (await Form.At(visitor, await host.Invite(ClinicHost.NewEmail("hille")))).Set("Form.Name", "Hille");
        using var answer = await (typed is null ? form.Without("__RequestVerificationToken") : form.Set(field, typed)).Post();

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("<h1>That page had been open too long</h1>", (await answer.Read()).Page, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Nobody_is_signed_out_by_a_form_from_elsewhere()
    {
        using var student = await host.Student("Hille");
        using var fields = new FormUrlEncodedContent([new("any", "thing")]);
        using var answer = await student.PostAsync(new Uri("/account/sign-out", UriKind.Relative), fields, TestContext.Current.CancellationToken);

        Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        Assert.Contains("/account/sign-out", (await student.See("/")).Page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("/desk", "/desk")]
    [InlineData("//elsewhere.example", "/")]
    [InlineData("/\\elsewhere.example", "/")]
    [InlineData("https://elsewhere.example", "/")]
    [InlineData("/a\r\nb", "/")]
    [InlineData("", "/")]
    [InlineData(null, "/")]
    public void The_way_back_stays_on_this_site(string? asked, string expected) =>
        Assert.Equal(expected, LocalPath.OrHome(asked));

    private static List<int> Seen(string what, string page)
    {
        var places = new List<int>();
        for (var at = page.IndexOf(what, StringComparison.Ordinal); at >= 0; at = page.IndexOf(what, at + 1, StringComparison.Ordinal))
        {
            places.Add(at);
        }

        return places;
    }
}
