using System.Globalization;
using System.Text.Json;
using Microsoft.AspNetCore.SignalR;
using ReedClinic.Circuits;
using ReedClinic.Domain.Bench;
using ReedClinic.Web.Tests.Bench;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>
/// Many hostile events while two teachers are at work: 200 in the quick suite, as many as the environment says in
/// <c>tests/faults.sh</c>. What is counted is what they did.
/// </summary>
public sealed class HostileEventsTests(CircuitHost host) : IClassFixture<CircuitHost>
{
    private const string CountGivenBy = "REEDCLINIC_HOSTILE_EVENTS";
    private const string LogGivenBy = "REEDCLINIC_FAULT_LOG";
    private const int QuickCount = 200;
    private const int ARound = 20;

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_mass_of_hostile_events_does_nothing_that_was_not_allowed_and_nothing_twice()
    {
        var count = int.TryParse(Environment.GetEnvironmentVariable(CountGivenBy), CultureInfo.InvariantCulture, out var given) ? given : QuickCount;
        var scene = await BenchScene.Open(host, "Alma", "blue thread");
        using var teacher = await host.AtTheBench();
        using var other = await host.AtTheBench("Jan");
        using var student = (CookieClient)await host.Student("Nele");
        var calm = new CircuitCounts();
        await using var bench = await teacher.BenchAsync(scene.Page);
        await using var bystander = await other.BenchAsync(scene.Page, calm);
        var page = await CircuitPage.ReadAsync(teacher, scene.Page, Ct);
        var said = new List<string>();
        var (sent, ended) = (0, 0);

        while (sent < count)
        {
            var round = (said.Count / 2) + 1;
            await bench.TypeNoteAsync($"bench {round}");
            sent += await RepeatAsync(bench);
            var attack = await AttackAsync(student, page, bench, round);
            (sent, ended) = (sent + attack.Sent, ended + attack.Ended);
            said.Add($"bench {round}");

            await bystander.TypeNoteAsync($"bystander {round}");
            Assert.True((await bystander.SaveAsync()).Succeeded);
            said.Add($"bystander {round}");
            host.Clock.Advance(TimeSpan.FromSeconds(10));
        }

        var notes = (await scene.Log()).History.Select(line => line.Entry).ToList();
        var teachers = new[] { host.AccountOf("Ilse"), host.AccountOf("Jan") };
        var unauthorised = notes.Count(entry => !teachers.Contains(entry.RecordedBy) || entry is not Note note || !said.Contains(note.Words));
        var doubled = notes.Count - unauthorised - notes.OfType<Note>().Select(note => note.Words).Distinct().Count(said.Contains);
        await TellAsync($"summary hostile events: {sent} sent, {unauthorised} unauthorised effects, {doubled} doubled, {said.Count - notes.Count} lost of {said.Count} saved beside them; attackers' connections ended: {ended}; the bystander's events: {calm.Sent - calm.Failed} taken, {calm.Failed} failed");

        Assert.Equal((0, 0, said.Count), (unauthorised, doubled, notes.Count));
        Assert.Equal(0, calm.Failed);
        Assert.False(bystander.IsClosed);
    }

    // The same form, again and again, without waiting for an answer.
    private static async Task<int> RepeatAsync(Circuit bench)
    {
        const int Times = 6;
        var save = bench.Save();
        var answers = new List<Task<EventAnswer>>();
        for (var i = 0; i < Times; i++)
        {
            answers.Add(await bench.SendAsync(save, "submit", null, Ct));
        }

        await Task.WhenAll(answers);
        return Times - 1;
    }

    // The server may end the attacker's connection, which is one of its right answers: then the attacker comes again.
    private static async Task<(int Sent, int Ended)> AttackAsync(CookieClient student, CircuitPage page, Circuit bench, int round)
    {
        var (sent, ended) = (0, 0);
        while (sent < ARound)
        {
            await using var attacker = await Circuit.ConnectAsync(student, null, Ct);
            try
            {
                if (round % 2 == 0)
                {
                    await attacker.StartAsync(page, Ct);
                }

                for (; sent < ARound && !attacker.IsClosed; sent++)
                {
                    await SendAsync(attacker, bench, sent, round);
                }

                await attacker.SettleAsync(Ct);
            }
            catch (Exception refused) when (refused is InvalidOperationException or HubException or OperationCanceledException or IOException)
            {
                Ct.ThrowIfCancellationRequested();
                sent++;
            }

            ended += attacker.IsClosed ? 1 : 0;
        }

        return (sent, ended);
    }

    /// <summary>Everything that somebody could send who knows the protocol and has a copy of the teacher's page.</summary>
    private static Task SendAsync(Circuit attacker, Circuit bench, int number, int round)
    {
        var forged = JsonSerializer.Serialize(new object?[] { new { eventHandlerId = bench.Save(), eventName = "submit", eventFieldInfo = (object?)null }, new { type = "submit" } });
        return ((number + round) % 10) switch
        {
            0 => attacker.CallAsync(null, "DispatchEventAsync", 1, forged, Ct),
            1 => attacker.CallAsync(null, "DispatchEventAsync", number + round, forged, Ct),
            2 => attacker.CallAsync("ReedClinic.Web", "SaveAsync", 0, "[]", Ct),
            3 => attacker.CallAsync("ReedClinic.Data", "RecordAsync", 0, """[{"words":"forged"}]""", Ct),
            4 => attacker.CallAsync(null, "DispatchEventAsync", 1, "[{", Ct),
            5 => attacker.TakeUpAsync(bench.Secret![..^2] + (char)('A' + (round % 26)), Ct),
            6 => attacker.Hub.SendCoreAsync("EndInvokeJSFromDotNet", [(long)round, true, "[1,true,null]"], Ct),
            7 => attacker.Hub.SendCoreAsync("OnRenderCompleted", [(long)round, "forged"], Ct),
            8 => attacker.Hub.SendCoreAsync("OnLocationChanged", ["https://elsewhere.example/", null, true], Ct),
            _ => attacker.Hub.SendCoreAsync("UpdateRootComponents", ["""{"batchId":2,"operations":[{"type":"add","ssrComponentId":9}]}""", ""], Ct),
        };
    }

    private static async Task TellAsync(string line)
    {
        TestContext.Current.TestOutputHelper?.WriteLine(line);
        if (Environment.GetEnvironmentVariable(LogGivenBy) is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, line + "\n", Ct);
        }
    }
}
