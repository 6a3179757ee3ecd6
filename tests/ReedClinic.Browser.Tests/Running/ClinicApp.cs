using Microsoft.AspNetCore.Authentication;
using Microsoft.AspNetCore.Authentication.Cookies;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using Microsoft.Extensions.Options;
using Microsoft.Playwright;
using ReedClinic.Data;
using ReedClinic.Data.People;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;
using ReedClinic.Web.Account;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Browser.Tests.Running;

/// <summary>The whole program under Kestrel on a free port, with a database of its own: one for each test class.</summary>
public abstract class ClinicApp : WebApplicationFactory<Program>, IAsyncLifetime
{
    private readonly DirectoryInfo _mail = Directory.CreateTempSubdirectory("reedclinic-mail-");
    private readonly StringWriter _announced = new();
    private string _connection = string.Empty;

    public Uri Home => ClientOptions.BaseAddress;

    /// <summary>What the program has told the person who started it.</summary>
    public string Announced => _announced.ToString();

    /// <summary>Where mails are written.</summary>
    public string MailFolder => _mail.FullName;

    protected abstract string Engine { get; }

    /// <summary>Development takes plain http from anywhere: cookies without `Secure`.</summary>
    protected virtual string EnvironmentName => "Development";

    /// <summary>True to begin with the invented studio instead of nobody.</summary>
    protected virtual bool HasDemo => false;

    public async ValueTask InitializeAsync()
    {
        _connection = await MakeRoomAsync();
        UseKestrel(0);
        StartServer();
    }

    /// <summary>The cookie of somebody who is signed in as if by the page, without its work.</summary>
    public async Task<Cookie> CookieOfAsync(string email, CancellationToken ct)
    {
        await using var scope = Services.CreateAsyncScope();
        var account = (await scope.ServiceProvider.GetRequiredService<UserManager<ClinicAccount>>().FindByEmailAsync(email))!;
        var session = await Services.GetRequiredService<SessionRegister>().BeginAsync(new AccountId(account.Id), SignInWay.Password, "Chromium on Linux", null, ct);
        var scheme = Services.GetRequiredService<IOptionsMonitor<CookieAuthenticationOptions>>().Get(IdentityConstants.ApplicationScheme);
        var ticket = new AuthenticationTicket(SessionCookie.Of(Assert.NotNull(session)), IdentityConstants.ApplicationScheme);
        ticket.Properties.ExpiresUtc = TimeProvider.System.GetUtcNow().AddDays(1);
        return new Cookie { Name = scheme.Cookie.Name!, Value = scheme.TicketDataFormat.Protect(ticket), Url = Home.ToString() };
    }

    /// <summary>Where the bench of a reed is, of the batch that a student sent last.</summary>
    public async Task<string> BenchOfAsync(string student, int reed, CancellationToken ct)
    {
        await using var db = await Services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContextAsync(ct);
        var sent = await db.Set<Batch>().AsNoTracking().Include(batch => batch.Reeds)
            .Where(batch => db.Set<Student>().Any(one => one.Id == batch.Student && one.Name == student)).ToListAsync(ct);
        return $"/bench/{sent.MaxBy(batch => batch.SubmittedAt)!.Reeds.Single(one => one.Number == reed).Id.Value}";
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await _announced.DisposeAsync();
        await CleanUpAsync();
        await TemporaryFolder.RemoveAsync(_mail);
        GC.SuppressFinalize(this);
    }

    /// <summary>Makes a database and says how to reach it; what it lacks, the program adds.</summary>
    protected abstract Task<string> MakeRoomAsync();

    protected abstract Task CleanUpAsync();

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment(EnvironmentName);
        builder.UseStaticWebAssets(); // the build output, also where a published one is expected
        builder.UseSetting("Web:PlainHttpOnLoopback", "true");
        builder.UseSetting("Mail:Folder", MailFolder);
        builder.UseSetting("Web:Address", "http://localhost");
        builder.UseSetting("Database:Engine", Engine);
        builder.UseSetting("ConnectionStrings:Clinic", _connection);
        builder.UseSetting("Demo:Seed", HasDemo ? "true" : "false");
        builder.ConfigureTestServices(services => services
            .AddSingleton(new Announcement(TextWriter.Synchronized(_announced)))
            .Configure<HostOptions>(options => options.ShutdownTimeout = TimeSpan.FromSeconds(1)));
    }
}

/// <summary>On a SQLite file in a temporary folder.</summary>
public class SqliteClinic : ClinicApp
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("reedclinic-browser-");

    protected override string Engine => "sqlite";

    protected override async Task<string> MakeRoomAsync() => $"Data Source={await StudioTemplates.CopyAsync(_folder.FullName, HasDemo)};Pooling=False";

    protected override Task CleanUpAsync() => TemporaryFolder.RemoveAsync(_folder);
}

/// <summary>The demo studio, on a SQLite file.</summary>
public sealed class DemoClinic : SqliteClinic
{
    public const string Password = "lantern quay at low tide";
    public const string Owner = "maren@lanternquay.example";
    public const string Teacher = "edda@lanternquay.example";
    public const string Student = "ines@lanternquay.example";
    public const string Sender = "wilma@lanternquay.example";

    protected override bool HasDemo => true;
}

/// <summary>As it would be installed, for a look from the same machine.</summary>
public sealed class LoopbackClinic : SqliteClinic
{
    protected override string EnvironmentName => "Production";
}

/// <summary>On the run's PostgreSQL.</summary>
public sealed class PostgresClinic(PostgresServer server) : ClinicApp
{
    private static readonly string Database = $"browser_{Environment.ProcessId}";

    protected override string Engine => "postgres";

    protected override async Task<string> MakeRoomAsync()
    {
        await server.ExecuteAsync($"CREATE DATABASE \"{Database}\"", CancellationToken.None);
        return await server.ConnectionAsync(Database, CancellationToken.None);
    }

    protected override Task CleanUpAsync() => server.ExecuteAsync($"DROP DATABASE \"{Database}\" WITH (FORCE)", CancellationToken.None);
}
