using ReedClinic.Domain.People;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>A private link to a sent letter.</summary>
/// <param name="Value">A version 7 identifier. It opens nothing: the link's secret does.</param>
public readonly record struct LetterLinkId(Guid Value);

/// <summary>
/// A private link to a letter that was sent: whoever has it reads that letter, and nothing else, until its time is over or it
/// is closed. Only a hash of its secret is kept.
/// </summary>
public sealed class LetterLink
{
    /// <summary>For how many days a link may be good; the second is usual. Our own choice.</summary>
    public static readonly IReadOnlyList<int> Lives = [7, 30, 90];

    /// <summary>For how many days one is good that a mail brings.</summary>
    public const int UsualDays = 30;

    /// <summary>The most open links that one letter has at a time: our own choice; more would be lost sight of.</summary>
    public const int MostOpen = 20;

    // For the database, which sets every property.
    private LetterLink()
    {
    }

    /// <summary>Makes one.</summary>
    /// <param name="id">Which.</param>
    /// <param name="batch">The batch whose letter it opens.</param>
    /// <param name="secretHash">SHA-256 of its secret, in hexadecimal.</param>
    /// <param name="madeBy">Who made it; null when a mail about the letter brought it.</param>
    /// <param name="operation">What made it: the form's operation, or the mail's own id.</param>
    /// <param name="madeAt">When.</param>
    /// <param name="days">For how many days it is good.</param>
    public LetterLink(LetterLinkId id, BatchId batch, string secretHash, AccountId? madeBy, OperationId operation, DateTimeOffset madeAt, int days)
    {
        Id = id;
        Batch = batch;
        MadeBy = madeBy;
        Operation = operation;
        Renew(secretHash, madeAt, days);
    }

    /// <summary>Which one.</summary>
    public LetterLinkId Id { get; private set; }

    /// <summary>The batch whose letter it opens.</summary>
    public BatchId Batch { get; private set; }

    /// <summary>SHA-256 of its secret.</summary>
    public string SecretHash { get; private set; } = "";

    /// <summary>When it was made, or its secret was made anew.</summary>
    public DateTimeOffset MadeAt { get; private set; }

    /// <summary>Who made it; null when a mail about the letter brought it.</summary>
    public AccountId? MadeBy { get; private set; }

    /// <summary>Until when it is good.</summary>
    public DateTimeOffset ExpiresAt { get; private set; }

    /// <summary>When it was closed; null while nobody did.</summary>
    public DateTimeOffset? ClosedAt { get; private set; }

    /// <summary>When it was opened last; null while nobody did. Some mail programs open links by themselves.</summary>
    public DateTimeOffset? LastOpenedAt { get; private set; }

    /// <summary>What made it: the form's operation, or the mail's own id.</summary>
    public OperationId Operation { get; private set; }

    /// <summary>Changes with every save: one that is closed at the same moment isn't opened again by a mail that is tried once more.</summary>
    public Guid Version { get; private set; }

    /// <summary>True while it opens its letter, as far as the link itself decides.</summary>
    /// <param name="now">The time.</param>
    public bool IsOpen(DateTimeOffset now) => ClosedAt is null && now < ExpiresAt;

    /// <summary>
    /// Gives it another secret, so that the former opens nothing any more: a mail that is tried again can't know its former
    /// one. One that was closed stays closed.
    /// </summary>
    /// <param name="secretHash">SHA-256 of the new secret.</param>
    /// <param name="now">When.</param>
    /// <param name="days">For how many days it is good from now on.</param>
    /// <returns>False when it was closed.</returns>
    public bool Renew(string secretHash, DateTimeOffset now, int days)
    {
        if (ClosedAt is not null)
        {
            return false;
        }

        SecretHash = secretHash;
        MadeAt = now;
        ExpiresAt = now.AddDays(days);
        return true;
    }

    /// <summary>Closes it for good.</summary>
    /// <param name="now">When.</param>
    public void Close(DateTimeOffset now) => ClosedAt ??= now;
}
