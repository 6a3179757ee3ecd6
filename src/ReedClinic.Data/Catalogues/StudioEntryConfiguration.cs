using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Catalogues;

namespace ReedClinic.Data.Catalogues;

internal sealed class StudioEntryConfiguration : IEntityTypeConfiguration<StudioEntry>
{
    private const int LongestKey = 60;
    private const int LongestList = StudioEntry.MostChosen * (LongestKey + 1);

    public void Configure(EntityTypeBuilder<StudioEntry> builder)
    {
        builder.ToTable("StudioEntries");
        builder.Ignore(entry => entry.Signs);
        builder.Ignore(entry => entry.Steps);
        builder.Ignore(entry => entry.Causes);
        builder.Ignore(entry => entry.Found);
        builder.Property(entry => entry.Key).HasMaxLength(LongestKey);
        builder.HasIndex(entry => entry.Key).IsUnique();
        builder.Property(entry => entry.Name).HasMaxLength(StudioEntry.LongestName);
        builder.Property(entry => entry.Line).HasMaxLength(StudioEntry.LongestLine);
        builder.Property(entry => entry.SeenBy).HasMaxLength(LongestKey);
        builder.Property(entry => entry.ShownIn).HasMaxLength(LongestList);
        builder.Property(entry => entry.ToTry).HasMaxLength(LongestList);
        builder.Property(entry => entry.Caution).HasMaxLength(StudioEntry.LongestLine);
        builder.Property(entry => entry.Right).HasMaxLength(StudioEntry.LongestLine);
        builder.Property(entry => entry.Shows).HasMaxLength(StudioEntry.LongestName);
        builder.Property(entry => entry.TellsOf).HasMaxLength(LongestList);
    }
}
