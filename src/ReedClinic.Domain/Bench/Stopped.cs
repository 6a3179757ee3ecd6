using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Bench;

/// <summary>The decision to stop working on the reed.</summary>
public sealed class Stopped : BenchEntry
{
    private Stopped()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Stopped;

    /// <summary>Why now.</summary>
    public string? Words { get; private init; }

    /// <summary>Says that the work stops here.</summary>
    /// <param name="why">Why now.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<Stopped> Of(string? why = null) => Checked.Give(
        [.. PlainText.Check(nameof(Words), why)],
        () => new Stopped { Words = PlainText.Tidy(why) });
}
