using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Data.Recurrence;

/// <summary>The sheet of findings by reeds, kept beside the log from which it is worked out.</summary>
internal sealed class SheetRowConfiguration : IEntityTypeConfiguration<SheetRow>
{
    public void Configure(EntityTypeBuilder<SheetRow> builder)
    {
        builder.ToTable("FindingSheet");
        builder.HasKey(row => new { row.ReedId, row.FindingKind });
        builder.HasOne<Reed>().WithMany().HasForeignKey(row => row.ReedId).OnDelete(DeleteBehavior.Cascade);
    }
}
