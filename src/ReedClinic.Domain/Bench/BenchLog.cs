using ReedClinic.Domain.People;

namespace ReedClinic.Domain.Bench;

/// <summary>
/// Today's state of one reed at the bench, worked out from its entries. The entries are the record; this is only a reading of it.
/// </summary>
public sealed class BenchLog
{
    private BenchLog(FactWeaver weaver)
    {
        var passes = new PassCount(weaver.Strands);
        Facts =
        [
            .. weaver.Strands.Select(strand =>
                new BenchFact(strand.Root, strand.Entries, strand.Now, strand.State, passes.Of(strand))),
        ];
        History = [.. weaver.Entries.Select(entry => Line(weaver, entry))];
        LastSequence = weaver.Entries.Count == 0 ? 0 : weaver.Entries[^1].Sequence;
        var standing = Facts.Where(fact => fact.Now is not null).ToList();
        Passes =
        [
            .. Enumerable.Range(0, passes.Last + 1)
                .Select(number => new BenchPass(number, [.. standing.Where(fact => fact.Pass == number)])),
        ];
        Moves = ReadMoves();
        Findings = ReadFindings();
        Risks = ReadRisks();
        LeftAlone = [.. Live<LeaveAlone>()];
        Stop = Live<Stopped>().LastOrDefault();
        Verdict = Live<Verdict>().LastOrDefault();
    }

    /// <summary>A log with nothing in it.</summary>
    public static BenchLog Empty { get; } = Fold([]);

    /// <summary>Everything that was said, in the order in which it was first said; what was taken back is among it.</summary>
    public IReadOnlyList<BenchFact> Facts { get; }

    /// <summary>The passes; the first is pass 0, "as it arrived".</summary>
    public IReadOnlyList<BenchPass> Passes { get; }

    /// <summary>For each test that was tried: as the reed arrived, and now.</summary>
    public IReadOnlyList<TestMove> Moves { get; }

    /// <summary>The findings that stand.</summary>
    public IReadOnlyList<FindingNow> Findings { get; }

    /// <summary>The risks that stand, open or closed.</summary>
    public IReadOnlyList<RiskNow> Risks { get; }

    /// <summary>The risks of which nobody has said yet whether they happened.</summary>
    public IEnumerable<RiskNow> OpenRisks => Risks.Where(risk => risk.IsOpen);

    /// <summary>The places that are not to be touched.</summary>
    public IReadOnlyList<LiveFact<LeaveAlone>> LeftAlone { get; }

    /// <summary>The last decision to stop.</summary>
    public LiveFact<Stopped>? Stop { get; }

    /// <summary>True when the work has stopped and nothing was done to the reed since.</summary>
    public bool IsStopped => Stop is { } stop && !Work.Any(work => work.Sequence > stop.Sequence);

    /// <summary>
    /// True when the reed was put aside for now and nothing has been said about it since. Advice that is set aside, a word on a likely
    /// cause, and what is taken back, aren’t work on the reed.
    /// </summary>
    public bool IsParked => Live<Parked>().MaxBy(parked => parked.Now.Sequence) is { } last
        && !Told.Any(fact => fact.Now!.Sequence > last.Now.Sequence);

    /// <summary>What stands of what was said about the reed; advice that was set aside and words on likely causes are the teacher’s own affair.</summary>
    public IEnumerable<BenchFact> Told => Facts.Where(fact => fact.Now is not (null or AdviceSetAside or CauseJudged));

    /// <summary>The last verdict.</summary>
    public LiveFact<Verdict>? Verdict { get; }

    /// <summary>Every entry, with what it counts for today.</summary>
    public IReadOnlyList<HistoryLine> History { get; }

    /// <summary>The highest sequence in the log; 0 when it is empty.</summary>
    public int LastSequence { get; }

    /// <summary>Reads a reed's log. The order in which the entries are given doesn't matter.</summary>
    /// <param name="entries">The entries of one reed; the same entry may be given more than once.</param>
    /// <returns>Today's state.</returns>
    /// <exception cref="ArgumentException">The entries are of more than one reed.</exception>
    public static BenchLog Fold(IEnumerable<BenchEntry> entries)
    {
        var weaver = FactWeaver.Weave(entries);
        if (weaver.Entries.Select(entry => entry.ReedId).Distinct().Count() > 1)
        {
            throw new ArgumentException("A bench log is about one reed.", nameof(entries));
        }

        return new BenchLog(weaver);
    }

