using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.Letters;

internal sealed class LetterLinkConfiguration : IEntityTypeConfiguration<LetterLink>
{
    public void Configure(EntityTypeBuilder<LetterLink> builder)
    {
        builder.ToTable("LetterLinks");
        builder.Property(link => link.SecretHash).HasMaxLength(Ticket.HashLength);
        builder.HasIndex(link => link.SecretHash).IsUnique();
        builder.HasIndex(link => link.Operation).IsUnique();
        builder.HasIndex(link => link.Batch);
        builder.HasOne<Letter>().WithMany().HasForeignKey(link => link.Batch).OnDelete(DeleteBehavior.Cascade);
    }
}
