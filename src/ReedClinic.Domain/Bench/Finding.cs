using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench;

/// <summary>Something found on the reed: a strength, a matter of taste, or a fault.</summary>
public sealed class Finding : BenchEntry
{
    private Finding()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Finding;

    /// <summary>What was found, from <see cref="FindingCatalogue"/>, or "something else".</summary>
    public FindingKindId FindingKind { get; private init; }

    /// <summary>Strength, taste or fault.</summary>
    public FindingCharacter Character { get; private init; }

    /// <summary>A spot, a comparison, a shape across, or a separation along.</summary>
    public FindingShape Shape { get; private init; }

    /// <summary>The part of the reed.</summary>
    public Zone Zone { get; private init; }

    /// <summary>On which blade.</summary>
    public Blades Blades { get; private init; }

    /// <summary>On which side.</summary>
    public Sides Sides { get; private init; }

    /// <summary>In a comparison, how this place stands to the other.</summary>
    public Relation? Relation { get; private init; }

    /// <summary>In a comparison, the other part of the reed.</summary>
    public Zone? OtherZone { get; private init; }

    /// <summary>In a comparison, the other place's blade.</summary>
    public Blades? OtherBlades { get; private init; }

    /// <summary>In a comparison, the other place's side.</summary>
    public Sides? OtherSides { get; private init; }

    /// <summary>How it is known; several may hold.</summary>
    public KnownBy KnownBy { get; private init; }

    /// <summary>Certain or suspected.</summary>
    public Certainty Certainty { get; private init; }

    /// <summary>When it came about.</summary>
    public Arose Arose { get; private init; }

    /// <summary>The teacher's own words; needed for "something else". For what is the studio's own: what it was called then, and the words.</summary>
    public string? Words { get; private set; }

    /// <summary>Where it is.</summary>
    public Place Place => new(Zone, Blades, Sides);

    /// <summary>In a comparison, the place it is compared with.</summary>
    public Place? OtherPlace => OtherZone is { } zone
        ? new Place(zone, OtherBlades ?? Blades.Both, OtherSides ?? Sides.Both)
        : null;

    /// <summary>Makes a finding.</summary>
    /// <param name="kind">What was found.</param>
    /// <param name="character">Strength, taste or fault.</param>
    /// <param name="place">Where.</param>
    /// <param name="shape">A spot, a comparison, a shape across, or a separation along.</param>
    /// <param name="relation">For a comparison: how the place stands to the other.</param>
    /// <param name="otherPlace">For a comparison: the other place.</param>
    /// <param name="knownBy">How it is known.</param>
    /// <param name="certainty">Certain or suspected.</param>
    /// <param name="arose">When it came about.</param>
    /// <param name="words">The teacher's own words.</param>
    /// <returns>The finding, or what is wrong with it.</returns>
    public static Outcome<Finding> Of(
        FindingKindId kind,
        FindingCharacter character,
        Place place,
        FindingShape shape = FindingShape.Spot,
        Relation? relation = null,
        Place? otherPlace = null,
        KnownBy knownBy = KnownBy.NotSaid,
        Certainty certainty = Certainty.Certain,
        Arose arose = Arose.AsItArrived,
        string? words = null)
    {
        List<Problem> problems =
        [
            .. FindingChecks.Kind(nameof(FindingKind), kind, words, nameof(Words)),
            .. Checked.Known(nameof(Character), character, "Say whether it is a strength, a matter of taste or a fault."),
            .. Checked.Known(nameof(Certainty), certainty, "Say whether it is certain or suspected."),
            .. Checked.Known(nameof(Arose), arose, "Say when it came about."),
            .. FindingChecks.Where(place, shape, relation, otherPlace),
            .. FindingChecks.How(knownBy),
        ];
        return Checked.Give(problems, () => new Finding
        {
            FindingKind = kind,
            Character = character,
            Shape = shape,
            Zone = place.Zone,
            Blades = place.Blades,
            Sides = place.Sides,
            Relation = relation,
            OtherZone = otherPlace?.Zone,
            OtherBlades = otherPlace?.Blades,
            OtherSides = otherPlace?.Sides,
            KnownBy = knownBy,
            Certainty = certainty,
            Arose = arose,
            Words = PlainText.Tidy(words),
        });
    }

    /// <summary>The same with what its kind is called, where that is the studio's own.</summary>
    /// <param name="name">What it is called now.</param>
    /// <returns>A copy; this one stays as it is.</returns>
    public Finding Called(string name)
    {
        var copy = (Finding)MemberwiseClone();
        copy.Words = OwnId.Words(name, Words);
        return copy;
    }
}
