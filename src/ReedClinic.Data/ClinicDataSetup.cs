using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using Npgsql;
using ReedClinic.Data.Audit;
using ReedClinic.Data.Backups;
using ReedClinic.Data.Bench;
using ReedClinic.Data.Demo;
using ReedClinic.Data.Diagnosis;
using ReedClinic.Data.Engine;
using ReedClinic.Data.Jobs;
using ReedClinic.Data.Letters;
using ReedClinic.Data.People;
using ReedClinic.Data.Privacy;
using ReedClinic.Data.Recordings;
using ReedClinic.Data.Recurrence;
using ReedClinic.Data.Upkeep;

namespace ReedClinic.Data;

/// <summary>Everything the host needs from this project, in one call.</summary>
public static class ClinicDataSetup
{
    /// <summary>
    /// Adds the database of the configured engine (<c>Database:Engine</c>, <c>ConnectionStrings:Clinic</c>,
    /// <c>Database:Password</c>), the data-protection keys kept in it or in <c>Keys:Folder</c>, and Identity's store with
    /// the house's account rules.
    /// </summary>
    /// <param name="services">The host's services.</param>
    /// <param name="configuration">The host's configuration.</param>
    /// <param name="contentRoot">Where a relative database file is looked for.</param>
    /// <returns>Identity's builder, for what only the host can add (sign-in, tokens).</returns>
    public static IdentityBuilder AddClinicData(
        this IServiceCollection services, IConfiguration configuration, string contentRoot)
    {
        var connection = configuration.GetConnectionString("Clinic");
        switch (EngineOf(configuration))
        {
            case ClinicEngine.Postgres:
                services.AddEngine<PostgresClinicDb>(options => options.UseNpgsql(PostgresConnection(
                    connection ?? throw new InvalidOperationException("Database:Engine is postgres, so ConnectionStrings:Clinic must say where."),
                    configuration["Database:Password"]), postgres => postgres.ExecutionStrategy(dependencies => new PostgresPatience(dependencies))));
                break;
            default:
                services.AddEngine<SqliteClinicDb>(options => options
                    .UseSqlite(SqliteConnection(connection, contentRoot))
                    .ReplaceService<IMigrationsSqlGenerator, WholeSqliteMigrations>()
                    .AddInterceptors(new SqlitePragmas()));
                break;
        }

        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton<ClinicSchema>();
        services.AddSingleton<StudioCheck>().AddSingleton<FirstRunCode>();
        services.AddSingleton<JobBell>().AddSingleton<JobBoard>();
        services.TryAddSingleton(new OutboxSettings());
        services.AddSingleton<Outbox>();
        services.AddSingleton<BenchNews>().AddSingleton<StudioWire>().AddSingleton<LearnedHere>();
        services.AddSingleton<AuditChain>();
        services.AddSignInChecks();
        services.AddSingleton(new PrivacySettings(configuration.GetValue(PrivacySettings.BackupDaysKey, PrivacySettings.UsualBackupDays)));
        services.AddSingleton<RecordsCaretaker>().AddSingleton<ErasedPeople>().AddSingleton(MediaFolder.Of(configuration, contentRoot)).AddSingleton<MediaCaretaker>().AddSingleton<StudioRatesCaretaker>();
        services.AddBackups(BackupSettings.Of(configuration, contentRoot)).AddSingleton<UpkeepReader>();
        services.AddSingleton<RefusalRegister>().AddSingleton<LetterPageRegister>().AddSingleton<SoundRegister>().AddSingleton<MeasuredTests>();
        services.AddScoped<AccountRegister>().AddScoped<StrangerLinks>().AddScoped<LetterCourier>();
        services.AddScoped<DemoStudio>().AddBooks();
        services.AddKeys(configuration);
        services.Configure<PasswordHasherOptions>(ClinicIdentityRules.Hashing);
        return services.AddIdentityCore<ClinicAccount>(ClinicIdentityRules.Accounts)
            .AddRoles<IdentityRole<Guid>>()
            .AddEntityFrameworkStores<ClinicDb>();
    }

    private static IServiceCollection AddBackups(this IServiceCollection services, BackupSettings settings) =>
        services.AddSingleton(settings).AddSingleton<BackupMaker>().AddSingleton<BackupCheck>().AddSingleton<BackupRestore>();

    private static void AddSignInChecks(this IServiceCollection services)
    {
        services.AddSingleton<SessionRegister>();
        services.AddSingleton<CodeSeal>();
        services.AddSingleton<SecondStepCheck>();
        services.AddSingleton<WrongTries>();
        services.AddScoped<LostSecondStep>();
    }