    /// <summary>The facts of one kind that stand, in the order in which they were first said.</summary>
    /// <typeparam name="T">The kind of entry.</typeparam>
    /// <returns>The facts.</returns>
    public IEnumerable<LiveFact<T>> Live<T>()
        where T : BenchEntry =>
        from fact in Facts
        let now = fact.Now as T
        where now is not null
        select new LiveFact<T>(fact.Root, now, fact.Pass, fact.Sequence);

    /// <summary>What was done to the reed. What only makes it ready to be played, such as soaking it, is no work: it stays as it arrived.</summary>
    public IEnumerable<LiveFact<Adjustment>> Work => Live<Adjustment>().Where(done => !done.Now.Prepares);

    /// <summary>What was said of the reed’s playing, by whoever had it in hand.</summary>
    public IEnumerable<LiveFact<Test>> TestsSaid => Live<Test>().Where(test => test.Now.MeasuredFrom is null);

    /// <summary>
    /// The tests that count: all that was said, and what was measured where in that pass nobody said the same. A measurement stands
    /// beside a teacher’s judgement and never takes its place.
    /// </summary>
    public IEnumerable<LiveFact<Test>> Counting => Live<Test>().Where(test =>
        test.Now.MeasuredFrom is null || !TestsSaid.Any(said => said.Pass == test.Pass && said.Now.TestKind == test.Now.TestKind));

    /// <summary>The tests for which the reed was blown: all but a look at its opening and a hold of its seal.</summary>
    public IEnumerable<LiveFact<Test>> Blown => Live<Test>().Where(test => test.Now.TestKind is not (TestKind.Opening or TestKind.Seal));

    /// <summary>The fact that an entry belongs to.</summary>
    /// <param name="entry">Any entry of it.</param>
    /// <returns>The fact, or null.</returns>
    public BenchFact? FactOf(EntryId entry) => Facts.FirstOrDefault(fact => fact.Chain.Any(link => link.Id == entry));

    /// <summary>What one operation said before, in its order, as it stands now; none when it is new.</summary>
    /// <param name="operation">The operation.</param>
    public IReadOnlyList<BenchFact> SaidBy(OperationId operation)
    {
        var entries = History.ToLookup(line => line.Entry.OperationId, line => line.Entry.Id);
        return
        [
            .. Enumerable.Range(0, OperationId.MostParts).Select(part => entries[operation.Part(part)].ToList())
                .TakeWhile(said => said.Count > 0).Select(said => FactOf(said[0])!),
        ];
    }

    /// <summary>
    /// What an undo by this teacher takes back: the last wording of theirs that stands. What was measured from their recording came by itself, maybe
    /// after they had said something else, and isn’t offered.
    /// </summary>
    /// <param name="teacher">The teacher's account.</param>
    /// <returns>The fact, or null when nothing of theirs stands.</returns>
    public BenchFact? LastOf(AccountId teacher) => Facts
        .Where(fact => fact.Now?.RecordedBy == teacher && fact.Now is not Test { MeasuredFrom: not null })
        .MaxBy(fact => fact.Now!.Sequence);

    /// <summary>
    /// What this teacher took back last although it wasn’t what they had said last: an undo brings it back, instead of taking back more.
    /// </summary>
    /// <param name="teacher">The teacher’s account.</param>
    /// <returns>The fact, whose <see cref="BenchFact.Withdrawn"/> is the wording; or null.</returns>
    public BenchFact? WithdrawnBy(AccountId teacher) =>
        History.Select(line => line.Entry).LastOrDefault(entry => entry.RecordedBy == teacher) is Undo undo
        && FactOf(undo.Id) is { Withdrawn: { } gone and not Test { MeasuredFrom: not null } } fact && fact.Tail == undo.Id
        && (gone.RecordedBy != teacher || LastOf(teacher) is { Now: { } standing } && standing.Sequence > gone.Sequence)
            ? fact
            : null;

