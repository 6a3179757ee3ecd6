using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Data.Recordings;

internal sealed class RecordingConfiguration : IEntityTypeConfiguration<Recording>
{
    public void Configure(EntityTypeBuilder<Recording> builder)
    {
        builder.ToTable("Recordings");
        builder.Property(recording => recording.File).HasMaxLength(MediaFolder.NameLength);
        builder.Property(recording => recording.Sha256).HasMaxLength(64);
        builder.Property(recording => recording.Words).HasMaxLength(RecordingLimits.Words);
        builder.HasIndex(recording => recording.File).IsUnique();
        builder.HasOne<Reed>().WithMany().HasForeignKey(recording => recording.Reed).OnDelete(DeleteBehavior.Cascade);
    }
}

internal sealed class UploadConfiguration : IEntityTypeConfiguration<Upload>
{
    public void Configure(EntityTypeBuilder<Upload> builder)
    {
        builder.ToTable("Uploads");
        builder.Ignore(upload => upload.IsWhole);
        builder.Property(upload => upload.File).HasMaxLength(MediaFolder.NameLength);
        builder.Property(upload => upload.Words).HasMaxLength(RecordingLimits.Words);
        builder.HasOne<Reed>().WithMany().HasForeignKey(upload => upload.Reed).OnDelete(DeleteBehavior.Cascade);
    }
}

/// <summary>
/// A file whose row is gone: written with what removed the row, so that no file outlives it, whatever happens in between.
/// </summary>
public sealed class FileToRemove
{
    /// <summary>The name of the file.</summary>
    public string File { get; init; } = "";

    /// <summary>When its row went.</summary>
    public DateTimeOffset AskedAt { get; init; }
}

internal sealed class FileToRemoveConfiguration : IEntityTypeConfiguration<FileToRemove>
{
    public void Configure(EntityTypeBuilder<FileToRemove> builder)
    {
        builder.ToTable("FilesToRemove");
        builder.HasKey(file => file.File);
        builder.Property(file => file.File).HasMaxLength(MediaFolder.NameLength).ValueGeneratedNever();
    }
}
