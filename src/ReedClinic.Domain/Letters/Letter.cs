using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>The letter of a batch: its versions, what was waived, and whether it was sent. It is sent once.</summary>
public sealed class Letter
{
    private readonly List<LetterWaiver> _waivers = [];

    /// <summary>A letter with nothing in it.</summary>
    /// <param name="batch">The batch it is about.</param>
    public Letter(BatchId batch) => Batch = batch;

    /// <summary>The batch it is about.</summary>
    public BatchId Batch { get; private set; }

    /// <summary>The number of its last version; 0 while nothing was saved.</summary>
    public int LastNumber { get; private set; }

    /// <summary>The number of the version that was sent; null until then.</summary>
    public int? SentNumber { get; private set; }

    /// <summary>When it was sent.</summary>
    public DateTimeOffset? SentAt { get; private set; }

    /// <summary>Who sent it.</summary>
    public AccountId? SentBy { get; private set; }

    /// <summary>What sent it: repeating that gives the same answer, anything else is refused.</summary>
    public OperationId? SentWith { get; private set; }

    /// <summary>Changes with every save.</summary>
    public Guid Version { get; private set; }

    /// <summary>What was waived.</summary>
    public IReadOnlyList<LetterWaiver> Waivers => _waivers;

    /// <summary>Whether it was sent.</summary>
    public bool IsSent => SentNumber is not null;

    /// <summary>Keeps another version; the earlier ones stay.</summary>
    /// <param name="payload">The whole letter, as JSON.</param>
    /// <param name="operation">What saved it.</param>
    /// <param name="by">Who saved it.</param>
    /// <param name="at">When.</param>
    /// <exception cref="InvalidOperationException">The letter was sent.</exception>
    public LetterVersion Keep(string payload, OperationId operation, AccountId by, DateTimeOffset at)
    {
        RefuseWhenSent();
        LastNumber++;
        return new LetterVersion(Batch, LastNumber, payload, operation, by, at);
    }

    /// <summary>Sends the letter: one last version, which nothing changes any more.</summary>
    /// <param name="payload">The whole letter, as JSON.</param>
    /// <param name="operation">What sends it.</param>
    /// <param name="by">Who sends it.</param>
    /// <param name="at">When.</param>
    /// <exception cref="InvalidOperationException">The letter was sent.</exception>
    public LetterVersion Send(string payload, OperationId operation, AccountId by, DateTimeOffset at)
    {
        var version = Keep(payload, operation, by, at);
        SentNumber = version.Number;
        SentAt = at;
        SentBy = by;
        SentWith = operation;
        return version;
    }

    /// <summary>Leaves a gap open, with a reason. A later reason takes the place of an earlier one.</summary>
    /// <param name="gap">The gap's key.</param>
    /// <param name="reason">Why.</param>
    /// <param name="by">Who says so.</param>
    /// <param name="at">When.</param>
    /// <exception cref="InvalidOperationException">The letter was sent.</exception>
    public void Waive(string gap, string reason, AccountId by, DateTimeOffset at)
    {
        RefuseWhenSent();
        ArgumentException.ThrowIfNullOrWhiteSpace(reason);
        _waivers.RemoveAll(waiver => waiver.Gap == gap);
        _waivers.Add(new LetterWaiver(Batch, gap, reason, by, at));
    }

    /// <summary>Takes a waiver back.</summary>
    /// <param name="gap">The gap's key.</param>
    /// <exception cref="InvalidOperationException">The letter was sent.</exception>
    public void TakeBackWaiver(string gap)
    {
        RefuseWhenSent();
        _waivers.RemoveAll(waiver => waiver.Gap == gap);
    }

    private void RefuseWhenSent()
    {
        if (IsSent)
        {
            throw new InvalidOperationException("A letter that was sent never changes.");
        }
    }
}

/// <summary>One version of a letter. Versions are only added.</summary>
public sealed class LetterVersion
{
    internal LetterVersion(BatchId batch, int number, string payload, OperationId operation, AccountId savedBy, DateTimeOffset savedAt)
    {
        Batch = batch;
        Number = number;
        Payload = payload;
        Operation = operation;
        SavedBy = savedBy;
        SavedAt = savedAt;
    }

    /// <summary>The batch whose letter it is.</summary>
    public BatchId Batch { get; private set; }

    /// <summary>Its number, from 1.</summary>
    public int Number { get; private set; }

    /// <summary>The whole letter, as JSON; never queried.</summary>
    public string Payload { get; private set; }

    /// <summary>What saved it.</summary>
    public OperationId Operation { get; private set; }

    /// <summary>Who saved it.</summary>
    public AccountId SavedBy { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset SavedAt { get; private set; }
}

/// <summary>A gap that was left open on purpose.</summary>
public sealed class LetterWaiver
{
    /// <summary>The longest reason, in characters.</summary>
    public const int LongestReason = 300;

    internal LetterWaiver(BatchId batch, string gap, string reason, AccountId waivedBy, DateTimeOffset waivedAt)
    {
        Batch = batch;
        Gap = gap;
        Reason = reason;
        WaivedBy = waivedBy;
        WaivedAt = waivedAt;
    }

    /// <summary>The batch whose letter it is.</summary>
    public BatchId Batch { get; private set; }

    /// <summary>The gap's key.</summary>
    public string Gap { get; private set; }

    /// <summary>Why it was left open.</summary>
    public string Reason { get; private set; }

    /// <summary>Who said so.</summary>
    public AccountId WaivedBy { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset WaivedAt { get; private set; }
}
