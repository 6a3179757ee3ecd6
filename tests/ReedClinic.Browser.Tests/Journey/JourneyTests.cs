using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The whole job as people do it: student on a phone, teacher at a desk, student again.</summary>
public sealed class JourneyTests(OneBrowser browser, SqliteClinic app) : IClassFixture<SqliteClinic>
{
    [Fact]
    public async Task From_intake_to_a_letter_that_is_read()
    {
        await using var teacher = await browser.VisitAsync(app.Home, "journey-teacher");
        await using var student = await browser.VisitAsync(app.Home, "journey-student", width: 390);
        await teacher.OpenTheStudioAsync(app);
        await teacher.LookAsync("desk, empty");

        await student.SignUpAsync(app);
        var code = await student.SendTwoReedsAsync();

        await teacher.UnpackAsync(code);
        await teacher.FirstLookAsync(code);
        await teacher.OpenReedAsync(code, 1);
        await teacher.WorkOnFirstReedAsync();
        await teacher.MendAsync();
        await teacher.FinishAsync("Clean every time: nothing more to win.", "improved", "Play this one first.");
        await teacher.LookAsync("bench, first reed finished");
        await teacher.OpenReedAsync(code, 2);
        await teacher.FindAsync("tip corners too thick", "light");
        await teacher.FindAsync("seals well", "ear");
        await teacher.FinishAsync("The corner is chipped: less is more.", "stopped to protect it", "Keep it for practice.");

        await teacher.ChooseTheThreadAsync(code);
        await teacher.WriteAndSendAsync(code);

        await student.ReadTheLetterAsync(code);
        await teacher.GoToAsync("/desk");
        await teacher.LookAsync("desk, the letter is out");
    }
}
