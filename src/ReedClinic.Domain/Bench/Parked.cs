using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>The reed was put aside for now; whatever is said about it later takes it up again.</summary>
public sealed class Parked : BenchEntry
{
    private Parked()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Parked;

    /// <summary>Why, if it was said.</summary>
    public string? Words { get; private init; }

    /// <summary>Puts the reed aside for now.</summary>
    /// <param name="why">Why, if it is said.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<Parked> Of(string? why = null) => Checked.Give(
        [.. PlainText.Check(nameof(Words), why)],
        () => new Parked { Words = PlainText.Tidy(why) });
}
