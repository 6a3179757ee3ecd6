using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data.Tests.Recordings;

/// <summary>Every save fails, as when the power goes.</summary>
internal sealed class BreakingHand(TestDatabase db) : IDbContextFactory<ClinicDb>
{
    public ClinicDb CreateDbContext()
    {
        var context = db.CreateDbContext();
        context.SavingChanges += (_, _) => throw new InvalidOperationException("The power is gone.");
        return context;
    }
}
