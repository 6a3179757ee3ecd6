namespace ReedClinic.Domain.Pitch;

/// <summary>
/// What a crow is compared with: a pitch class in somebody's tuning. The octave is left out, because teachers count the
/// octaves of a crow differently while they agree on the note.
/// </summary>
/// <param name="PitchClass">The note aimed at; C unless the studio says otherwise (common practice for long-scrape reeds).</param>
/// <param name="Tuning">What the player tunes to.</param>
public readonly record struct CrowTarget(PitchClass PitchClass, Tuning Tuning)
{
    /// <summary>
    /// How far a crow may lie from its target on either side and still count as on it, in cents. It is this program’s own default.
    /// </summary>
    public const double ToleranceCents = 30;

    /// <summary>A crow on C in this tuning.</summary>
    /// <param name="tuning">What the player tunes to.</param>
    public static CrowTarget OnC(Tuning tuning) => new(PitchClass.C, tuning);
}

/// <summary>How far a said pitch lies from a target; both ends are the same when one pitch was said, and not “between” two notes or “a little flat”.</summary>
/// <param name="Low">The flatter end.</param>
/// <param name="High">The sharper end.</param>
public readonly record struct CentsRange(Cents Low, Cents High)
{
    /// <summary>True when both ends are one.</summary>
    public bool IsOnePitch => Low == High;

    /// <summary>The middle of the two ends.</summary>
    public Cents Middle => new((Low.Value + High.Value) / 2);
}
