using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>While a parcel is unpacked, a sound that is added or removed leaves what was ticked and typed as it was.</summary>
public sealed class ArrivalInPlaceTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    [Fact]
    public async Task A_sound_is_added_and_removed_and_nothing_that_was_ticked_or_typed_is_lost()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "arrival-in-place", 390);
        await teacher.GoToAsync("/desk");
        var arrival = await teacher.Page.Locator("main a[href^='/batches/'][href$='/arrival']").First.GetAttributeAsync("href");
        await teacher.GoToAsync(arrival!);
        var reed = teacher.Page.GetByRole(AriaRole.Region, new() { Name = "Reed 1", Exact = true });
        await reed.GetByText("Yes, it is here", new() { Exact = true }).ClickAsync();
        await reed.GetByLabel("How do you tell the upper blade?").FillAsync("pencil dot");

        var file = Path.Combine(Artifacts.Folder("files"), "arrival-in-place.wav");
        FakeMicrophone.Write(file, 1.5, time => 0.2 * Math.Sin(2 * Math.PI * FakeMicrophone.Hertz * time));
        var sounds = teacher.Page.Locator(".batch-recordings .recordings").First;
        await sounds.GetByText("Add a sound: as it came").ClickAsync();
        await sounds.Locator("input[type=file]").First.SetInputFilesAsync(file);
        await sounds.GetByRole(AriaRole.Button, new() { Name = "Add it" }).First.ClickAsync();
        await Assertions.Expect(sounds.Locator("li.just-kept")).ToBeFocusedAsync();
        await StandsAsync(teacher, reed, arrival!);
        await teacher.LookAsync("a sound was kept, and the ticks stand");
        await teacher.FitsAsync();

        await sounds.Locator(".remove summary").First.ClickAsync();
        await sounds.Locator(".remove button").First.ClickAsync();
        await Assertions.Expect(sounds.Locator("audio")).ToHaveCountAsync(0);
        await StandsAsync(teacher, reed, arrival!);
        await teacher.LookAsync("it was removed, and the ticks stand");
    }

    private static async Task StandsAsync(Visitor teacher, ILocator reed, string arrival)
    {
        await Assertions.Expect(reed.GetByLabel("Yes, it is here")).ToBeCheckedAsync();
        await Assertions.Expect(reed.GetByLabel("How do you tell the upper blade?")).ToHaveValueAsync("pencil dot");
        Assert.EndsWith(arrival, new Uri(teacher.Page.Url).AbsolutePath, StringComparison.Ordinal);
    }
}
