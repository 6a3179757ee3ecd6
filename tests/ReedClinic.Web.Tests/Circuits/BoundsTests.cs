using System.Reflection;
using Microsoft.AspNetCore.Components.Endpoints;
using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.SignalR;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Options;
using Microsoft.JSInterop;
using ReedClinic.Web.Account;
using ReedClinic.Web.Shared.Circuits;
using ReedClinic.Web.Tests.Hosting;

namespace ReedClinic.Web.Tests.Circuits;

/// <summary>The bounds of the running app, and what scripts may call in it.</summary>
public sealed class BoundsTests(ClinicHost host) : IClassFixture<ClinicHost>
{
    private const BindingFlags Anything = BindingFlags.Public | BindingFlags.NonPublic | BindingFlags.Static | BindingFlags.Instance | BindingFlags.DeclaredOnly;

    [Fact]
    public void Circuits_are_bounded_as_decided()
    {
        var circuit = host.Services.GetRequiredService<IOptions<CircuitOptions>>().Value;

        Assert.False(circuit.DetailedErrors);
        Assert.Equal(100, circuit.DisconnectedCircuitMaxRetained);
        Assert.Equal(TimeSpan.FromMinutes(5), circuit.DisconnectedCircuitRetentionPeriod);
        Assert.Equal(TimeSpan.FromSeconds(20), circuit.JSInteropDefaultCallTimeout);
        Assert.Equal(10, circuit.MaxBufferedUnacknowledgedRenderBatches);
        Assert.Equal(500, circuit.PersistedCircuitInMemoryMaxRetained);
        Assert.Equal(TimeSpan.FromHours(2), circuit.PersistedCircuitInMemoryRetentionPeriod);
    }

    [Fact]
    public void Their_connections_are_bounded_as_decided()
    {
        // The hub is internal to the framework: its options can only be had by its name.
        var hub = typeof(CircuitOptions).Assembly.GetType("Microsoft.AspNetCore.Components.Server.ComponentHub", throwOnError: true)!;
        var wanted = typeof(IOptions<>).MakeGenericType(typeof(HubOptions<>).MakeGenericType(hub));
        var options = (HubOptions)wanted.GetProperty("Value")!.GetValue(host.Services.GetRequiredService(wanted))!;

        Assert.False(options.EnableDetailedErrors);
        Assert.Equal(32 * 1024, options.MaximumReceiveMessageSize);
        Assert.Equal(1, options.MaximumParallelInvocationsPerClient);
        Assert.Equal(10, options.StreamBufferCapacity);
        Assert.Equal(TimeSpan.FromSeconds(15), options.HandshakeTimeout);
        Assert.Equal(TimeSpan.FromSeconds(15), options.KeepAliveInterval);
        Assert.Equal(TimeSpan.FromSeconds(60), options.ClientTimeoutInterval);
    }

    [Fact]
    public void Forms_are_bounded_as_decided()
    {
        var forms = host.Services.GetRequiredService<IOptions<RazorComponentsServiceOptions>>().Value;

        Assert.Equal((256, 16, 50), (forms.MaxFormMappingCollectionSize, forms.MaxFormMappingRecursionDepth, forms.MaxFormMappingErrorCount));
        Assert.False(forms.DetailedErrors);
    }

    [Theory]
    [InlineData("Circuits:PerAccount", "0")]
    [InlineData("Circuits:ConnectionsPerAccount", "9")]
    [InlineData("Writes:Burst", "0")]
    [InlineData("Writes:PerSecond", "0")]
    public void A_setting_that_would_let_nobody_work_keeps_the_program_from_starting(string setting, string value)
    {
        using var odd = host.WithWebHostBuilder(builder => builder.UseSetting(setting, value));

        Assert.Throws<OptionsValidationException>(() => odd.Server);
    }

    [Fact]
    public void Scripts_can_call_no_method_of_ours()
    {
        // To let one in, name it here, and treat it as an address that anybody may call with anything.
        string[] allowed = [];

        Assert.Equal(allowed, Ours.SelectMany(CalledByScripts));
    }

    [Fact]
    public void A_method_that_scripts_can_call_is_seen() => Assert.Contains(CalledByScripts(typeof(BoundsTests).Assembly), name => name.EndsWith(".Planted", StringComparison.Ordinal));

    [Fact]
    public void No_singleton_holds_what_belongs_to_one_person()
    {
        var services = Services();
        var personal = Personal(services);

        Assert.Superset(new HashSet<Type> { typeof(ActorAccess), typeof(ThisCircuit) }, personal);
        Assert.Empty(Captured(services, personal));
    }

    [Fact]
    public void A_singleton_that_does_is_seen()
    {
        var services = Services();
        services.AddSingleton<Captor>();

        Assert.Equal([nameof(Captor)], Captured(services, Personal(services)));
    }

    [Fact]
    public void The_whole_graph_can_be_built_with_its_scopes_checked()
    {
        using var strict = host.WithWebHostBuilder(builder => builder.UseDefaultServiceProvider(options => options.ValidateScopes = options.ValidateOnBuild = true));

        Assert.NotNull(strict.Services.GetRequiredService<OpenCircuits>());
    }

    [JSInvokable]
    internal static void Planted()
    {
        // Never called: it is here to be found.
    }

    private static IEnumerable<Assembly> Ours =>
        new[] { typeof(Program).Assembly }.Concat(typeof(Program).Assembly.GetReferencedAssemblies()
            .Where(name => name.Name!.StartsWith("ReedClinic.", StringComparison.Ordinal)).Select(Assembly.Load));

    private static IEnumerable<string> CalledByScripts(Assembly assembly) =>
        from type in assembly.GetTypes()
        from method in type.GetMethods(Anything)
        where method.GetCustomAttribute<JSInvokableAttribute>() is not null
        select $"{type.FullName}.{method.Name}";

    private ServiceCollection Services()
    {
        var copy = new ServiceCollection();
        using var watched = host.WithWebHostBuilder(builder => builder.ConfigureServices(services =>
        {
            foreach (var service in services)
            {
                copy.Insert(copy.Count, service);
            }
        }));
        Assert.NotNull(watched.Server);
        return copy;
    }

    private static HashSet<Type> Personal(ServiceCollection services) =>
        [.. services.Where(service => service is { Lifetime: ServiceLifetime.Scoped, ServiceType.IsGenericTypeDefinition: false }).Select(service => service.ServiceType)];

    // By what a singleton's constructors ask for, and what those ask for in turn.
    private static IEnumerable<string> Captured(ServiceCollection services, HashSet<Type> personal) =>
        from service in services
        where service.Lifetime == ServiceLifetime.Singleton && !service.IsKeyedService
        let type = service.ImplementationType ?? service.ImplementationInstance?.GetType() ?? service.ServiceType
        where Ours.Append(typeof(Captor).Assembly).Contains(type.Assembly)
        where type.GetConstructors().SelectMany(made => made.GetParameters()).Any(asked => personal.Contains(asked.ParameterType))
        select type.Name;

    private sealed class Captor
    {
        public Captor(ActorAccess actors) => ArgumentNullException.ThrowIfNull(actors);
    }
}
