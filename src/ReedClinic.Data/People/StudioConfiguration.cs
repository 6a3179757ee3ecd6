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
        builder.Property(studio => studio.WriteTo).HasMaxLength(Student.LongestEmail);
        builder.Property(studio => studio.PrivacyContact).HasMaxLength(Studio.LongestContact);
        builder.Property(studio => studio.PrivacyWords).HasMaxLength(Studio.LongestPrivacyWords);
        builder.Property(studio => studio.SignUpOpen).HasDefaultValue(true).ValueGeneratedNever();
        builder.Property(studio => studio.KeepYears).HasDefaultValue(Studio.UsualKeepYears).ValueGeneratedNever();
    }
}
