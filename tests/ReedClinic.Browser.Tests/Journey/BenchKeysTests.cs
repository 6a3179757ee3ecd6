using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The bench without a mouse: wet fingers and a keyboard, or a pedal that sends keys.</summary>
public sealed class BenchKeysTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task A_finding_is_written_and_taken_back_by_the_keyboard_alone()
    {
        await using var teacher = await browser.VisitAsync(app.Home, "bench-keys");
        await teacher.SignInAsync("edda@lanternquay.example", thenAt: "/(desk)?", DemoClinic.Password);
        await teacher.GoToAsync("/desk");
        await teacher.LookAsync("desk of the demo");
        await teacher.PressAsync(teacher.Link("Tomas Arden"), "/batches/[^/]+");
        await teacher.LookAsync("batch of the demo");
        await teacher.PressAsync(teacher.Link("Bench: reed 1"), "/bench/[^/]+");
        await teacher.LiveAsync();
        await teacher.LookAsync("bench of the demo");
        await teacher.WorkOnFirstReedAsync();
        await teacher.MendAsync();
        await teacher.FinishAsync("Clean every time.", "improved", "Play this one first.");
    }
}
