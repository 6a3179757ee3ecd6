using MimeKit;

namespace ReedClinic.Web.Mailing;

/// <summary>How the way to the mail server is kept private. There is no way that does without.</summary>
public enum MailTls
{
    /// <summary>It begins in the open and must turn private before anything is said (RFC 3207); without that nothing is sent.</summary>
    StartTls,

    /// <summary>It is private from the first byte (RFC 8314, 3.3).</summary>
    SslOnConnect,
}

/// <summary>Where mail goes, as the settings have it.</summary>
public sealed record MailSettings
{
    private const int UsualPort = 587; // RFC 6409
    private const int UsualTlsPort = 465; // RFC 8314, 7.3

    /// <summary>The mail server; null when there is none.</summary>
    public string? Host { get; init; }

    /// <summary>Its port.</summary>
    public int Port { get; init; } = UsualPort;

    /// <summary>Who signs in there; null when nobody needs to.</summary>
    public string? User { get; init; }

    /// <summary>The password for it.</summary>
    public string? Password { get; init; }

    /// <summary>How the way there is kept private.</summary>
    public MailTls Tls { get; init; }

    /// <summary>A file with the certificates (PEM) that vouch for the server, where the machine's own don't.</summary>
    public string? Authority { get; init; }

    /// <summary>A folder that mails are written into instead of being sent; null when they are sent.</summary>
    public string? Folder { get; init; }

    /// <summary>The address that mails come from.</summary>
    public string From { get; init; } = "studio@localhost";

    /// <summary>The address that answers go to.</summary>
    public string ReplyTo { get; init; } = "studio@localhost";

    /// <summary>Where the studio is found from outside; null in Development, where it is found where it listens.</summary>
    public Uri? Address { get; init; }

    /// <summary>True when mail goes anywhere at all.</summary>
    public bool IsOn => Host is not null || Folder is not null;

    /// <summary>Keeps the password out of logs.</summary>
    public override string ToString() => $"{nameof(MailSettings)} {{ {Folder ?? Host ?? "off"} }}";

    /// <summary>Reads them, or says in plain words which one can't be right.</summary>
    /// <param name="configuration">The host's configuration.</param>
    /// <param name="environment">Where it runs.</param>
    public static MailSettings Read(IConfiguration configuration, IHostEnvironment environment)
    {
        ArgumentNullException.ThrowIfNull(configuration);
        ArgumentNullException.ThrowIfNull(environment);
        var host = configuration["Mail:Host"] is { Length: > 0 } named ? named : null;
        var folder = configuration["Mail:Folder"] is { Length: > 0 } asked ? asked
            : environment.IsDevelopment() && host is null ? "App_Data/mail" : null;
        var from = AddressIn(configuration, "Mail:From") ?? (host is null || folder is not null ? "studio@localhost" : throw Wrong("Mail:Host is set, so Mail:From must say which address mails come from."));
        var tls = TlsIn(configuration["Mail:Tls"]);
        var settings = new MailSettings
        {
            Host = host,
            Port = PortIn(configuration["Mail:Port"], tls),
            User = configuration["Mail:User"] is { Length: > 0 } user ? user : null,
            Password = configuration["Mail:Password"],
            Tls = tls,
            Authority = configuration["Mail:Authority"] is { Length: > 0 } file ? Path.GetFullPath(file, environment.ContentRootPath) : null,
            Folder = folder is null ? null : Path.GetFullPath(folder, environment.ContentRootPath),
            From = from,
            ReplyTo = AddressIn(configuration, "Mail:ReplyTo") ?? from,
            Address = PlaceIn(configuration["Web:Address"]),
        };
        return settings is { IsOn: true, Address: null } && !environment.IsDevelopment()
            ? throw Wrong("Mails carry links, so Web:Address must say where this studio is found from outside, such as https://reeds.example.org.")
            : settings;
    }

    private static string? AddressIn(IConfiguration configuration, string name) => configuration[name] switch
    {
        null or "" => null,
        { } text when MailboxAddress.TryParse(text, out var box) && box.Address == text => text,
        { } text => throw Wrong($"{name} is '{text}', which is no e-mail address such as reeds@example.org."),
    };

    private static MailTls TlsIn(string? text) =>
        string.IsNullOrEmpty(text) ? MailTls.StartTls
        : Enum.TryParse<MailTls>(text, ignoreCase: true, out var tls) && Enum.IsDefined(tls) ? tls
        : throw Wrong($"Mail:Tls is '{text}'; it can be StartTls or SslOnConnect. Mail without either isn't sent.");

    private static int PortIn(string? text, MailTls tls) =>
        string.IsNullOrEmpty(text) ? tls == MailTls.StartTls ? UsualPort : UsualTlsPort
        : ushort.TryParse(text, out var port) && port > 0 ? port
        : throw Wrong($"Mail:Port is '{text}', which is no port.");

    private static Uri? PlaceIn(string? text) =>
        string.IsNullOrEmpty(text) ? null
        : Uri.TryCreate(text, UriKind.Absolute, out var place)
            && (place.Scheme == Uri.UriSchemeHttps || (place.Scheme == Uri.UriSchemeHttp && place.IsLoopback))
            && place is { Query: "", Fragment: "", UserInfo: "" } ? place
        : throw Wrong($"Web:Address is '{text}'; it has to begin with https:// and name a host, such as https://reeds.example.org.");

    private static InvalidOperationException Wrong(string message) => new(message);
}
