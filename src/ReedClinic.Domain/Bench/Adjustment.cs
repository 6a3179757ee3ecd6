using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench;

/// <summary>Something done to the reed.</summary>
public sealed class Adjustment : BenchEntry
{
    private Adjustment()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Adjustment;

    /// <summary>What was done, from <see cref="AdjustmentCatalogue"/>, or "something else".</summary>
    public AdjustmentKindId AdjustmentKind { get; private init; }

    /// <summary>The part of the reed.</summary>
    public Zone Zone { get; private init; }

    /// <summary>On which blade.</summary>
    public Blades Blades { get; private init; }

    /// <summary>On which side.</summary>
    public Sides Sides { get; private init; }

    /// <summary>Strokes in each quadrant that was worked.</summary>
    public int? AmountStrokes { get; private init; }

    /// <summary>Thousandths of a millimetre taken off or moved.</summary>
    public int? AmountMicrometres { get; private init; }

    /// <summary>How much, in words.</summary>
    public string? AmountWords { get; private init; }

    /// <summary>The finding it was done for, by the finding's first entry.</summary>
    public EntryId? ForFindingId { get; private init; }

    /// <summary>
    /// The zone for whose sake it was done, when that is another one: thinning round a heart makes it thick by comparison.
    /// </summary>
    public Zone? ForTheSakeOf { get; private init; }

    /// <summary>A remark; needed for "something else". For what is the studio's own: what it was called then, and the remark.</summary>
    public string? Words { get; private set; }

    /// <summary>Where it was done.</summary>
    public Place Place => new(Zone, Blades, Sides);

    /// <summary>How much was done.</summary>
    public Amount Amount => new(AmountStrokes, AmountMicrometres / 1000m, AmountWords);

    /// <summary>True for what only makes the reed ready to be played. Said to be for something that was found, it is work like any other.</summary>
    public bool Prepares => AdjustmentKind.Prepares && ForFindingId is null && ForTheSakeOf is null;

    /// <summary>How much was done, to stand beside the name of what was done; words that this name has in it aren’t said again.</summary>
    /// <returns>The words; empty when nothing more was said.</returns>
    public string AmountBeside()
    {
        var bare = AmountText.Bare(AmountWords);
        var isNamed = bare.Length > 0 && AdjustmentCatalogue.Find(AdjustmentKind) is { } kind && $" {kind.Done} ".Contains($" {bare} ", StringComparison.OrdinalIgnoreCase);
        return (isNamed ? Amount with { Words = null } : Amount).ToString();
    }

    /// <summary>Makes an adjustment.</summary>
    /// <param name="kind">What was done.</param>
    /// <param name="place">Where.</param>
    /// <param name="amount">How much.</param>
    /// <param name="forFinding">For which finding, by its first entry.</param>
    /// <param name="forTheSakeOf">For the sake of which other zone.</param>
    /// <param name="words">A remark.</param>
    /// <returns>The adjustment, or what is wrong with it.</returns>
    public static Outcome<Adjustment> Of(
        AdjustmentKindId kind,
        Place place,
        Amount amount = default,
        EntryId? forFinding = null,
        Zone? forTheSakeOf = null,
        string? words = null)
    {
        List<Problem> problems =
        [
            .. Kinds(kind, words),
            .. FindingChecks.Place(nameof(Place), place),
            .. amount.Check(),
        ];
        if (forTheSakeOf is { } zone)
        {
            problems.AddRange(Checked.Known(nameof(ForTheSakeOf), zone, "Choose a part of the reed."));
        }

        return Checked.Give(problems, () => new Adjustment
        {
            AdjustmentKind = kind,
            Zone = place.Zone,
            Blades = place.Blades,
            Sides = place.Sides,
            AmountStrokes = amount.Strokes,
            AmountMicrometres = amount.Millimetres is { } mm ? (int)Math.Round(mm * 1000m) : null,
            AmountWords = PlainText.Tidy(amount.Words),
            ForFindingId = forFinding,
            ForTheSakeOf = forTheSakeOf,
            Words = PlainText.Tidy(words),
        });
    }

    /// <summary>The same with what its kind is called, where that is the studio's own.</summary>
    /// <param name="name">What it is called now.</param>
    /// <returns>A copy; this one stays as it is.</returns>
    public Adjustment Called(string name)
    {
        var copy = (Adjustment)MemberwiseClone();
        copy.Words = OwnId.Words(name, Words);
        return copy;
    }

    private static IEnumerable<Problem> Kinds(AdjustmentKindId kind, string? words)
    {
        if (kind == AdjustmentKindId.SomethingElse)
        {
            return PlainText.CheckRequired(nameof(Words), words, "Say in your own words what was done.");
        }

        return AdjustmentCatalogue.Find(kind) is null && !OwnId.Is(kind.Value)
            ? [new Problem(nameof(AdjustmentKind), "Choose what was done, or “something else”."), .. PlainText.Check(nameof(Words), words)]
            : PlainText.Check(nameof(Words), words);
    }
}
