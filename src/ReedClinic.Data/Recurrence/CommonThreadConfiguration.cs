using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Data.Recurrence;

internal sealed class CommonThreadConfiguration : IEntityTypeConfiguration<CommonThread>
{
    public void Configure(EntityTypeBuilder<CommonThread> builder)
    {
        builder.ToTable("CommonThreads");
        builder.HasKey(thread => thread.BatchId);
        builder.Property(thread => thread.LessonWords).HasMaxLength(CommonThread.LongestText);
        builder.Property(thread => thread.StrengthWords).HasMaxLength(CommonThread.LongestText);
        builder.Property(thread => thread.HabitWords).HasMaxLength(CommonThread.LongestText);
        builder.Ignore(thread => thread.HabitSentence);
        builder.HasOne<Batch>().WithOne().HasForeignKey<CommonThread>(thread => thread.BatchId).OnDelete(DeleteBehavior.Cascade);
    }
}
