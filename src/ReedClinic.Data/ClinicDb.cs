using Microsoft.AspNetCore.DataProtection.EntityFrameworkCore;
using Microsoft.AspNetCore.Identity;
using Microsoft.AspNetCore.Identity.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Diagnostics;
using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using ReedClinic.Data.Conversions;
using ReedClinic.Data.People;
using ReedClinic.Domain.People;

namespace ReedClinic.Data;

/// <summary>
/// The whole model, the same on both engines. The two subclasses exist only to own their migrations.
/// </summary>
/// <remarks>
/// An entity joins the model by an <c>IEntityTypeConfiguration</c> beside its Book: nothing is listed here.
/// What every entity shares (ids, instants, enums, versions) is settled by convention and need not be configured.
/// </remarks>
public abstract class ClinicDb(DbContextOptions options)
    : IdentityDbContext<ClinicAccount, IdentityRole<Guid>, Guid>(options), IDataProtectionKeyContext
{
    private static readonly IServiceProvider DesignTimeServices = new ServiceCollection()
        .Configure<IdentityOptions>(ClinicIdentityRules.Schema)
        .BuildServiceProvider();

    /// <summary>The keys that sign cookies, forms and component state; kept here so that a restart signs nobody out.</summary>
    public DbSet<DataProtectionKey> DataProtectionKeys => Set<DataProtectionKey>();

    /// <summary>What was changed by an operation that its next version tells of.</summary>
    internal Dictionary<object, OperationId> ChangedBy { get; } = [];

    /// <inheritdoc />
    public override int SaveChanges(bool acceptAllChangesOnSuccess)
    {
        this.BumpVersions();
        return base.SaveChanges(acceptAllChangesOnSuccess);
    }

    /// <inheritdoc />
    public override Task<int> SaveChangesAsync(bool acceptAllChangesOnSuccess, CancellationToken cancellationToken = default)
    {
        this.BumpVersions();
        return base.SaveChangesAsync(acceptAllChangesOnSuccess, cancellationToken);
    }

    /// <inheritdoc />
    protected override void OnConfiguring(DbContextOptionsBuilder optionsBuilder)
    {
        base.OnConfiguring(optionsBuilder);

        // A save that fails throws, and whoever didn't expect it logs it. Here it would be told a second time, and told as
        // an error where a repeated form or a clash of two teachers was expected and is answered.
        optionsBuilder.ConfigureWarnings(events => events.Log(
            (CoreEventId.SaveChangesFailed, LogLevel.Debug),
            (CoreEventId.OptimisticConcurrencyException, LogLevel.Debug),
            (RelationalEventId.CommandError, LogLevel.Debug)));

        // Identity asks the application's services which schema to build and quietly falls back to its first one.
        // Migrations and tests have no application, so they get just enough of one to build the passkey table.
        if (optionsBuilder.Options.FindExtension<CoreOptionsExtension>()?.ApplicationServiceProvider is null)
        {
            optionsBuilder.UseApplicationServiceProvider(DesignTimeServices);
        }
    }

    /// <inheritdoc />
    protected override void ConfigureConventions(ModelConfigurationBuilder configurationBuilder)
    {
        base.ConfigureConventions(configurationBuilder);
        configurationBuilder.Properties<DateTimeOffset>().HaveConversion<UtcConverter>();
        configurationBuilder.Properties<Enum>().HaveConversion<string>().HaveMaxLength(40);
        IdConverters.AddTo(configurationBuilder);
        PitchConverters.AddTo(configurationBuilder);
        KindConverters.AddTo(configurationBuilder);
    }

    /// <inheritdoc />
    protected override void OnModelCreating(ModelBuilder builder)
    {
        base.OnModelCreating(builder);
        builder.ApplyConfigurationsFromAssembly(typeof(ClinicDb).Assembly);
        builder.ApplyHouseRules();
    }
}
