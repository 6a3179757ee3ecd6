namespace ReedClinic.Domain.Upkeep;

/// <summary>How each matter stands. The borders are our own choices.</summary>
public static class UpkeepRules
{
    /// <summary>A back-up is fresh for so long: a nightly one that was once late.</summary>
    public static TimeSpan FreshBackup { get; } = TimeSpan.FromHours(36);

    /// <summary>After so long without a back-up something is to be done today.</summary>
    public static TimeSpan StaleBackup { get; } = TimeSpan.FromDays(7);

    /// <summary>Work may be due for so long: a worker looks at least every 20 seconds, and a try may take two minutes.</summary>
    public static TimeSpan WorkWaits { get; } = TimeSpan.FromMinutes(10);

    /// <summary>After so long nobody seems to do it.</summary>
    public static TimeSpan WorkStands { get; } = TimeSpan.FromHours(2);

    /// <summary>The least share of the disk, and the least bytes, that should be free.</summary>
    public static (double Share, long Bytes) LittleRoom { get; } = (0.10, 2L << 30);

    /// <summary>Below these the disk is about to be full.</summary>
    public static (double Share, long Bytes) HardlyRoom { get; } = (0.03, 512L << 20);

    /// <summary>From this share of what there may be on, sounds and photographs want a look.</summary>
    public const double MuchMedia = 0.80;

    /// <summary>From this share on, students will soon be refused.</summary>
    public const double TooMuchMedia = 0.95;

    /// <summary>Every matter, each once, in a fixed order.</summary>
    /// <param name="facts">What is known.</param>
    public static IReadOnlyList<(UpkeepMatter Matter, UpkeepState State)> Judge(UpkeepFacts facts)
    {
        ArgumentNullException.ThrowIfNull(facts);
        return
        [
            (UpkeepMatter.Backup, facts.LastBackup is { } last ? Of(facts.Now - last, FreshBackup, StaleBackup) : UpkeepState.Today),
            (UpkeepMatter.Disk, OfDisk(facts.DiskFree, facts.DiskSize)),
            (UpkeepMatter.Records, facts.RecordsAreElsewhere ? UpkeepState.Well : OfDisk(facts.RecordsFree, facts.RecordsSize)),
            (UpkeepMatter.Work, OfWork(facts)),
            (UpkeepMatter.Workers, OfWorkers(facts)),
            (UpkeepMatter.Mail, facts.MailsGivenUp > 0 ? UpkeepState.Today : facts.MailsFailing > 0 || facts.MailGoesToFolder || facts.NobodyCanWrite ? UpkeepState.Soon : UpkeepState.Well),
            (UpkeepMatter.Media, OfMedia(facts)),
        ];
    }

    private static UpkeepState OfDisk(long? bytesFree, long? bytes)
    {
        if ((bytesFree, bytes) is not ({ } free, > 0 and var size))
        {
            return UpkeepState.Soon;
        }

        bool Under((double Share, long Bytes) border) => free < border.Bytes || free < border.Share * size;
        return Under(HardlyRoom) ? UpkeepState.Today : Under(LittleRoom) ? UpkeepState.Soon : UpkeepState.Well;
    }

    private static UpkeepState OfWork(UpkeepFacts facts)
    {
        var waits = facts.OldestDue is { } since ? Of(facts.Now - since, WorkWaits, WorkStands) : UpkeepState.Well;
        return waits == UpkeepState.Well && facts.WorkGivenUp > 0 ? UpkeepState.Soon : waits;
    }

    // It is tried again within half a minute: what has failed for ten doesn't mend by itself.
    private static UpkeepState OfWorkers(UpkeepFacts facts) =>
        facts.Stumbling.Count == 0 ? UpkeepState.Well : facts.Stumbling.Any(one => facts.Now - one.Since > WorkWaits) ? UpkeepState.Today : UpkeepState.Soon;

    private static UpkeepState OfMedia(UpkeepFacts facts)
    {
        var share = facts.MediaCap > 0 ? (double)facts.MediaBytes / facts.MediaCap : 1;
        return share >= TooMuchMedia ? UpkeepState.Today : share >= MuchMedia ? UpkeepState.Soon : UpkeepState.Well;
    }

    private static UpkeepState Of(TimeSpan age, TimeSpan well, TimeSpan soon) =>
        age <= well ? UpkeepState.Well : age <= soon ? UpkeepState.Soon : UpkeepState.Today;
}
