using Microsoft.AspNetCore.Identity;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Accounts, and the three roles: they are part of the schema, so no start has to create them.</summary>
internal sealed class ClinicAccountConfiguration
    : IEntityTypeConfiguration<ClinicAccount>, IEntityTypeConfiguration<IdentityRole<Guid>>
{
    public void Configure(EntityTypeBuilder<ClinicAccount> builder) =>
        builder.Property(account => account.DisplayName).HasMaxLength(PersonName.MaxLength);

    public void Configure(EntityTypeBuilder<IdentityRole<Guid>> builder) => builder.HasData(
        RoleRow(Role.Student, "019ab000-0000-7000-8000-000000000001"),
        RoleRow(Role.Teacher, "019ab000-0000-7000-8000-000000000002"),
        RoleRow(Role.Owner, "019ab000-0000-7000-8000-000000000003"));

    private static IdentityRole<Guid> RoleRow(Role role, string id) => new()
    {
        Id = Guid.Parse(id),
        Name = role.ToString(),
        NormalizedName = role.ToString().ToUpperInvariant(),
        ConcurrencyStamp = id,
    };
}
