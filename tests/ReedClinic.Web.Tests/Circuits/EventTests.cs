using ReedClinic.Circuits;
using ReedClinic.Domain.Bench;
using ReedClinic.Web.Tests.Bench;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>
/// Events that no browser would send. Every event is a request like any other: it may come twice, late, forged or too long
/// (ASP.NET Core, "Threat mitigation guidance for ASP.NET Core Blazor interactive server-side rendering").
/// </summary>
public sealed class EventTests(CircuitHost host) : IClassFixture<CircuitHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task The_same_form_sent_fifty_times_without_waiting_is_saved_once()
    {
        var scene = await BenchScene.Open(host, "Alma", "blue thread");
        using var teacher = await host.AtTheBench();
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await circuit.TypeNoteAsync("said once");
        var save = circuit.Save();

        var answers = new List<Task<EventAnswer>>();
        for (var i = 0; i < 50; i++)
        {
            answers.Add(await circuit.SendAsync(save, "submit", null, Ct));
        }

        await Task.WhenAll(answers);

        Assert.Equal("said once", Assert.Single((await scene.Log()).Live<Note>()).Now.Words);
        Assert.Single((await scene.Log()).History);
        Assert.False(circuit.IsClosed);
    }

    [Fact]
    public async Task A_handler_that_never_was_or_is_gone_does_nothing_and_others_go_on()
    {
        var scene = await BenchScene.Open(host, "Bodil", "blue thread");
        using var teacher = await host.AtTheBench();
        using var other = await host.AtTheBench("Jan");
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await using var bystander = await other.BenchAsync(scene.Page);
        await circuit.TypeNoteAsync("not to be saved");
        await circuit.PressAsync("Verdict");
        await circuit.PressAsync("Note");
        Assert.NotEmpty(circuit.Screen.GoneHandlers);

        foreach (var handler in circuit.Screen.GoneHandlers.Take(20).Append(1_000_000UL).Append(0UL))
        {
            foreach (var name in new[] { "submit", "click" })
            {
                if (!circuit.IsClosed)
                {
                    await circuit.SendAsync(handler, name, null, Ct);
                }
            }
        }

        await bystander.TypeNoteAsync("still at work");
        Assert.True((await bystander.SaveAsync()).Succeeded);
        Assert.Equal("still at work", Assert.Single((await scene.Log()).Live<Note>()).Now.Words);
        Assert.Single((await scene.Log()).History);
    }

    [Fact]
    public async Task Somebody_elses_circuit_does_not_change_hands()
    {
        var scene = await BenchScene.Open(host, "Cilia", "blue thread");
        using var teacher = await host.AtTheBench();
        using var student = (CookieClient)await host.Student("Nele");
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await circuit.TypeNoteAsync("mine");
        var (save, secret) = (circuit.Save(), circuit.Secret!);

        // A made-up one is nobody's.
        await using (var guess = await Circuit.ConnectAsync(student, null, Ct))
        {
            Assert.False(await guess.TakeUpAsync(secret[..^4] + "AAAA", Ct));
        }

        // The real one, as if it had been read over a shoulder.
        await using var thief = await Circuit.ConnectAsync(student, null, Ct);
        await thief.TakeUpAsync(secret, Ct);
        for (var target = 1; target <= 3; target++)
        {
            var json = $$"""[{"eventHandlerId":{{save}},"eventName":"submit","eventFieldInfo":null},{"type":"submit"}]""";
            await thief.CallAsync(null, "DispatchEventAsync", target, json, Ct);
        }

        // The line is one after another: once this is answered, all before it is done.
        await thief.SettleAsync(Ct);
        Assert.Empty((await scene.Log()).History);
        Assert.DoesNotContain("blue thread", thief.Screen.Text, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_student_with_a_copy_of_the_benchs_page_gets_no_bench()
    {
        var scene = await BenchScene.Open(host, "Dagny", "blue thread");
        using var teacher = await host.AtTheBench();
        using var student = (CookieClient)await host.Student("Oda");
        var page = await CircuitPage.ReadAsync(teacher, scene.Page, Ct);
        Assert.NotEmpty(page.Markers);
        Assert.Empty((await CircuitPage.ReadAsync(student, scene.Page, Ct)).Markers);

        await using var circuit = await Circuit.ConnectAsync(student, null, Ct);
        await circuit.StartAsync(page, Ct);
        await circuit.UntilAsync(c => c.Leads.Count > 0, Ct);

        Assert.Null(circuit.Entry());
        Assert.DoesNotContain("blue thread", circuit.Screen.Text, StringComparison.Ordinal);
        Assert.DoesNotContain(circuit.Screen.Elements, element => element.Handlers.Count > 0);
    }

    [Fact]
    public async Task A_message_that_is_too_long_ends_its_own_connection_and_nothing_else()
    {
        var scene = await BenchScene.Open(host, "Embla", "blue thread");
        using var teacher = await host.AtTheBench();
        using var other = await host.AtTheBench("Jan");
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await using var bystander = await other.BenchAsync(scene.Page);
        await circuit.PressAsync("Note");
        var field = circuit.Field("Words")!;
        var type = field.Handlers.Single(on => on.Key is "onchange" or "oninput");

        await circuit.SendAsync(type.Value, type.Key[2..], new string('a', 33 * 1024), Ct);
        await circuit.Closed.WaitAsync(TimeSpan.FromSeconds(60), Ct);

        await bystander.TypeNoteAsync("still at work");
        Assert.True((await bystander.SaveAsync()).Succeeded);
        Assert.Single((await scene.Log()).History);
        await using var again = await teacher.BenchAsync(scene.Page);
        Assert.DoesNotContain("aaaa", again.Screen.Text, StringComparison.Ordinal);
    }
}
