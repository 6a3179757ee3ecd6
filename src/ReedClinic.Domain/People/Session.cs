namespace ReedClinic.Domain.People;

/// <summary>How somebody proved who they are.</summary>
public enum SignInWay
{
    /// <summary>A password alone.</summary>
    Password,

    /// <summary>A password and a code from an authenticator app.</summary>
    PasswordAndCode,

    /// <summary>A password and one of the codes kept for a bad day.</summary>
    PasswordAndRecoveryCode,

    /// <summary>A passkey, which is two factors in one: the device, and what unlocks it.</summary>
    Passkey,

    /// <summary>A link that was sent to their address.</summary>
    Link,
}

/// <summary>How long somebody stays signed in. OWASP ASVS 5.0: 7.1.1, 7.3.1, 7.3.2; the lengths are our own.</summary>
public static class SessionRules
{
    /// <summary>A student who does nothing for so long is signed out.</summary>
    public static TimeSpan StudentIdle { get; } = TimeSpan.FromHours(12);

    /// <summary>A student signs in again after so long, whatever they did.</summary>
    public static TimeSpan StudentLongest { get; } = TimeSpan.FromDays(14);

    /// <summary>Whoever works here and does nothing for so long is signed out.</summary>
    public static TimeSpan StaffIdle { get; } = TimeSpan.FromHours(2);

    /// <summary>Whoever works here signs in again after so long, whatever they did.</summary>
    public static TimeSpan StaffLongest { get; } = TimeSpan.FromHours(12);

    /// <summary>For so long after a sign-in, what can't be taken back may be done without another one.</summary>
    public static TimeSpan FreshFor { get; } = TimeSpan.FromMinutes(10);

    /// <summary>The most browsers one account is signed in with; a further one ends the one that was quiet longest.</summary>
    public const int Most = 20;

    /// <summary>True when staff rights may be used in a session that began this way: a password alone isn't enough.</summary>
    /// <param name="way">How it began.</param>
    public static bool IsStrong(this SignInWay way) =>
        way is SignInWay.PasswordAndCode or SignInWay.PasswordAndRecoveryCode or SignInWay.Passkey;
}

/// <summary>One browser that somebody is signed in with. It stands in the database, so that it can be ended from elsewhere.</summary>
public sealed class Session
{
    /// <summary>The longest description of a browser that is kept, in characters.</summary>
    public const int LongestDevice = 80;

    // For the database, which sets every property.
    private Session()
    {
    }

    /// <summary>Begins one.</summary>
    /// <param name="id">Random.</param>
    /// <param name="account">Who.</param>
    /// <param name="way">How they proved it.</param>
    /// <param name="staff">True for an account that holds a staff role: shorter limits.</param>
    /// <param name="device">What browser it is, in a few words.</param>
    /// <param name="now">When.</param>
    public Session(SessionId id, AccountId account, SignInWay way, bool staff, string device, DateTimeOffset now)
    {
        ArgumentNullException.ThrowIfNull(device);
        Id = id;
        Account = account;
        Way = way;
        Device = device.Length > LongestDevice ? device[..LongestDevice] : device;
        StartedAt = SeenAt = FreshAt = now;
        Idle = staff ? SessionRules.StaffIdle : SessionRules.StudentIdle;
        EndsAt = now + (staff ? SessionRules.StaffLongest : SessionRules.StudentLongest);
    }

    /// <summary>Which one.</summary>
    public SessionId Id { get; private set; }

    /// <summary>Who.</summary>
    public AccountId Account { get; private set; }

    /// <summary>How they proved who they are.</summary>
    public SignInWay Way { get; private set; }

    /// <summary>What browser it is, in a few words.</summary>
    public string Device { get; private set; } = "";

    /// <summary>When it began.</summary>
    public DateTimeOffset StartedAt { get; private set; }

    /// <summary>When something was last done in it, to the minute.</summary>
    public DateTimeOffset SeenAt { get; private set; }

    /// <summary>When they last proved who they are.</summary>
    public DateTimeOffset FreshAt { get; private set; }

    /// <summary>How long nothing may be done before it ends.</summary>
    public TimeSpan Idle { get; private set; }

    /// <summary>When it ends, whatever is done.</summary>
    public DateTimeOffset EndsAt { get; private set; }

    /// <summary>When it was ended by somebody; null while it wasn't.</summary>
    public DateTimeOffset? EndedAt { get; private set; }

    /// <summary>True while it may be used.</summary>
    /// <param name="now">The time.</param>
    public bool IsLive(DateTimeOffset now) => EndedAt is null && now < EndsAt && now - SeenAt < Idle;

    /// <summary>True while what can't be taken back may be done.</summary>
    /// <param name="now">The time.</param>
    public bool IsFresh(DateTimeOffset now) => now - FreshAt < SessionRules.FreshFor;

    /// <summary>Something was done in it.</summary>
    /// <param name="now">When.</param>
    public void See(DateTimeOffset now) => SeenAt = now > SeenAt ? now : SeenAt;

    /// <summary>Ends it; ended once, it stays so.</summary>
    /// <param name="now">When.</param>
    public void End(DateTimeOffset now) => EndedAt ??= now;
}
