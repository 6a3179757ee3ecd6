using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace ReedClinic.Data.Audit;

/// <summary>
/// Something that happened, on its way into the chain. It is saved with what it tells of and stands here for a moment only:
/// links are put on one at a time, and nobody should wait for that.
/// </summary>
public sealed class AuditNote
{
    /// <summary>Which.</summary>
    public Guid Id { get; init; }

    /// <summary>When.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>What.</summary>
    public AuditEvent Event { get; init; }

    /// <summary>The account that did it; null when nobody was signed in.</summary>
    public Guid? Who { get; init; }

    /// <summary>The account or student it was done to.</summary>
    public Guid? Whom { get; init; }

    /// <summary>The batch, link or session it is about.</summary>
    public Guid? What { get; init; }
}

/// <summary>One link of the audit's chain. It is never changed or removed: the database itself refuses.</summary>
public sealed class AuditEntry
{
    /// <summary>Its place: 1, 2, 3, without gaps.</summary>
    public long Sequence { get; init; }

    /// <summary>When, in UTC, to the millisecond.</summary>
    public DateTimeOffset At { get; init; }

    /// <summary>What.</summary>
    public AuditEvent Event { get; init; }

    /// <summary>The pseudonym of whoever did it.</summary>
    public Guid? Who { get; init; }

    /// <summary>The pseudonym of whomever it was done to.</summary>
    public Guid? Whom { get; init; }

    /// <summary>The batch, link or session it is about.</summary>
    public Guid? What { get; init; }

    /// <summary>The hash of the link before, in hexadecimal; zeros for the first.</summary>
    public string Before { get; init; } = "";

    /// <summary>SHA-256 over all the above, in hexadecimal.</summary>
    public string Hash { get; internal set; } = "";
}

/// <summary>
/// What a person is called in the audit: random, and known here only. When the person is erased this row goes, and what
/// the chain says of them is about nobody, while the chain still holds.
/// </summary>
public sealed class Pseudonym
{
    /// <summary>The account or student.</summary>
    public Guid Person { get; init; }

    /// <summary>What the chain calls them.</summary>
    public Guid Mask { get; init; }
}

internal sealed class AuditConfiguration :
    IEntityTypeConfiguration<AuditNote>, IEntityTypeConfiguration<AuditEntry>, IEntityTypeConfiguration<Pseudonym>
{
    private const int HashLength = 64;

    public void Configure(EntityTypeBuilder<AuditNote> builder)
    {
        builder.ToTable("AuditNotes");
        builder.Property(note => note.Id).ValueGeneratedNever();
    }

    public void Configure(EntityTypeBuilder<AuditEntry> builder)
    {
        builder.ToTable("AuditChain");
        builder.HasKey(entry => entry.Sequence);
        builder.Property(entry => entry.Sequence).ValueGeneratedNever();
        builder.Property(entry => entry.Before).HasMaxLength(HashLength);
        builder.Property(entry => entry.Hash).HasMaxLength(HashLength);
    }

    public void Configure(EntityTypeBuilder<Pseudonym> builder)
    {
        builder.ToTable("Pseudonyms");
        builder.HasKey(pseudonym => pseudonym.Person);
        builder.Property(pseudonym => pseudonym.Person).ValueGeneratedNever();
        builder.HasIndex(pseudonym => pseudonym.Mask).IsUnique();
    }
}