    /// <summary>Every public class of this project whose name ends in Book: a new one needs no line here.</summary>
    private static void AddBooks(this IServiceCollection services)
    {
        foreach (var book in typeof(ClinicDb).Assembly.GetExportedTypes()
            .Where(type => type is { IsClass: true, IsSealed: true } && type.Name.EndsWith("Book", StringComparison.Ordinal)))
        {
            services.AddScoped(book);
        }
    }

    private static void AddEngine<TDb>(this IServiceCollection services, Action<DbContextOptionsBuilder> engine)
        where TDb : ClinicDb
    {
        services.AddDbContextFactory<TDb>((provider, options) =>
        {
            engine(options);
            options.AddInterceptors(provider.GetRequiredService<JobBell>());
        });
        services.AddSingleton<IDbContextFactory<ClinicDb>, ClinicDbFactory<TDb>>();
        services.AddScoped(provider => provider.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContext());
    }

    // They sign cookies, forms and component state, so they must outlive the process. Beside the records unless a folder is
    // named, and sealed by a certificate where one is named.
    private static void AddKeys(this IServiceCollection services, IConfiguration configuration)
    {
        var keys = services.AddDataProtection().SetApplicationName("ReedClinic");
        if (configuration["Keys:Folder"] is { Length: > 0 } folder)
        {
            keys.PersistKeysToFileSystem(Directory.CreateDirectory(folder));
        }
        else
        {
            keys.PersistKeysToDbContext<ClinicDb>();
        }

        if (configuration["Keys:Certificate"] is { Length: > 0 } file)
        {
            keys.ProtectKeysWithCertificate(Certificate(file, configuration["Keys:CertificatePassword"]));
        }
    }

    private static X509Certificate2 Certificate(string file, string? password)
    {
        if (!File.Exists(file))
        {
            throw new InvalidOperationException($"Keys:Certificate names '{file}'. There is no file of that name, or this program’s account may not look into its folder.");
        }

        try
        {
            return X509CertificateLoader.LoadPkcs12FromFile(file, password);
        }
        catch (CryptographicException trouble) when (trouble.InnerException is UnauthorizedAccessException or IOException)
        {
            throw new InvalidOperationException($"Keys:Certificate names '{file}', which this program’s account may not read. Give the file to its group, with mode 640.", trouble);
        }
        catch (CryptographicException trouble)
        {
            throw new InvalidOperationException($"Keys:Certificate names '{file}', which isn’t a certificate with its key (PFX), or Keys:CertificatePassword doesn’t open it.", trouble);
        }
    }

    /// <summary>SQLite's file, where one is used.</summary>
    internal static string SqliteFile(IConfiguration configuration, string contentRoot) =>
        new SqliteConnectionStringBuilder(SqliteConnection(configuration.GetConnectionString("Clinic"), contentRoot)).DataSource;

    private static ClinicEngine EngineOf(IConfiguration configuration) => configuration["Database:Engine"] switch
    {
        null or "" => ClinicEngine.Sqlite,
        var name when Enum.TryParse<ClinicEngine>(name, ignoreCase: true, out var engine) => engine,
        var name => throw new InvalidOperationException($"Database:Engine is '{name}'; it can be sqlite or postgres."),
    };

    private const string PreparedStatements = "Max Auto Prepare";
    private const int PreparedAtMost = 100;
    private const string ConnectTimeout = "Timeout";
    private const int SecondsToConnect = 5;

    // The password may come by a way of its own, so that it needn't stand where the rest may be read. A refusal never tells
    // the row that was refused, whatever the connection string asks for: it would stand in the log.
    private static string PostgresConnection(string connection, string? password)
    {
        var builder = new NpgsqlConnectionStringBuilder(connection) { IncludeErrorDetail = false };
        if (!string.IsNullOrEmpty(password))
        {
            builder.Password = password;
        }

        // Nobody waits a quarter of a minute for a server that doesn't answer.
        if (!builder.ShouldSerialize(ConnectTimeout))
        {
            builder.Timeout = SecondsToConnect;
        }

        // What is asked over and over is planned once for each connection: a letter's reading takes half the time (docs/measurement/letter.md).
        // Whoever goes through a pooler that can't bear prepared statements says "Max Auto Prepare=0".
        if (!builder.ShouldSerialize(PreparedStatements))
        {
            builder.MaxAutoPrepare = PreparedAtMost;
        }

        return builder.ToString();
    }

    private static string SqliteConnection(string? connection, string contentRoot)
    {
        var builder = new SqliteConnectionStringBuilder(connection ?? "Data Source=App_Data/reedclinic.db");
        builder.DataSource = Path.GetFullPath(builder.DataSource, contentRoot);
        return builder.ToString();
    }
}
