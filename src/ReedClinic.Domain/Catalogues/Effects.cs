namespace ReedClinic.Domain.Catalogues;

/// <summary>What an adjustment moves. Sizes are ordinal: 1 is noticeable, 2 is large; they are no measurement.</summary>
public enum EffectScale
{
    /// <summary>Crow and tuning notes: − flatter, + sharper.</summary>
    Pitch,

    /// <summary>The gap at rest: − more closed, + more open.</summary>
    Opening,

    /// <summary>Effort to blow: − easier, + harder.</summary>
    Effort,

    /// <summary>Speed and safety of starts: − slower, + quicker.</summary>
    Response,

    /// <summary>Tone: − brighter and thinner, + darker and rounder.</summary>
    Tone,

    /// <summary>Pitch and high notes: − wilder, + steadier.</summary>
    Steadiness,
}

/// <summary>What one pass (both sides, both blades) usually does on one scale: from here to there, both from −2 to +2.</summary>
public readonly record struct EffectRange
{
    /// <summary>The furthest that a scale goes to either side.</summary>
    public const int Furthest = 2;

    /// <summary>Makes a range.</summary>
    /// <param name="low">The lower end, from −2.</param>
    /// <param name="high">The upper end, to +2.</param>
    /// <exception cref="ArgumentOutOfRangeException">An end is off the scale, or they stand the wrong way round.</exception>
    public EffectRange(int low, int high)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(low, -Furthest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(high, Furthest);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(low, high);
        (Low, High) = (low, high);
    }

    /// <summary>The lower end.</summary>
    public int Low { get; }

    /// <summary>The upper end.</summary>
    public int High { get; }

    /// <summary>True when it may go either way.</summary>
    public bool IsTwoSigned => Low < 0 && High > 0;
}
