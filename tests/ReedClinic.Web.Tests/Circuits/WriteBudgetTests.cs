using System.Net;
using CsCheck;
using Microsoft.Extensions.Options;
using Microsoft.Extensions.Time.Testing;
using ReedClinic.Circuits;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.People;
using ReedClinic.Web.Shared.Writes;
using ReedClinic.Web.Tests.Bench;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>How much one account may write, over a circuit and by plain forms. OWASP ASVS 5.0: 2.4.1; RFC 6585, 4 (429 and Retry-After).</summary>
public sealed class WriteBudgetTests(CircuitHost host) : IClassFixture<CircuitHost>
{
    private static readonly AccountId Me = new(new Guid(1, 0, 0, new byte[8]));
    private static readonly AccountId Other = new(new Guid(2, 0, 0, new byte[8]));

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public void Sixty_at_once_then_two_each_second_and_everybody_has_their_own()
    {
        var clock = new FakeTimeProvider();
        var budget = Budget(clock);

        Assert.Equal(60, Enumerable.Range(0, 100).Count(_ => budget.TryTake(Me)));
        Assert.Equal(TimeSpan.FromSeconds(0.5), budget.UntilNext(Me));
        Assert.True(budget.TryTake(Other));
        clock.Advance(TimeSpan.FromSeconds(0.499));
        Assert.False(budget.TryTake(Me));
        clock.Advance(TimeSpan.FromSeconds(0.001));
        Assert.True(budget.TryTake(Me));
        clock.Advance(TimeSpan.FromSeconds(10));
        Assert.Equal(20, Enumerable.Range(0, 100).Count(_ => budget.TryTake(Me)));
        clock.Advance(TimeSpan.FromDays(1));
        Assert.Equal(TimeSpan.Zero, budget.UntilNext(Me));
        Assert.Equal(60, Enumerable.Range(0, 100).Count(_ => budget.TryTake(Me)));
    }

    [Fact]
    public void However_it_is_spread_nobody_writes_more_than_a_full_bucket_and_what_flowed_in() =>
        Gen.Int[0, 3_000].Array[1, 200].Sample(pauses =>
        {
            var clock = new FakeTimeProvider();
            var budget = Budget(clock);
            var taken = 0;
            foreach (var pause in pauses)
            {
                clock.Advance(TimeSpan.FromMilliseconds(pause));
                taken += budget.TryTake(Me) ? 1 : 0;
                taken += budget.TryTake(Me) ? 1 : 0;
            }

            return taken <= 60 + (pauses.Sum() * 2.0 / 1000);
        });

    [Fact]
    public async Task A_form_too_many_is_answered_with_429_and_comes_back_whole()
    {
        var scene = await BenchScene.Open(host, "Alma", "blue thread");
        using var teacher = await host.AtTheBench("Una");
        await SpendAsync(teacher);

        using var refused = await (await Form.At(teacher, scene.Page, scene.Entries))
            .Set("Kind", "Note").Set("Words", "say \"ah\" & <b>wait</b>\nsecond line").Post();
        var page = await refused.Content.ReadAsStringAsync(Ct);

        Assert.Equal(HttpStatusCode.TooManyRequests, refused.StatusCode);
        Assert.Equal(TimeSpan.FromSeconds(1), refused.Headers.RetryAfter?.Delta);
        Assert.Contains("What you sent is still here", page, StringComparison.Ordinal);
        Assert.Empty((await scene.Log()).History);

        using (var tooSoon = await Form.Of(teacher, scene.Page, page, scene.Entries).Post())
        {
            Assert.Equal(HttpStatusCode.TooManyRequests, tooSoon.StatusCode);
        }

        host.Clock.Advance(TimeSpan.FromSeconds(1));
        using var taken = await Form.Of(teacher, scene.Page, page, scene.Entries).Post();
        Assert.Equal(HttpStatusCode.SeeOther, taken.StatusCode);
        Assert.Equal("say \"ah\" & <b>wait</b>\nsecond line", Assert.Single((await scene.Log()).Live<Note>()).Now.Words.ReplaceLineEndings("\n"));
    }

    [Fact]
    public async Task Signing_out_is_always_possible_and_visitors_and_forged_forms_spend_nothing()
    {
        var scene = await BenchScene.Open(host, "Berit", "blue thread");
        using var teacher = await host.AtTheBench("Vala");
        for (var i = 0; i < 100; i++)
        {
            using var forged = new FormUrlEncodedContent([new("Kind", "Note"), new("Words", "forged")]);
            using var answer = await teacher.PostAsync(new Uri(scene.Entries, UriKind.Relative), forged, Ct);
            Assert.Equal(HttpStatusCode.BadRequest, answer.StatusCode);
        }

        await SpendAsync(teacher);
        using var signedOut = await (await Form.At(teacher, "/trouble", "/account/sign-out")).Post();
        Assert.Equal((HttpStatusCode.Found, "/"), (signedOut.StatusCode, signedOut.Leads()));
        Assert.Empty((await scene.Log()).History);
    }

    [Fact]
    public async Task On_the_bench_what_is_typed_stays_is_said_kindly_and_is_kept()
    {
        var scene = await BenchScene.Open(host, "Cilia", "blue thread");
        using var teacher = await host.AtTheBench("Ylva");
        await using var circuit = await teacher.BenchAsync(scene.Page);
        await circuit.TypeNoteAsync("one of too many");
        await SpendAsync(teacher);

        await circuit.SendAsync(circuit.Save(), "submit", null, Ct);
        await circuit.UntilAsync(c => c.Screen.Text.Contains("wait a few seconds, then press again", StringComparison.Ordinal), Ct);

        Assert.Equal("one of too many", circuit.Field("Words")!["value"]);
        Assert.Empty((await scene.Log()).History);
        Assert.DoesNotContain("one of too many", (await teacher.See(scene.Page)).Page, StringComparison.Ordinal);

        // Kept as a draft as soon as there is room for it.
        for (var i = 0; !(await teacher.See(scene.Page)).Page.Contains("one of too many", StringComparison.Ordinal); i++)
        {
            Assert.InRange(i, 0, 200);
            host.Clock.Advance(TimeSpan.FromSeconds(0.5));
        }

        Assert.Empty((await scene.Log()).History);
        host.Clock.Advance(TimeSpan.FromSeconds(1));
        Assert.True((await circuit.SaveAsync()).Succeeded);
        Assert.Equal("one of too many", Assert.Single((await scene.Log()).Live<Note>()).Now.Words);
    }

    // Switching the lamp is a form like any other, and stores nothing.
    private static async Task SpendAsync(CookieClient client)
    {
        var lamp = (await Form.At(client, "/trouble", "/lamp")).Set("lamp", "off");
        for (var taken = 0; taken <= 60; taken++)
        {
            using var answer = await lamp.Post();
            if (answer.StatusCode == HttpStatusCode.TooManyRequests)
            {
                Assert.InRange(taken, 1, 60);
                return;
            }
        }

        Assert.Fail("More than sixty forms were taken at once.");
    }

    private static WriteBudget Budget(FakeTimeProvider clock) => new(Options.Create(new WriteAllowance()), clock);
}
