using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Faults;

/// <summary>The lasting name of a kind of finding, such as <c>tip-corners-thick</c>.</summary>
/// <param name="Value">Small letters and hyphens; never renamed once it has been stored.</param>
public readonly record struct FindingKindId(string Value)
{
    /// <summary>Anything that isn't in the catalogue; the words say what it is.</summary>
    public static FindingKindId SomethingElse { get; } = new("something-else");

    /// <summary>True where an entry’s own words say what it is: “something else”, and whatever is the studio’s own.</summary>
    public bool IsInWords => this == SomethingElse || OwnId.Is(Value);
}

/// <summary>A kind of finding.</summary>
/// <param name="Id">Its lasting name.</param>
/// <param name="Name">Its plain name, in small letters.</param>
/// <param name="Zone">The part of the reed it is usually about.</param>
/// <param name="Usually">What it usually is; the teacher may say otherwise.</param>
/// <param name="Shape">How it is usually told: a spot, a comparison, a shape across, a separation along.</param>
/// <param name="ForStudent">One line that explains it to a student.</param>
/// <param name="Mark">How it is known.</param>
public sealed record FindingKind(
    FindingKindId Id,
    string Name,
    Zone Zone,
    FindingCharacter Usually,
    FindingShape Shape,
    string ForStudent,
    EvidenceMark Mark);
