using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;

namespace ReedClinic.Data.Tests.Engine;

public sealed class SchemaTests
{
    public static TheoryData<string> Engines => ["sqlite", "postgres"];

    [Theory]
    [MemberData(nameof(Engines))]
    public void The_model_has_no_change_without_a_migration(string engine)
    {
        using var db = AtDesignTime(engine);
        Assert.False(db.Database.HasPendingModelChanges(), "Run deploy/add-migration.sh NAME.");
    }

    [Theory]
    [MemberData(nameof(Engines))]
    public void Passkeys_have_a_table_from_the_first_migration(string engine)
    {
        using var db = AtDesignTime(engine);
        Assert.NotNull(db.Model.FindEntityType(typeof(IdentityUserPasskey<Guid>)));
    }

    private static ClinicDb AtDesignTime(string engine) => engine == "sqlite"
        ? new SqliteClinicDbAtDesignTime().CreateDbContext([])
        : new PostgresClinicDbAtDesignTime().CreateDbContext([]);
}
