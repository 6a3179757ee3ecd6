using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.People;

namespace ReedClinic.Data.People;

/// <summary>One of the codes that somebody keeps for the day when their phone is gone. Only its hash is stored.</summary>
public sealed class RecoveryCode
{
    /// <summary>SHA-256 of the code, in hexadecimal.</summary>
    public string Hash { get; init; } = "";

    /// <summary>Whose it is.</summary>
    public AccountId Account { get; init; }

    /// <summary>When it was made.</summary>
    public DateTimeOffset MadeAt { get; init; }

    /// <summary>When it was used; it is good once.</summary>
    public DateTimeOffset? UsedAt { get; set; }
}

internal sealed class RecoveryCodeConfiguration : IEntityTypeConfiguration<RecoveryCode>
{
    public void Configure(EntityTypeBuilder<RecoveryCode> builder)
    {
        builder.ToTable("RecoveryCodes");
        builder.HasKey(code => code.Hash);
        builder.Property(code => code.Hash).HasMaxLength(Ticket.HashLength);
        builder.Property(code => code.UsedAt).IsConcurrencyToken();
        builder.HasIndex(code => code.Account);
    }
}
