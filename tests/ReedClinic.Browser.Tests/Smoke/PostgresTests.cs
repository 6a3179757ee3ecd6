using ReedClinic.Browser.Tests.Journey;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Smoke;

/// <summary>The same program on PostgreSQL: people get in, and what is typed survives a closed window.</summary>
public sealed class PostgresTests(OneBrowser browser, PostgresClinic app) : IClassFixture<PostgresClinic>
{
    [Fact]
    public async Task A_closed_window_loses_nothing()
    {
        await using var teacher = await browser.VisitAsync(app.Home, "postgres-teacher");
        teacher.Looks = false;
        await teacher.OpenTheStudioAsync(app);
        await using (var student = await browser.VisitAsync(app.Home, "postgres-student", width: 390))
        {
            student.Looks = false;
            await student.SignUpAsync(app);
            await student.BeginAsync();
            await student.TellAboutMeAsync();
            await student.Field("Reed 1 is the one with …").FillAsync("a nick in the bark");
            await student.Page.GetByText("Saved at").WaitForAsync();
        }

        await using var again = await browser.VisitAsync(app.Home, "postgres-again", width: 390);
        again.Looks = false;
        await again.SignInAsync(Door.Student, thenAt: "/");
        await again.GoToAsync("/intake");
        await again.PressAsync(again.Page.Locator(".continue a.button"), "/intake/[^/]+/reed/1/recognise");
        Assert.Equal("a nick in the bark", await again.Field("Reed 1 is the one with …").InputValueAsync());
    }
}
