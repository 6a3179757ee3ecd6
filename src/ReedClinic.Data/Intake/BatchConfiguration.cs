using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using Microsoft.EntityFrameworkCore.Storage.ValueConversion;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Intake;

internal sealed class BatchConfiguration : IEntityTypeConfiguration<Batch>
{
    public void Configure(EntityTypeBuilder<Batch> builder)
    {
        builder.ToTable("Batches");
        builder.Property(batch => batch.Code)
            .HasConversion(new ValueConverter<BatchCode, string>(code => code.Value, stored => BatchCode.Stored(stored)))
            .HasMaxLength(BatchCode.Length);
        builder.HasIndex(batch => batch.Code).IsUnique();
        builder.HasIndex(batch => batch.SubmittedBy).IsUnique();
        builder.HasIndex(batch => new { batch.Student, batch.SubmittedAt });
        builder.Property(batch => batch.ArrivalNote).HasMaxLength(IntakeLimits.ArrivalNote);
        builder.HasOne<Student>().WithMany().HasForeignKey(batch => batch.Student).OnDelete(DeleteBehavior.Restrict);
        builder.HasMany(batch => batch.Reeds).WithOne().HasForeignKey(reed => reed.Batch).OnDelete(DeleteBehavior.Cascade);
        builder.HasMany(batch => batch.Questions).WithOne().HasForeignKey(question => question.Batch).OnDelete(DeleteBehavior.Cascade);
        builder.Navigation(batch => batch.Reeds).UsePropertyAccessMode(PropertyAccessMode.Field);
        builder.Navigation(batch => batch.Questions).UsePropertyAccessMode(PropertyAccessMode.Field);
        builder.Ignore(batch => batch.CrowTarget);
        builder.Ignore(batch => batch.Journey);
        builder.Ignore(batch => batch.Mismatches);
    }
}

internal sealed class ReedConfiguration : IEntityTypeConfiguration<Reed>
{
    private static readonly ValueConverter<ScaleMark, int> Mark = new(mark => mark.Value, stored => new ScaleMark(stored));

    public void Configure(EntityTypeBuilder<Reed> builder)
    {
        builder.ToTable("Reeds");
        builder.HasIndex(reed => new { reed.Batch, reed.Number }).IsUnique();
        builder.Property(reed => reed.HowToRecognise).HasMaxLength(IntakeLimits.HowToRecognise);
        builder.Property(reed => reed.Bothers).HasMaxLength(IntakeLimits.Bothers);
        builder.Property(reed => reed.TiedBy).HasMaxLength(IntakeLimits.TiedBy);
        builder.Property(reed => reed.LastTried).HasMaxLength(IntakeLimits.LastTried);
        builder.Property(reed => reed.Likes).HasMaxLength(IntakeLimits.Likes);
        builder.Property(reed => reed.UpperMark).HasMaxLength(ReedArrival.LongestUpperMark);
        builder.Property(reed => reed.Damage).HasMaxLength(ReedArrival.LongestDamage);
        builder.Property(reed => reed.VideoLink).HasMaxLength(IntakeLimits.VideoLink);
        builder.ComplexProperty(reed => reed.Scales, scales =>
        {
            scales.Property(mark => mark.Response).HasConversion(Mark);
            scales.Property(mark => mark.Intonation).HasConversion(Mark);
            scales.Property(mark => mark.Opening).HasConversion(Mark);
            scales.Property(mark => mark.Effort).HasConversion(Mark);
            scales.Property(mark => mark.Sound).HasConversion(Mark);
            scales.Property(mark => mark.SoftPlaying).HasConversion(Mark);
            scales.Property(mark => mark.HighNotes).HasConversion(Mark);
            scales.Property(mark => mark.Tiredness).HasConversion(Mark);
        });
        builder.Ignore(reed => reed.Arrival);
    }
}

internal sealed class QuestionConfiguration : IEntityTypeConfiguration<Question>
{
    public void Configure(EntityTypeBuilder<Question> builder)
    {
        builder.ToTable("Questions");
        builder.Property(question => question.Text).HasMaxLength(Question.LongestText);
        builder.Property(question => question.Answer).HasMaxLength(Question.LongestAnswer);
    }
}

internal sealed class IntakeDraftConfiguration : IEntityTypeConfiguration<IntakeDraft>
{
    public void Configure(EntityTypeBuilder<IntakeDraft> builder)
    {
        builder.ToTable("IntakeDrafts");
        builder.Property(draft => draft.Payload).HasMaxLength(IntakeDraft.LongestPayload);
        builder.HasIndex(draft => draft.StartedBy).IsUnique();
        builder.HasOne<Student>().WithMany().HasForeignKey(draft => draft.Student).OnDelete(DeleteBehavior.Cascade);
    }
}
