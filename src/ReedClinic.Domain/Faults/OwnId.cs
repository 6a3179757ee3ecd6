namespace ReedClinic.Domain.Faults;

/// <summary>
/// The lasting names of a studio’s own entries. They begin with a word that no shipped name begins with, so that neither can take the
/// other’s; and an adjustment’s says whether cane is taken, which never changes and has to be known wherever the log is read.
/// </summary>
public static class OwnId
{
    /// <summary>What each of them begins with.</summary>
    public const string Beginning = "own-";

    private const string Fault = Beginning + "fault-";
    private const string Test = Beginning + "test-";
    private const string Cane = Beginning + "cane-";
    private const string Gentle = Beginning + "gentle-";
    private const int Signs = 12;

    /// <summary>True for a name of a studio’s own entry.</summary>
    /// <param name="name">A lasting name.</param>
    public static bool Is(string? name) => name?.StartsWith(Beginning, StringComparison.Ordinal) == true;

    /// <summary>True for an adjustment of a studio’s own that takes cane.</summary>
    /// <param name="name">A lasting name.</param>
    public static bool TakesCane(string? name) => name?.StartsWith(Cane, StringComparison.Ordinal) == true;

    /// <summary>The name of a fault.</summary>
    /// <param name="id">The entry’s own id.</param>
    public static string OfFault(Guid id) => Fault + Letters(id);

    /// <summary>The name of a way to try a reed.</summary>
    /// <param name="id">The entry’s own id.</param>
    public static string OfTest(Guid id) => Test + Letters(id);

    /// <summary>The name of an adjustment.</summary>
    /// <param name="id">The entry’s own id.</param>
    /// <param name="undo">Whether it can be undone.</param>
    public static string OfAdjustment(Guid id, Reversible undo) => (undo == Reversible.No ? Cane : Gentle) + Letters(id);

    /// <summary>What somebody added to the name in an entry’s words; the words themselves where the kind isn’t the studio’s own.</summary>
    /// <param name="name">The kind’s lasting name.</param>
    /// <param name="words">The words as the log has them: the name as it was then, and after a colon what was added.</param>
    public static string? Remark(string? name, string? words) => !Is(name) || words is null ? words
        : words.IndexOf(Between, StringComparison.Ordinal) is var at and >= 0 ? words[(at + Between.Length)..] : null;

    /// <summary>What the kind was called when an entry was written, from the entry’s words.</summary>
    /// <param name="words">The words as the log has them: the name as it was then, and after a colon what was added.</param>
    public static string Called(string? words) => words is null ? "" : words.IndexOf(Between, StringComparison.Ordinal) is var at and >= 0 ? words[..at] : words;

    /// <summary>An entry’s words with the name before them; words that begin with it stay as they are.</summary>
    /// <param name="called">What the entry’s kind is called now.</param>
    /// <param name="remark">What was added.</param>
    public static string Words(string called, string? remark) => string.IsNullOrWhiteSpace(remark) || remark.Trim() == called ? called
        : remark.StartsWith(called + Between, StringComparison.Ordinal) ? remark : called + Between + remark.Trim();

    // A name has no colon in it.
    private const string Between = ": ";

    // The end of a version 7 identifier is the part that chance made. Letters alone, as all lasting names have them.
    private static string Letters(Guid id) => string.Concat(id.ToString("N")[^Signs..].Select(hex => (char)('a' + Convert.ToInt32(hex.ToString(), 16))));
}
