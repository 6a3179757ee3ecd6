using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Bench.Advice;

/// <summary>What the rules of advice look at: the log as it stood before the work that is planned.</summary>
internal sealed class AdviceMatter
{
    private readonly List<LiveFact<Test>> tests;
    private readonly List<LiveFact<Adjustment>> work;
    private readonly ClipEffect? studio;

    internal AdviceMatter(BenchLog log, Reed reed, Batch batch, PlannedWork? planned, ClipEffect? studio)
    {
        (Log, Reed, Batch, Planned, this.studio) = (log, reed, batch, planned, studio);
        var until = Until = planned?.Recorded is { } recorded && log.FactOf(recorded) is { } fact ? fact.Sequence : int.MaxValue;
        tests = [.. log.Counting.Where(test => test.Sequence < until).OrderBy(test => test.Pass).ThenBy(test => test.Sequence)];
        work = [.. log.Work.Where(done => done.Sequence < until)];
        Crows = [.. tests.Where(test => test.Now is { TestKind: TestKind.Crow, Pitch: not null })];
        Efforts = [.. tests.Where(test => test.Now is { TestKind: TestKind.Effort, Step: not null })];
        Length = ReedLengths.Left(log, until);
        Floor = ReedLengths.FloorOf(batch.Instrument, batch.Scrape);
    }

    internal BenchLog Log { get; }

    /// <summary>True when the work stops here, or is being said to.</summary>
    internal bool Stops { get => field || Log.IsStopped; init; }

    /// <summary>True when the work stops here and none is planned: what would be said for the next step is said to nobody.</summary>
    internal bool IsOver => Stops && Planned is null;

    /// <summary>The place in the log of the work that is planned.</summary>
    internal int Until { get; }

    internal Reed Reed { get; }

    internal Batch Batch { get; }

    internal PlannedWork? Planned { get; }

    internal IReadOnlyList<LiveFact<Test>> Crows { get; }

    internal IReadOnlyList<LiveFact<Test>> Efforts { get; }

    internal IReadOnlyList<LiveFact<Adjustment>> Work => work;

    internal LengthLeft? Length { get; }

    internal LengthFloor? Floor { get; }

    /// <summary>The clip’s effect that is counted with; null where nothing is known.</summary>
    internal ClipEffect? Clip => studio ?? (Batch.Instrument is null or Reeds.Instrument.Oboe ? ClipEffect.OfABeam : null);

    internal CrowStand Crow => Crows.Count == 0 ? CrowStand.NotHeard : StandOf(Crows[^1]);

    internal int? Effort => Efforts.Count == 0 ? null : Efforts[^1].Now.Step;

    internal bool IsEasy => Effort <= 1;

    internal bool IsHard => Effort >= 3;

    internal string TargetName => Batch.CrowTarget.PitchClass.Name;

    internal bool Plans(Func<AdjustmentKindId, bool> sort) => Planned is { } plan && sort(plan.Kind);

    internal bool Found(params string[] kinds) => Standing(kinds) is not null;

    /// <summary>A fault of one of these kinds that stands and hasn’t gone.</summary>
    internal FindingNow? Standing(params string[] kinds) => Log.Findings.FirstOrDefault(found =>
        kinds.Contains(found.Finding.FindingKind.Value)
        && found.Finding.Character == FindingCharacter.Fault
        && found.Ended?.Now.Ending != FindingEnding.Gone);

    internal CentsRange RangeOf(LiveFact<Test> crow) => crow.Now.Pitch!.Against(Batch.CrowTarget);

    internal CrowStand StandOf(LiveFact<Test> crow) => StandOf(RangeOf(crow));

    internal static CrowStand StandOf(CentsRange range) => range switch
    {
        { Low.Value: >= 0, High.Value: > CrowTarget.ToleranceCents } => CrowStand.Sharp,
        { High.Value: <= 0, Low.Value: < -CrowTarget.ToleranceCents } => CrowStand.Flat,
        _ => CrowStand.On,
    };

    /// <summary>The crow with which it began to stand where it stands now.</summary>
    internal LiveFact<Test> CrowRun => Run(Crows, crow => StandOf(crow) == Crow);

    /// <summary>The test since which both the crow stands where it does and the effort is on its side of right.</summary>
    internal LiveFact<Test> BothRun
    {
        get
        {
            var effort = Run(Efforts, test => Math.Sign(test.Now.Step!.Value - 2) == Math.Sign(Efforts[^1].Now.Step!.Value - 2));
            return effort.Sequence > CrowRun.Sequence ? effort : CrowRun;
        }
    }

    /// <summary>The last test of all; null when none was made.</summary>
    internal LiveFact<Test>? LastTest => tests.MaxBy(test => test.Sequence);

    internal bool WasTried(TestKind kind) => tests.Exists(test => test.Now.TestKind == kind);

    /// <summary>Whether such work was done since an entry: the advice was heard then, and the teacher chose otherwise.</summary>
    internal bool DoneSince(int sequence, Func<Adjustment, bool> sort) =>
        work.Exists(done => done.Sequence > sequence && sort(done.Now));

    internal static LiveFact<Test> Run(IReadOnlyList<LiveFact<Test>> list, Func<LiveFact<Test>, bool> holds)
    {
        var first = list.Count - 1;
        while (first > 0 && holds(list[first - 1]))
        {
            first--;
        }

        return list[first];
    }

    internal static AdviceId IdOf(string kind, EntryId? since) =>
        new($"{kind}/{since?.Value.ToString("N") ?? "start"}");

    /// <summary>Where the crow stands, such as “40 cents above C”.</summary>
    internal string SayCrow() => CentsWords.Stand(RangeOf(Crows[^1]), TargetName);
}

/// <summary>Where the latest crow stands against its target.</summary>
internal enum CrowStand
{
    NotHeard,
    Flat,
    On,
    Sharp,
}
