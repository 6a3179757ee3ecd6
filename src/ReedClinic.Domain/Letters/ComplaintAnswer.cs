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
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="words">Tells what was found on it.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static IEnumerable<LetterSentence> Of(LetterMaterial material, Reed reed, BenchLog log, FoundWords words, Phrasing phrasing)
    {
        var target = material.Batch.CrowTarget;
        List<BenchFact> told = [.. log.Told];
        if (reed.Bothers.Trim().Length == 0 || told.Count == 0)
        {
            return [];
        }

        var complaints = Complaint.Of(reed, material.Batch);
        if (complaints.Count == 0)
        {
            return [.. Rest(log, told[^1].Root, reed.Number, words, phrasing), .. Reason(material, reed, log, told[^1].Root, phrasing)];
        }

        var open = Open(complaints, log);
        List<LetterSentence> answers =
        [
            .. complaints.Except(open).SelectMany((one, index) => ((To(one, log, reed.Number + index, words, phrasing) ?? ByNear(one, log, target, reed.Number + index, words, phrasing)) is { } answer ? [answer] : ByCause(one, log, words))),
        ];
        return open.Count == 0 ? answers : [.. answers, .. AskedBack(reed, log, open, answers.Count > 0 || log.Moves.Any(IsTold), told[^1].Root, phrasing), .. Reason(material, reed, log, told[^1].Root, phrasing)];
    }

    /// <summary>Of what a student complains, that to which the log has no answer.</summary>
    /// <param name="complaints">The complaints.</param>
    /// <param name="log">The reed’s log.</param>
    internal static IReadOnlyList<Complaint> Open(IEnumerable<Complaint> complaints, BenchLog log) =>
        [.. complaints.Where(one => !IsAnswered(one, log))];

    private static bool IsAnswered(Complaint complaint, BenchLog log) =>
        log.Moves.Any(move => move.TestKind == complaint.Test && (Step(move.Arrival) ?? Step(move.Now)) is not null)
        || Found(complaint.Findings, log).Count > 0
        || complaint.Near.Any(test => log.Moves.Any(move => move.TestKind == test && (IsSaid(move.Arrival) || IsSaid(move.Now))))
        || Found(complaint.Causes, log).Count > 0;

    private static bool IsSaid(LiveFact<Test>? fact) => fact?.Now is { TestKind: TestKind.Crow, Pitch: not null } or { TestKind: not TestKind.Crow, Step: not null };

    private static List<FindingNow> Found(IReadOnlyList<string> kinds, BenchLog log) =>
        [.. log.Findings.Where(one => one.Finding.Character != FindingCharacter.Strength && kinds.Contains(one.Finding.FindingKind.Value))];

    // What is known to bring such a thing about, and was found here.
    private static List<LetterSentence> ByCause(Complaint complaint, BenchLog log, FoundWords words) =>
        Found(complaint.Causes, log).Find(one => one.Finding is { Character: FindingCharacter.Fault, Arose: not Arose.CausedByTheWork }) is { } cause && !words.HasFirst ? words.First(cause) : [];

    // What wasn’t tried is asked back, each thing by its name.
    private static IEnumerable<LetterSentence> AskedBack(Reed reed, BenchLog log, IReadOnlyList<Complaint> open, bool more, EntryId last, Phrasing phrasing)
    {
        var ways = !GoesHomeToBePlayed(reed, log) ? ComplaintWordings.NotNotedAlone : more ? ComplaintWordings.AskedBack : ComplaintWordings.NotNoted;
        yield return new(phrasing.Say("complaint-not", reed.Number, ways, ("what", Prose.List([.. open.Select(one => one.Name)]))), [last]);
    }

    // Why the teacher leaves it open.
    private static IEnumerable<LetterSentence> Reason(LetterMaterial material, Reed reed, BenchLog log, EntryId last, Phrasing phrasing) =>
        LetterUnanswered.Gap(material, reed, log) is { } gap && material.ReasonFor(gap.Key) is { } reason
            ? [new(phrasing.Say("complaint-open", reed.Number, ComplaintWordings.LeftOpen, ("reason", Prose.Ended(reason))), [last])]
            : [];

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
            words.SaysTest(complaint.Test);
            return ByTest(complaint, move!, before, log, turn, phrasing);
        }

        var found = Found(complaint.Findings, log);
        if (found.Count > 0)
        {
            words.SaysItsEnd(found[^1].Fact.Root);
            return ByFinding(found[^1], turn, phrasing);
        }

        if (Step(move?.Now) is not { } only)
        {
            return null;
        }

        words.SaysTest(complaint.Test);
        return new(phrasing.Say("complaint-now", turn, ComplaintWordings.Later, ("now", Clause(move!.TestKind, only, turn, phrasing))), [move.Now!.Root]);
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
    private static LetterSentence? ByNear(Complaint complaint, BenchLog log, CrowTarget target, int turn, FoundWords words, Phrasing phrasing)
    {
        var near = complaint.Near.Select(test => log.Moves.FirstOrDefault(move => move.TestKind == test)).OfType<TestMove>()
            .Select(move => (Move: move, Was: NearClause(move.Arrival, target, turn, phrasing), Now: NearClause(move.Now, target, turn + 1, phrasing)))
            .Where(one => one.Was is not null || one.Now is not null).OrderByDescending(one => one.Was is not null && one.Now is not null).ToList();
        if (near.Count == 0)
        {
            return null;
        }

        var (move, was, now) = near[0];
        if (move.TestKind != TestKind.Crow)
        {
            words.SaysTest(move.TestKind);
        }

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
