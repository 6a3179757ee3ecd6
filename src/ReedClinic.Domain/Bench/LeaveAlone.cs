using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench;

/// <summary>A place that is not to be touched, and why.</summary>
public sealed class LeaveAlone : BenchEntry
{
    private LeaveAlone()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.LeaveAlone;

    /// <summary>The part of the reed.</summary>
    public Zone Zone { get; private init; }

    /// <summary>On which blade.</summary>
    public Blades Blades { get; private init; }

    /// <summary>On which side.</summary>
    public Sides Sides { get; private init; }

    /// <summary>Why it is left alone.</summary>
    public string Words { get; private init; } = "";

    /// <summary>Where it is.</summary>
    public Place Place => new(Zone, Blades, Sides);

    /// <summary>Says that a place is not to be touched.</summary>
    /// <param name="place">Where.</param>
    /// <param name="why">Why.</param>
    /// <returns>The entry, or what is wrong with it.</returns>
    public static Outcome<LeaveAlone> Of(Place place, string? why)
    {
        List<Problem> problems =
        [
            .. FindingChecks.Place(nameof(Place), place),
            .. PlainText.CheckRequired(nameof(Words), why, "Say why it is left alone."),
        ];
        return Checked.Give(problems, () => new LeaveAlone
        {
            Zone = place.Zone,
            Blades = place.Blades,
            Sides = place.Sides,
            Words = PlainText.Tidy(why) ?? "",
        });
    }
}
