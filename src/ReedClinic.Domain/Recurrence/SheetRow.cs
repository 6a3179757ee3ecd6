using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Recurrence;

/// <summary>
/// One answer of the sheet: whether a kind of finding was there when the reed arrived. No row means that it was not looked for.
/// </summary>
/// <remarks>
/// The rows of a reed are worked out from its log each time something is said, and can be worked out again at any time.
/// "Something else" has no row: two remarks in free words are not the same finding.
/// </remarks>
public sealed class SheetRow
{
    private SheetRow()
    {
    }

    /// <summary>The reed.</summary>
    public ReedId ReedId { get; private init; }

    /// <summary>The kind of finding.</summary>
    public FindingKindId FindingKind { get; private init; }

    /// <summary>True when it was found; false when it was looked for and isn't there.</summary>
    public bool Found { get; private set; }

    /// <summary>Strength, taste or fault; null when it wasn't found.</summary>
    public FindingCharacter? Character { get; private set; }

    /// <summary>True when it came about only by the work at this bench: such a row is shown, and never counted.</summary>
    public bool CausedByWork { get; private set; }

    /// <summary>True when it is only suspected.</summary>
    public bool Suspected { get; private set; }

    /// <summary>Works out the rows of one reed.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <returns>One row for each kind that was found or looked for, ordered by kind.</returns>
    public static IReadOnlyList<SheetRow> Of(ReedId reed, BenchLog log)
    {
        var found = log.Live<Finding>().Select(fact => fact.Now).ToLookup(finding => finding.FindingKind);
        var missing = log.Live<LookedFor>().Select(fact => fact.Now.FindingKind).ToHashSet();
        return
        [
            .. found.Select(group => group.Key)
                .Union(missing)
                .Where(kind => kind != FindingKindId.SomethingElse)
                .OrderBy(kind => kind.Value, StringComparer.Ordinal)
                .Select(kind => Of(reed, kind, [.. found[kind]], missing.Contains(kind))),
        ];
    }

    /// <summary>Takes over what another row of the same reed and kind says.</summary>
    /// <param name="other">The row as it should be.</param>
    public void Become(SheetRow other)
    {
        Found = other.Found;
        Character = other.Character;
        CausedByWork = other.CausedByWork;
        Suspected = other.Suspected;
    }

    /// <summary>Whether another row says the same.</summary>
    /// <param name="other">The other row.</param>
    /// <returns>True when nothing differs.</returns>
    public bool SaysTheSameAs(SheetRow other) =>
        (ReedId, FindingKind, Found, Character, CausedByWork, Suspected)
        == (other.ReedId, other.FindingKind, other.Found, other.Character, other.CausedByWork, other.Suspected);

    private static SheetRow Of(ReedId reed, FindingKindId kind, List<Finding> found, bool lookedForAndMissing)
    {
        var there = found.Where(finding => finding.Arose != Arose.CausedByTheWork).ToList();
        if (there.Count == 0 && (lookedForAndMissing || found.Count == 0))
        {
            return new SheetRow { ReedId = reed, FindingKind = kind };
        }

        var counted = there.Count > 0 ? there : found;
        return new SheetRow
        {
            ReedId = reed,
            FindingKind = kind,
            Found = true,
            Character = counted.Max(finding => finding.Character),
            CausedByWork = there.Count == 0,
            Suspected = counted.All(finding => finding.Certainty == Certainty.Suspected),
        };
    }
}
