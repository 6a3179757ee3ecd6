using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench;

/// <summary>One entry of a bench log.</summary>
/// <param name="Value">A version 7 identifier; it never orders anything.</param>
public readonly record struct EntryId(Guid Value);

/// <summary>
/// Says that an entry belongs to a particular pass: the id of the adjustment that opened it (the first wording of it).
/// </summary>
/// <param name="Value">The opening adjustment's own identifier.</param>
public readonly record struct PassId(Guid Value);

/// <summary>What a log entry is.</summary>
public enum EntryKind
{
    /// <summary>How the reed played under one test.</summary>
    Test,

    /// <summary>Something found on the reed.</summary>
    Finding,

    /// <summary>Something that was looked for and isn't there.</summary>
    LookedFor,

    /// <summary>How a finding ended.</summary>
    FindingEnded,

    /// <summary>A place that is not to be touched.</summary>
    LeaveAlone,

    /// <summary>Something done to the reed.</summary>
    Adjustment,

    /// <summary>A risk named before acting.</summary>
    Risk,

    /// <summary>What became of a risk.</summary>
    RiskClosed,

    /// <summary>A remark.</summary>
    Note,

    /// <summary>The decision to stop.</summary>
    Stopped,

    /// <summary>How the reed leaves the bench.</summary>
    Verdict,

    /// <summary>Takes back the wording before it.</summary>
    Undo,

    /// <summary>A piece of advice that was shown at the bench and set aside.</summary>
    AdviceSetAside,

    /// <summary>The reed was put aside for now.</summary>
    Parked,

    /// <summary>A teacher’s word on a likely cause.</summary>
    CauseJudged,
}

/// <summary>Where, when and by whom an entry was put in the log.</summary>
/// <param name="Id">The entry's own id.</param>
/// <param name="ReedId">The reed whose log it is in.</param>
/// <param name="Sequence">Its place in that log, from 1; no two entries of a reed share it.</param>
/// <param name="OperationId">The operation that wrote it; no two entries share it.</param>
/// <param name="RecordedAt">When it was saved.</param>
/// <param name="RecordedBy">Who said it.</param>
/// <param name="Supersedes">The entry that it replaces: always the last one of that fact.</param>
/// <param name="PassId">The pass it belongs to, when that isn't the pass in which it was said.</param>
public readonly record struct EntryStamp(
    EntryId Id,
    ReedId ReedId,
    int Sequence,
    OperationId OperationId,
    DateTimeOffset RecordedAt,
    AccountId RecordedBy,
    EntryId? Supersedes = null,
    PassId? PassId = null);

/// <summary>
/// One line of a reed's log. Entries never change and are never deleted: a later entry supersedes an earlier one.
/// </summary>
/// <remarks>
/// A factory of each kind makes an entry that is not in any log yet (sequence 0); <see cref="StampedWith"/> puts it in one.
/// A <em>fact</em> is a chain of entries linked by <see cref="Supersedes"/>; other entries name a fact by its first entry.
/// </remarks>
public abstract class BenchEntry
{
    /// <summary>The longest words that are kept as they were typed, in UTF-16 characters: those of a whole line.</summary>
    public const int LongestSaid = PlainText.LongestRemark;

    private protected BenchEntry()
    {
    }

    /// <summary>The entry's own id.</summary>
    public EntryId Id { get; private set; }

    /// <summary>The reed whose log it is in.</summary>
    public ReedId ReedId { get; private set; }

    /// <summary>Its place in that log, from 1; 0 while it is in none.</summary>
    public int Sequence { get; private set; }

    /// <summary>The operation that wrote it.</summary>
    public OperationId OperationId { get; private set; }

    /// <summary>The entry that it replaces, if any.</summary>
    public EntryId? Supersedes { get; private set; }

    /// <summary>The pass it belongs to, when that isn't the pass in which it was said.</summary>
    public PassId? PassId { get; private set; }

    /// <summary>When it was saved.</summary>
    public DateTimeOffset RecordedAt { get; private set; }

    /// <summary>Who said it.</summary>
    public AccountId RecordedBy { get; private set; }

    /// <summary>
    /// The words it came from as they were typed at the bench, up to <see cref="LongestSaid"/>; null where it came from no line. They are bench
    /// talk: no letter, mail or page of a student’s reads them; the copy that people take of their records has them, as the rest of the log.
    /// </summary>
    public string? Said { get; private set; }

    /// <summary>What kind of entry it is.</summary>
    public abstract EntryKind Kind { get; }

    /// <summary>The same entry with the words that it came from.</summary>
    /// <param name="words">As they were typed. What is longer than a line can be is from none, and isn’t kept.</param>
    /// <returns>A copy; this one stays as it is.</returns>
    public BenchEntry AsSaid(string? words)
    {
        var copy = (BenchEntry)MemberwiseClone();
        copy.Said = PlainText.Tidy(words) is { Length: <= LongestSaid } said ? said : null;
        return copy;
    }

    /// <summary>The same entry with its place in a log.</summary>
    /// <param name="stamp">Where, when and by whom.</param>
    /// <returns>A copy; this one stays as it is.</returns>
    public BenchEntry StampedWith(EntryStamp stamp)
    {
        var copy = (BenchEntry)MemberwiseClone();
        copy.Id = stamp.Id;
        copy.ReedId = stamp.ReedId;
        copy.Sequence = stamp.Sequence;
        copy.OperationId = stamp.OperationId;
        copy.Supersedes = stamp.Supersedes;
        copy.PassId = stamp.PassId;
        copy.RecordedAt = stamp.RecordedAt;
        copy.RecordedBy = stamp.RecordedBy;
        return copy;
    }
}
