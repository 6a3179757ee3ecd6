using System.Text.Json;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.ChangeTracking;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Data.Engine;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Data.Recordings;

internal sealed class SoundReadingConfiguration : IEntityTypeConfiguration<SoundReading>
{
    public void Configure(EntityTypeBuilder<SoundReading> builder)
    {
        builder.ToTable("SoundReadings");
        builder.HasKey(reading => reading.Recording);
        builder.Ignore(reading => reading.Kind);
        builder.Ignore(reading => reading.HasEnded);

        // Nothing is asked of single numbers: they are read and written together.
        builder.Property(reading => reading.Figures).HasConversion(
            figures => JsonSerializer.Serialize(figures, StoredText.Json),
            stored => JsonSerializer.Deserialize<ReadingFigures>(stored, StoredText.Json),
            new ValueComparer<ReadingFigures?>((one, other) => ReferenceEquals(one, other), figures => figures == null ? 0 : figures.Seconds.GetHashCode(), figures => figures));
        builder.Property(reading => reading.Picture).HasMaxLength(SoundReading.LargestPicture);
        builder.HasOne<Recording>().WithOne().HasForeignKey<SoundReading>(reading => reading.Recording).OnDelete(DeleteBehavior.Cascade);
    }
}
