using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>The pages of the catalogue, of what may be behind a reed and of reeds over time, in a wide window and on a phone.</summary>
public sealed class CatalogueLookTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string List = "/studio/catalogue";

    [Theory]
    [InlineData(1280)]
    [InlineData(390)]
    public async Task An_owner_adds_a_fault_adjustment_and_test_and_every_page_of_it_can_be_read_by_everybody(int width)
    {
        await using var owner = await browser.VisitAsync(app, DemoClinic.Owner, $"catalogue-{width}", width);
        await LookAsync(owner, List, "the catalogue");
        foreach (var kind in new[] { "Fault", "Adjustment", "Test" })
        {
            await LookAsync(owner, $"{List}/new?kind={kind}", $"a new {kind.ToLowerInvariant()}");
        }

        await owner.GoToAsync($"{List}/new?kind=Fault");
        await owner.Button("Add it").ClickAsync();
        await owner.Page.Locator("#f-Form-Name-error").WaitForAsync();
        await owner.LookAsync("a fault that is refused");
        await owner.Page.Locator("[name='Form.Name']").FillAsync($"grommets askew, seen at {width}");
        await owner.Page.Locator("[name='Form.Line']").FillAsync("The grommets sit askew.");
        await owner.Page.Locator("[name='Form.Zone']").SelectOptionAsync("Thread");
        await owner.Page.Locator("[name='Form.SeenBy']").SelectOptionAsync("look-plaque");
        await owner.Page.Locator("[name='Form.Steps']").First.SelectOptionAsync("retie");
        await owner.PressAsync(owner.Button("Add it"), thenAt: List);
        await owner.LookAsync("a fault of our own");
        await owner.FitsAsync();
        await owner.PressAsync(owner.Page.GetByLabel($"Change grommets askew, seen at {width}"), thenAt: $"{List}/[0-9a-f-]+");
        await owner.LookAsync("a fault of our own, told better");
        await owner.FitsAsync();
    }

    [Fact]
    public async Task On_a_phone_what_may_be_behind_a_reed_is_short_and_all_of_it_is_a_press_away()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "evidence-390", 390);
        for (var reed = 1; reed <= 3; reed++)
        {
            await LookAsync(teacher, $"{await app.BenchOfAsync("Tomas Arden", reed, TestContext.Current.CancellationToken)}/evidence", $"what may be behind reed {reed}");
            Assert.InRange(await teacher.Page.EvaluateAsync<int>("document.documentElement.scrollHeight"), 800, 4000);
        }

        await teacher.Page.EvaluateAsync("document.querySelectorAll('details').forEach(part => part.open = true)");
        await teacher.LookAsync("what may be behind it, all open");
        await teacher.FitsAsync();
    }

    private static async Task LookAsync(Visitor visitor, string path, string name)
    {
        await visitor.GoToAsync(path);
        await visitor.LookAsync(name);
        await visitor.FitsAsync();
    }
}
