using System.Diagnostics;
using System.Text.RegularExpressions;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Configuration;
using ReedClinic.KillDriver;
using ReedClinic.Web.Background;
using ReedClinic.Web.Mailing;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Tests.Mailing;

/// <summary>The mail server's password comes from a file, as docker-compose.yml and deploy/make-secrets.sh have it.</summary>
public sealed partial class MailPasswordTests : IDisposable
{
    private readonly DirectoryInfo _made = Directory.CreateTempSubdirectory("reedclinic-made-");
    private readonly DirectoryInfo _mounted = Directory.CreateTempSubdirectory("reedclinic-mounted-");

    public void Dispose()
    {
        _made.Delete(recursive: true);
        _mounted.Delete(recursive: true);
    }

    [Theory]
    [InlineData("", "")]
    [InlineData("low water at noon", "low water at noon")]
    [InlineData("low water at noon\n", "low water at noon")] // as an editor leaves it
    public async Task What_stands_in_its_file_is_what_the_mail_server_hears(string written, string heard)
    {
        await MakeAsync();
        await File.WriteAllTextAsync(Path.Combine(_made.FullName, "mail-password"), written, TestContext.Current.CancellationToken);
        await MakeAsync(); // again, as with an update: what is there stays

        var host = WebApplication.CreateBuilder(new WebApplicationOptions { EnvironmentName = "Production" });
        host.Configuration.AddInMemoryCollection(new Dictionary<string, string?>
        {
            ["Mail:Host"] = "mail.example.org",
            ["Mail:From"] = "studio@example.org",
            ["Mail:User"] = "studio",
            ["Web:Address"] = "https://reeds.example.org",
            [Secrets.Folder] = Mounted(),
        });
        host.AddSecrets();

        Assert.Equal(heard, MailSettings.Read(host.Configuration, host.Environment).Password);
        Assert.Equal(heard.Length == 0, SettingsCheck.Look(host.Configuration, host.Environment).Any(finding => finding.Name == "mail-password"));
    }

    // The files as each service of ours finds them under /run/secrets.
    private string Mounted()
    {
        var compose = File.ReadAllText(Path.Combine(PublishedApp.Top(), "docker-compose.yml"));
        var pairs = SecretsOf().Matches(compose).Select(match => (From: match.Groups[1].Value, To: match.Groups[2].Value)).ToList();
        Assert.Equal(2, pairs.Count(pair => pair.To == "Mail__Password")); // web, and what works on its records
        foreach (var (from, to) in pairs)
        {
            Assert.Contains($"  {from}:\n    file: ${{SECRETS_FOLDER:-./deploy/secrets}}/{from}\n", compose, StringComparison.Ordinal);
            File.Copy(Path.Combine(_made.FullName, from), Path.Combine(_mounted.FullName, to), overwrite: true);
        }

        return _mounted.FullName;
    }

    private async Task MakeAsync()
    {
        using var made = Process.Start(new ProcessStartInfo(Path.Combine(PublishedApp.Top(), "deploy", "make-secrets.sh"), [_made.FullName]) { RedirectStandardOutput = true })!;
        await made.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        await made.WaitForExitAsync(TestContext.Current.CancellationToken);
        Assert.Equal(0, made.ExitCode);
    }

    [GeneratedRegex(@"- source: (\S+)\n +target: (\S+)")]
    private static partial Regex SecretsOf();
}
