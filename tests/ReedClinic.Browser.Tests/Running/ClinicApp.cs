using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;
using Microsoft.AspNetCore.TestHost;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Hosting;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Browser.Tests.Running;

/// <summary>The whole program under Kestrel on a free port, with an empty database of its own: one for each test class.</summary>
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

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await _announced.DisposeAsync();
        await CleanUpAsync();
        _mail.Delete(recursive: true);
        GC.SuppressFinalize(this);
    }

    /// <summary>Makes an empty database and says how to reach it; the program fills it.</summary>
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

    protected override Task<string> MakeRoomAsync() => Task.FromResult($"Data Source={Path.Combine(_folder.FullName, "clinic.db")};Pooling=False");

    protected override Task CleanUpAsync()
    {
        _folder.Delete(recursive: true);
        return Task.CompletedTask;
    }
}

/// <summary>The demo studio, on a SQLite file.</summary>
public sealed class DemoClinic : SqliteClinic
{
    public const string Password = "lantern quay at low tide";

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
