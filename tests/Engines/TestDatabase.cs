using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using ReedClinic.Data;
using ReedClinic.Data.Jobs;

namespace ReedClinic.Tests.Engines;

/// <summary>A migrated database of one engine, set up the way the host does it, but for the work that a password costs.</summary>
public sealed class TestDatabase : IDbContextFactory<ClinicDb>, IAsyncDisposable
{
    private readonly ServiceProvider _services;

    public TestDatabase(ClinicEngine engine, string connection, params IInterceptor[] between)
    {
        Engine = engine;
        Connection = connection;
        var services = new ServiceCollection();
        services.AddLogging();
        services.AddClinicData(Configuration, contentRoot: Path.GetTempPath());
        services.ConfigureDbContext<SqliteClinicDb>(options => options.AddInterceptors(between));
        services.ConfigureDbContext<PostgresClinicDb>(options => options.AddInterceptors(between));

        // Hashing is made quick here; how strong it is in the real thing is a test of its own.
        services.Configure<PasswordHasherOptions>(options => options.IterationCount = 1_000);
        _services = services.BuildServiceProvider();
    }

    /// <summary>Which engine.</summary>
    public ClinicEngine Engine { get; }

    /// <summary>How to reach it.</summary>
    public string Connection { get; }

    /// <summary>Where this database's sounds and photographs lie: a folder of its own.</summary>
    public string MediaFolder { get; } = Path.Combine(Path.GetTempPath(), $"reedclinic-media-{Path.GetRandomFileName()}");

    /// <summary>The same services as the host has, as far as the data project adds them.</summary>
    public IServiceProvider Services => _services;

    /// <summary>Where mail is put out to be sent.</summary>
    internal Outbox Outbox => _services.GetRequiredService<Outbox>();

    /// <summary>The settings that make the host use this database.</summary>
    public IConfiguration Configuration => new ConfigurationBuilder().AddInMemoryCollection(Settings).Build();

    /// <summary>The same, as pairs.</summary>
    public IReadOnlyDictionary<string, string?> Settings => new Dictionary<string, string?>
    {
        ["Database:Engine"] = Engine.ToString(),
        ["ConnectionStrings:Clinic"] = Connection,
        ["Media:Folder"] = MediaFolder,
    };

    public ClinicDb CreateDbContext() => _services.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContext();

    public Task MigrateAsync(CancellationToken ct) => _services.GetRequiredService<ClinicSchema>().MigrateAsync(ct);

    public async ValueTask DisposeAsync()
    {
        await _services.DisposeAsync();
        if (Directory.Exists(MediaFolder))
        {
            Directory.Delete(MediaFolder, recursive: true);
        }
    }
}
