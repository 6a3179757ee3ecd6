using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace ReedClinic.Data.Privacy;

/// <summary>
/// That somebody was erased: an id that leads nowhere any more, kept until every back-up that may still hold the person is
/// gone, so that a restored back-up can be cleaned at once.
/// </summary>
public sealed class ErasedPerson
{
    /// <summary>The account or student that was.</summary>
    public Guid Person { get; init; }

    /// <summary>When they were erased.</summary>
    public DateTimeOffset ErasedAt { get; init; }

    /// <summary>From when on no back-up may hold them.</summary>
    public DateTimeOffset BackupsGoneAt { get; init; }
}

internal sealed class ErasedPersonConfiguration : IEntityTypeConfiguration<ErasedPerson>
{
    public void Configure(EntityTypeBuilder<ErasedPerson> builder)
    {
        builder.ToTable("ErasedPeople");
        builder.HasKey(erased => erased.Person);
        builder.Property(erased => erased.Person).ValueGeneratedNever();
    }
}
