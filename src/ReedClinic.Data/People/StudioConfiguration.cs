using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

internal sealed class StudioConfiguration : IEntityTypeConfiguration<Studio>
{
    public void Configure(EntityTypeBuilder<Studio> builder)
    {
        builder.ToTable("Studio", table => table.HasCheckConstraint("CK_Studio_Only", $"\"Id\" = {Studio.OnlyId}"));
        builder.Property(studio => studio.Id).ValueGeneratedNever();
        builder.Property(studio => studio.Name).HasMaxLength(PersonName.MaxLength);
        builder.Property(studio => studio.PostTo).HasMaxLength(Studio.LongestPostTo);
    }
}
