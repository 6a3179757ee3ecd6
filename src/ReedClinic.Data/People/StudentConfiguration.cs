using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

internal sealed class StudentConfiguration : IEntityTypeConfiguration<Student>
{
    // Folding may lengthen a text: one letter can become several.
    private const int Folded = 4;

    public void Configure(EntityTypeBuilder<Student> builder)
    {
        builder.ToTable("Students");
        builder.Property(student => student.Name).HasMaxLength(PersonName.MaxLength);
        builder.Property(student => student.FoldedName).HasMaxLength(Folded * PersonName.MaxLength);
        builder.Property(student => student.Email).HasMaxLength(Student.LongestEmail);
        builder.Property(student => student.FoldedEmail).HasMaxLength(Folded * Student.LongestEmail);
        builder.Property(student => student.Country).HasMaxLength(Student.LongestCountry);
        builder.Ignore(student => student.MayTakePart);
        builder.Ignore(student => student.IsPaused);
        builder.Ignore(student => student.MayBeWorkedFor);
        builder.Ignore(student => student.FirstName);
        builder.Ignore(student => student.SharedName);
        builder.Property(student => student.Consent).HasDefaultValue(Consent.NotAsked).ValueGeneratedNever();
        builder.HasIndex(student => student.FoldedName);
        builder.HasIndex(student => student.FoldedEmail);

        // A plain column, not a foreign key with a cascade: the person and their reeds outlive the sign-in.
        builder.HasIndex(student => student.Account).IsUnique();
    }
}
