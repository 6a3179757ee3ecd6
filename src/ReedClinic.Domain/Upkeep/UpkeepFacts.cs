namespace ReedClinic.Domain.Upkeep;

/// <summary>What is known of the machine that the studio runs on, and of the work it has to do.</summary>
/// <param name="Now">The time.</param>
/// <param name="LastBackup">When the newest back-up was made; null when none is found where the settings say.</param>
/// <param name="DiskFree">Bytes free where sounds and photographs lie; null when the machine doesn't tell.</param>
/// <param name="DiskSize">Bytes that disk has; null when the machine doesn't tell.</param>
/// <param name="WorkDue">How many pieces of work wait, those that failed and will be tried again among them; mails that failed are counted apart.</param>
/// <param name="OldestDue">When the one was asked for that has waited longest; null when nothing waits.</param>
/// <param name="WorkGivenUp">How many pieces of work, mails left out, were given up.</param>
/// <param name="MailIsOn">Whether mail goes anywhere.</param>
/// <param name="MailsFailing">How many mails failed and will be tried again.</param>
/// <param name="MailsGivenUp">How many mails were given up.</param>
/// <param name="MediaBytes">Bytes of sounds and photographs.</param>
/// <param name="MediaCap">How many there may be in the studio.</param>
/// <param name="RecordsBytes">Bytes of the database.</param>
public sealed record UpkeepFacts(
    DateTimeOffset Now,
    DateTimeOffset? LastBackup,
    long? DiskFree,
    long? DiskSize,
    int WorkDue,
    DateTimeOffset? OldestDue,
    int WorkGivenUp,
    bool MailIsOn,
    int MailsFailing,
    int MailsGivenUp,
    long MediaBytes,
    long MediaCap,
    long RecordsBytes)
{
    /// <summary>Bytes free where the database lies; null when the machine doesn't tell, or the database is on a server of its own.</summary>
    public long? RecordsFree { get; init; }

    /// <summary>Bytes that disk has; null when <see cref="RecordsFree"/> is.</summary>
    public long? RecordsSize { get; init; }

    /// <summary>True when the database is on a server of its own, whose disk this program can't see.</summary>
    public bool RecordsAreElsewhere { get; init; }

    /// <summary>True where mail is written into a folder of the machine instead of being sent: nobody gets it.</summary>
    public bool MailGoesToFolder { get; init; }

    /// <summary>True where students find no address to write mail to.</summary>
    public bool NobodyCanWrite { get; init; }

    /// <summary>Work behind the pages that fails just now in this process; empty when all of it goes well.</summary>
    public IReadOnlyList<StumblingWork> Stumbling { get; init; } = [];
}

/// <summary>What an owner keeps an eye on.</summary>
public enum UpkeepMatter
{
    /// <summary>The last back-up.</summary>
    Backup,

    /// <summary>Room on the disk of sounds and photographs.</summary>
    Disk,

    /// <summary>Room on the disk of the records.</summary>
    Records,

    /// <summary>Work that is done later.</summary>
    Work,

    /// <summary>Whoever does it: the work behind the pages.</summary>
    Workers,

    /// <summary>Mail.</summary>
    Mail,

    /// <summary>Sounds and photographs, and how many there may be.</summary>
    Media,
}

/// <summary>How a matter stands.</summary>
public enum UpkeepState
{
    /// <summary>Nothing to do.</summary>
    Well,

    /// <summary>Something to do in the next days.</summary>
    Soon,

    /// <summary>Something to do today.</summary>
    Today,
}
