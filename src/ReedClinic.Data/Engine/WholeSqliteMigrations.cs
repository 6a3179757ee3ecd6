using Microsoft.EntityFrameworkCore.Metadata;
using Microsoft.EntityFrameworkCore.Migrations;
using Microsoft.EntityFrameworkCore.Migrations.Operations;

namespace ReedClinic.Data.Engine;

/// <summary>
/// Keeps each migration of SQLite in one transaction. Where a table is made anew, EF leaves the transaction to say that references
/// aren’t checked; a process that is killed there leaves half a migration, which no later start can finish.
/// <see cref="ClinicSchema"/> says it beforehand, once.
/// </summary>
/// <param name="dependencies">What EF gives it.</param>
/// <param name="annotations">What EF gives it.</param>
public sealed class WholeSqliteMigrations(MigrationsSqlGeneratorDependencies dependencies, IRelationalAnnotationProvider annotations)
    : SqliteMigrationsSqlGenerator(dependencies, annotations)
{
    /// <inheritdoc />
    public override IReadOnlyList<MigrationCommand> Generate(
        IReadOnlyList<MigrationOperation> operations, IModel? model = null, MigrationsSqlGenerationOptions options = MigrationsSqlGenerationOptions.Default) =>
        [.. base.Generate(operations, model, options).Where(command => !command.TransactionSuppressed)];
}
