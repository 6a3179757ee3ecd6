using System.Security.Cryptography;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata;
using ReedClinic.Domain.People;

namespace ReedClinic.Data;

/// <summary>What holds for every entity of Domain without being configured one by one.</summary>
public static class HouseRules
{
    /// <summary>The name that makes a <see cref="Guid"/> property the concurrency token of its entity.</summary>
    public const string VersionName = "Version";

    /// <summary>
    /// Says which version the user's form was opened on. Saving fails with a
    /// <see cref="DbUpdateConcurrencyException"/> when another one stands by then.
    /// </summary>
    /// <param name="db">The context that loaded the entity.</param>
    /// <param name="entity">A tracked entity with a <c>Guid Version</c>.</param>
    /// <param name="version">The version that the form carried.</param>
    public static void ExpectVersion(this ClinicDb db, object entity, Guid version) =>
        db.Entry(entity).Property(VersionName).OriginalValue = version;

    internal static void ApplyHouseRules(this ModelBuilder builder)
    {
        foreach (var entity in builder.Model.GetEntityTypes().Where(IsOurs))
        {
            if (entity.FindProperty(VersionName) is { } version && version.ClrType == typeof(Guid))
            {
                version.IsConcurrencyToken = true;
            }

            // Ids are made by the app. Left to guess, EF would take a new child with an id for an existing row.
            // A number that the database hands out (a long or an int) stays its own.
            foreach (var property in entity.FindPrimaryKey()?.Properties ?? [])
            {
                if (property.ClrType != typeof(int) && property.ClrType != typeof(long))
                {
                    property.ValueGenerated = ValueGenerated.Never;
                }
            }
        }
    }

    internal static void BumpVersions(this ClinicDb db)
    {
        foreach (var entry in db.ChangeTracker.Entries())
        {
            if (entry.State is EntityState.Added or EntityState.Modified
                && IsOurs(entry.Metadata)
                && entry.Metadata.FindProperty(VersionName) is { IsConcurrencyToken: true })
            {
                // A random token, not a version 7 one: it is only ever compared for equality.
                var version = entry.Property(VersionName);
                version.CurrentValue = db.ChangedBy.TryGetValue(entry.Entity, out var operation)
                    ? operation.VersionAfter((Guid)version.OriginalValue!)
                    : new Guid(RandomNumberGenerator.GetBytes(16));
            }
        }
    }

    private static bool IsOurs(IReadOnlyTypeBase entity) => entity.ClrType.Assembly == typeof(AccountId).Assembly;
}
