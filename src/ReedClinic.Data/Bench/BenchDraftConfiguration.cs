using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Data.Bench;

internal sealed class BenchDraftConfiguration : IEntityTypeConfiguration<BenchDraft>
{
    public void Configure(EntityTypeBuilder<BenchDraft> builder)
    {
        builder.ToTable("BenchDrafts");
        builder.HasKey(draft => new { draft.ReedId, draft.Account });
        builder.Property(draft => draft.Typed).HasMaxLength(BenchDraft.LongestTyped);
        builder.HasOne<Reed>().WithMany().HasForeignKey(draft => draft.ReedId).OnDelete(DeleteBehavior.Cascade);
    }
}
