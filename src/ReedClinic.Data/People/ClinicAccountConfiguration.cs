using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Accounts, and the three roles: they are part of the schema, so no start has to create them.</summary>
internal sealed class ClinicAccountConfiguration
    : IEntityTypeConfiguration<ClinicAccount>, IEntityTypeConfiguration<IdentityRole<Guid>>
{
    public void Configure(EntityTypeBuilder<ClinicAccount> builder)
    {
        builder.Property(account => account.DisplayName).HasMaxLength(PersonName.MaxLength);
        builder.Property(account => account.CodeKey).HasMaxLength(ClinicAccount.LongestCodeKey);
        builder.HasIndex(account => account.MadeBy).IsUnique();
    }

    public void Configure(EntityTypeBuilder<IdentityRole<Guid>> builder) =>
        builder.HasData(Enum.GetValues<Role>().Select(RoleRow));

    /// <summary>The fixed id of a role's row.</summary>
    public static Guid IdOf(Role role) => role switch
    {
        Role.Student => Guid.Parse("019ab000-0000-7000-8000-000000000001"),
        Role.Teacher => Guid.Parse("019ab000-0000-7000-8000-000000000002"),
        Role.Owner => Guid.Parse("019ab000-0000-7000-8000-000000000003"),
        _ => throw new ArgumentOutOfRangeException(nameof(role), role, "A role without a row."),
    };

    private static IdentityRole<Guid> RoleRow(Role role) => new()
    {
        Id = IdOf(role),
        Name = role.ToString(),
        NormalizedName = role.ToString().ToUpperInvariant(),
        ConcurrencyStamp = IdOf(role).ToString(),
    };
}
