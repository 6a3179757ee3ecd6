using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Mvc.Testing;

namespace ReedClinic.Browser.Tests.Running;

/// <summary>The whole program under Kestrel on a free port, with an empty SQLite file of its own: one for each test class.</summary>
public class ClinicApp : WebApplicationFactory<Program>, IAsyncLifetime
{
    private readonly string _folder = Directory.CreateTempSubdirectory("reedclinic-browser-").FullName;

    public Uri Home => ClientOptions.BaseAddress;

    public virtual ValueTask InitializeAsync()
    {
        UseKestrel(0);
        StartServer();
        return ValueTask.CompletedTask;
    }

    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        Directory.Delete(_folder, recursive: true);
        GC.SuppressFinalize(this);
    }

    protected override void ConfigureWebHost(IWebHostBuilder builder)
    {
        builder.UseEnvironment("Development"); // plain http on loopback: cookies without `Secure`
        foreach (var (key, value) in Settings())
        {
            builder.UseSetting(key, value);
        }
    }

    protected virtual IReadOnlyDictionary<string, string> Settings() => new Dictionary<string, string>
    {
        ["Database:Engine"] = "sqlite",
        ["ConnectionStrings:Clinic"] = $"Data Source={Path.Combine(_folder, "clinic.db")}",
        ["Logging:LogLevel:Default"] = "Warning",
    };
}
