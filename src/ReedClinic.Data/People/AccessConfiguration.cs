using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>Who is signed in where, one-time links, guardians, and notes that stay in the studio.</summary>
internal sealed class AccessConfiguration :
    IEntityTypeConfiguration<Session>, IEntityTypeConfiguration<Ticket>, IEntityTypeConfiguration<Guardianship>, IEntityTypeConfiguration<StaffNote>
{
    // Folding may lengthen a text: one letter can become several.
    private const int Folded = 4;

    public void Configure(EntityTypeBuilder<Session> builder)
    {
        builder.ToTable("Sessions");
        builder.Property(session => session.Device).HasMaxLength(Session.LongestDevice);
        builder.Property(session => session.Idle).HasConversion(idle => (long)idle.TotalMilliseconds, stored => TimeSpan.FromMilliseconds(stored));
        builder.HasIndex(session => session.Account);
        builder.HasIndex(session => session.EndsAt);
    }

    public void Configure(EntityTypeBuilder<Ticket> builder)
    {
        builder.ToTable("Tickets");
        builder.Property(ticket => ticket.SecretHash).HasMaxLength(Ticket.HashLength);
        builder.Property(ticket => ticket.DeviceHash).HasMaxLength(Ticket.HashLength);
        builder.Property(ticket => ticket.Email).HasMaxLength(Student.LongestEmail);
        builder.Property(ticket => ticket.FoldedEmail).HasMaxLength(Folded * Student.LongestEmail);
        builder.HasIndex(ticket => ticket.SecretHash).IsUnique();
        builder.HasIndex(ticket => ticket.FoldedEmail);
        builder.HasIndex(ticket => ticket.ExpiresAt);
    }

    public void Configure(EntityTypeBuilder<Guardianship> builder)
    {
        builder.ToTable("Guardianships");
        builder.Property(guardian => guardian.Name).HasMaxLength(PersonName.MaxLength);
        builder.Property(guardian => guardian.Email).HasMaxLength(Student.LongestEmail);
        builder.Property(guardian => guardian.FoldedEmail).HasMaxLength(Folded * Student.LongestEmail);
        builder.Ignore(guardian => guardian.Stands);
        builder.HasIndex(guardian => guardian.Student).IsUnique();
        builder.HasIndex(guardian => guardian.Account);
    }

    public void Configure(EntityTypeBuilder<StaffNote> builder)
    {
        builder.ToTable("StaffNotes");
        builder.HasKey(note => note.Student);
        builder.Property(note => note.Words).HasMaxLength(StaffNote.Longest);
    }
}
