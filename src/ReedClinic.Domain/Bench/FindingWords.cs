namespace ReedClinic.Domain.Bench;

/// <summary>Whether a finding is good, a matter of taste, or a fault.</summary>
public enum FindingCharacter
{
    /// <summary>Something done well.</summary>
    Strength,

    /// <summary>Not what this teacher would choose, and the player's own choice.</summary>
    Taste,

    /// <summary>Something that keeps the reed from working.</summary>
    Fault,
}

/// <summary>What a finding compares.</summary>
public enum FindingShape
{
    /// <summary>One spot.</summary>
    Spot,

    /// <summary>One place against another.</summary>
    Comparison,

    /// <summary>How the thickness or the arch runs from side to side.</summary>
    ShapeAcross,

    /// <summary>How clearly one zone is set off from the next, from tip to thread.</summary>
    SeparationAlong,
}

/// <summary>How the first place of a comparison stands to the other place.</summary>
public enum Relation
{
    /// <summary>Thicker than the other place.</summary>
    ThickerThan,

    /// <summary>Thinner than the other place.</summary>
    ThinnerThan,

    /// <summary>Longer than the other place.</summary>
    LongerThan,

    /// <summary>Shorter than the other place.</summary>
    ShorterThan,

    /// <summary>Further towards the tip than the other place.</summary>
    HigherThan,

    /// <summary>Further towards the thread than the other place.</summary>
    LowerThan,

    /// <summary>More open than the other place.</summary>
    MoreOpenThan,

    /// <summary>Stiffer under the finger than the other place.</summary>
    StifferThan,

    /// <summary>The same as the other place.</summary>
    SameAs,
}

/// <summary>How a finding is known. Several may hold at once.</summary>
[Flags]
public enum KnownBy
{
    /// <summary>Not said.</summary>
    NotSaid = 0,

    /// <summary>Seen against a light: both blades are summed.</summary>
    Light = 1,

    /// <summary>Seen on a dark plaque: one blade alone.</summary>
    Plaque = 2,

    /// <summary>Felt with the finger.</summary>
    Finger = 4,

    /// <summary>Felt with the lip.</summary>
    Lip = 8,

    /// <summary>Heard.</summary>
    Ear = 16,

    /// <summary>Read from a gauge, a ruler or a tuner.</summary>
    Meter = 32,
}

/// <summary>How sure the teacher is.</summary>
public enum Certainty
{
    /// <summary>Certain.</summary>
    Certain,

    /// <summary>Suspected.</summary>
    Suspected,
}

/// <summary>When a finding came about.</summary>
public enum Arose
{
    /// <summary>The reed arrived with it.</summary>
    AsItArrived,

    /// <summary>Seen later, but already there when the reed arrived.</summary>
    SeenLaterAlreadyThere,

    /// <summary>Caused by the work at this bench.</summary>
    CausedByTheWork,
}

/// <summary>How a finding ended.</summary>
public enum FindingEnding
{
    /// <summary>It is gone.</summary>
    Gone,

    /// <summary>It is better.</summary>
    Better,

    /// <summary>It is as it was.</summary>
    Unchanged,

    /// <summary>It was left on purpose.</summary>
    LeftOnPurpose,
}

/// <summary>What became of a risk.</summary>
public enum RiskOutcome
{
    /// <summary>It happened.</summary>
    Happened,

    /// <summary>It did not happen.</summary>
    DidNotHappen,

    /// <summary>It can't be told yet.</summary>
    StillOpen,
}

/// <summary>How a reed leaves the bench.</summary>
public enum VerdictKind
{
    /// <summary>It plays better than it came.</summary>
    Improved,

    /// <summary>It was good on arrival and has been refined.</summary>
    GoodOnArrivalRefined,

    /// <summary>It was left as it came.</summary>
    LeftAsItCame,

    /// <summary>It is as good as this cane gets.</summary>
    AsGoodAsThisCaneGets,

    /// <summary>Work stopped to protect it.</summary>
    StoppedToProtectIt,

    /// <summary>It needs playing in.</summary>
    NeedsPlayingIn,

    /// <summary>It is not to be saved.</summary>
    NotToBeSaved,

    /// <summary>It goes back unplayed.</summary>
    ReturnedUnplayed,
}
