using System.Globalization;
using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Data.Recurrence;

/// <summary>
/// How often one theme turned up in the studio by a certain day, rolled up from batches whose letter was sent. It says how many
/// students there were and nothing of who they are. There is one row for all of them, and in a small studio one for all but a student
/// with a certain count, so that nobody is held against themselves.
/// </summary>
public sealed class StudioRateRow
{
    /// <summary>The theme, and the count that is left out.</summary>
    public string Key { get; private init; } = "";

    /// <summary>The theme’s lasting name.</summary>
    public string Theme { get; private init; } = "";

    /// <summary>The students on whose reeds it was looked for.</summary>
    public int Students { get; private init; }

    /// <summary>The first parameter of the distribution of their shares.</summary>
    public double A { get; private init; }

    /// <summary>The second one.</summary>
    public double B { get; private init; }

    /// <summary>How alike the reeds of one batch are here.</summary>
    public double Likeness { get; private init; }

    /// <summary>What has been sent by then was counted.</summary>
    public DateTimeOffset AsOf { get; private init; }

    /// <summary>The row’s key for a student who has this count themselves.</summary>
    public static string KeyOf(string theme, StudentCount without) =>
        string.Create(CultureInfo.InvariantCulture, $"{theme}:{without.Found}:{without.Looked}:{without.Squares}");

    internal static StudioRateRow Of(RateWithout rate, BatchLikeness likeness, DateTimeOffset asOf) => new()
    {
        Key = KeyOf(rate.Theme, rate.Without),
        Theme = rate.Theme,
        Students = rate.Rate.Students,
        A = rate.Rate.A,
        B = rate.Rate.B,
        Likeness = likeness.Usual,
        AsOf = asOf,
    };
}

internal sealed class StudioRateRowConfiguration : IEntityTypeConfiguration<StudioRateRow>
{
    public void Configure(EntityTypeBuilder<StudioRateRow> builder)
    {
        builder.ToTable("StudioRates");
        builder.HasKey(row => row.Key);
        builder.Property(row => row.Key).HasMaxLength(100);
        builder.Property(row => row.Theme).HasMaxLength(60);
    }
}
