using System.Diagnostics;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using ReedClinic.KillDriver;

namespace ReedClinic.Web.Tests.Published;

/// <summary>
/// The published program's own https, looked at from outside by Debian's sslscan. OWASP ASVS 5.0: 12.1.1 (TLS 1.2 and 1.3 only),
/// 3.4.1 (HSTS); RFC 8996 (TLS 1.0 and 1.1 are not to be used).
/// </summary>
public sealed class TlsTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task Only_TLS_1_2_and_1_3_are_spoken_and_pages_say_that_they_stay_with_https()
    {
        var db = await databases.FreshAsync(ClinicEngine.Sqlite);
        var folder = Directory.CreateTempSubdirectory("reedclinic-tls-");
        var certificate = Path.Combine(folder.FullName, "own.pfx");
        await File.WriteAllBytesAsync(certificate, OwnCertificate(), Ct);
        var settings = db.Settings.ToDictionary(pair => pair.Key.Replace(":", "__", StringComparison.Ordinal), pair => pair.Value!);
        settings["ASPNETCORE_URLS"] = "https://127.0.0.1:0";
        settings["ASPNETCORE_Kestrel__Certificates__Default__Path"] = certificate;
        settings["Web__Proxies"] = "";
        await using var app = await RunningApp.StartAsync(await PublishedApp.FolderAsync(), settings, Ct);

        var scan = await ScanAsync(app.Address.Authority);

        Assert.Matches(@"SSLv2\s+disabled", scan);
        Assert.Matches(@"SSLv3\s+disabled", scan);
        Assert.Matches(@"TLSv1\.0\s+disabled", scan);
        Assert.Matches(@"TLSv1\.1\s+disabled", scan);
        Assert.Matches(@"TLSv1\.[23]\s+enabled", scan);
        Assert.DoesNotMatch(@"(Accepted|Preferred)\s+TLSv1\.[01]\s", scan);
        using var trusting = new HttpClientHandler { ServerCertificateCustomValidationCallback = (_, _, _, _) => true };
        using var client = new HttpClient(trusting) { BaseAddress = app.Address };
        using var request = new HttpRequestMessage(HttpMethod.Get, "/");
        request.Headers.Host = "reeds.example";
        using var answer = await client.SendAsync(request, Ct);
        Assert.Equal("max-age=31536000; includeSubDomains", answer.Headers.GetValues("Strict-Transport-Security").Single());
        folder.Delete(recursive: true);
    }

    private static async Task<string> ScanAsync(string authority)
    {
        using var scan = Process.Start(new ProcessStartInfo("sslscan", ["--no-colour", authority]) { RedirectStandardOutput = true })!;
        var said = await scan.StandardOutput.ReadToEndAsync(Ct);
        await scan.WaitForExitAsync(Ct);
        return said;
    }

    private static byte[] OwnCertificate()
    {
        using var key = RSA.Create(2048);
        var request = new CertificateRequest("CN=localhost", key, HashAlgorithmName.SHA256, RSASignaturePadding.Pkcs1);
        using var certificate = request.CreateSelfSigned(TimeProvider.System.GetUtcNow().AddDays(-1), TimeProvider.System.GetUtcNow().AddDays(1));
        return certificate.Export(X509ContentType.Pkcs12);
    }
}
