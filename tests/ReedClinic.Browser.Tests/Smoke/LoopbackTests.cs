using ReedClinic.Browser.Tests.Journey;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Smoke;

/// <summary>A real browser keeps the cookies of a studio in Production that it opens by plain http on its own machine.</summary>
public sealed class LoopbackTests(OneBrowser browser, LoopbackClinic app) : IClassFixture<LoopbackClinic>
{
    [Fact]
    public async Task People_get_in_by_plain_http_on_this_machine()
    {
        var home = new UriBuilder(app.Home) { Host = "localhost" }.Uri;
        await using (var owner = await browser.VisitAsync(home, "loopback-owner"))
        {
            owner.Looks = false;
            await owner.OpenTheStudioAsync(app, thenAt: "/account/second-step");
        }

        await using var student = await browser.VisitAsync(home, "loopback-student");
        await student.SignUpAsync(app);
        await student.BeginAsync();
    }
}
