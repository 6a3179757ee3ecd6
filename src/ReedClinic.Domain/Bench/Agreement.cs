using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Bench;

/// <summary>
/// What a student allowed for a reed, against what was done to it. Nothing is forbidden, since the log has to be able to tell
/// what happened; but what goes further than was asked for isn't written down before somebody says that it was agreed.
/// </summary>
public static class Agreement
{
    /// <summary>The field of a form in which it is said that the student has agreed.</summary>
    public const string Field = "Agreed";

    /// <summary>How it stands in the log.</summary>
    public const string Since = "Agreed with the student since.";

    /// <summary>Whether an adjustment goes further than the student asked for.</summary>
    /// <param name="permission">What the student allowed.</param>
    /// <param name="kind">What was done.</param>
    /// <param name="amount">How much of it.</param>
    /// <param name="crow">Where the latest crow stood before it; null when none was heard.</param>
    /// <returns>
    /// On a reed for advice only any adjustment does; where only safe changes were asked for, what <see cref="SafeChanges.IsWithin"/>
    /// says is none. The letter reads the same.
    /// </returns>
    public static bool IsAsked(Permission permission, AdjustmentKindId kind, Amount amount, CentsRange? crow) => permission switch
    {
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
        if (entry is not Adjustment work || !IsAsked(reed.Permission, work.AdjustmentKind, work.Amount, crow) || IsIn(work.Words))
        {
            return null;
        }

        return new Problem(Field, $"{Asked(reed, work.AdjustmentKind, work.Amount)} If it has been agreed since, say so here: the log will tell it.");
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

    /// <summary>A remark with the agreement in it, as a sentence of its own.</summary>
    /// <param name="words">The remark, if any.</param>
    public static string With(string? words) => IsIn(words) ? words!
        : words?.Trim() is not { Length: > 0 } remark ? Since
        : $"{remark}{(remark[^1] is '.' or '!' or '?' or '…' ? "" : ".")} {Since}";

    /// <summary>A remark without the agreement, as somebody typed it.</summary>
    /// <param name="words">The remark, if any.</param>
    public static string? Without(string? words) => IsIn(words) ? PlainText.Tidy(words![..^Since.Length]) : words;

    /// <summary>Whether a remark says that the student has agreed.</summary>
    /// <param name="words">The remark, if any.</param>
    public static bool IsIn(string? words) => words?.EndsWith(Since, StringComparison.Ordinal) == true;
}
