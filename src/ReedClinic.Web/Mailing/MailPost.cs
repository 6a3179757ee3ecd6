using Microsoft.AspNetCore.Hosting.Server;
using Microsoft.AspNetCore.Hosting.Server.Features;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Web.Mailing;

/// <summary>What a page may ask about mail: whether it goes out at all, and how an address of this studio is written in it.</summary>
/// <param name="settings">Where mail goes.</param>
/// <param name="server">Where the program listens.</param>
public sealed class MailPost(MailSettings settings, IServer server)
{
    /// <summary>False while no mail goes out: what needs one has to say so.</summary>
    public bool IsOn => settings.IsOn;

    /// <summary>True where mail is written into a folder of the machine instead of being sent: nobody gets it.</summary>
    public bool GoesToFolder => settings.Folder is not null;

    /// <summary>The address that answers to mail go to; null while no mail goes out, or it is no address of a mail server.</summary>
    public string? ReplyTo => settings is { IsOn: true, ReplyTo: var address } && EmailAddress.Read(address) is not null ? address : null;

    /// <summary>The address that people write to: what the owner has said, else where answers to mail go; null where there is neither.</summary>
    /// <param name="studio">The studio; null while it has no owner.</param>
    public string? WriteTo(StudioView? studio) => studio?.WriteTo ?? ReplyTo;

    /// <summary>A page of this studio as a link in a mail.</summary>
    /// <param name="path">Its path, beginning with a slash.</param>
    public string Link(string path)
    {
        ArgumentNullException.ThrowIfNull(path);
        return (settings.Address?.ToString() ?? Listening()).TrimEnd('/') + "/" + path.TrimStart('/');
    }

    // Only in Development: elsewhere the settings must say.
    private string Listening()
    {
        var address = server.Features.Get<IServerAddressesFeature>()?.Addresses.FirstOrDefault() ?? "http://localhost";
        return address.Replace("://0.0.0.0", "://localhost", StringComparison.Ordinal).Replace("://[::]", "://localhost", StringComparison.Ordinal);
    }
}
