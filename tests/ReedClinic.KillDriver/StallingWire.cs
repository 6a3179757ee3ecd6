using System.Net;
using System.Net.Sockets;

namespace ReedClinic.KillDriver;

/// <summary>A wire between the app and its database that can be held still: connections stay open, and nothing comes through.</summary>
public sealed class StallingWire : IDisposable
{
    private readonly TcpListener _listener = new(IPAddress.Loopback, 0);
    private readonly CancellationTokenSource _end = new();
    private volatile TaskCompletionSource _open = Opened();

    /// <summary>Lays it.</summary>
    /// <param name="to">The port behind it.</param>
    public StallingWire(int to)
    {
        _listener.Start();
        Port = ((IPEndPoint)_listener.LocalEndpoint).Port;
        _ = AcceptAsync(to);
    }

    /// <summary>Where it begins.</summary>
    public int Port { get; }

    /// <summary>Holds it still.</summary>
    public void Hold() => _open = new TaskCompletionSource(TaskCreationOptions.RunContinuationsAsynchronously);

    /// <summary>Lets everything through again.</summary>
    public void LetGo() => _open.TrySetResult();

    /// <inheritdoc />
    public void Dispose()
    {
        _end.Cancel();
        _listener.Dispose();
        _end.Dispose();
    }

    private static TaskCompletionSource Opened()
    {
        var open = new TaskCompletionSource();
        open.SetResult();
        return open;
    }

    private async Task AcceptAsync(int to)
    {
        try
        {
            while (true)
            {
                _ = CarryAsync(await _listener.AcceptTcpClientAsync(_end.Token).ConfigureAwait(false), to);
            }
        }
        catch (Exception end) when (end is OperationCanceledException or ObjectDisposedException or SocketException)
        {
            // It is taken down.
        }
    }

    private async Task CarryAsync(TcpClient from, int to)
    {
        using var behind = new TcpClient();
        using (from)
        {
            try
            {
                await behind.ConnectAsync(IPAddress.Loopback, to, _end.Token).ConfigureAwait(false);
                await Task.WhenAny(CopyAsync(from.GetStream(), behind.GetStream()), CopyAsync(behind.GetStream(), from.GetStream())).ConfigureAwait(false);
            }
            catch (Exception end) when (end is OperationCanceledException or IOException or SocketException)
            {
                // One of the two has gone.
            }
        }
    }

    private async Task CopyAsync(NetworkStream from, NetworkStream to)
    {
        var buffer = new byte[16 * 1024];
        while (await from.ReadAsync(buffer, _end.Token).ConfigureAwait(false) is > 0 and var length)
        {
            await _open.Task.WaitAsync(_end.Token).ConfigureAwait(false);
            await to.WriteAsync(buffer.AsMemory(0, length), _end.Token).ConfigureAwait(false);
        }
    }
}
