namespace ReedClinic.Domain.Reeds;

/// <summary>What a mark on the reed map says about its place.</summary>
public enum MarkKind
{
    /// <summary>Something good, to keep doing.</summary>
    Strength,

    /// <summary>Something that gets in the way.</summary>
    Fault,

    /// <summary>Something that one player likes and another does not.</summary>
    Taste,

    /// <summary>Cane was worked here.</summary>
    Worked,

    /// <summary>Not to be touched.</summary>
    LeaveAlone,
}

/// <summary>One thing to show on the reed map.</summary>
/// <param name="Place">Where.</param>
/// <param name="Kind">What it says.</param>
/// <param name="Words">A few plain words, as a label.</param>
/// <param name="Detail">One more line, or null.</param>
/// <param name="Times">On how many passes the place was worked; the drawing's strokes lie the closer, the more there were.</param>
public sealed record ReedMark(Place Place, MarkKind Kind, string Words, string? Detail = null, int Times = 1)
{
    /// <summary>From so many passes on, more doesn't show any more.</summary>
    public const int MostShown = 3;

    /// <summary>True where it is only suspected: it is drawn and called otherwise than what is certain.</summary>
    public bool Suspected { get; init; }

    /// <summary>The lines of its label below its words; null for none.</summary>
    public string? LabelDetail => !Suspected ? Detail : string.IsNullOrWhiteSpace(Detail) ? SuspectedWord : $"{SuspectedWord}; {Detail}";

    private const string SuspectedWord = "suspected";

    /// <summary>How dense the mark is drawn, from 1 to <see cref="MostShown"/>.</summary>
    public int Weight => Math.Clamp(Times, 1, MostShown);
}
