using Microsoft.Extensions.Localization;
using ReedClinic.Domain.Upkeep;
using ReedClinic.Web.Shared.Hosting;

namespace ReedClinic.Web.Features.Upkeep;

/// <summary>How a matter stands, in sentences: first what is, then what to do about it.</summary>
public static class UpkeepWords
{
    /// <summary>What is.</summary>
    /// <param name="words">The page's words.</param>
    /// <param name="facts">What is known.</param>
    /// <param name="matter">The matter.</param>
    public static string Standing(IStringLocalizer<UpkeepText> words, UpkeepFacts facts, UpkeepMatter matter)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(facts);
        return matter switch
        {
            UpkeepMatter.Backup => facts.LastBackup is { } last ? words["BackupMade", Age(words, facts.Now - last)] : words["BackupNone"],
            UpkeepMatter.Disk => facts is { DiskFree: { } free, DiskSize: { } size } ? words["DiskFree", Room(free), Room(size)] : words["DiskUntold"],
            UpkeepMatter.Records => OfRecords(words, facts),
            UpkeepMatter.Work => OfWork(words, facts),
            UpkeepMatter.Workers => OfWorkers(words, facts),
            UpkeepMatter.Mail => OfMail(words, facts),
            _ => words["MediaRoom", Room(facts.MediaBytes), Room(facts.MediaCap)],
        };
    }

    /// <summary>What to do about it.</summary>
    /// <param name="words">The page's words.</param>
    /// <param name="facts">What is known.</param>
    /// <param name="matter">The matter, which doesn't stand well.</param>
    public static string ToDo(IStringLocalizer<UpkeepText> words, UpkeepFacts facts, UpkeepMatter matter)
    {
        ArgumentNullException.ThrowIfNull(words);
        ArgumentNullException.ThrowIfNull(facts);
        return matter switch
        {
            UpkeepMatter.Backup => words["DoBackup"],
            UpkeepMatter.Disk => facts.DiskFree is null ? words["DoDiskUntold"] : words["DoDisk"],
            UpkeepMatter.Records => facts.RecordsFree is null ? words["DoDiskUntold"] : words["DoRecords"],
            UpkeepMatter.Workers => words["DoWorkers"],
            UpkeepMatter.Work => facts.OldestDue is null ? words["DoWorkGivenUp"] : words["DoWork"],
            UpkeepMatter.Mail => ToDoForMail(words, facts),
            _ => words["DoMedia"],
        };
    }

    /// <summary>An age as people say it: less than a minute, minutes, hours or days.</summary>
    /// <param name="words">The page's words.</param>
    /// <param name="age">The age.</param>
    public static string Age(IStringLocalizer<UpkeepText> words, TimeSpan age)
    {
        ArgumentNullException.ThrowIfNull(words);
        return age.TotalMinutes < 1 ? words["AgeMoment"]
            : age.TotalHours < 2 ? Count(words, "AgeMinutes", (int)age.TotalMinutes)
            : age.TotalDays < 2 ? Count(words, "AgeHours", (int)age.TotalHours)
            : Count(words, "AgeDays", (int)age.TotalDays);
    }

    /// <summary>Bytes as people say them, in steps of a thousand (SI).</summary>
    /// <param name="bytes">How many.</param>
    public static string Room(long bytes)
    {
        (double Size, string Unit)[] units = [(1e12, "TB"), (1e9, "GB"), (1e6, "MB"), (1e3, "kB")];
        foreach (var (size, unit) in units)
        {
            if (bytes >= size)
            {
                var many = bytes / size;
                return many.ToString(many < 10 ? "0.0" : "0", Language.British) + "\u00a0" + unit;
            }
        }

        return bytes.ToString(Language.British) + "\u00a0B";
    }

    private static string OfWork(IStringLocalizer<UpkeepText> words, UpkeepFacts facts)
    {
        var due = facts.OldestDue is { } since ? words["WorkDue", Count(words, "Pieces", facts.WorkDue), Age(words, facts.Now - since)] : words["WorkDone"];
        return facts.WorkGivenUp == 0 ? due : $"{due} {words["WorkGivenUp", Count(words, "Pieces", facts.WorkGivenUp)]}";
    }

    private static string OfRecords(IStringLocalizer<UpkeepText> words, UpkeepFacts facts) => facts switch
    {
        { RecordsAreElsewhere: true } => words["RecordsDiskElsewhere", Room(facts.RecordsBytes)],
        { RecordsFree: { } free, RecordsSize: { } size } => words["RecordsDiskFree", Room(free), Room(size), Room(facts.RecordsBytes)],
        _ => words["RecordsDiskUntold", Room(facts.RecordsBytes)],
    };

    private static string OfWorkers(IStringLocalizer<UpkeepText> words, UpkeepFacts facts) => facts.Stumbling.Count == 0
        ? words["WorkersWell"]
        : string.Join(' ', facts.Stumbling.Select(one => one.Times == 1
            ? words["StumblingOne", words[$"Work{one.Work}"], Age(words, facts.Now - one.Since)].Value
            : words["StumblingMany", words[$"Work{one.Work}"], one.Times, Age(words, facts.Now - one.Since)].Value));

    private static string OfMail(IStringLocalizer<UpkeepText> words, UpkeepFacts facts)
    {
        var on = facts.MailGoesToFolder ? words["MailFolder"] : facts.MailIsOn ? words["MailOn"] : words["MailOff"];
        var failing = facts.MailsFailing == 0 ? on : $"{on} {Count(words, "MailsFailing", facts.MailsFailing)}";
        var given = facts.MailsGivenUp == 0 ? failing : $"{failing} {Count(words, "MailsGivenUp", facts.MailsGivenUp)}";
        return facts.NobodyCanWrite ? $"{given} {words["NobodyWrites"]}" : given;
    }

    private static string ToDoForMail(IStringLocalizer<UpkeepText> words, UpkeepFacts facts)
    {
        string?[] todo =
        [
            facts.MailsFailing > 0 || facts.MailsGivenUp > 0 ? words["DoMail"].Value : facts.MailGoesToFolder ? words["DoMailFolder"].Value : null,
            facts.NobodyCanWrite ? words["DoNobodyWrites"].Value : null,
        ];
        return todo.Any(line => line is not null) ? string.Join(' ', todo.OfType<string>()) : words["DoMail"];
    }

    private static string Count(IStringLocalizer<UpkeepText> words, string key, int count) => count == 1 ? words[$"{key}One"] : words[$"{key}Many", count];
}
