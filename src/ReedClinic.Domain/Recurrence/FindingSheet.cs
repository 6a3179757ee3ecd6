using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Recurrence;

/// <summary>What the sheet says of one kind of finding on one reed, when it arrived.</summary>
public enum SheetAnswer
{
    /// <summary>Nobody looked.</summary>
    NotLooked,

    /// <summary>It was looked for and isn't there.</summary>
    No,

    /// <summary>It was there.</summary>
    Yes,
}

/// <summary>One cell of the sheet.</summary>
/// <param name="Answer">Yes, no or not looked.</param>
/// <param name="Character">Strength, taste or fault, when it was found.</param>
/// <param name="Suspected">True when it is only suspected.</param>
/// <param name="CausedByWork">True when it came about at this bench: the cell then counts as not looked.</param>
public readonly record struct SheetCell(
    SheetAnswer Answer, FindingCharacter? Character = null, bool Suspected = false, bool CausedByWork = false);

/// <summary>How many of how many.</summary>
/// <param name="Found">The reeds on which it was found.</param>
/// <param name="Looked">The reeds on which it was looked for.</param>
/// <param name="Reeds">All the reeds.</param>
/// <param name="Suspected">Those of the found ones on which it is only suspected.</param>
public readonly record struct Tally(int Found, int Looked, int Reeds, int Suspected = 0)
{
    /// <summary>The interval in which the real share may lie. It counts only the reeds on which it was looked for.</summary>
    public WilsonInterval Interval => WilsonInterval.Of(Found, Looked);

    /// <summary>Two tallies taken together.</summary>
    /// <param name="left">One.</param>
    /// <param name="right">The other.</param>
    public static Tally operator +(Tally left, Tally right) => new(
        left.Found + right.Found, left.Looked + right.Looked, left.Reeds + right.Reeds, left.Suspected + right.Suspected);
}

/// <summary>The sheet of findings by reeds: what was there when the reeds arrived.</summary>
public sealed class FindingSheet
{
    private readonly Dictionary<(FindingKindId Kind, ReedId Reed), SheetRow> rows;

    /// <summary>Lays out a sheet.</summary>
    /// <param name="reeds">The reeds, in the order of the columns.</param>
    /// <param name="rows">Their rows; rows of other reeds are left aside.</param>
    public FindingSheet(IReadOnlyList<ReedId> reeds, IEnumerable<SheetRow> rows)
    {
        Reeds = reeds;
        var known = reeds.ToHashSet();
        this.rows = rows.Where(row => known.Contains(row.ReedId)).ToDictionary(row => (row.FindingKind, row.ReedId));
        var own = this.rows.Keys.Select(key => key.Kind).Where(kind => OwnId.Is(kind.Value)).Distinct().OrderBy(kind => kind.Value, StringComparer.Ordinal);
        Kinds = [.. FindingCatalogue.All.Select(kind => kind.Id).Where(kind => reeds.Any(reed => Has(kind, reed))), .. own];
    }

    /// <summary>The reeds, in the order of the columns.</summary>
    public IReadOnlyList<ReedId> Reeds { get; }

    /// <summary>The kinds that were found or looked for on at least one reed, in the order of the catalogue, the studio’s own last.</summary>
    public IReadOnlyList<FindingKindId> Kinds { get; }

    /// <summary>What is said of one kind on one reed.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="reed">The reed.</param>
    /// <returns>The cell.</returns>
    public SheetCell Cell(FindingKindId kind, ReedId reed)
    {
        if (!rows.TryGetValue((kind, reed), out var row))
        {
            return new SheetCell(SheetAnswer.NotLooked);
        }

        if (!row.Found)
        {
            return new SheetCell(SheetAnswer.No);
        }

        var answer = row.CausedByWork ? SheetAnswer.NotLooked : SheetAnswer.Yes;
        return new SheetCell(answer, row.Character, row.Suspected, row.CausedByWork);
    }

    /// <summary>Counts one kind over all the reeds.</summary>
    /// <param name="kind">The kind.</param>
    /// <param name="character">Which character counts as found.</param>
    /// <returns>How many of how many.</returns>
    public Tally Count(FindingKindId kind, FindingCharacter character)
    {
        var cells = Reeds.Select(reed => Cell(kind, reed)).ToList();
        var found = cells.Where(cell => cell.Answer == SheetAnswer.Yes && cell.Character == character).ToList();
        return new Tally(
            found.Count,
            cells.Count(cell => cell.Answer != SheetAnswer.NotLooked),
            cells.Count,
            found.Count(cell => cell.Suspected));
    }

    private bool Has(FindingKindId kind, ReedId reed) => rows.ContainsKey((kind, reed));
}
