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
        builder.Property(letter => letter.WhatChanged).HasMaxLength(LetterSending.LongestWhatChanged);
        builder.HasOne<Batch>().WithOne().HasForeignKey<Letter>(letter => letter.Batch).OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(letter => letter.Waivers).WithOne().HasForeignKey(waiver => waiver.Batch).OnDelete(DeleteBehavior.Cascade);
        builder.Navigation(letter => letter.Waivers).UsePropertyAccessMode(PropertyAccessMode.Field);
    }
}

internal sealed class LetterVersionConfiguration : IEntityTypeConfiguration<LetterVersion>
{
    public void Configure(EntityTypeBuilder<LetterVersion> builder)
    {
        // Versions never change: triggers in both databases say so too.
        builder.ToTable("LetterVersions");
        builder.HasKey(version => new { version.Batch, version.Number });
        builder.Property(version => version.Number).ValueGeneratedNever();
        builder.HasIndex(version => version.Operation).IsUnique();
        builder.HasOne<Letter>().WithMany().HasForeignKey(version => version.Batch).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class LetterSendingConfiguration : IEntityTypeConfiguration<LetterSending>
{
    public void Configure(EntityTypeBuilder<LetterSending> builder)
    {
        // What was sent never changes: triggers in both databases say so too.
        builder.ToTable("LetterSendings");
        builder.HasKey(sending => new { sending.Batch, sending.Ordinal });
        builder.Property(sending => sending.Ordinal).ValueGeneratedNever();
        builder.Property(sending => sending.WhatChanged).HasMaxLength(LetterSending.LongestWhatChanged);
        builder.HasIndex(sending => sending.Operation).IsUnique();
        builder.HasOne<LetterVersion>().WithMany().HasForeignKey(sending => new { sending.Batch, sending.VersionNumber }).OnDelete(DeleteBehavior.Cascade);
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
