using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>What a letter says first of a reed: whether what bothered the student was met, and what became of it.</summary>
internal static class ComplaintAnswer
{
    /// <summary>The sentences. Nothing where the log is empty, or nothing was written.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="target">The note that its crow is compared with.</param>
    /// <param name="words">Tells what was found on it.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static IEnumerable<LetterSentence> Of(Reed reed, BenchLog log, CrowTarget target, FoundWords words, Phrasing phrasing)
    {
        List<BenchFact> told = [.. log.Told];
        if (reed.Bothers.Trim().Length == 0 || told.Count == 0)
        {
            return [];
        }

        var complaints = Complaint.In(reed.Bothers);
        List<LetterSentence> answers = [.. complaints.Select((one, index) => (To(one, log, reed.Number + index, words, phrasing) ?? ByNear(one, log, target, reed.Number + index, phrasing))).OfType<LetterSentence>()];
        return answers.Count > 0 ? answers
            : complaints.Count > 0 && log.Moves.Any(IsTold) ? []
            : complaints.Count > 0 ? [new(phrasing.Say("complaint-not", reed.Number, GoesHomeToBePlayed(reed, log) ? ComplaintWordings.NotNoted : ComplaintWordings.NotNotedAlone), [told[^1].Root])]
            : Rest(log, told[^1].Root, reed.Number, words, phrasing);
    }

    private static bool GoesHomeToBePlayed(Reed reed, BenchLog log) => reed.MayBePlayed && log.Verdict?.Now.VerdictKind != VerdictKind.NotToBeSaved;

    // What became better or moved in pitch is told below: to say before it that nothing was written down would contradict it.
    private static bool IsTold(TestMove move) => move.Movement == Movement.Nearer
        || (move.Arrival?.Now.Pitch is { } before && move.Now?.Now.Pitch is { } after && before != after);

    // What isn’t recognised is answered by the first fault that came with the reed.
    private static List<LetterSentence> Rest(BenchLog log, EntryId last, int turn, FoundWords words, Phrasing phrasing)
    {
        List<FindingNow> faults = [.. log.Findings.Where(one => one.Finding is { Character: FindingCharacter.Fault, Arose: not Arose.CausedByTheWork }).OrderBy(one => one.Fact.Sequence)];
        if (faults.Find(one => FindingCatalogue.Find(one.Finding.FindingKind) is not null) is not { } first)
        {
            return [new(phrasing.Say("complaint-rest", turn, faults.Count > 0 ? ComplaintWordings.Follows : log.Live<Test>().Any(IsOff) ? ComplaintWordings.Tests : ComplaintWordings.NoFault), [last])];
        }

        return words.First(first);
    }

    private static bool IsOff(LiveFact<Test> test) => test.Now.Step is { } step && TestScale.Of(test.Now.TestKind).FromGood(step) > 0;

    private static List<EntryId> Roots(FindingNow found) =>
        [found.Fact.Root, .. found.Ended is { } ended ? [ended.Root] : Array.Empty<EntryId>(), .. found.DoneForIt.Select(work => work.Root)];

    private static LetterSentence? To(Complaint complaint, BenchLog log, int turn, FoundWords words, Phrasing phrasing)
    {
        var move = log.Moves.FirstOrDefault(one => one.TestKind == complaint.Test);
        if (Step(move?.Arrival) is { } before)
        {
            return ByTest(complaint, move!, before, log, turn, phrasing);
        }

        var found = log.Findings.Where(one => one.Finding.Character != FindingCharacter.Strength && complaint.Findings.Contains(one.Finding.FindingKind.Value)).ToList();
        if (found.Count > 0)
        {
            words.SaysItsEnd(found[^1].Fact.Root);
            return ByFinding(found[^1], turn, phrasing);
        }

        return Step(move?.Now) is { } only ? new(phrasing.Say("complaint-now", turn, ComplaintWordings.Later, ("now", Clause(move!.TestKind, only, turn, phrasing))), [move.Now!.Root]) : null;
    }

