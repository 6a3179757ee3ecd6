using System.Net;

namespace ReedClinic.Containers.Tests.Deploy;

/// <summary>What a person does who follows docker-compose.yml, and what they must be able to rely on.</summary>
public sealed class ComposeTests
{
    private const string Password = "seven boats in the harbour";
    private const string Email = "sanne@harbour.example";
    private const string OwnerEmail = "ilse@harbour.example";

    private static CancellationToken Ct => TestContext.Current.CancellationToken;

    [Fact]
    public async Task A_studio_made_from_nothing_keeps_its_people_signed_in_and_its_batches_through_restarts()
    {
        await using var compose = new Compose();
        await compose.MakeSecretsAsync(Ct);
        await compose.UpAsync(Ct);
        await OpenTheStudioAsync(compose);

        using var student = Visitor(compose);
        await SignInThroughThePageAsync(compose, student);
        var walk = await IntakeWalk.Begin(student);
        await walk.Fill(2);
        var code = await walk.Send();
        await FindsAsync(student, code);

        await compose.ComposeAsync(Ct, ["restart", .. Compose.Services]);
        await compose.HealthyAsync(Ct, Compose.Services);
        await FindsAsync(student, code);

        // Other containers on the same volumes, as after an update, and the proxy before them.
        var before = await compose.InspectAsync("web", "{{.Id}}", Ct);
        await compose.ComposeAsync(Ct, "down");
        await compose.UpWithProxyAsync(Ct);
        Assert.NotEqual(before, await compose.InspectAsync("web", "{{.Id}}", Ct));
        await FindsAsync(student, code);

        using var owner = await ProxyWalk.BeginAsync(compose, Ct);
        await owner.WorksAtTheBenchAsync(OwnerEmail, Password);
        await ToolsWalk.ComesBackFromABackUpAsync(compose, () => owner.SaysAsync("after the back-up"), owner.ReadAsync, Ct);
        await FindsAsync(student, code);

        await IsShutAsync(compose);
        await owner.NoAddressIsLoggedAsync();
        await ToolsWalk.BacksUpBeforeTheSchemaChangesAsync(compose, Ct);

        await compose.ComposeAsync(Ct, "--profile", "https", "--profile", "tools", "down", "--volumes");
        Assert.Equal("", await compose.RunAsync(Ct, "docker", "ps", "--all", "--quiet", "--filter", $"name={compose.Project}"));
        Assert.Equal("", await compose.RunAsync(Ct, "docker", "volume", "ls", "--quiet", "--filter", $"name={compose.Project}"));
    }

    private static async Task IsShutAsync(Compose compose)
    {
        await NothingIsOpenButTheWebPortOnLoopbackAsync(compose);
        await KeysAndMediaLieInVolumesAsync(compose);
        await NobodyIsRootAndNothingCanBeWrittenAsync(compose);
        await NobodySeesThePasswordAsync(compose);
    }

    private static HttpClient Visitor(Compose compose) => new(new SocketsHttpHandler { AllowAutoRedirect = false }) { BaseAddress = compose.Home };

    private static async Task OpenTheStudioAsync(Compose compose)
    {
        const string Announced = "enter this code, once: ";
        var log = await compose.ComposeAsync(Ct, "logs", "--no-color", "web");
        var code = log[(log.IndexOf(Announced, StringComparison.Ordinal) + Announced.Length)..].Split('\n')[0].Trim();
        Assert.DoesNotContain("\"@l\":\"Error\"", log, StringComparison.Ordinal);

        using var owner = Visitor(compose);
        var form = await Form.At(owner, "/first-run");
        form.Set("Form.Code", code).Set("Form.StudioName", "Harbour Reeds").Set("Form.Name", "Ilse")
            .Set("Form.Email", OwnerEmail).Set("Form.Password", Password);
        using var opened = await form.Post();
        Assert.Equal(HttpStatusCode.Found, opened.StatusCode);
    }

    // The mail lies in a folder of the container, as the settings of this test have it.
    private static async Task<string> MailedAsync(Compose compose)
    {
        using var tick = new PeriodicTimer(TimeSpan.FromMilliseconds(200));
        while (await tick.WaitForNextTickAsync(Ct))
        {
            var mails = await compose.ComposeAsync(Ct, "exec", "-T", "web", "bash", "-c", $"cat {Compose.MailFolder}/*.eml 2>/dev/null || true");
            if (MailedLinks.Find(mails, Email, "/join/") is { } link)
            {
                return link;
            }
        }

        throw new OperationCanceledException(Ct);
    }

