using System.Net;
using System.Text.RegularExpressions;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Account;

/// <summary>Coming back for whoever has nothing but a link.</summary>
public sealed partial class ComingBackTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_student_who_came_by_a_link_finds_back_after_consent_was_taken_back()
    {
        await host.OpenStudio();
        var (email, guardian) = (ClinicHost.NewEmail("mette"), ClinicHost.NewEmail("rosa"));
        using var phone = host.Visitor();
        var first = await host.BeginLinkAsync(phone, email);
        using (await (await Form.At(phone, first)).Set("Form.Name", "Mette").Set("Form.Age", "Younger").Post())
        {
        }

        using (await (await Form.At(phone, "/guardian")).Set("Form.Name", "Rosa").Set("Form.Email", guardian).Post())
        {
        }

        using var rosa = host.Visitor();
        using (await (await Form.At(rosa, await host.Mailed(guardian, "/guardian/answer/"))).Set("Form.Name", "Rosa").Set("Form.Password", ClinicHost.Password).Post())
        {
        }

        var ward = WardPath().Match((await rosa.See("/wards")).Page).Value;
        using (var withdrawn = await Form.Named(rosa, $"{ward}/take-back", (await rosa.See($"{ward}/take-back")).Page, "consent").Post())
        {
            Assert.Equal($"{ward}?done=withdrawn", withdrawn.Leads());
        }

        var (_, _, signIn) = await phone.See("/guardian");
        Assert.StartsWith("/account/sign-in", signIn, StringComparison.Ordinal);
        var way = WebUtility.HtmlDecode((await phone.See(signIn!)).Page);
        Assert.Contains("there is nothing to type here", way, StringComparison.Ordinal);
        Assert.Contains("href=\"/begin\"", way, StringComparison.Ordinal);

        var second = await NextBeginLinkAsync(phone, email, first);
        using (var again = await (await Form.At(phone, second)).Post())
        {
            Assert.Equal("/guardian", again.Leads());
        }

        Assert.Contains("Your guardian has taken their consent back.", WebUtility.HtmlDecode((await phone.See("/")).Page), StringComparison.Ordinal);
    }

    // The latest mail is another one than the first only once it was written.
    private async Task<string> NextBeginLinkAsync(HttpClient visitor, string email, string before)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(50));
        var link = await host.BeginLinkAsync(visitor, email);
        while (link == before && await tick.WaitForNextTickAsync(Ct))
        {
            link = await host.Mailed(email, "/begin/");
        }

        return link;
    }

    [GeneratedRegex("/wards/[0-9a-f-]{36}")]
    private static partial Regex WardPath();
}
