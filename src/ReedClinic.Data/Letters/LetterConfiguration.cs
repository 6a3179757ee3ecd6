using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;

namespace ReedClinic.Data.Letters;

internal sealed class LetterConfiguration : IEntityTypeConfiguration<Letter>
{
    public void Configure(EntityTypeBuilder<Letter> builder)
    {
        builder.ToTable("Letters");
        builder.HasKey(letter => letter.Batch);
        builder.HasOne<Batch>().WithOne().HasForeignKey<Letter>(letter => letter.Batch).OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(letter => letter.Waivers).WithOne().HasForeignKey(waiver => waiver.Batch).OnDelete(DeleteBehavior.Cascade);
        builder.Navigation(letter => letter.Waivers).UsePropertyAccessMode(PropertyAccessMode.Field);
    }
}

internal sealed class LetterVersionConfiguration : IEntityTypeConfiguration<LetterVersion>
{
    public void Configure(EntityTypeBuilder<LetterVersion> builder)
    {
        builder.ToTable("LetterVersions");
        builder.HasKey(version => new { version.Batch, version.Number });
        builder.Property(version => version.Number).ValueGeneratedNever();
        builder.HasIndex(version => version.Operation).IsUnique();
        builder.HasOne<Letter>().WithMany().HasForeignKey(version => version.Batch).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class LetterWaiverConfiguration : IEntityTypeConfiguration<LetterWaiver>
{
    public void Configure(EntityTypeBuilder<LetterWaiver> builder)
    {
        builder.ToTable("LetterWaivers");
        builder.HasKey(waiver => new { waiver.Batch, waiver.Gap });
        builder.Property(waiver => waiver.Gap).HasMaxLength(80);
        builder.Property(waiver => waiver.Reason).HasMaxLength(LetterWaiver.LongestReason);
    }
}
