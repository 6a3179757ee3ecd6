using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data.Tests.Engine;

/// <summary>Lets somebody else save between what a Book read and what it is about to save, once.</summary>
internal sealed class QuickerHand(TestDatabase db, Func<ClinicDb, bool> before, Action<ClinicDb> save) : IDbContextFactory<ClinicDb>
{
    /// <summary>True when it did.</summary>
    public bool WasThere { get; private set; }

    public ClinicDb CreateDbContext()
    {
        var context = db.CreateDbContext();
        context.SavingChanges += (_, _) =>
        {
            if (!WasThere && before(context))
            {
                WasThere = true;
                using var other = db.CreateDbContext();
                save(other);
                other.SaveChanges();
            }
        };
        return context;
    }
}
