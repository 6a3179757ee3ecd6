using System.Diagnostics.CodeAnalysis;

namespace ReedClinic.Domain.Intake;

/// <summary>How far the teacher may go with a reed.</summary>
[SuppressMessage("Naming", "CA1711", Justification = "It is what the student gives: a permission, not a right in a system.")]
public enum Permission
{
    /// <summary>Play it, look at it, say what you think; take nothing away.</summary>
    AdviseOnly,

    /// <summary>Only what is unlikely to spoil it.</summary>
    SafeChangesOnly,

    /// <summary>Try what might help; it may not survive.</summary>
    TakeRisks,
}

/// <summary>How a reed came to be.</summary>
public enum MadeHow
{
    /// <summary>Tied and scraped by hand.</summary>
    Tied,

    /// <summary>Finished from a blank that somebody else tied.</summary>
    FromABlank,

    /// <summary>Bought finished.</summary>
    BoughtFinished,
}

/// <summary>What a reed is meant for.</summary>
public enum ReedUse
{
    /// <summary>Practising at home.</summary>
    Practice,

    /// <summary>Lessons.</summary>
    Lessons,

    /// <summary>A concert or an examination.</summary>
    Concert,

    /// <summary>To have one more.</summary>
    Spare,
}

/// <summary>A place on a two-sided scale: −2 and +2 are the two bad ends, 0 is just right.</summary>
public readonly record struct ScaleMark
{
    /// <summary>Makes a mark.</summary>
    /// <param name="value">From −2 to +2.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is not from −2 to +2.</exception>
    public ScaleMark(int value)
    {
        if (value is < -2 or > 2)
        {
            throw new ArgumentOutOfRangeException(nameof(value), value, "A mark runs from −2 to +2.");
        }

        Value = value;
    }

    /// <summary>From −2 to +2.</summary>
    public int Value { get; }
}
