namespace ReedClinic.Domain.Bench;

/// <summary>The plain names of what a bench log says, in small letters.</summary>
public static class BenchWords
{
    /// <summary>A verdict.</summary>
    /// <param name="verdict">The verdict.</param>
    /// <returns>Its name.</returns>
    public static string Name(this VerdictKind verdict) => verdict switch
    {
        VerdictKind.Improved => "improved",
        VerdictKind.GoodOnArrivalRefined => "good on arrival, refined",
        VerdictKind.LeftAsItCame => "left as it came",
        VerdictKind.AsGoodAsThisCaneGets => "as good as this cane gets",
        VerdictKind.StoppedToProtectIt => "stopped to protect it",
        VerdictKind.NeedsPlayingIn => "needs playing in",
        VerdictKind.NotToBeSaved => "not to be saved",
        VerdictKind.ReturnedUnplayed => "returned unplayed",
        _ => throw new ArgumentOutOfRangeException(nameof(verdict)),
    };

    /// <summary>Strength, taste or fault.</summary>
    /// <param name="character">The character.</param>
    /// <returns>Its name.</returns>
    public static string Name(this FindingCharacter character) => character switch
    {
        FindingCharacter.Strength => "strength",
        FindingCharacter.Taste => "taste",
        FindingCharacter.Fault => "fault",
        _ => throw new ArgumentOutOfRangeException(nameof(character)),
    };

    /// <summary>A spot, a comparison, a shape across or a separation along.</summary>
    /// <param name="shape">The shape.</param>
    /// <returns>Its name.</returns>
    public static string Name(this FindingShape shape) => shape switch
    {
        FindingShape.Spot => "one spot",
        FindingShape.Comparison => "one place against another",
        FindingShape.ShapeAcross => "across, from one side to the other",
        FindingShape.SeparationAlong => "along, from one part to the next",
        _ => throw new ArgumentOutOfRangeException(nameof(shape)),
    };

    /// <summary>How two places compare, to stand between their names.</summary>
    /// <param name="relation">The relation.</param>
    /// <returns>Its name.</returns>
    public static string Name(this Relation relation) => relation switch
    {
        Relation.ThickerThan => "thicker than",
        Relation.ThinnerThan => "thinner than",
        Relation.LongerThan => "longer than",
        Relation.ShorterThan => "shorter than",
        Relation.HigherThan => "further up than",
        Relation.LowerThan => "further down than",
        Relation.MoreOpenThan => "more open than",
        Relation.StifferThan => "stiffer than",
        Relation.SameAs => "the same as",
        _ => throw new ArgumentOutOfRangeException(nameof(relation)),
    };

    /// <summary>How something is known, such as "by light and finger"; empty when it wasn't said.</summary>
    /// <param name="knownBy">One or more ways.</param>
    /// <returns>The words.</returns>
    public static string Name(this KnownBy knownBy)
    {
        var ways = Enum.GetValues<KnownBy>()
            .Where(way => way != KnownBy.NotSaid && knownBy.HasFlag(way))
            .Select(way => way.ToString().ToLowerInvariant())
            .ToList();
        return ways.Count switch
        {
            0 => "",
            1 => "by " + ways[0],
            _ => "by " + string.Join(", ", ways[..^1]) + " and " + ways[^1],
        };
    }

    /// <summary>Certain or suspected.</summary>
    /// <param name="certainty">The certainty.</param>
    /// <returns>Its name.</returns>
    public static string Name(this Certainty certainty) => certainty switch
    {
        Certainty.Certain => "certain",
        Certainty.Suspected => "suspected",
        _ => throw new ArgumentOutOfRangeException(nameof(certainty)),
    };

    /// <summary>When something came about.</summary>
    /// <param name="arose">When.</param>
    /// <returns>Its name.</returns>
    public static string Name(this Arose arose) => arose switch
    {
        Arose.AsItArrived => "as it arrived",
        Arose.SeenLaterAlreadyThere => "seen later, already there",
        Arose.CausedByTheWork => "caused by the work",
        _ => throw new ArgumentOutOfRangeException(nameof(arose)),
    };

    /// <summary>How a finding ended.</summary>
    /// <param name="ending">The ending.</param>
    /// <returns>Its name.</returns>
    public static string Name(this FindingEnding ending) => ending switch
    {
        FindingEnding.Gone => "gone",
        FindingEnding.Better => "better",
        FindingEnding.Unchanged => "unchanged",
        FindingEnding.LeftOnPurpose => "left on purpose",
        _ => throw new ArgumentOutOfRangeException(nameof(ending)),
    };

    /// <summary>What became of a risk.</summary>
    /// <param name="outcome">The outcome.</param>
    /// <returns>Its name.</returns>
    public static string Name(this RiskOutcome outcome) => outcome switch
    {
        RiskOutcome.Happened => "happened",
        RiskOutcome.DidNotHappen => "did not happen",
        RiskOutcome.StillOpen => "still open",
        _ => throw new ArgumentOutOfRangeException(nameof(outcome)),
    };

    /// <summary>What a teacher says of a cause.</summary>
    /// <param name="answer">The answer.</param>
    /// <returns>Its name.</returns>
    public static string Name(this CauseAnswer answer) => answer switch
    {
        CauseAnswer.Confirmed => "it was this",
        CauseAnswer.Dismissed => "it wasn’t this",
        CauseAnswer.Open => "open again",
        _ => throw new ArgumentOutOfRangeException(nameof(answer)),
    };

    /// <summary>What a log entry is.</summary>
    /// <param name="kind">The kind.</param>
    /// <returns>Its name.</returns>
    public static string Name(this EntryKind kind) => kind switch
    {
        EntryKind.Test => "test",
        EntryKind.Finding => "finding",
        EntryKind.LookedFor => "looked for, not there",
        EntryKind.FindingEnded => "how a finding ended",
        EntryKind.LeaveAlone => "leave alone",
        EntryKind.Adjustment => "adjustment",
        EntryKind.Risk => "risk",
        EntryKind.RiskClosed => "what became of a risk",
        EntryKind.Note => "note",
        EntryKind.Stopped => "stop",
        EntryKind.Verdict => "verdict",
        EntryKind.Undo => "taken back",
        EntryKind.AdviceSetAside => "advice set aside",
        EntryKind.Parked => "put aside for now",
        EntryKind.CauseJudged => "likely cause",
        _ => throw new ArgumentOutOfRangeException(nameof(kind)),
    };
}
