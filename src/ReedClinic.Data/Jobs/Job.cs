using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;

namespace ReedClinic.Data.Jobs;

/// <summary>Kinds of work that is done later, by a worker.</summary>
public enum JobKind
{
    /// <summary>A letter to be sent by e-mail.</summary>
    Mail,

    /// <summary>Letting go of what has been kept long enough.</summary>
    Retention,

    /// <summary>Taking what deleted rows leave behind in the file.</summary>
    Sweep,

    /// <summary>Keeping files and the rows about them in step.</summary>
    Media,

    /// <summary>Counting how often what was found turns up in the studio.</summary>
    Rates,

    /// <summary>Reading what a kept sound says; it knows the recording's id and nothing else.</summary>
    Sound,
}

/// <summary>What became of a mail that is done.</summary>
public enum MailWay
{
    /// <summary>The mail server has it.</summary>
    Posted,

    /// <summary>It was written into a folder of the machine: nobody gets it.</summary>
    Folder,
}

/// <summary>
/// Work that is done later, once. It is saved with what asked for it, so that neither is ever there without the other; a
/// worker leases it, and when the worker dies the lease runs out and another one takes it.
/// </summary>
public sealed class Job
{
    /// <summary>The longest reason that is kept for a try that failed: a few words of ours, never what somebody wrote.</summary>
    public const int LongestProblem = 200;

    /// <summary>Which; for mail it is the message's own id too, so that a repeated message can be known as one.</summary>
    public Guid Id { get; init; }

    /// <summary>What is to be done.</summary>
    public JobKind Kind { get; init; }

    /// <summary>What the worker needs to know, sealed; emptied when the work is done.</summary>
    public string Payload { get; set; } = "";

    /// <summary>The person it is about: their erasure takes it along.</summary>
    public Guid? About { get; init; }

    /// <summary>What mustn't be asked for twice; null when it may.</summary>
    public string? Once { get; init; }

    /// <summary>When it was asked for.</summary>
    public DateTimeOffset MadeAt { get; init; }

    /// <summary>When it may be tried next.</summary>
    public DateTimeOffset DueAt { get; set; }

    /// <summary>How often it was tried.</summary>
    public int Attempts { get; set; }

    /// <summary>The lease of the worker that has it; null while none has.</summary>
    public Guid? Lease { get; set; }

    /// <summary>Until when that worker has it for itself.</summary>
    public DateTimeOffset? LeasedUntil { get; set; }

    /// <summary>When it was done.</summary>
    public DateTimeOffset? DoneAt { get; set; }

    /// <summary>How a mail was done; null for other work, and where it was done before this was kept.</summary>
    public MailWay? Way { get; set; }

    /// <summary>When it was given up; somebody has to look.</summary>
    public DateTimeOffset? GaveUpAt { get; set; }

    /// <summary>Why the last try failed.</summary>
    public string? Problem { get; set; }
}

internal sealed class JobConfiguration : IEntityTypeConfiguration<Job>
{
    public void Configure(EntityTypeBuilder<Job> builder)
    {
        builder.ToTable("Jobs");
        builder.Property(job => job.Id).ValueGeneratedNever();
        builder.Property(job => job.Once).HasMaxLength(100);
        builder.Property(job => job.Problem).HasMaxLength(Job.LongestProblem);
        builder.HasIndex(job => job.Once).IsUnique();
        builder.HasIndex(job => job.DueAt);
        builder.HasIndex(job => job.About);
    }
}