    private static LetterSentence ByTest(Complaint complaint, TestMove move, int before, BenchLog log, int turn, Phrasing phrasing)
    {
        var was = Clause(move.TestKind, before, turn, phrasing);
        List<EntryId> roots = [move.Arrival!.Root, .. move.Now is { } tested ? [tested.Root] : Array.Empty<EntryId>()];
        if (Step(move.Now) is { } after)
        {
            var ways = after == before ? ComplaintWordings.Unchanged : IsAfterWork(move, log) ? ComplaintWordings.AfterWork : ComplaintWordings.LaterOn;
            return new(phrasing.Say("complaint-moved", turn, ways, ("was", was), ("now", Clause(move.TestKind, after, turn + 1, phrasing))), roots);
        }

        return new(phrasing.Say("complaint-once", turn, complaint.IsMet(before) ? ComplaintWordings.Met : ComplaintWordings.NotMet, ("was", was)), roots);
    }

    private static LetterSentence ByFinding(FindingNow found, int turn, Phrasing phrasing)
    {
        var ways = found.Ended?.Now.Ending switch
        {
            { } ending => ComplaintWordings.Ended[ending],
            null when found.DoneForIt.Count > 0 => ComplaintWordings.WorkedOn,
            _ => ComplaintWordings.FoundToo,
        };
        return new(phrasing.Say("complaint-found", turn, ways), Roots(found));
    }

    // Where its own test wasn’t made, those that bear on it too; one that was made twice says more than one that was made once.
    private static LetterSentence? ByNear(Complaint complaint, BenchLog log, CrowTarget target, int turn, Phrasing phrasing)
    {
        var near = complaint.Near.Select(test => log.Moves.FirstOrDefault(move => move.TestKind == test)).OfType<TestMove>()
            .Select(move => (Move: move, Was: NearClause(move.Arrival, target, turn, phrasing), Now: NearClause(move.Now, target, turn + 1, phrasing)))
            .Where(one => one.Was is not null || one.Now is not null).OrderByDescending(one => one.Was is not null && one.Now is not null).ToList();
        if (near.Count == 0)
        {
            return null;
        }

        var (move, was, now) = near[0];
        List<EntryId> roots = [.. was is null ? Array.Empty<EntryId>() : [move.Arrival!.Root], .. now is null ? Array.Empty<EntryId>() : [move.Now!.Root]];
        var ways = (was, now) switch
        {
            (null, _) => ComplaintWordings.NearLater,
            (_, null) => ComplaintWordings.NearOnce,
            _ => IsAfterWork(move, log) ? ComplaintWordings.NearAfterWork : ComplaintWordings.NearLaterOn,
        };
        return new(phrasing.Say("complaint-near", turn, ways, ("was", was ?? ""), ("now", now ?? "")), roots);
    }

    private static string? NearClause(LiveFact<Test>? fact, CrowTarget target, int turn, Phrasing phrasing) => fact?.Now switch
    {
        { TestKind: TestKind.Crow, Pitch: { } pitch } when CentsWords.Stand(pitch.Against(target), target.PitchClass.Name) is var stand =>
            stand == target.PitchClass.Name ? "its crow stood at " + stand : "its crow stood " + stand,
        { TestKind: not TestKind.Crow, Step: { } step } test => Clause(test.TestKind, step, turn, phrasing),
        _ => null,
    };

    private static bool IsAfterWork(TestMove move, BenchLog log) => move.Now is { Pass: > 0 } now && !LetterTried.IsBeforeWork(log, now);

    private static int? Step(LiveFact<Test>? fact) => fact?.Now.Step;

    private static string Clause(TestKind test, int step, int turn, Phrasing phrasing) =>
        phrasing.Clause("stood", turn, [NowWordings.Stood[test][step]], false);
}
