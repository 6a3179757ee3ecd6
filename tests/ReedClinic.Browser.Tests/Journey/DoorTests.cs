using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

public sealed class DoorTests(OneBrowser browser, SqliteClinic app) : IClassFixture<SqliteClinic>
{
    [Fact]
    public async Task A_student_signs_up_out_and_in_again()
    {
        await using (var owner = await browser.VisitAsync(app.Home, "door-owner"))
        {
            owner.Looks = false;
            await owner.OpenTheStudioAsync(app);
        }

        await using var student = await browser.VisitAsync(app.Home, "door-student", width: 390);
        student.Looks = false;
        await student.SignUpAsync(app);
        await student.FitsAsync();
        student.Looks = true;
        await student.Button("Sign out").ClickAsync();
        await student.Link("Sign in").First.WaitForAsync();
        await student.SignInAsync(Door.Student, thenAt: "/");
        await student.Button("Sign out").WaitForAsync();
    }

    [Fact]
    public async Task The_desk_is_closed_to_a_stranger()
    {
        await using var stranger = await browser.VisitAsync(app.Home, "door-stranger");

        await stranger.Page.GotoAsync("/desk");
        await stranger.ArriveAsync("/account/sign-in");
    }
}
