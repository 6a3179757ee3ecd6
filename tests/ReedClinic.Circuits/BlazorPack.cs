using System.Buffers;
using System.Diagnostics.CodeAnalysis;
using Microsoft.AspNetCore.Connections;
using Microsoft.AspNetCore.SignalR;
using Microsoft.AspNetCore.SignalR.Protocol;

namespace ReedClinic.Circuits;

/// <summary>
/// The name under which Blazor Server speaks MessagePack. Everything in this project that goes over the wire (this name, the
/// hub's methods, the markers of a page, the bytes of a render batch) is internal to ASP.NET Core and promised to nobody: it was
/// written for, and is pinned to, ASP.NET Core 10.0 (tried with runtime 10.0.12 and client packages 10.0.15). Another major
/// version may change any of it; then the tests of the driver itself fail first.
/// </summary>
internal sealed class BlazorPack : IHubProtocol
{
    private readonly MessagePackHubProtocol _inner = new();

    public string Name => "blazorpack";

    public int Version => 1;

    public TransferFormat TransferFormat => TransferFormat.Binary;

    public bool IsVersionSupported(int version) => version == Version;

    public ReadOnlyMemory<byte> GetMessageBytes(HubMessage message) => _inner.GetMessageBytes(message);

    public bool TryParseMessage(ref ReadOnlySequence<byte> input, IInvocationBinder binder, [NotNullWhen(true)] out HubMessage? message) =>
        _inner.TryParseMessage(ref input, binder, out message);

    public void WriteMessage(HubMessage message, IBufferWriter<byte> output) => _inner.WriteMessage(message, output);
}
