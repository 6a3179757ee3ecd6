using ReedClinic.Data.Engine;
using ReedClinic.Data.Recordings;
using ReedClinic.Web.Mailing;
using ReedClinic.Web.Shared.Hosting;
using ReedClinic.Web.Shared.Insight;

namespace ReedClinic.Web.Background;

/// <summary>
/// What in the settings speaks against letting people in. The program starts all the same: a home network or a first look may
/// be served by less. OWASP ASVS 5.0: 13.1.1, 13.2.2, 13.3.1, 13.4.2.
/// </summary>
public static class SettingsCheck
{
    private const int MostKnocks = 1_000;

    /// <summary>Looks.</summary>
    /// <param name="settings">The host's settings.</param>
    /// <param name="environment">Where it runs.</param>
    public static IReadOnlyList<CheckFinding> Look(IConfiguration settings, IHostEnvironment environment)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentNullException.ThrowIfNull(environment);
        return [.. OfHost(settings, environment), .. OfDoor(settings), .. OfKeys(settings), .. OfMail(settings, environment), .. OfMedia(settings, environment), .. OfSound(settings), .. OfRest(settings)];
    }

    private static IEnumerable<CheckFinding> OfHost(IConfiguration settings, IHostEnvironment environment)
    {
        if (!environment.IsProduction())
        {
            yield return new("environment", $"It runs as {environment.EnvironmentName}. Only Production keeps every guard up: leave ASPNETCORE_ENVIRONMENT out, or set it to Production.");
        }

        if (settings["AllowedHosts"] is not { Length: > 0 } hosts || hosts.Split(';').Contains("*"))
        {
            yield return new("any-host", "Any host name is taken. Set AllowedHosts to the names this studio is found by, such as reeds.example.org.");
        }

        if (settings["Web:Address"] is not { Length: > 0 } address)
        {
            yield return new("no-address", "Web:Address is missing: passkeys and links in mails need to know where the studio is found, such as https://reeds.example.org.");
        }
        else if (!address.StartsWith("https://", StringComparison.OrdinalIgnoreCase))
        {
            yield return new("address-plain", "Web:Address doesn’t begin with https://. Passkeys and secure cookies work over https alone.");
        }
    }

    private static IEnumerable<CheckFinding> OfDoor(IConfiguration settings)
    {
        var proxies = settings[Doorway.Proxies] ?? "";
        if (proxies.Length == 0 && !SpeaksTls(settings))
        {
            yield return new("no-tls", $"Nobody speaks https: neither does the program listen to an https address, nor does {Doorway.Proxies} name a proxy that does.");
        }

        if (proxies.Split(',', StringSplitOptions.TrimEntries | StringSplitOptions.RemoveEmptyEntries).Any(IsWide))
        {
            yield return new("proxies-wide", $"{Doorway.Proxies} believes half the world. Name the proxy’s own address, or the small network it is in.");
        }

        if (settings.PlainHttpAllowed())
        {
            yield return new("plain-http", $"{Doorway.PlainHttpOnLoopback} is on: cookies travel without https on this machine. It is meant for a first look.");
        }

        if (settings.GetValue<bool>("ForwardedHeaders_Enabled"))
        {
            yield return new("forwarded-by-all", $"ASPNETCORE_FORWARDEDHEADERS_ENABLED is set. It is not heard here; name the proxy in {Doorway.Proxies} and take it out.");
        }
    }

    private static IEnumerable<CheckFinding> OfKeys(IConfiguration settings)
    {
        if (settings["Keys:Certificate"] is not { Length: > 0 })
        {
            yield return new("keys-open", "The keys that seal cookies lie in the open. Name a certificate in Keys:Certificate (docs/operations/security.md says how to make one).");
        }

        if (settings["Keys:Folder"] is { Length: > 0 } folder && !OperatingSystem.IsWindows() && Directory.Exists(folder)
            && (File.GetUnixFileMode(folder) & (UnixFileMode.GroupRead | UnixFileMode.GroupWrite | UnixFileMode.OtherRead | UnixFileMode.OtherWrite)) != 0)
        {
            yield return new("keys-readable", "Others on this machine can read the folder of the keys. Take that away: chmod 700 on Keys:Folder.");
        }

        if (settings.GetConnectionString("Clinic")?.Contains("password=", StringComparison.OrdinalIgnoreCase) == true)
        {
            yield return new("password-in-line", "The database’s password stands in the connection string, where a list of processes may show it. Put it into a file of Secrets:Folder as Database__Password.");
        }
    }

    private static IEnumerable<CheckFinding> OfMail(IConfiguration settings, IHostEnvironment environment)
    {
        MailSettings mail;
        string? wrong = null;
        try
        {
            mail = MailSettings.Read(settings, environment);
        }
        catch (InvalidOperationException said)
        {
            (mail, wrong) = (new MailSettings(), said.Message);
        }

        if (wrong is not null)
        {
            yield return new("mail-wrong", wrong);
        }
        else if (mail.Folder is not null)
        {
            yield return new("mail-folder", "Mails are written into a folder and reach nobody. Take Mail:Folder out and name a server in Mail:Host.");
        }
        else if (!mail.IsOn)
        {
            yield return new("mail-off", "No mail goes out: nobody can win back a password, and no guardian can be asked. Name a server in Mail:Host.");
        }
        else if (mail.User is not null && string.IsNullOrEmpty(mail.Password))
        {
            yield return new("mail-password", "Mail:User is set without Mail:Password. Put it into a file of Secrets:Folder as Mail__Password.");
        }
    }

    private static IEnumerable<CheckFinding> OfMedia(IConfiguration settings, IHostEnvironment environment)
    {
        // Without a folder of its own it lies beside the database, and is as safe as that.
        if (settings[MediaFolder.Setting] is not { Length: > 0 })
        {
            yield break;
        }

        var folder = MediaFolder.Of(settings, environment.ContentRootPath).Path;
        if (folder.StartsWith(Path.Combine(environment.ContentRootPath, "wwwroot"), StringComparison.Ordinal))
        {
            yield return new("media-open", $"{MediaFolder.Setting} lies in wwwroot, where everybody can fetch files. Name a folder elsewhere.");
        }

        if (!OperatingSystem.IsWindows() && Directory.Exists(folder) && (File.GetUnixFileMode(folder) & (UnixFileMode.OtherRead | UnixFileMode.OtherWrite | UnixFileMode.OtherExecute)) != 0)
        {
            yield return new("media-readable", $"Everybody on this machine can read sounds and photographs. Take that away: chmod o-rwx on {MediaFolder.Setting}.");
        }
    }

    private static IEnumerable<CheckFinding> OfSound(IConfiguration settings)
    {
        var programs = ChildPrograms.Of(settings);
        if (programs.Decoder is { } decoder && !(Path.IsPathRooted(decoder) && File.Exists(decoder)))
        {
            yield return new("sound-decoder", $"{ChildPrograms.Setting} names a program that isn’t there. Write its whole path, such as /usr/bin/ffmpeg, or take it out.");
        }
        else if (programs is { Decoder: not null, CanRun: false })
        {
            yield return new("sound-limits", $"{ChildPrograms.Setting} isn’t used: there is no prlimit here (util-linux), and without limits no decoder is started.");
        }
    }

    private static IEnumerable<CheckFinding> OfRest(IConfiguration settings)
    {
        foreach (var limit in RateLimits.Settings.Append(RateLimits.Uploads))
        {
            if (settings.GetValue(limit, 0) > MostKnocks)
            {
                yield return new("limits-off", $"{limit} is so high that it limits nobody. Take it out; the usual number will do.");
            }
        }

        if (settings.GetValue<bool>("DetailedErrors"))
        {
            yield return new("detailed-errors", "DetailedErrors is on: visitors are shown what broke inside. Take it out.");
        }

        if (settings["Logging:Detail"] is "Debug" or "Verbose")
        {
            yield return new("log-detail", "Logging:Detail is Debug or finer: the log may tell more of people than it should. Set it to Information.");
        }

        if (settings[InsightSettings.Address] is { Length: > 0 } collector && (!Uri.TryCreate(collector, UriKind.Absolute, out var address) || !(address.Scheme == Uri.UriSchemeHttps || address.IsLoopback)))
        {
            yield return new("insight-plain", $"{InsightSettings.Address} leads to another machine without https: what is told of this one can be read and changed on the way. Name an address that begins with https://, or a collector on this machine.");
        }

        if (settings.GetValue("Privacy:BackupDays", 35) is < 1 or > 365)
        {
            yield return new("backup-days", "Privacy:BackupDays promises a time that can’t be right. Say in how many days, 1 to 365, every back-up is gone.");
        }
    }

    private static bool SpeaksTls(IConfiguration settings) =>
        (settings["URLS"] ?? settings["urls"] ?? "").Contains("https://", StringComparison.OrdinalIgnoreCase)
        || !string.IsNullOrEmpty(settings["HTTPS_PORTS"])
        || settings.GetSection("Kestrel:Endpoints").GetChildren().Any(endpoint => endpoint["Url"]?.StartsWith("https://", StringComparison.OrdinalIgnoreCase) == true);

    // Wider than a private network of IPv4, or than what one household is given of IPv6.
    private static bool IsWide(string text) =>
        System.Net.IPNetwork.TryParse(text, out var network)
        && network.PrefixLength < (network.BaseAddress.AddressFamily == System.Net.Sockets.AddressFamily.InterNetwork ? 8 : 48);
}
