using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using Microsoft.AspNetCore.Http.Features;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.Extensions.Logging;
using Microsoft.Extensions.Logging.Abstractions;
using ReedClinic.Data;
using ReedClinic.Web.Background;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Background;

/// <summary>A process that has just started goes the ways of the bench once before anybody is led to it.</summary>
public sealed class FirstTurnTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task It_goes_through_a_studio_with_reeds_and_writes_nothing()
    {
        using var student = await host.Student("Douwe");
        await host.Announce("Douwe", "green thread", "blue thread");
        var before = await CountAsync();
        await using var scope = host.Services.CreateAsyncScope();

        await FirstTurn.GoAsync(scope.ServiceProvider, Ct);

        Assert.Equal(before, await CountAsync());
    }

    [Fact]
    public async Task A_process_is_ready_once_its_turn_was_taken_and_not_before()
    {
        var turn = new FirstTurn(host.Services.GetRequiredService<IServiceScopeFactory>(), host.Services.GetRequiredService<StudioWire>(), new Listening(), NullLogger<FirstTurn>.Instance);
        var check = new FirstTurnCheck(turn);
        Assert.Equal(HealthStatus.Degraded, (await check.CheckHealthAsync(new HealthCheckContext(), Ct)).Status);

        await turn.TakeAsync(Ct);

        Assert.Equal(HealthStatus.Healthy, (await check.CheckHealthAsync(new HealthCheckContext(), Ct)).Status);
    }

    [Fact]
    public async Task A_turn_that_fails_keeps_nobody_waiting_and_is_told()
    {
        await using var nothing = new ServiceCollection().BuildServiceProvider();
        var log = new Told();
        var turn = new FirstTurn(nothing.GetRequiredService<IServiceScopeFactory>(), host.Services.GetRequiredService<StudioWire>(), new Listening(), log);

        await turn.TakeAsync(Ct);

        Assert.True(turn.IsOver);
        Assert.IsType<InvalidOperationException>(Assert.Single(log.Troubles));
    }

    private async Task<(int Entries, int Drafts, int Done)> CountAsync()
    {
        await using var scope = host.Services.CreateAsyncScope();
        var db = scope.ServiceProvider.GetRequiredService<ClinicDb>();
        return (await db.Set<ReedClinic.Domain.Bench.BenchEntry>().CountAsync(Ct), await db.Set<ReedClinic.Domain.Bench.BenchDraft>().CountAsync(Ct), await db.Set<DoneOperation>().CountAsync(Ct));
    }

    private sealed class Told : ILogger<FirstTurn>
    {
        public List<Exception?> Troubles { get; } = [];

        public IDisposable? BeginScope<TState>(TState state)
            where TState : notnull => null;

        public bool IsEnabled(LogLevel logLevel) => true;

        public void Log<TState>(LogLevel logLevel, EventId eventId, TState state, Exception? exception, Func<TState, Exception?, string> formatter) => Troubles.Add(exception);
    }

    private sealed class Listening : IServer
    {
        public IFeatureCollection Features { get; } = With("http://127.0.0.1:1");

        public Task StartAsync<TContext>(IHttpApplication<TContext> application, CancellationToken cancellationToken)
            where TContext : notnull => Task.CompletedTask;

        public Task StopAsync(CancellationToken cancellationToken) => Task.CompletedTask;

        public void Dispose()
        {
        }

        private static FeatureCollection With(string address)
        {
            var features = new FeatureCollection();
            var addresses = new ServerAddressesFeature();
            addresses.Addresses.Add(address);
            features.Set<IServerAddressesFeature>(addresses);
            return features;
        }
    }
}
