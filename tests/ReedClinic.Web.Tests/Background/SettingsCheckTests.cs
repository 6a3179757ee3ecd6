using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.FileProviders;
using Microsoft.Extensions.Hosting;
using ReedClinic.Web.Background;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Tests.Background;

/// <summary>OWASP ASVS 5.0: 13.1.1, 13.2.2, 13.3.1, 13.4.2, 12.2.1.</summary>
[System.Runtime.Versioning.UnsupportedOSPlatform("windows")]
public sealed class SettingsCheckTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static readonly Dictionary<string, string?> Good = new()
    {
        ["AllowedHosts"] = "reeds.example.org",
        ["Web:Address"] = "https://reeds.example.org",
        ["Web:Proxies"] = "10.1.2.3",
        ["Keys:Certificate"] = "/etc/reedclinic/keys.pfx",
        ["Mail:Host"] = "mail.example.org",
        ["Mail:From"] = "studio@example.org",
    };

    [Fact]
    public void Good_settings_are_found_good() => Assert.Empty(Found("Production"));

    [Theory]
    [InlineData("any-host", "AllowedHosts", "*")]
    [InlineData("any-host", "AllowedHosts", "reeds.example.org;*")]
    [InlineData("any-host", "AllowedHosts", null)]
    [InlineData("no-tls", "Web:Proxies", null)]
    [InlineData("proxies-wide", "Web:Proxies", "0.0.0.0/0")]
    [InlineData("proxies-wide", "Web:Proxies", "10.1.2.3, ::/0")]
    [InlineData("plain-http", "Web:PlainHttpOnLoopback", "true")]
    [InlineData("forwarded-by-all", "ForwardedHeaders_Enabled", "true")]
    [InlineData("keys-open", "Keys:Certificate", null)]
    [InlineData("password-in-line", "ConnectionStrings:Clinic", "Host=db;Username=reeds;Password=tide")]
    [InlineData("mail-wrong", "Mail:From", null)]
    [InlineData("mail-wrong", "Mail:Tls", "None")]
    [InlineData("mail-off", "Mail:Host", null)]
    [InlineData("mail-folder", "Mail:Folder", "/tmp/mail")]
    [InlineData("mail-password", "Mail:User", "studio")]
    [InlineData("limits-off", RateLimits.SignIn, "100000")]
    [InlineData("limits-off", RateLimits.Uploads, "100000")]
    [InlineData("limits-off", RateLimits.Begin, "100000")]
    [InlineData("limits-off", RateLimits.Guardian, "100000")]
    [InlineData("media-open", "Media:Folder", "wwwroot/media")]
    [InlineData("sound-decoder", "Sound:Ffmpeg", "/nowhere/ffmpeg")]
    [InlineData("sound-decoder", "Sound:Ffmpeg", "ffmpeg")]
    [InlineData("detailed-errors", "DetailedErrors", "true")]
    [InlineData("log-detail", "Logging:Detail", "Debug")]
    [InlineData("backup-days", "Privacy:BackupDays", "0")]
    [InlineData("insight-plain", "Insight:Otlp", "http://collector.example:4318")]
    [InlineData("insight-plain", "Insight:Otlp", "no address")]
    public void Each_bad_setting_is_found_and_nothing_else(string name, string setting, string? value) =>
        Assert.Equal([name], Found("Production", (setting, value)).Distinct());

    [Fact]
    public void A_missing_address_is_found_and_so_is_the_mail_that_needs_it() =>
        Assert.Equal(["no-address", "mail-wrong"], Found("Production", ("Web:Address", null)));

    [Fact]
    public void An_address_without_https_is_found() =>
        Assert.Contains("address-plain", Found("Production", ("Web:Address", "http://reeds.example.org")));

    [Theory]
    [InlineData("Kestrel:Endpoints:Own:Url", "https://0.0.0.0:443", false)]
    [InlineData("HTTPS_PORTS", "443", false)]
    [InlineData("URLS", "https://0.0.0.0:443", false)]
    [InlineData("Kestrel:Endpoints:Own:Url", "http://0.0.0.0:80", true)]
    [InlineData("URLS", "http://0.0.0.0:80", true)]
    public void The_programs_own_https_will_do_in_place_of_a_proxy_and_its_own_plain_http_will_not(string setting, string value, bool found) =>
        Assert.Equal(found ? ["no-tls"] : [], Found("Production", ("Web:Proxies", null), (setting, value)));

    [Fact]
    public void Anything_but_Production_is_found() => Assert.Equal(["environment"], Found("Staging"));

    [Theory]
    [InlineData("Keys:Folder", "keys-readable")]
    [InlineData("Media:Folder", "media-readable")]
    public void A_folder_that_others_can_read_is_found(string setting, string name)
    {
        var folder = Directory.CreateTempSubdirectory("reedclinic-check-");
        File.SetUnixFileMode(folder.FullName, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute);
        Assert.Empty(Found("Production", (setting, folder.FullName)));
        File.SetUnixFileMode(folder.FullName, UnixFileMode.UserRead | UnixFileMode.UserWrite | UnixFileMode.UserExecute | UnixFileMode.OtherRead);
        Assert.Equal([name], Found("Production", (setting, folder.FullName)));
        folder.Delete();
    }

    [Theory, OnBothEngines]
    public async Task The_command_says_each_with_a_reason_and_ends_with_one(ClinicEngine engine)
    {
        var db = await databases.FreshAsync(engine);
        await using var words = new StringWriter();

        var code = await CheckCommand.RunAsync([.. db.Settings.Select(setting => $"--{setting.Key}={setting.Value}"), "--environment=Production"], new Announcement(words));

        Assert.Equal(1, code);
        Assert.Contains("keys-open: ", words.ToString(), StringComparison.Ordinal);
        Assert.Contains("no-owner: ", words.ToString(), StringComparison.Ordinal);
        Assert.Contains("things want a look", words.ToString(), StringComparison.Ordinal);
    }

    private static IEnumerable<string> Found(string environment, params (string Name, string? Value)[] changes)
    {
        var settings = new Dictionary<string, string?>(Good);
        foreach (var (name, value) in changes)
        {
            settings[name] = value;
        }

        var configuration = new ConfigurationBuilder().AddInMemoryCollection(settings.Where(pair => pair.Value is not null)).Build();
        return SettingsCheck.Look(configuration, new Place(environment)).Select(finding =>
        {
            Assert.EndsWith(".", finding.Words.TrimEnd(')'), StringComparison.Ordinal);
            return finding.Name;
        });
    }

    private sealed class Place(string name) : IHostEnvironment
    {
        public string EnvironmentName { get; set; } = name;

        public string ApplicationName { get; set; } = "ReedClinic";

        public string ContentRootPath { get; set; } = Path.GetTempPath();

        public IFileProvider ContentRootFileProvider { get; set; } = new NullFileProvider();
    }
}
