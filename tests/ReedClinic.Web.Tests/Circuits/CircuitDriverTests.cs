using ReedClinic.Circuits;
using ReedClinic.Domain.Bench;
using ReedClinic.Web.Tests.Bench;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>The driver itself against the real bench: if another version of ASP.NET Core speaks otherwise, these fail first.</summary>
public sealed class CircuitDriverTests(CircuitHost host) : IClassFixture<CircuitHost>
{
    [Fact]
    public async Task A_note_is_typed_saved_and_drawn_in_the_log()
    {
        var scene = await BenchScene.Open(host, "Alma", "blue thread");
        using var teacher = await host.AtTheBench();
        var counts = new CircuitCounts();
        await using var circuit = await teacher.BenchAsync(scene.Page, counts);

        await circuit.TypeNoteAsync("a quiet reed");
        Assert.True((await circuit.SaveAsync()).Succeeded);

        Assert.Equal("a quiet reed", Assert.Single((await scene.Log()).Live<Note>()).Now.Words);
        Assert.NotNull(circuit.Screen.Find("p", line => line["class"] == "saved" && line.Text.Contains("a quiet reed", StringComparison.Ordinal)));
        Assert.Empty(circuit.Errors);
        Assert.False(circuit.IsClosed);
        Assert.True(counts is { Batches: > 0, Failed: 0 } && counts.AnswerTime(0.95) > TimeSpan.Zero);
    }

    [Fact]
    public async Task What_is_drawn_after_many_changes_is_what_a_fresh_page_draws()
    {
        var scene = await BenchScene.Open(host, "Berit", "blue thread");
        using var teacher = await host.AtTheBench();
        await using var circuit = await teacher.BenchAsync(scene.Page);
        for (var i = 1; i <= 3; i++)
        {
            await circuit.TypeNoteAsync($"number {i}");
            await circuit.SaveAsync();
        }

        foreach (var kind in circuit.Screen.Elements.Where(node => node.Name == "button" && node["class"] == "kind").Select(node => node.Text).ToList())
        {
            await circuit.PressAsync(kind);
        }

        await circuit.PressAsync("Note");
        await using var fresh = await teacher.BenchAsync(scene.Page);
        await fresh.PressAsync("Note");

        Assert.Equal(Log(fresh), Log(circuit));
        Assert.Equal(3, (await scene.Log()).Live<Note>().Count());

        static string Log(Circuit circuit) => circuit.Screen.Find("section", section => section["class"] == "log")!.Text;
    }
}
