using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>What was found, as a clause: in the teacher’s words where they are one, else in the letter’s, with its place and as much of it as was said.</summary>
internal static class FoundWhat
{
    /// <summary>The clause.</summary>
    /// <param name="finding">The finding.</param>
    /// <param name="was">Whether it is told as what was.</param>
    /// <param name="turn">Makes neighbours choose other words.</param>
    /// <param name="phrasing">Chooses the words.</param>
    /// <param name="placed">Whether blade and side stand behind it; not where they are told beside it.</param>
    public static string Of(Finding finding, bool was, int turn, Phrasing phrasing, bool placed = true)
    {
        if (RemarkSaid.Clause(finding) is { } clause)
        {
            return Prose.Inside(clause.Trim().TrimEnd('.', '!'));
        }

        var wording = FindingWording.Of(finding.FindingKind)!;
        var said = finding.Relation is null && finding.Character != FindingCharacter.Strength ? DegreeSaid.Of(finding) : null;
        (string, string)[] degree = [("deg", said?.Plain ?? ""), ("more", said?.More ?? "")];
        if ((said is null ? wording.OnOneSide : wording.GradedOnOneSide ?? wording.OnOneSide) is { } sided && placed && finding is { Sides: Sides.Left or Sides.Right, Relation: null })
        {
            (string, string)[] slots = [("side", finding.Sides == Sides.Left ? "left" : "right"), ("of", LetterPlaces.Of(finding.Place)), .. degree];
            var blade = sided.Contains("<of>", StringComparison.Ordinal) ? "" : LetterPlaces.On(finding.Place with { Sides = Sides.Both }, " (");
            return phrasing.Clause("what-" + finding.FindingKind.Value, turn, [sided], was, slots) + (blade.Length == 0 ? "" : blade + ")");
        }

        var what = phrasing.Clause("what-" + finding.FindingKind.Value, turn, [(finding.Zone == Zone.HeartSides ? wording.OnHeartSides : null) ?? (said is null ? null : wording.Graded) ?? wording.What], was, degree);
        var where = !placed ? "" : finding is not { Relation: { } relation, OtherPlace: { } other } ? LetterPlaces.On(finding)
            : finding.Place is { Blades: Blades.Both, Sides: Sides.Both } && what.Contains(finding.Zone.NamePlainly(), StringComparison.Ordinal) ? $"{relation.Name()} {LetterPlaces.Name(other)}"
            : LetterPlaces.Against(finding.Place, relation, other);
        return what + (where.Length == 0 ? "" : $" ({where})");
    }
}
