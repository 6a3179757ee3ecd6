namespace ReedClinic.Domain.People;

/// <summary>What a one-time link is good for.</summary>
public enum TicketPurpose
{
    /// <summary>Choosing a new password.</summary>
    NewPassword,

    /// <summary>Showing that a new e-mail address is one's own.</summary>
    NewEmail,

    /// <summary>Making a teacher's account.</summary>
    JoinAsTeacher,

    /// <summary>Making a student's account.</summary>
    JoinAsStudent,

    /// <summary>Starting a batch without an account.</summary>
    Begin,

    /// <summary>Answering for a student as their guardian.</summary>
    Guardian,
}

/// <summary>
/// A one-time link that was sent to one address. Only a hash of its secret is kept: whoever reads the database can open
/// nothing with it. OWASP ASVS 5.0: 6.4.1 (random, expires, used once), 6.5.1.
/// </summary>
public sealed class Ticket
{
    /// <summary>The bytes of a secret: 256 bits from a random source made for it.</summary>
    public const int SecretBytes = 32;

    /// <summary>The characters of a stored hash: SHA-256 in hexadecimal.</summary>
    public const int HashLength = 64;

    private AccountId? _account;

    // For the database, which sets every property.
    private Ticket()
    {
    }

    /// <summary>Makes one.</summary>
    /// <param name="id">Which.</param>
    /// <param name="purpose">What it is good for.</param>
    /// <param name="secretHash">SHA-256 of its secret, in hexadecimal.</param>
    /// <param name="email">The one address it is sent to.</param>
    /// <param name="madeAt">When.</param>
    /// <param name="life">How long it is good; see <see cref="LifeOf"/>.</param>
    public Ticket(TicketId id, TicketPurpose purpose, string secretHash, string email, DateTimeOffset madeAt, TimeSpan life)
    {
        Id = id;
        Purpose = purpose;
        SecretHash = secretHash;
        Email = email;
        FoldedEmail = Folding.OfEmail(email);
        MadeAt = madeAt;
        ExpiresAt = madeAt + life;
    }

    /// <summary>Which one.</summary>
    public TicketId Id { get; private set; }

    /// <summary>What it is good for.</summary>
    public TicketPurpose Purpose { get; private set; }

    /// <summary>SHA-256 of its secret.</summary>
    public string SecretHash { get; private set; } = "";

    /// <summary>The one address it is sent to.</summary>
    public string Email { get; private set; } = "";

    /// <summary>The address as it is compared.</summary>
    public string FoldedEmail { get; private set; } = "";

    /// <summary>The account it is for, where there is one.</summary>
    public AccountId? Account { get => _account; init => _account = value; }

    /// <summary>The student it is for, where there is one.</summary>
    public StudentId? Student { get; init; }

    /// <summary>Who asked for it; null when the address itself did.</summary>
    public AccountId? MadeBy { get; init; }

    /// <summary>When it was made.</summary>
    public DateTimeOffset MadeAt { get; private set; }

    /// <summary>Until when it is good.</summary>
    public DateTimeOffset ExpiresAt { get; private set; }

    /// <summary>When it was used; it is good once.</summary>
    public DateTimeOffset? UsedAt { get; private set; }

    /// <summary>When it was taken back.</summary>
    public DateTimeOffset? WithdrawnAt { get; private set; }

    /// <summary>SHA-256 of the secret of the browser that opened it first, for a link that stays with one browser.</summary>
    public string? DeviceHash { get; private set; }

    /// <summary>Changes with every save: of two who use it at once, one gets in.</summary>
    public Guid Version { get; private set; }

    /// <summary>How long a link of this purpose is good. A new password: OWASP ASVS 5.0, 6.4; the others are our own.</summary>
    /// <param name="purpose">The purpose.</param>
    public static TimeSpan LifeOf(TicketPurpose purpose) => purpose switch
    {
        TicketPurpose.NewPassword or TicketPurpose.NewEmail => TimeSpan.FromMinutes(60),
        TicketPurpose.Begin => TimeSpan.FromDays(3),
        _ => TimeSpan.FromDays(14),
    };

    /// <summary>True while it may be used.</summary>
    /// <param name="now">The time.</param>
    public bool IsGood(DateTimeOffset now) => UsedAt is null && WithdrawnAt is null && now < ExpiresAt;

    /// <summary>Uses it up.</summary>
    /// <param name="now">When.</param>
    public void Use(DateTimeOffset now) => UsedAt ??= now;

    /// <summary>Takes it back; one that was used stays used.</summary>
    /// <param name="now">When.</param>
    public void Withdraw(DateTimeOffset now) => WithdrawnAt ??= UsedAt is null ? now : null;

    /// <summary>Says whose account it opened, when that wasn't known as it was made.</summary>
    /// <param name="account">The account.</param>
    public void Open(AccountId account) => _account ??= account;

    /// <summary>Ties it to the browser that opened it first.</summary>
    /// <param name="deviceHash">SHA-256 of that browser's secret.</param>
    /// <returns>False when another browser was first.</returns>
    public bool StayWith(string deviceHash)
    {
        DeviceHash ??= deviceHash;
        return DeviceHash == deviceHash;
    }
}
