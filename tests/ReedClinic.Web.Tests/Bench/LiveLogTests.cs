using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Bench;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.People;
using ReedClinic.Web.Features.Bench.Line;
using ReedClinic.Web.Tests.Circuits;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Bench;

/// <summary>A reed that is open in one window while another writes in its log. The application’s clock stands: nothing comes by waiting.</summary>
public sealed class LiveLogTests(CircuitHost host) : IClassFixture<CircuitHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task What_somebody_else_says_is_drawn_at_once_each_time()
    {
        var scene = await BenchScene.Open(host, "Torunn", "blue thread");
        using var teacher = await host.AtTheBench("Vigdis");
        await using var watching = await teacher.BenchAsync(scene.Page);
        await watching.SettleAsync(Ct);

        foreach (var words in new[] { "first from elsewhere", "second from elsewhere", "third from elsewhere" })
        {
            await scene.Say(BenchScene.Value(Note.Of(words)));
            await watching.UntilAsync(c => c.Screen.Text.Contains(words, StringComparison.Ordinal), Ct);
        }
    }

    [Fact]
    public async Task What_was_written_while_the_connection_was_lost_is_read_as_soon_as_it_is_back()
    {
        var scene = await BenchScene.Open(host, "Tiril", "blue thread");
        using var teacher = await host.AtTheBench("Yrsa");
        await using var watching = await teacher.BenchAsync(scene.Page);
        await scene.Say(BenchScene.Value(Note.Of("before it was lost")));
        await watching.UntilAsync(c => c.Screen.Text.Contains("before it was lost", StringComparison.Ordinal), Ct);
        await watching.Hub.StopAsync(Ct);
        await SilentlyAsync("Yrsa", scene, "first while away");
        await SilentlyAsync("Yrsa", scene, "second while away");

        await using var back = await watching.ComeBackAsync(teacher, Ct);

        // The newest entry is shown by itself before the log is drawn anew: they are there in their order once that is.
        string[] said = ["before it was lost", "first while away", "second while away"];
        await back.UntilAsync(c => said.Select(words => c.Screen.Text.IndexOf(words, StringComparison.Ordinal)) is var at && at.First() >= 0 && at.SequenceEqual(at.Order()), Ct);
        Assert.Empty(back.Errors);
    }

    [Fact]
    public async Task What_nobody_told_of_is_found_at_the_next_look()
    {
        var scene = await BenchScene.Open(host, "Turid", "blue thread");
        using var teacher = await host.AtTheBench("Ylva");
        await using var watching = await teacher.BenchAsync(scene.Page);
        await watching.SettleAsync(Ct);

        // The first look of all may still be under way and find what was just written: one that isn't found so is left to the next look.
        foreach (var words in Enumerable.Range(1, 5).Select(number => $"number {number} from another process"))
        {
            await SilentlyAsync("Ylva", scene, words);
            await watching.SettleAsync(Ct);
            if (!watching.Screen.Text.Contains(words, StringComparison.Ordinal))
            {
                host.Clock.Advance(LiveLog.Round);
                await watching.UntilAsync(c => c.Screen.Text.Contains(words, StringComparison.Ordinal), Ct);
                return;
            }
        }

        Assert.Fail("Each was drawn without a look of its own and without a word from anybody.");
    }

    // By a book that nobody in this process listens to.
    private async Task SilentlyAsync(string teacher, BenchScene scene, string words)
    {
        var silent = new BenchBook(host.Services.GetRequiredService<IDbContextFactory<ClinicDb>>(), TimeProvider.System);
        BenchScene.Value(await silent.RecordAsync(new Actor(host.AccountOf(teacher), null, true, false), scene.Reed, BenchScene.Value(Note.Of(words)), Parcel.NewOperation(), Ct));
    }
}
