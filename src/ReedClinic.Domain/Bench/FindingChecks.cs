using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench;

/// <summary>What a finding, or something looked for, has to be.</summary>
internal static class FindingChecks
{
    private const KnownBy Every =
        KnownBy.Light | KnownBy.Plaque | KnownBy.Finger | KnownBy.Lip | KnownBy.Ear | KnownBy.Meter;

    internal static IEnumerable<Problem> Kind(string field, FindingKindId kind, string? words, string wordsField)
    {
        if (kind == FindingKindId.SomethingElse)
        {
            return PlainText.CheckRequired(wordsField, words, "Say in your own words what it is.");
        }

        return FindingCatalogue.Find(kind) is null && !OwnId.Is(kind.Value)
            ? [new Problem(field, "Choose what it is, or “something else”."), .. PlainText.Check(wordsField, words)]
            : PlainText.Check(wordsField, words);
    }

    internal static IEnumerable<Problem> How(KnownBy knownBy) => (knownBy & ~Every) == 0
        ? []
        : [new Problem(nameof(Finding.KnownBy), "Say how it is known: by light, plaque, finger, lip, ear or meter.")];

    internal static IEnumerable<Problem> Place(string field, Place place) =>
        Enum.IsDefined(place.Zone) && Enum.IsDefined(place.Blades) && Enum.IsDefined(place.Sides)
            ? []
            : [new Problem(field, "Choose a part of the reed.")];

    internal static IEnumerable<Problem> Where(Place place, FindingShape shape, Relation? relation, Place? other)
    {
        List<Problem> problems =
        [
            .. Place(nameof(Finding.Place), place),
            .. Checked.Known(nameof(Finding.Shape), shape, "Say whether it is a spot, a comparison or a shape."),
        ];
        if (shape != FindingShape.Comparison)
        {
            if (relation is not null || other is not null)
            {
                problems.Add(new Problem(nameof(Finding.Shape), "Only a comparison has a second place."));
            }

            return problems;
        }

        if (relation is not { } stands || !Enum.IsDefined(stands))
        {
            problems.Add(new Problem(nameof(Finding.Relation), "Say how the two places compare."));
        }

        if (other is not { } second)
        {
            problems.Add(new Problem(nameof(Finding.OtherPlace), "Say what it is compared with."));
        }
        else
        {
            problems.AddRange(Place(nameof(Finding.OtherPlace), second));
            if (second == place)
            {
                problems.Add(new Problem(nameof(Finding.OtherPlace), "A place can’t be compared with itself."));
            }
        }

        return problems;
    }
}
