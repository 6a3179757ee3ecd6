using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.TeachingNotes;

namespace ReedClinic.Data.TeachingNotes;

internal sealed class OwnNoteConfiguration : IEntityTypeConfiguration<OwnNote>
{
    private const int LongestKind = 60;

    public void Configure(EntityTypeBuilder<OwnNote> builder)
    {
        builder.ToTable("TeachingNotes");
        builder.Ignore(note => note.Kinds);
        builder.Property(note => note.Title).HasMaxLength(OwnNote.LongestTitle);
        builder.Property(note => note.Text).HasMaxLength(OwnNote.LongestText);
        builder.Property(note => note.Link).HasMaxLength(NoteLink.Longest);
        builder.Property(note => note.PictureWords).HasMaxLength(PictureMark.LongestWords);
        builder.HasOne<NotePicture>().WithMany().HasForeignKey(note => note.Picture).OnDelete(DeleteBehavior.Restrict);
        builder.Property(note => note.FiledUnder).HasMaxLength(OwnNote.MostKinds * (LongestKind + 1));
    }
}
