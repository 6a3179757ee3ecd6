using Microsoft.EntityFrameworkCore.Infrastructure;
using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Migrations;

namespace ReedClinic.Data.Tests.Engine;

/// <summary>No migration leaves its transaction: a process that is killed within one leaves nothing half done.</summary>
public sealed class WholeMigrationTests(TestDatabases databases) : IClassFixture<TestDatabases>
{
    [Theory, OnBothEngines]
    public async Task Every_migration_stays_in_its_transaction(ClinicEngine engine)
    {
        var db = await databases.BareAsync(engine);
        await using var context = db.CreateDbContext();
        var generator = context.GetService<IMigrationsSqlGenerator>();

        Assert.DoesNotContain(Migrations(context), migration => Leaves(context, generator, migration));
    }

    // The control: EF by itself does leave it, so the test above can fail.
    [Fact]
    public async Task A_table_of_SQLites_that_is_made_anew_would_leave_it()
    {
        var db = await databases.BareAsync(ClinicEngine.Sqlite);
        await using var context = db.CreateDbContext();
        var usual = new SqliteMigrationsSqlGenerator(context.GetService<MigrationsSqlGeneratorDependencies>(), context.GetService<IRelationalAnnotationProvider>());

        Assert.Contains(Migrations(context), migration => Leaves(context, usual, migration));
    }

    private static List<Migration> Migrations(ClinicDb context)
    {
        var assembly = context.GetService<IMigrationsAssembly>();
        return [.. assembly.Migrations.Values.Select(type => assembly.CreateMigration(type, context.Database.ProviderName!))];
    }

    private static bool Leaves(ClinicDb context, IMigrationsSqlGenerator generator, Migration migration)
    {
        var model = context.GetService<IModelRuntimeInitializer>().Initialize(migration.TargetModel, designTime: true, validationLogger: null);
        return generator.Generate(migration.UpOperations, model).Any(command => command.TransactionSuppressed);
    }
}
