using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;

namespace ReedClinic.Web.Shared.Hosting;

/// <summary>
/// Tells the person who started the program what they need to know: where it is, and on a first start how to get in.
/// The only class that writes to standard output, because none of this may stand in a log.
/// </summary>
public sealed class Announcement
{
    private readonly TextWriter _out;

    /// <summary>Announces to standard output.</summary>
    public Announcement()
        : this(Console.Out)
    {
    }

    /// <summary>Announces to a given writer.</summary>
    /// <param name="output">Where the lines go.</param>
    public Announcement(TextWriter output) => _out = output;

    /// <summary>One line.</summary>
    /// <param name="line">What to say.</param>
    public void Say(string line)
    {
        _out.WriteLine(line);
        _out.Flush();
    }
}

/// <summary>Says where the program listens, once it does.</summary>
public static class AddressAnnouncement
{
    /// <summary>Announces each address when the server has started.</summary>
    /// <param name="app">The application.</param>
    public static void AnnounceAddress(this WebApplication app)
    {
        var announcement = app.Services.GetRequiredService<Announcement>();
        app.Lifetime.ApplicationStarted.Register(() =>
        {
            var addresses = app.Services.GetRequiredService<IServer>().Features.Get<IServerAddressesFeature>()?.Addresses ?? [];
            foreach (var address in addresses)
            {
                announcement.Say($"ReedClinic is open at {address}");
                if (!app.Environment.IsDevelopment() && address.StartsWith("http:", StringComparison.Ordinal))
                {
                    announcement.Say(HowItIsReached(app.Configuration));
                }
            }
        });
    }

    /// <summary>A sentence about how people reach what listens to plain http.</summary>
    /// <param name="settings">The host's settings.</param>
    public static string HowItIsReached(IConfiguration settings)
    {
        ArgumentNullException.ThrowIfNull(settings);
        if (settings.PlainHttpAllowed())
        {
            return "Its pages are given out over https, and by plain http to a browser on this machine that asks for localhost.";
        }

        return settings[Doorway.Proxies] is { Length: > 0 } proxies
            ? $"People reach it over https, by the proxy at {proxies}{(settings["Web:Address"] is { Length: > 0 } address ? $", as {address}" : "")}."
            : $"Its pages are only given out over https: put a proxy that speaks https in front of it and name it in {Doorway.Proxies} (docs/operations/install.md).";
    }
}
