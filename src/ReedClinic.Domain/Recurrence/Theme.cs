using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Recurrence;

/// <summary>
/// Something that can come back in a student’s reeds: one kind of finding, or a family of kinds that are the same thing seen from
/// several sides. Families lie within wider ones: thick corners are sides of the tip that aren’t thinner than its centre, and those a
/// tip that isn’t set off.
/// </summary>
/// <param name="Id">Its lasting name; a single kind has the finding’s own.</param>
/// <param name="Character">Fault or strength.</param>
/// <param name="Name">Its plain name, in small letters.</param>
/// <param name="Says">What is said of it to a student: a clause that can open a sentence.</param>
/// <param name="Kinds">Every kind that belongs to it, those of the families within it included.</param>
/// <param name="Wider">The wider family it belongs to; null for none.</param>
public sealed record Theme(
    string Id, FindingCharacter Character, string Name, string Says, IReadOnlyList<FindingKindId> Kinds, string? Wider)
{
    /// <summary>Whether it is more than one kind of finding.</summary>
    public bool IsFamily => Kinds.Count > 1;

    /// <summary>Whether everything of this theme belongs to the other one, too.</summary>
    /// <param name="other">The other theme.</param>
    public bool IsWithin(Theme other)
    {
        ArgumentNullException.ThrowIfNull(other);
        return Id != other.Id && Kinds.All(other.Kinds.Contains);
    }

    /// <summary>What the sheet says of it on one reed, from all that belongs to it.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <param name="reed">The reed.</param>
    /// <returns>The cell.</returns>
    public ThemeCell On(FindingSheet sheet, Reeds.ReedId reed)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        List<SheetCell> looked = [.. Kinds.Select(kind => sheet.Cell(kind, reed)).Where(cell => cell.Answer != SheetAnswer.NotLooked)];
        List<SheetCell> found = [.. looked.Where(cell => cell.Answer == SheetAnswer.Yes && cell.Character == Character)];
        return looked.Count == 0 ? new ThemeCell(SheetAnswer.NotLooked)
            : found.Count > 0 ? new ThemeCell(SheetAnswer.Yes, found.All(cell => cell.Suspected))
            : new ThemeCell(SheetAnswer.No, InPart: looked.Count < Kinds.Count);
    }

    /// <summary>Counts it over all the reeds of a sheet.</summary>
    /// <param name="sheet">The sheet.</param>
    /// <returns>How many of how many.</returns>
    public ThemeTally Count(FindingSheet sheet)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        List<ThemeCell> cells = [.. sheet.Reeds.Select(reed => On(sheet, reed))];
        return new ThemeTally(
            new Tally(
                cells.Count(cell => cell.Answer == SheetAnswer.Yes),
                cells.Count(cell => cell.Answer != SheetAnswer.NotLooked),
                cells.Count,
                cells.Count(cell => cell.Suspected)),
            cells.Count(cell => cell.InPart));
    }
}

/// <summary>What the sheet says of a theme on one reed.</summary>
/// <param name="Answer">
/// Yes when anything of it was found; no when something of it was looked for and nothing found; not looked when none of it was looked
/// for.
/// </param>
/// <param name="Suspected">True when all that was found is only suspected.</param>
/// <param name="InPart">True for a no for which only part of what belongs to it was looked for.</param>
public readonly record struct ThemeCell(SheetAnswer Answer, bool Suspected = false, bool InPart = false);

/// <summary>How many of how many, for a theme.</summary>
/// <param name="Tally">The reeds on which anything of it was found, and those on which anything of it was looked for.</param>
/// <param name="InPart">Those without it for which only part of what belongs to it was looked for.</param>
public readonly record struct ThemeTally(Tally Tally, int InPart)
{
    /// <summary>The counts of the batch.</summary>
    public BatchCount Batch => new(Tally.Found, Tally.Looked);
}
