using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Circuits;
using ReedClinic.Web.Shared.Circuits;
using ReedClinic.Web.Tests.Bench;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>Rights that are taken away while a page is open. OWASP ASVS 5.0: 7.4.1, 7.4.2, 8.3.2.</summary>
public sealed class RightsTests(CircuitHost host) : IClassFixture<CircuitHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Without_the_role_the_next_press_does_nothing_and_the_page_is_left()
    {
        var scene = await BenchScene.Open(host, "Alma", "blue thread");
        using var teacher = await host.AtTheBench("Runa");
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await circuit.TypeNoteAsync("too late");
        var save = circuit.Save();
        await host.TakeRoleAsync(host.AccountOf("Runa"));

        await circuit.SendAsync(save, "submit", null, Ct);

        await LeftAsync(circuit, scene);
        var late = await circuit.SendAsync(save, "submit", null, Ct);
        await circuit.SettleAsync(Ct);
        Assert.DoesNotContain("too late", circuit.Screen.Text, StringComparison.Ordinal);
        Assert.False((await late).Succeeded);
        Assert.Empty((await scene.Log()).History);
    }

    [Fact]
    public async Task A_page_that_is_told_asks_at_once()
    {
        var scene = await BenchScene.Open(host, "Berit", "blue thread");
        using var teacher = await host.AtTheBench("Sigrun");
        using var other = await host.AtTheBench("Jan");
        await using var one = await teacher.BenchAsync(scene.Page);
        await using var two = await teacher.BenchAsync(scene.Page);
        await using var bystander = await other.BenchAsync(scene.Page);
        var account = host.AccountOf("Sigrun");
        var all = host.Services.GetRequiredService<OpenCircuits>();
        Assert.Equal(2, all.CountOf(account));

        all.TellAll(account);
        await one.TypeNoteAsync("nothing was taken away yet");
        Assert.True((await one.SaveAsync()).Succeeded);
        Assert.Empty(one.Leads);

        await host.TakeRoleAsync(account);
        all.TellAll(account);
        await LeftAsync(one, scene);
        await LeftAsync(two, scene);
        Assert.Empty(bystander.Leads);
        Assert.NotNull(bystander.Entry());
    }

    [Fact]
    public async Task A_page_that_is_told_nothing_asks_by_itself_within_a_minute()
    {
        var scene = await BenchScene.Open(host, "Cilia", "blue thread");
        using var teacher = await host.AtTheBench("Thora");
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await circuit.PressAsync("Note");
        await host.TakeRoleAsync(host.AccountOf("Thora"));
        Assert.Empty(circuit.Leads);

        host.Clock.Advance(TimeSpan.FromSeconds(30));

        await LeftAsync(circuit, scene);
    }

    [Fact]
    public async Task After_signing_out_the_page_that_is_still_open_can_do_nothing_and_is_left()
    {
        var scene = await BenchScene.Open(host, "Dagny", "blue thread");
        using var teacher = await host.AtTheBench("Una");
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await circuit.TypeNoteAsync("too late");
        var save = circuit.Save();

        using var signedOut = await (await Form.At(teacher, "/trouble", "/account/sign-out")).Post();
        Assert.Equal("/", signedOut.Leads());
        await LeftAsync(circuit, scene);
        await circuit.SendAsync(save, "submit", null, Ct);
        await circuit.SettleAsync(Ct);
        Assert.Empty((await scene.Log()).History);
    }

    private static async Task LeftAsync(Circuit circuit, BenchScene scene)
    {
        await circuit.UntilAsync(c => c.Leads.Count > 0 && c.Entry() is null, Ct);
        Assert.Equal($"/account/sign-in?back={Uri.EscapeDataString(scene.Page)}", circuit.Leads[0]);
        Assert.DoesNotContain("blue thread", circuit.Screen.Text, StringComparison.Ordinal);
    }
}
