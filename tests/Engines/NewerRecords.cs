using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Tests.Engines;

/// <summary>Records whose schema a build has changed that isn't there yet, with somebody's row in a table of its own.</summary>
public static class NewerRecords
{
    /// <summary>The migration that no build has.</summary>
    public const string Migration = "20991231235959_WhatIsYetToCome";

    /// <summary>Makes them newer. <paramref name="behind"/>: they also lack the last migration that this build has.</summary>
    public static async Task MakeNewerAsync(this TestDatabase database, bool behind, CancellationToken ct)
    {
        await using var context = database.CreateDbContext();
        if (behind)
        {
            var last = context.Database.GetMigrations().Last();
            await context.Database.ExecuteSqlAsync($"""DELETE FROM "__EFMigrationsHistory" WHERE "MigrationId" = {last}""", ct);
        }

        await context.Database.ExecuteSqlAsync($"""INSERT INTO "__EFMigrationsHistory" ("MigrationId", "ProductVersion") VALUES ({Migration}, '99.0.0')""", ct);
        await context.Database.ExecuteSqlAsync($"""CREATE TABLE "YetToCome" ("Words" text NOT NULL)""", ct);
        await context.Database.ExecuteSqlAsync($"""INSERT INTO "YetToCome" VALUES ('kept')""", ct);
    }

    /// <summary>All that stands in them: the rows of each table and a sum over them, the migrations, the table that no build has.</summary>
    public static async Task<IReadOnlyList<string>> AllAsync(this TestDatabase database, CancellationToken ct)
    {
        await using var context = database.CreateDbContext();
        await context.Database.OpenConnectionAsync(ct);
        List<string> lines = [.. await context.Database.GetAppliedMigrationsAsync(ct), .. await context.Database.SqlQuery<string>($"""SELECT "Words" AS "Value" FROM "YetToCome" """).ToListAsync(ct)];
        foreach (var table in context.Model.GetRelationalModel().Tables)
        {
            var (rows, sum) = await RowSums.OfAsync(table, context.Database.GetDbConnection(), ct);
            lines.Add($"{table.Name} {rows} {sum}");
        }

        return lines;
    }
}
