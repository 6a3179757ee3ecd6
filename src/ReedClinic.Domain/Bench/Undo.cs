namespace ReedClinic.Domain.Bench;

/// <summary>
/// Takes back the last wording of a fact. Undoing a correction brings the earlier wording back;
/// undoing the first wording takes the fact back altogether.
/// </summary>
public sealed class Undo : BenchEntry
{
    private Undo()
    {
    }

    /// <inheritdoc/>
    public override EntryKind Kind => EntryKind.Undo;

    /// <summary>An undo that is in no log yet.</summary>
    /// <returns>The entry; which fact it takes back is in its stamp.</returns>
    public static Undo Entry() => new();
}
