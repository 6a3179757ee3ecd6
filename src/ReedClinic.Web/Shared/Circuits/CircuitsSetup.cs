using Microsoft.AspNetCore.Components.Server;
using Microsoft.AspNetCore.Components.Server.Circuits;
using Microsoft.AspNetCore.SignalR;

namespace ReedClinic.Web.Shared.Circuits;

/// <summary>Live pages: how many, how long, how much. What every value is for: docs/decisions/0018.</summary>
public static class CircuitsSetup
{
    /// <summary>The longest message over a circuit. Never raised: what is longer comes as a request of its own.</summary>
    public const long MessageBytes = 32 * 1024;

    /// <summary>Registers who counts circuits and who guards their door.</summary>
    /// <param name="builder">The host that is being built.</param>
    public static void AddCircuits(this WebApplicationBuilder builder)
    {
        var services = builder.Services;
        services.AddOptions<CircuitLimits>().Bind(builder.Configuration.GetSection(CircuitLimits.Section))
            .Validate(limits => limits.IsSound, $"{CircuitLimits.Section}: at least one page for each account, and at least as many connections as pages.")
            .ValidateOnStart();
        services.AddSingleton<OpenCircuits>();
        services.AddSingleton<CircuitDoor>();
        services.AddScoped<ThisCircuit>();
        services.AddScoped<CircuitHandler>(circuit => circuit.GetRequiredService<ThisCircuit>());
    }

    /// <summary>Stands in front of the sockets; after the sign-in has been read.</summary>
    /// <param name="app">The application.</param>
    public static void UseCircuitDoor(this WebApplication app) => app.Use(CircuitDoor.GuardAsync);

    internal static void Bound(CircuitOptions circuit)
    {
        circuit.DetailedErrors = false;
        circuit.DisconnectedCircuitMaxRetained = 100;
        circuit.DisconnectedCircuitRetentionPeriod = TimeSpan.FromMinutes(5);
        circuit.JSInteropDefaultCallTimeout = TimeSpan.FromSeconds(20);
        circuit.MaxBufferedUnacknowledgedRenderBatches = 10;
        circuit.PersistedCircuitInMemoryMaxRetained = 500;
        circuit.PersistedCircuitInMemoryRetentionPeriod = TimeSpan.FromHours(2);
    }

    internal static void Bound(HubOptions hub)
    {
        hub.EnableDetailedErrors = false;
        hub.MaximumReceiveMessageSize = MessageBytes;
        hub.MaximumParallelInvocationsPerClient = 1;
        hub.StreamBufferCapacity = 10;
        hub.HandshakeTimeout = TimeSpan.FromSeconds(15);
        hub.KeepAliveInterval = TimeSpan.FromSeconds(15);
        hub.ClientTimeoutInterval = TimeSpan.FromSeconds(60);
        hub.AddFilter<CircuitDoor>();
    }
}