    private static async Task SignInThroughThePageAsync(Compose compose, HttpClient student)
    {
        using (var asked = await (await Form.At(student, "/account/sign-up")).Set("Form.Email", Email).Post())
        {
            Assert.Equal(HttpStatusCode.OK, asked.StatusCode);
        }

        var join = await Form.At(student, await MailedAsync(compose));
        using var welcome = await join.Set("Form.Name", "Sanne").Set("Form.Age", "OldEnough").Set("Form.Password", Password).Post();
        Assert.Equal("/", welcome.Leads());
        using var bye = await (await Form.At(student, "/", "/account/sign-out")).Post();
        Assert.DoesNotContain("/account/sign-out", (await student.See("/")).Page, StringComparison.Ordinal);

        var signIn = await Form.At(student, "/account/sign-in");
        using var back = await signIn.Set("Form.Email", Email).Set("Form.Password", Password).Post();
        Assert.Equal("/", back.Leads());
    }

    // Still signed in, so the keys are the same; and what was sent is there.
    private static async Task FindsAsync(HttpClient student, string code)
    {
        var (status, page, leads) = await student.See($"/batches/{code}");
        Assert.True(status == HttpStatusCode.OK, $"{status} {leads}");
        Assert.Contains("/account/sign-out", page, StringComparison.Ordinal);
        Assert.Contains("thread number 2", page, StringComparison.Ordinal);
    }

    private static async Task NothingIsOpenButTheWebPortOnLoopbackAsync(Compose compose)
    {
        const string Bindings = "{{range $port, $places := .NetworkSettings.Ports}}{{range $places}}{{.HostIp}}:{{.HostPort}}->{{$port}} {{end}}{{end}}";
        Assert.Equal("", await compose.InspectAsync("database", Bindings, Ct));
        Assert.Equal($"127.0.0.1:{compose.Home.Port}->8080/tcp", await compose.InspectAsync("web", Bindings, Ct));
        Assert.Equal(
            $"127.0.0.1:{compose.Front.Port}->8080/tcp 127.0.0.1:{compose.Site.Port}->8443/tcp", await compose.InspectAsync("proxy", Bindings, Ct));
    }

    private static async Task NobodyIsRootAndNothingCanBeWrittenAsync(Compose compose)
    {
        foreach (var service in new[] { "web", "proxy" })
        {
            Assert.Equal("1654 true [ALL]", await compose.InspectAsync(service, "{{.Config.User}} {{.HostConfig.ReadonlyRootfs}} {{.HostConfig.CapDrop}}", Ct));
            var refused = await compose.ComposeAsync(Ct, "exec", "-T", service, "sh", "-c", "touch /here 2> /dev/null || echo refused");
            Assert.Equal("refused", refused.Trim());
        }
    }

    private static async Task KeysAndMediaLieInVolumesAsync(Compose compose)
    {
        const string Mounts = "{{range .Mounts}}{{if eq .Type \"volume\"}}{{.Name}} {{.Destination}};{{end}}{{end}}";
        var web = await compose.InspectAsync("web", Mounts, Ct);
        Assert.Contains($"{compose.Project}_keys /var/lib/reedclinic/keys;", web, StringComparison.Ordinal);
        Assert.Contains($"{compose.Project}_media /var/lib/reedclinic/media;", web, StringComparison.Ordinal);
        Assert.Equal($"{compose.Project}_database /var/lib/postgresql/data;", await compose.InspectAsync("database", Mounts, Ct));

        var keys = await compose.ComposeAsync(Ct, "exec", "-T", "web", "ls", "/var/lib/reedclinic/keys");
        Assert.Contains("key-", keys, StringComparison.Ordinal);
        await compose.ComposeAsync(Ct, "exec", "-T", "web", "touch", "/var/lib/reedclinic/media/a-clip");
    }

    private static async Task NobodySeesThePasswordAsync(Compose compose)
    {
        Assert.True(compose.Password.Length >= 40);
        foreach (var service in Compose.ServicesWithProxy)
        {
            var known = await compose.InspectAsync(service, "{{json .}}", Ct);
            Assert.DoesNotContain(compose.Password, known, StringComparison.Ordinal);
            Assert.DoesNotContain(Compose.MailPassword, known, StringComparison.Ordinal);
        }

        // The program's own account can read what the mail server wants to hear.
        Assert.Equal(Compose.MailPassword, (await compose.ComposeAsync(Ct, "exec", "-T", "web", "cat", "/run/secrets/Mail__Password")).Trim());
        var logs = await compose.ComposeAsync(Ct, "logs", "--no-color");
        Assert.DoesNotContain(compose.Password, logs, StringComparison.Ordinal);
        Assert.DoesNotContain(Compose.MailPassword, logs, StringComparison.Ordinal);
    }
}
