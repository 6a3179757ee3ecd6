using System.Net;
using System.Net.Sockets;

namespace ReedClinic.Browser.Tests.Two;

/// <summary>Ports that nobody has.</summary>
internal static class Ports
{
    /// <summary>One that is free at the moment.</summary>
    public static int Free()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
