using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Bench;

/// <summary>
/// What a student allowed for a reed, against what was done to it. Nothing is forbidden, since the log has to be able to tell
/// what happened; but what goes further than was asked for isn't written down before somebody says whether it was agreed.
/// </summary>
public static class Agreement
{
    /// <summary>The field of a form in which it is said whether the student has agreed: <see cref="Yes"/> or <see cref="No"/>.</summary>
    public const string Field = "Agreed";

    /// <summary>What the field says of work that was agreed since.</summary>
    public const string Yes = "true";

    /// <summary>What the field says of work that was done without being agreed.</summary>
    public const string No = "not";

    /// <summary>How it stands in the log that it was agreed.</summary>
    public const string Since = "Agreed with the student since.";

    /// <summary>How it stands in the log that it wasn’t. The letter then says that it went further, and claims no agreement.</summary>
    public const string Unagreed = "Done without being agreed.";

    /// <summary>Whether an adjustment goes further than the student asked for.</summary>
    /// <param name="permission">What the student allowed.</param>
    /// <param name="kind">What was done.</param>
    /// <param name="amount">How much of it.</param>
    /// <param name="crow">Where the latest crow stood before it; null when none was heard.</param>
    /// <returns>
    /// On a reed for advice only any adjustment does but making it ready to be played; where only safe changes were asked for, what <see cref="SafeChanges.IsWithin"/>
    /// says is none. The letter reads the same.
    /// </returns>
    public static bool IsAsked(Permission permission, AdjustmentKindId kind, Amount amount, CentsRange? crow) => permission switch
    {
        _ when kind.Prepares => false,
        Permission.AdviseOnly => true,
        Permission.SafeChangesOnly => !SafeChanges.IsWithin(kind, amount, crow),
        _ => false,
    };

    /// <summary>What keeps an entry from being written down, until it is said that the student has agreed.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="entry">The entry.</param>
    /// <param name="crow">Where the latest crow stood before it; null when none was heard.</param>
    /// <returns>The problem, or null.</returns>
    public static Problem? Wanted(Reed reed, BenchEntry entry, CentsRange? crow)
    {
        ArgumentNullException.ThrowIfNull(reed);
        if (entry is not Adjustment work || !IsAsked(reed.Permission, work.AdjustmentKind, work.Amount, crow) || IsSaid(work.Words))
        {
            return null;
        }

        return new Problem(Field, $"{Asked(reed, work.AdjustmentKind, work.Amount)} If it has been agreed since, say so here, or say that it was done without: the log will tell it.");
    }

    /// <summary>What the student asked for, where work goes further, as a sentence.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="kind">What is done.</param>
    /// <param name="amount">How much of it.</param>
    internal static string Asked(Reed reed, AdjustmentKindId kind, Amount amount) => reed switch
    {
        { Presence: Presence.Extra } => "Nobody announced this reed, so nothing was allowed on it.",
        { Permission: Permission.AdviseOnly } => "The student asked for advice only on this reed.",
        _ when SafeChanges.TakesCane(kind) is null => "The student asked for safe changes only, and whether this can be undone isn’t known here.",
        _ when SafeChanges.IsSmallStep(kind, amount) => "The student asked for safe changes only, and the crow is sharp already: a clip takes it higher.",
        _ => "The student asked for safe changes only, and this is more than a small step.",
    };

    /// <summary>What a field says of it.</summary>
    /// <param name="field">What was sent.</param>
    /// <returns>True where it was agreed, false where it was done without; null where nothing is said.</returns>
    public static bool? Read(string? field) => field switch { Yes => true, No => false, _ => null };

    /// <summary>What a remark says of it, as the field has it.</summary>
    /// <param name="words">The remark, if any.</param>
    /// <returns>Empty where it says nothing.</returns>
    public static string FieldOf(string? words) => IsIn(words) ? Yes : IsSaid(words) ? No : "";

    /// <summary>A remark with a sentence of its own that says whether it was agreed; what it said of that before goes.</summary>
    /// <param name="words">The remark, if any.</param>
    /// <param name="agreed">Whether it was agreed since.</param>
    public static string With(string? words, bool agreed = true)
    {
        var said = agreed ? Since : Unagreed;
        return Without(words)?.Trim() is { Length: > 0 } remark ? $"{remark}{(remark[^1] is '.' or '!' or '?' or '…' ? "" : ".")} {said}" : said;
    }

    /// <summary>A remark without what it says of the agreement, as somebody typed it.</summary>
    /// <param name="words">The remark, if any.</param>
    public static string? Without(string? words) => IsIn(words) ? PlainText.Tidy(words![..^Since.Length]) : IsSaid(words) ? PlainText.Tidy(words![..^Unagreed.Length]) : words;

    /// <summary>Whether a remark says that the student has agreed, or that it was done without.</summary>
    /// <param name="words">The remark, if any.</param>
    public static bool IsSaid(string? words) => IsIn(words) || words?.EndsWith(Unagreed, StringComparison.Ordinal) == true;

    /// <summary>Whether a remark says that the student has agreed.</summary>
    /// <param name="words">The remark, if any.</param>
    public static bool IsIn(string? words) => words?.EndsWith(Since, StringComparison.Ordinal) == true;
}
