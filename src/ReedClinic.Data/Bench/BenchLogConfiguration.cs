using Microsoft.EntityFrameworkCore;
using Microsoft.EntityFrameworkCore.Metadata.Builders;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Data.Bench;

/// <summary>
/// The bench log: one table for every kind of entry, with typed columns that the kinds share where they mean the same.
/// </summary>
internal sealed class BenchLogConfiguration :
    IEntityTypeConfiguration<BenchEntry>,
    IEntityTypeConfiguration<Test>,
    IEntityTypeConfiguration<Finding>,
    IEntityTypeConfiguration<LookedFor>,
    IEntityTypeConfiguration<FindingEnded>,
    IEntityTypeConfiguration<LeaveAlone>,
    IEntityTypeConfiguration<Adjustment>,
    IEntityTypeConfiguration<Risk>,
    IEntityTypeConfiguration<RiskClosed>,
    IEntityTypeConfiguration<Note>,
    IEntityTypeConfiguration<Stopped>,
    IEntityTypeConfiguration<Verdict>,
    IEntityTypeConfiguration<AdviceSetAside>,
    IEntityTypeConfiguration<Parked>,
    IEntityTypeConfiguration<CauseJudged>
{
    public void Configure(EntityTypeBuilder<BenchEntry> builder)
    {
        builder.ToTable("BenchLog");
        builder.Ignore(entry => entry.Kind);
        var kind = builder.HasDiscriminator<string>("EntryKind");
        kind.HasValue<Test>(nameof(EntryKind.Test));
        kind.HasValue<Finding>(nameof(EntryKind.Finding));
        kind.HasValue<LookedFor>(nameof(EntryKind.LookedFor));
        kind.HasValue<FindingEnded>(nameof(EntryKind.FindingEnded));
        kind.HasValue<LeaveAlone>(nameof(EntryKind.LeaveAlone));
        kind.HasValue<Adjustment>(nameof(EntryKind.Adjustment));
        kind.HasValue<Risk>(nameof(EntryKind.Risk));
        kind.HasValue<RiskClosed>(nameof(EntryKind.RiskClosed));
        kind.HasValue<Note>(nameof(EntryKind.Note));
        kind.HasValue<Stopped>(nameof(EntryKind.Stopped));
        kind.HasValue<Verdict>(nameof(EntryKind.Verdict));
        kind.HasValue<Undo>(nameof(EntryKind.Undo));
        kind.HasValue<AdviceSetAside>(nameof(EntryKind.AdviceSetAside));
        kind.HasValue<Parked>(nameof(EntryKind.Parked));
        kind.HasValue<CauseJudged>(nameof(EntryKind.CauseJudged));
        builder.Property<string>("EntryKind").HasColumnName("Kind").HasMaxLength(40);

        builder.Property(entry => entry.Said).HasMaxLength(BenchEntry.LongestSaid);

        builder.HasIndex(entry => new { entry.ReedId, entry.Sequence }).IsUnique();
        builder.HasIndex(entry => entry.OperationId).IsUnique();
        builder.HasIndex(entry => entry.Supersedes).IsUnique();

        // Only erasing a person deletes; it takes the person's reeds and their logs with it.
        builder.HasOne<Reed>().WithMany().HasForeignKey(entry => entry.ReedId).OnDelete(DeleteBehavior.Cascade);
    }

    public void Configure(EntityTypeBuilder<Test> builder)
    {
        builder.Property(test => test.TestKind).HasColumnName("TestKind");
        builder.Property(test => test.Step).HasColumnName("Step");
        builder.Property(test => test.Words).IsRemark();
        builder.Ignore(test => test.Pitch);
        builder.Ignore(test => test.StepWord);
        builder.Property<string?>("PitchText").HasMaxLength(SaidPitch.LongestText);
        builder.Property<PitchClass?>("PitchClass");
        builder.Property<Cents?>("PitchCents");
        builder.Property<int?>("PitchOctave");
        builder.Property<PitchClass?>("PitchBetween");
        builder.Property<Hertz?>("PitchA4");
        builder.Property<PitchLean?>("PitchLean");
        builder.Ignore(test => test.Millimetres);
        builder.Ignore(test => test.MeasuredWords);
        builder.Property<int?>("LengthTenths");
        builder.Property(test => test.MeasuredFrom).HasColumnName("MeasuredFrom");
    }

    public void Configure(EntityTypeBuilder<Finding> builder)
    {
        builder.Property(finding => finding.FindingKind).HasColumnName("FindingKind");
        builder.Property(finding => finding.Zone).HasColumnName("Zone");
        builder.Property(finding => finding.Blades).HasColumnName("Blades");
        builder.Property(finding => finding.Sides).HasColumnName("Sides");

        // Several ways of knowing may hold at once, so the names make a list.
        builder.Property(finding => finding.KnownBy).HasColumnName("KnownBy").HasMaxLength(80);
        builder.Property(finding => finding.Words).IsRemark();
        builder.Ignore(finding => finding.Place);
        builder.Ignore(finding => finding.OtherPlace);
    }

    public void Configure(EntityTypeBuilder<LookedFor> builder)
    {
        builder.Property(entry => entry.FindingKind).HasColumnName("FindingKind");
        builder.Property(entry => entry.KnownBy).HasColumnName("KnownBy").HasMaxLength(80);
        builder.Property(entry => entry.Words).IsRemark();
    }

    public void Configure(EntityTypeBuilder<FindingEnded> builder)
    {
        builder.Property(entry => entry.FindingId).HasColumnName("FindingId");
        builder.Property(entry => entry.Words).IsRemark();
    }

    public void Configure(EntityTypeBuilder<LeaveAlone> builder)
    {
        builder.Property(entry => entry.Zone).HasColumnName("Zone");
        builder.Property(entry => entry.Blades).HasColumnName("Blades");
        builder.Property(entry => entry.Sides).HasColumnName("Sides");
        builder.Property(entry => entry.Words).IsRemark();
        builder.Ignore(entry => entry.Place);
    }

    public void Configure(EntityTypeBuilder<Adjustment> builder)
    {
        builder.Property(work => work.Zone).HasColumnName("Zone");
        builder.Property(work => work.Blades).HasColumnName("Blades");
        builder.Property(work => work.Sides).HasColumnName("Sides");
        builder.Property(work => work.ForFindingId).HasColumnName("FindingId");
        builder.Property(work => work.AmountWords).HasMaxLength(Amount.LongestWords);
        builder.Property(work => work.Words).IsRemark();
        builder.Ignore(work => work.Place);
        builder.Ignore(work => work.Amount);

        // The newest work of the whole studio is what is learned from.
        builder.HasIndex(work => work.RecordedAt).HasFilter($"\"Kind\" = '{nameof(EntryKind.Adjustment)}'").HasDatabaseName("IX_BenchLog_NewestWork");
    }

    public void Configure(EntityTypeBuilder<Risk> builder)
    {
        builder.Property(risk => risk.Zone).HasColumnName("Zone");
        builder.Property(risk => risk.Words).IsRemark();
    }

    public void Configure(EntityTypeBuilder<RiskClosed> builder)
    {
        builder.Property(closed => closed.Outcome).HasColumnName("RiskOutcome");
        builder.Property(closed => closed.Words).IsRemark();
    }

    public void Configure(EntityTypeBuilder<Note> builder) => builder.Property(note => note.Words).IsRemark();

    public void Configure(EntityTypeBuilder<Stopped> builder) => builder.Property(stop => stop.Words).IsRemark();

    public void Configure(EntityTypeBuilder<Verdict> builder) => builder.Property(verdict => verdict.Words).IsRemark();

    public void Configure(EntityTypeBuilder<AdviceSetAside> builder) => builder.Property(aside => aside.Words).IsRemark();

    public void Configure(EntityTypeBuilder<Parked> builder) => builder.Property(parked => parked.Words).IsRemark();

    public void Configure(EntityTypeBuilder<CauseJudged> builder)
    {
        builder.Property(word => word.Answer).HasColumnName("CauseAnswer");
        builder.HasIndex(word => word.Cause).HasFilter($"\"Kind\" = '{nameof(EntryKind.CauseJudged)}'").HasDatabaseName("IX_BenchLog_CausesJudged");
    }
}

internal static class BenchColumns
{
    internal static void IsRemark(this PropertyBuilder words) =>
        words.HasColumnName("Words").HasMaxLength(PlainText.LongestRemark);
}
