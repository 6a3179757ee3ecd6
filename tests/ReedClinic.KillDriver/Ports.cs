using System.Net;
using System.Net.Sockets;
using System.Security.Cryptography;

namespace ReedClinic.KillDriver;

/// <summary>Ports for programs that are told theirs beforehand.</summary>
public static class Ports
{
    private const int First = 20_000;
    private const int Beyond = 32_000;

    /// <summary>
    /// One that is free at the moment. Not of those that Linux gives away by itself (32768 to 60999 unless told otherwise): whoever
    /// listens or asks on the machine could be given it before the program is there.
    /// </summary>
    public static int Free()
    {
        while (true)
        {
            using var listener = new TcpListener(IPAddress.Loopback, RandomNumberGenerator.GetInt32(First, Beyond));
            try
            {
                listener.Start();
                return ((IPEndPoint)listener.LocalEndpoint).Port;
            }
            catch (SocketException)
            {
                // Somebody has it.
            }
        }
    }
}