    /// <summary>What stands and was said of a fact: how a finding ended, what was done for it, what became of a risk.</summary>
    /// <param name="fact">The fact.</param>
    public IEnumerable<BenchFact> HangingOn(BenchFact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        return Facts.Where(other => other.Now switch
        {
            FindingEnded ended => FactOf(ended.FindingId)?.Root == fact.Root,
            RiskClosed closed => FactOf(closed.RiskId)?.Root == fact.Root,
            Adjustment { ForFindingId: { } finding } => FactOf(finding)?.Root == fact.Root,
            _ => false,
        });
    }

    private static HistoryLine Line(FactWeaver weaver, BenchEntry entry)
    {
        if (weaver.StrandOf(entry.Id) is not { } strand)
        {
            return new HistoryLine(entry, weaver.WhyOutside(entry.Id) ?? EntryStanding.NothingToReplace, null);
        }

        var standing = strand.StandingOf(entry);
        if (standing == EntryStanding.Stands && NamesNothing(weaver, entry))
        {
            standing = EntryStanding.StandsButNamesNothing;
        }

        return new HistoryLine(entry, standing, strand.Root);
    }

    private static bool NamesNothing(FactWeaver weaver, BenchEntry entry) => entry switch
    {
        FindingEnded ended => weaver.StrandOf(ended.FindingId)?.Now is not Finding,
        RiskClosed closed => weaver.StrandOf(closed.RiskId)?.Now is not Risk,
        Adjustment { ForFindingId: { } finding } => weaver.StrandOf(finding)?.Now is not Finding,
        _ => false,
    };

    private List<TestMove> ReadMoves() =>
    [
        .. Counting
            .GroupBy(test => test.Now.TestKind)
            .OrderBy(group => TestScale.All.ToList().FindIndex(scale => scale.TestKind == group.Key))
            .Select(group =>
            {
                var arrival = group.FirstOrDefault(test => test.Pass == 0);
                var last = LastOf([.. group.OrderBy(test => test.Pass).ThenBy(test => test.Sequence)], arrival);
                return new TestMove(group.Key, arrival, last.Root == arrival?.Root ? null : last);
            }),
    ];

    // A remark on the crow takes no measured crow’s place where nothing was done in between: it says nothing of where that stands; “no crow now” does.
    private static LiveFact<Test> LastOf(List<LiveFact<Test>> tests, LiveFact<Test>? arrival) =>
        tests[^1] is { Now: { TestKind: TestKind.Crow, Pitch: null, Step: null } } last && !Denies(last.Now.Words)
            ? tests.LastOrDefault(test => test.Now.Pitch is not null && test.Pass == last.Pass && test.Root != arrival?.Root) ?? last
            : tests[^1];

    private static bool Denies(string? words) => words is not null && words.Split([' ', ',', '.'], StringSplitOptions.RemoveEmptyEntries).Any(word => word.Replace('’', '\'').ToUpperInvariant() is "NO" or "NOT" or "NEVER" or "NONE" or "GONE" || word.EndsWith("n't", StringComparison.OrdinalIgnoreCase) || word.EndsWith("n’t", StringComparison.OrdinalIgnoreCase));

    private List<FindingNow> ReadFindings()
    {
        var endings = Live<FindingEnded>().ToLookup(ended => FactOf(ended.Now.FindingId)?.Root);
        var work = Live<Adjustment>()
            .Where(adjustment => adjustment.Now.ForFindingId is not null)
            .ToLookup(adjustment => FactOf(adjustment.Now.ForFindingId!.Value)?.Root);
        return
        [
            .. Live<Finding>().Select(finding =>
                new FindingNow(finding, endings[finding.Root].LastOrDefault(), [.. work[finding.Root]])),
        ];
    }

    private List<RiskNow> ReadRisks()
    {
        var closings = Live<RiskClosed>().ToLookup(closed => FactOf(closed.Now.RiskId)?.Root);
        return [.. Live<Risk>().Select(risk => new RiskNow(risk, closings[risk.Root].LastOrDefault()))];
    }
}
