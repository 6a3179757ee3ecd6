using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data;

/// <summary>What was sent never changes: the databases themselves refuse it. A test that needs an odd letter asks for it here.</summary>
internal static class LettersThatChange
{
    private static readonly string[] Triggers = ["LetterVersions", "LetterSendings"];

    /// <summary>Takes that protection from this test's own database.</summary>
    public static async Task LetLettersChangeAsync(this ClinicDb db, CancellationToken ct)
    {
        foreach (var table in Triggers)
        {
#pragma warning disable EF1003 // names of our own, from the line above
            await db.Database.ExecuteSqlRawAsync(
                $"DROP TRIGGER \"{table}_stay\"" + (db.Database.ProviderName!.Contains("Npgsql", StringComparison.Ordinal) ? $" ON \"{table}\"" : ""), ct);
#pragma warning restore EF1003
        }
    }
}
