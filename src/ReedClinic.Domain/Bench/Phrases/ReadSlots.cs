using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What an entry of a phrase says; a slot that isn't said is null.</summary>
public sealed record ReadSlots
{
    /// <summary>Nothing said.</summary>
    public static ReadSlots None { get; } = new();

    /// <summary>Which test.</summary>
    public TestKind? Test { get; init; }

    /// <summary>One of the words on that test's scale.</summary>
    public string? Step { get; init; }

    /// <summary>The note, as <c>C</c>, <c>Bb</c> or <c>F#</c>.</summary>
    public string? Pitch { get; init; }

    /// <summary><c>flat</c> or <c>sharp</c>, without a number.</summary>
    public string? Lean { get; init; }

    /// <summary>How far from the note; minus is flat.</summary>
    public decimal? Cents { get; init; }

    /// <summary>The octave in scientific counting.</summary>
    public int? Octave { get; init; }

    /// <summary>The other note of “between”.</summary>
    public string? Between { get; init; }

    /// <summary>How many cents it went up, or, with minus, down.</summary>
    public decimal? Change { get; init; }

    /// <summary>The reed's length in millimetres.</summary>
    public decimal? Length { get; init; }

    /// <summary>The lasting name of a finding's or an adjustment's kind.</summary>
    public string? Kind { get; init; }

    /// <summary>Strength, taste or fault.</summary>
    public FindingCharacter? Character { get; init; }

    /// <summary>The part of the reed.</summary>
    public Zone? Zone { get; init; }

    /// <summary>One blade, when one is meant.</summary>
    public Blades? Blades { get; init; }

    /// <summary>One side, when one is meant.</summary>
    public Sides? Sides { get; init; }

    /// <summary>How the place stands to the other one.</summary>
    public Relation? Relation { get; init; }

    /// <summary>The other place's part of the reed.</summary>
    public Zone? OtherZone { get; init; }

    /// <summary>The other place's blade.</summary>
    public Blades? OtherBlades { get; init; }

    /// <summary>The other place's side.</summary>
    public Sides? OtherSides { get; init; }

    /// <summary><c>slight</c> or <c>strong</c>.</summary>
    public string? Degree { get; init; }

    /// <summary>Suspected, when it was hedged.</summary>
    public Certainty? Certainty { get; init; }

    /// <summary>How it is known.</summary>
    public KnownBy? Known { get; init; }

    /// <summary>When it came about, if that was said.</summary>
    public Arose? Arose { get; init; }

    /// <summary>How a finding ended.</summary>
    public FindingEnding? Ending { get; init; }

    /// <summary>Strokes in each place.</summary>
    public int? Strokes { get; init; }

    /// <summary>Millimetres taken off or moved.</summary>
    public decimal? Mm { get; init; }

    /// <summary>How much, in the phrase's own words.</summary>
    public string? Words { get; init; }

    /// <summary>The part of the reed for whose sake it was done.</summary>
    public Zone? Sake { get; init; }

    /// <summary>What became of a risk.</summary>
    public RiskOutcome? Outcome { get; init; }

    /// <summary>How the reed leaves the bench.</summary>
    public VerdictKind? Verdict { get; init; }
}
