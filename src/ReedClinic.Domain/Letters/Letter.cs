using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>
/// The letter of a batch: its versions, what was waived, and how often it was sent. What was sent never changes; a correction
/// is sent after it, as another sending.
/// </summary>
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

    /// <summary>The number of its newest sending; 0 until it was sent.</summary>
    public int SentOrdinal { get; private set; }

    /// <summary>The number of the version that was sent last; null until one was.</summary>
    public int? SentNumber { get; private set; }

    /// <summary>When it was sent last.</summary>
    public DateTimeOffset? SentAt { get; private set; }

    /// <summary>Who sent it last.</summary>
    public AccountId? SentBy { get; private set; }

    /// <summary>What sent it last: repeating that gives the same answer, anything else is refused.</summary>
    public OperationId? SentWith { get; private set; }

    /// <summary>Since when a correction is being written; null while none is.</summary>
    public DateTimeOffset? CorrectingSince { get; private set; }

    /// <summary>What that correction puts right, as far as it was said.</summary>
    public string? WhatChanged { get; private set; }

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
    /// <exception cref="InvalidOperationException">The letter was sent, and no correction was begun.</exception>
    public LetterVersion Keep(string payload, OperationId operation, AccountId by, DateTimeOffset at)
    {
        if (IsSent && CorrectingSince is null)
        {
            throw new InvalidOperationException("A letter that was sent never changes.");
        }

        LastNumber++;
        return new LetterVersion(Batch, LastNumber, payload, operation, by, at);
    }

    /// <summary>Sends the letter for the first time: one last version, which nothing changes any more.</summary>
    /// <param name="payload">The whole letter, as JSON.</param>
    /// <param name="operation">What sends it.</param>
    /// <param name="by">Who sends it.</param>
    /// <param name="at">When.</param>
    /// <exception cref="InvalidOperationException">The letter was sent.</exception>
    public LetterSent Send(string payload, OperationId operation, AccountId by, DateTimeOffset at)
    {
        RefuseWhenSent();
        return SendNext(payload, null, operation, by, at);
    }

    /// <summary>Begins a correction: a version that says what was sent, word for word. Who reads the letter reads what was sent until the correction is.</summary>
    /// <param name="payload">What was sent last, as JSON.</param>
    /// <param name="operation">What begins it.</param>
    /// <param name="by">Who begins it.</param>
    /// <param name="at">When.</param>
    /// <exception cref="InvalidOperationException">Nothing was sent yet, or one was begun.</exception>
    public LetterVersion BeginCorrection(string payload, OperationId operation, AccountId by, DateTimeOffset at)
    {
        if (!IsSent || CorrectingSince is not null)
        {
            throw new InvalidOperationException("Only a letter that was sent is corrected, and by one correction at a time.");
        }

        (CorrectingSince, WhatChanged) = (at, null);
        return Keep(payload, operation, by, at);
    }

    /// <summary>Drops the correction that was begun; its versions stay in the list of versions.</summary>
    /// <exception cref="InvalidOperationException">None was begun.</exception>
    public void DropCorrection()
    {
        RefuseWithoutCorrection();
        (CorrectingSince, WhatChanged) = (null, null);
    }

    /// <summary>Says what the correction puts right, for whoever reads the letter.</summary>
    /// <param name="words">The words; null takes them back.</param>
    /// <exception cref="InvalidOperationException">None was begun.</exception>
    public void SayWhatChanged(string? words)
    {
        RefuseWithoutCorrection();
        WhatChanged = words;
    }

    /// <summary>Sends the correction as another sending.</summary>
    /// <param name="payload">The whole letter, as JSON.</param>
    /// <param name="operation">What sends it.</param>
    /// <param name="by">Who sends it.</param>
    /// <param name="at">When.</param>
    /// <exception cref="InvalidOperationException">None was begun, or nobody has said what it puts right.</exception>
    public LetterSent SendCorrection(string payload, OperationId operation, AccountId by, DateTimeOffset at)
    {
        RefuseWithoutCorrection();
        var sent = SendNext(payload, WhatChanged ?? throw new InvalidOperationException("A correction says what it puts right."), operation, by, at);
        (CorrectingSince, WhatChanged) = (null, null);
        return sent;
    }

    private LetterSent SendNext(string payload, string? whatChanged, OperationId operation, AccountId by, DateTimeOffset at)
    {
        var version = Keep(payload, operation, by, at);
        SentOrdinal++;
        SentNumber = version.Number;
        SentAt = at;
        SentBy = by;
        SentWith = operation;
        return new LetterSent(version, new LetterSending(Batch, SentOrdinal, version.Number, whatChanged, operation, by, at));
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

    private void RefuseWithoutCorrection()
    {
        if (CorrectingSince is null)
        {
            throw new InvalidOperationException("No correction was begun.");
        }
    }
}

/// <summary>What comes of sending a letter.</summary>
/// <param name="Version">The version that went out.</param>
/// <param name="Sending">The sending.</param>
public sealed record LetterSent(LetterVersion Version, LetterSending Sending);

/// <summary>One time that a letter was sent. Sendings are only added.</summary>
public sealed class LetterSending
{
    /// <summary>The longest words about what was put right, in characters.</summary>
    public const int LongestWhatChanged = 500;

    internal LetterSending(BatchId batch, int ordinal, int versionNumber, string? whatChanged, OperationId operation, AccountId sentBy, DateTimeOffset sentAt)
    {
        Batch = batch;
        Ordinal = ordinal;
        VersionNumber = versionNumber;
        WhatChanged = whatChanged;
        Operation = operation;
        SentBy = sentBy;
        SentAt = sentAt;
    }

    /// <summary>The batch whose letter it is.</summary>
    public BatchId Batch { get; private set; }

    /// <summary>1 for the letter, 2 for its first correction, and so on.</summary>
    public int Ordinal { get; private set; }

    /// <summary>The number of the version that went out.</summary>
    public int VersionNumber { get; private set; }

    /// <summary>What was put right, for whoever reads the letter; null for the first.</summary>
    public string? WhatChanged { get; private set; }

    /// <summary>The letter as it is shown, as UTF-8; null until it was shown once. It is made from the version and what there was to be heard then.</summary>
    public byte[]? Page { get; private set; }

    /// <summary>Lets the page go, because something in it is to be heard and seen no more: it is made again without that.</summary>
    public void LetPageGo() => Page = null;

    /// <summary>What sent it.</summary>
    public OperationId Operation { get; private set; }

    /// <summary>Who sent it.</summary>
    public AccountId SentBy { get; private set; }

    /// <summary>When.</summary>
    public DateTimeOffset SentAt { get; private set; }
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
