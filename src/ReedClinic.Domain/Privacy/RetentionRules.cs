namespace ReedClinic.Domain.Privacy;

/// <summary>How long things are kept. The table in docs/privacy/README.md says the same in words; the lengths are our own choices.</summary>
public static class RetentionRules
{
    /// <summary>An intake or a bench draft that nobody touched.</summary>
    public static TimeSpan UntouchedDraft { get; } = TimeSpan.FromDays(180);

    /// <summary>A one-time link, after it was used, was withdrawn or ran out.</summary>
    public static TimeSpan EndedTicket { get; } = TimeSpan.FromDays(30);

    /// <summary>The name and address of a guardian who was asked and never answered, after their link ran out.</summary>
    public static TimeSpan UnansweredGuardian { get; } = TimeSpan.FromDays(30);

    /// <summary>A session, after it ended. The last one of an account stays, as the sign that somebody was here.</summary>
    public static TimeSpan EndedSession { get; } = TimeSpan.FromDays(30);

    /// <summary>A job, after it was done or given up.</summary>
    public static TimeSpan EndedJob { get; } = TimeSpan.FromDays(30);

    /// <summary>A mail that couldn't be sent, because mail is off, say: it is given up then.</summary>
    public static TimeSpan UnsentMail { get; } = TimeSpan.FromDays(14);

    /// <summary>The job of the mail that told somebody that their records will go, after it was sent or given up.</summary>
    public static TimeSpan SentNotice { get; } = TimeSpan.FromDays(90);

    /// <summary>The note that makes a repeated form a no-op.</summary>
    public static TimeSpan DoneOperation { get; } = TimeSpan.FromDays(90);

    /// <summary>How long before their records go somebody is written to.</summary>
    public static TimeSpan Notice { get; } = TimeSpan.FromDays(30);

    /// <summary>True when something is kept no longer.</summary>
    /// <param name="since">What its time runs from.</param>
    /// <param name="kept">How long it is kept.</param>
    /// <param name="now">The time.</param>
    public static bool IsOver(DateTimeOffset since, TimeSpan kept, DateTimeOffset now) => now - since >= kept;

    /// <summary>What is to be done about somebody's records.</summary>
    /// <param name="lastSign">Their last sign of life.</param>
    /// <param name="keepYears">How many years the studio keeps records after it.</param>
    /// <param name="noticeAt">When they were last told that their records will go; null when never.</param>
    /// <param name="canBeTold">False when no address is known, or when mail to it was given up.</param>
    /// <param name="now">The time.</param>
    public static RecordsCare CareFor(DateTimeOffset lastSign, int keepYears, DateTimeOffset? noticeAt, bool canBeTold, DateTimeOffset now)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(keepYears, 1);
        var goes = lastSign.AddYears(keepYears);
        if (now < goes - Notice)
        {
            return RecordsCare.Keep;
        }

        // A notice from before the last sign of life was about another time. Who can't be told is kept for another notice's length:
        // not for ever, because nobody could answer for that.
        return (noticeAt, canBeTold) switch
        {
            ({ } told, _) when told >= lastSign => now >= goes && now - told >= Notice ? RecordsCare.LetGo : RecordsCare.Keep,
            (_, true) => RecordsCare.Tell,
            _ => now >= goes + Notice ? RecordsCare.LetGo : RecordsCare.Keep,
        };
    }
}

/// <summary>What is to be done about somebody's records.</summary>
public enum RecordsCare
{
    /// <summary>Nothing.</summary>
    Keep,

    /// <summary>They are to be told that their records will go.</summary>
    Tell,

    /// <summary>They are to go.</summary>
    LetGo,
}
