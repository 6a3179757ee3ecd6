namespace ReedClinic.Domain.Bench;

/// <summary>Where a fact stands today.</summary>
public enum FactState
{
    /// <summary>It stands as it was first said.</summary>
    Live,

    /// <summary>It stands in a later wording.</summary>
    Corrected,

    /// <summary>It was taken back.</summary>
    TakenBack,
}

/// <summary>One thing that was said about a reed, with every wording of it.</summary>
/// <param name="Root">Its first entry; other entries name it by this.</param>
/// <param name="Chain">Every entry of it, in order: wordings and undos.</param>
/// <param name="Now">The wording that stands; null when it was taken back.</param>
/// <param name="State">Where it stands today.</param>
/// <param name="Pass">The pass it belongs to; 0 is "as it arrived".</param>
public sealed record BenchFact(
    EntryId Root, IReadOnlyList<BenchEntry> Chain, BenchEntry? Now, FactState State, int Pass)
{
    /// <summary>Its place in the log: that of its first entry.</summary>
    public int Sequence => Chain[0].Sequence;

    /// <summary>What kind of fact it is: that of the wording that stands, or stood last.</summary>
    public EntryKind Kind => Last.Kind;

    /// <summary>The wording that stands; of what was taken back the one that was said last.</summary>
    public BenchEntry Last => Now ?? Chain.Last(entry => entry is not Undo);

    /// <summary>Whether an entry may say this fact better.</summary>
    /// <param name="entry">The better wording; it may be of another kind, where what was said was misheard.</param>
    public bool MayBecome(BenchEntry entry) => FactWeaver.MayReplace(Last, entry);

    /// <summary>The wording that its last entry took back; null where its last entry took none back.</summary>
    public BenchEntry? Withdrawn => Chain[^1] is Undo && StandingAfter(Chain.Count - 1).TryPeek(out var gone) ? gone : null;

    /// <summary>The wording that stands again when the one that stands is taken back; null where nothing of it does then.</summary>
    public BenchEntry? Earlier => StandingAfter(Chain.Count).Skip(1).FirstOrDefault();

    /// <summary>The last entry of it: the one that a correction or an undo supersedes.</summary>
    public EntryId Tail => Chain[^1].Id;

    /// <summary>The ids of its entries, in order, with spaces: a page that was drawn before finds it by any of them.</summary>
    public string Ids() => string.Join(' ', Chain.Select(entry => entry.Id.Value));

    // The wordings that nobody has taken back after so many entries; the one that stands first.
    private Stack<BenchEntry> StandingAfter(int entries)
    {
        var wordings = new Stack<BenchEntry>();
        foreach (var entry in Chain.Take(entries))
        {
            if (entry is not Undo)
            {
                wordings.Push(entry);
            }
            else
            {
                wordings.TryPop(out _);
            }
        }

        return wordings;
    }
}

/// <summary>A fact that stands, with its wording by type.</summary>
/// <typeparam name="T">The kind of entry.</typeparam>
/// <param name="Root">Its first entry; other entries name it by this.</param>
/// <param name="Now">The wording that stands.</param>
/// <param name="Pass">The pass it belongs to; 0 is "as it arrived".</param>
/// <param name="Sequence">Its place in the log.</param>
public sealed record LiveFact<T>(EntryId Root, T Now, int Pass, int Sequence)
    where T : BenchEntry;

/// <summary>Adjustments and the tests after them. Pass 0 is the reed as it arrived.</summary>
/// <param name="Number">0, 1, 2 …</param>
/// <param name="Facts">What stands in it, in the order in which it was said.</param>
public sealed record BenchPass(int Number, IReadOnlyList<BenchFact> Facts)
{
    /// <summary>What was done in it; what only makes the reed ready to be played isn’t among it.</summary>
    public IEnumerable<Adjustment> Adjustments => Facts.Select(fact => fact.Now).OfType<Adjustment>().Where(done => !done.Prepares);

    /// <summary>How the reed played in it.</summary>
    public IEnumerable<Test> Tests => Facts.Select(fact => fact.Now).OfType<Test>();
}

/// <summary>Whether a test moved towards its good step.</summary>
public enum Movement
{
    /// <summary>Nothing to compare.</summary>
    NotComparable,

    /// <summary>As far from good as it was.</summary>
    Same,

    /// <summary>Nearer to good.</summary>
    Nearer,

    /// <summary>Further from good.</summary>
    Further,
}

/// <summary>One test, as the reed arrived and as it plays now.</summary>
/// <param name="TestKind">The test.</param>
/// <param name="Arrival">The first time it was tried before any work; null when it wasn't.</param>
/// <param name="Now">The last time it was tried; null when it was tried only once, before any work.</param>
public sealed record TestMove(TestKind TestKind, LiveFact<Test>? Arrival, LiveFact<Test>? Now)
{
    /// <summary>Whether the word moved towards the good one.</summary>
    public Movement Movement
    {
        get
        {
            if (Arrival?.Now.Step is not { } before || Now?.Now.Step is not { } after)
            {
                return Movement.NotComparable;
            }

            var scale = TestScale.Of(TestKind);
            return scale.FromGood(after).CompareTo(scale.FromGood(before)) switch
            {
                < 0 => Movement.Nearer,
                > 0 => Movement.Further,
                _ => Movement.Same,
            };
        }
    }
}

/// <summary>A finding that stands, with how it ended and what was done for it.</summary>
/// <param name="Fact">The finding.</param>
/// <param name="Ended">The last word on how it ended; null while nothing was said.</param>
/// <param name="DoneForIt">The adjustments that were made for it.</param>
public sealed record FindingNow(
    LiveFact<Finding> Fact, LiveFact<FindingEnded>? Ended, IReadOnlyList<LiveFact<Adjustment>> DoneForIt)
{
    /// <summary>The finding's wording that stands.</summary>
    public Finding Finding => Fact.Now;
}

/// <summary>A risk that stands, with what became of it.</summary>
/// <param name="Fact">The risk.</param>
/// <param name="Closed">The last word on what became of it; null while nothing was said.</param>
public sealed record RiskNow(LiveFact<Risk> Fact, LiveFact<RiskClosed>? Closed)
{
    /// <summary>True while nobody has said whether it happened.</summary>
    public bool IsOpen => Closed is null || Closed.Now.Outcome == RiskOutcome.StillOpen;
}
