using Microsoft.AspNetCore.DataProtection;
using Microsoft.AspNetCore.Identity;
using Microsoft.Data.Sqlite;
using Microsoft.EntityFrameworkCore;
using Microsoft.Extensions.Configuration;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.DependencyInjection.Extensions;
using ReedClinic.Data.Demo;
using ReedClinic.Data.Engine;
using ReedClinic.Data.People;

namespace ReedClinic.Data;

/// <summary>Everything the host needs from this project, in one call.</summary>
public static class ClinicDataSetup
{
    /// <summary>
    /// Adds the database of the configured engine (<c>Database:Engine</c>, <c>ConnectionStrings:Clinic</c>), the
    /// data-protection keys kept in it, and Identity's store with the house's account rules.
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
                services.AddEngine<PostgresClinicDb>(options => options.UseNpgsql(connection
                    ?? throw new InvalidOperationException("Database:Engine is postgres, so ConnectionStrings:Clinic must say where.")));
                break;
            default:
                services.AddEngine<SqliteClinicDb>(options => options
                    .UseSqlite(SqliteConnection(connection, contentRoot))
                    .AddInterceptors(new SqlitePragmas()));
                break;
        }

        services.TryAddSingleton(TimeProvider.System);
        services.AddSingleton<ClinicSchema>();
        services.AddSingleton<FirstRunCode>();
        services.AddScoped<AccountRegister>();
        services.AddScoped<DemoStudio>();
        services.AddBooks();
        services.AddDataProtection().SetApplicationName("ReedClinic").PersistKeysToDbContext<ClinicDb>();
        services.Configure<PasswordHasherOptions>(ClinicIdentityRules.Hashing);
        return services.AddIdentityCore<ClinicAccount>(ClinicIdentityRules.Accounts)
            .AddRoles<IdentityRole<Guid>>()
            .AddEntityFrameworkStores<ClinicDb>();
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
        services.AddDbContextFactory<TDb>(engine);
        services.AddSingleton<IDbContextFactory<ClinicDb>, ClinicDbFactory<TDb>>();
        services.AddScoped(provider => provider.GetRequiredService<IDbContextFactory<ClinicDb>>().CreateDbContext());
    }

    private static ClinicEngine EngineOf(IConfiguration configuration) => configuration["Database:Engine"] switch
    {
        null or "" => ClinicEngine.Sqlite,
        var name when Enum.TryParse<ClinicEngine>(name, ignoreCase: true, out var engine) => engine,
        var name => throw new InvalidOperationException($"Database:Engine is '{name}'; it can be sqlite or postgres."),
    };

    private static string SqliteConnection(string? connection, string contentRoot)
    {
        var builder = new SqliteConnectionStringBuilder(connection ?? "Data Source=App_Data/reedclinic.db");
        builder.DataSource = Path.GetFullPath(builder.DataSource, contentRoot);
        return builder.ToString();
    }
}
