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
    // Where more kinds of finding answer a complaint, they are like it, and not all the very same.
    private const int MostThatAreTheSame = 2;

    /// <summary>The sentences. Nothing where the log is empty, or nothing was written.</summary>
    /// <param name="material">What the letter is composed from.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="words">Tells what was found on it.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static IEnumerable<LetterSentence> Of(LetterMaterial material, Reed reed, BenchLog log, FoundWords words, Phrasing phrasing)
    {
        List<BenchFact> told = [.. log.Told];
        if (reed.Bothers.Trim().Length == 0 || told.Count == 0)
        {
            return [];
        }

        var (complaints, unknown) = (Complaint.Of(reed, material.Batch), Complaint.IsUnknown(reed, material.Batch));
        if (complaints.Count == 0 && !unknown)
        {
            return Rest(log, told[^1].Root, reed.Number, words, phrasing);
        }

        complaints = [.. complaints.Select(one => one with { IsOpposed = !one.IsContrary && complaints.Any(other => other.IsContrary && other.Test == one.Test) })];
        var open = Open(complaints, log);
        var answers = complaints.Except(open)
            .Select((one, index) => (one.Marked, Said: Answer(one, one == complaints[0], log, material.Batch.CrowTarget, reed.Number + index, words, phrasing))).ToLookup(one => one.Marked is null, one => one.Said);
        List<LetterSentence> said = [.. answers[true].SelectMany(one => one)], marked = [.. answers[false].SelectMany(one => one)];
        said.AddRange(ComplaintWhen.Sentences(reed, log, said, phrasing));
        var last = told[^1].Root;
        if ((open.Count == 0 && !unknown) || (said.Count + marked.Count > 0 && IsGivenUp(log)) || AnswerBlocks.IsAnsweredThere(material, reed))
        {
            return [.. said, .. Reason(material, reed, log, last, phrasing), .. marked];
        }

        if (open.Where(one => ComplaintNamed.In(one, log).Count > 0).ToList() is { Count: > 0 } named && !unknown)
        {
            return [.. said, .. Named(material, reed, log, named, last, phrasing), .. open.Except(named).ToList() is { Count: > 0 } rest ? [AskedBack(material, reed, log, rest, true, last, phrasing)] : Array.Empty<LetterSentence>(), .. Reason(material, reed, log, last, phrasing), .. marked];
        }

        var back = open.Count == 0 ? NotRecognised(material, reed, log, last, phrasing)
            : AskedBack(material, reed, log, unknown ? [.. open, Complaint.AsWritten] : open, said.Count > 0 || log.Moves.Any(IsTold), last, phrasing);
        return [.. said, back, .. Reason(material, reed, log, last, phrasing), .. marked];
    }

    // The first as an answer to the words right before it, each further one by its name.
    private static List<LetterSentence> Answer(Complaint one, bool first, BenchLog log, CrowTarget target, int turn, FoundWords words, Phrasing phrasing)
    {
        var answer = first && one.Marked is null
            ? To(one, log, turn, words, phrasing) ?? ByNear(one, log, target, turn, words, phrasing)
            : MarkAnswer.Of(one, log, target, turn, words, phrasing);
        return answer is not null ? [answer] : [.. ByCause(one, log, turn, words, phrasing), .. NotItself(one, log, turn, phrasing)];
    }

    /// <summary>Of what a student complains, that to which the log has no answer.</summary>
    /// <param name="complaints">The complaints.</param>
    /// <param name="log">The reed’s log.</param>
    internal static IReadOnlyList<Complaint> Open(IEnumerable<Complaint> complaints, BenchLog log) =>
        [.. complaints.Where(one => !IsAnswered(one, log))];

    private static bool IsAnswered(Complaint complaint, BenchLog log) => IsTested(complaint, log) || Found(complaint.Causes, log).Count > 0;

    private static bool IsTested(Complaint complaint, BenchLog log) =>
        log.Moves.Any(move => move.TestKind == complaint.Test && (Tells(complaint, Step(move.Arrival)) || Tells(complaint, Step(move.Now))))
        || Found(complaint.Findings, log).Count > 0
        || complaint.Near.Any(test => log.Moves.Any(move => move.TestKind == test && (IsSaid(move.Arrival) || IsSaid(move.Now))));

    // Beside its opposite only what is right, or lies on its own side.
    private static bool Tells(Complaint complaint, int? step) =>
        step is { } said && (!complaint.IsContrary || complaint.IsMet(said) || TestScale.Of(complaint.Test!.Value).FromGood(said) == 0);

    private static bool IsSaid(LiveFact<Test>? fact) => fact?.Now is { TestKind: TestKind.Crow, Pitch: not null } or { TestKind: not TestKind.Crow, Step: not null };

    /// <summary>What was remarked of a complaint later than all that answers it: the letter tells no remarks, so it may be out of date.</summary>
    /// <param name="complaint">The complaint.</param>
    /// <param name="log">The reed’s log.</param>
    internal static IReadOnlyList<string> RemarkedSince(Complaint complaint, BenchLog log)
    {
        List<int> said = [.. log.Moves.Where(move => move.TestKind == complaint.Test).SelectMany(move => new[] { move.Arrival?.Sequence, move.Now?.Sequence }).OfType<int>(),
            .. Found(complaint.Findings, log).SelectMany(one => new[] { one.Fact.Sequence, one.Ended?.Sequence }).OfType<int>()];
        return said.Count == 0 ? [] : ComplaintNamed.Remarked(complaint, log, said.Max());
    }

    /// <summary>What was found of some kinds, strengths apart, and what the work itself brought about: no student wrote of that.</summary>
    /// <param name="kinds">The kinds.</param>
    /// <param name="log">The log.</param>
    internal static List<FindingNow> Found(IReadOnlyList<string> kinds, BenchLog log) =>
        [.. log.Findings.Where(one => one.Finding.Character != FindingCharacter.Strength && one.Finding.Arose != Arose.CausedByTheWork && kinds.Contains(one.Finding.FindingKind.Value))];

    // What is known to bring such a thing about, and was found here.
    private static List<LetterSentence> ByCause(Complaint complaint, BenchLog log, int turn, FoundWords words, Phrasing phrasing) =>
        IsTested(complaint, log) || Found(complaint.Causes, log).Find(one => one.Finding is { Character: FindingCharacter.Fault, Arose: not Arose.CausedByTheWork }) is not { } cause ? []
        : [.. words.IsFirst(cause) ? [] : words.First(cause, ComplaintWordings.Cause, complaint.Test),
            .. IsUntried(complaint, log) ? [new(phrasing.Say("complaint-untried", turn, ComplaintWordings.Untried, ("what", complaint.Name)), [cause.Fact.Root])] : Array.Empty<LetterSentence>()];

    // Where only a test that bears on it was made, and told already, that it wasn’t tried itself is all that is left to say.
    private static IEnumerable<LetterSentence> NotItself(Complaint complaint, BenchLog log, int turn, Phrasing phrasing) =>
        IsTested(complaint, log) && IsUntried(complaint, log) && log.Moves.FirstOrDefault(move => complaint.Near.Contains(move.TestKind)) is { } near
            ? [new(phrasing.Say("complaint-not-itself", turn, ComplaintWordings.NotItself, ("what", complaint.Name)), [(near.Arrival ?? near.Now)!.Root])] : [];

    /// <summary>Whether a test of just that would answer a complaint, and was not made, while something else answers it; what words at the bench name isn’t called untried.</summary>
    /// <param name="complaint">The complaint.</param>
    /// <param name="log">The reed’s log.</param>
    internal static bool IsUntried(Complaint complaint, BenchLog log) => complaint.Test is { } test && IsAnswered(complaint, log)
        && !log.Moves.Any(move => move.TestKind == test && (IsSaid(move.Arrival) || IsSaid(move.Now))) && Found(complaint.Findings, log).Count == 0 && !ComplaintNamed.IsTouched(complaint, log) && ComplaintNamed.In(complaint, log).Count == 0;

    /// <summary>What complaints are about, in one breath: whole clauses stand last.</summary>
    /// <param name="complaints">The complaints.</param>
    internal static string Names(IEnumerable<Complaint> complaints) => Prose.List(
        [.. complaints.Select(one => one.Name).Distinct().OrderBy(name => name.StartsWith("how ", StringComparison.Ordinal) || name.StartsWith("what ", StringComparison.Ordinal))]);

    // What wasn’t tried is asked back, each thing by its name.
    private static LetterSentence AskedBack(LetterMaterial material, Reed reed, BenchLog log, IReadOnlyList<Complaint> open, bool more, EntryId last, Phrasing phrasing)
    {
        var ways = !GoesHomeToBePlayed(reed, log) ? ComplaintWordings.NotNotedAlone : more ? ComplaintWordings.AskedBack : ComplaintWordings.NotNoted;
        var it = open.DistinctBy(one => one.Name).Count() > 1 || open[0].IsPlural ? "they are" : "it is";
        return new(phrasing.Say("complaint-not", reed.Number, ways, ("what", Names(open)), ("it is", it), HowLong(material, reed)[0], HowLong(material, reed)[1]), [last]);
    }

    // What words at the bench name isn’t called untried; how it is at home is asked all the same.
    private static IEnumerable<LetterSentence> Named(LetterMaterial material, Reed reed, BenchLog log, List<Complaint> named, EntryId last, Phrasing phrasing) =>
        named.GroupBy(one => ComplaintNamed.IsMet(one, reed.Bothers, log)).OrderByDescending(some => some.Key).Select(some => (IsMet: some.Key, All: some.ToList())).Where(some => some.IsMet || GoesHomeToBePlayed(reed, log))
            .Select((some, index) =>
            {
                var ways = !some.IsMet ? ComplaintWordings.Named : GoesHomeToBePlayed(reed, log) ? ComplaintWordings.NamedAndMet : ComplaintWordings.NamedAndMetAlone;
                var it = some.All.DistinctBy(one => one.Name).Count() > 1 || some.All[0].IsPlural ? "they are" : "it is";
                return new LetterSentence(phrasing.Say("complaint-named", reed.Number + index, ways, ("what", Names(some.All)), ("it is", it), HowLong(material, reed)[0], HowLong(material, reed)[1]), [last]);
            });

    // What nobody here can put to a test or a finding isn’t answered by whatever was found first.
    private static LetterSentence NotRecognised(LetterMaterial material, Reed reed, BenchLog log, EntryId last, Phrasing phrasing)
    {
        var faults = log.Findings.Any(one => one.Finding is { Character: FindingCharacter.Fault, Arose: not Arose.CausedByTheWork });
        var ways = !GoesHomeToBePlayed(reed, log) ? ComplaintWordings.NotRecognisedAlone : faults ? ComplaintWordings.NotRecognised : ComplaintWordings.NotExplained;
        return new(phrasing.Say("complaint-unknown", reed.Number, ways, HowLong(material, reed)), [last]);
    }

    // Where the reed’s own part says how it is to be played, no other time is named.
    private static (string, string)[] HowLong(LetterMaterial material, Reed reed) => PlayAdvice.HasItsOwn(material, reed)
        ? [("for", ""), ("little", "")] : [("for", " for a few days"), ("little", reed.Number % 2 == 0 ? " a little" : " for a day or two")];

    // Why the teacher leaves it open.
    private static IEnumerable<LetterSentence> Reason(LetterMaterial material, Reed reed, BenchLog log, EntryId last, Phrasing phrasing) =>
        LetterUnanswered.Gap(material, reed, log) is { } gap && material.ReasonFor(gap.Key) is { } reason
            ? [new(phrasing.Say("complaint-open", reed.Number, ComplaintWordings.LeftOpen, ("reason", Prose.Ended(reason))), [last])]
            : [];

    private static bool GoesHomeToBePlayed(Reed reed, BenchLog log) => reed.MayBePlayed && !IsGivenUp(log);

    /// <summary>Whether a reed can’t be saved: then nothing of it is asked back.</summary>
    /// <param name="log">Its log.</param>
    internal static bool IsGivenUp(BenchLog log) => log.Verdict?.Now.VerdictKind == VerdictKind.NotToBeSaved;

    // What became better or moved in pitch is told below: to say before it that nothing was written down would contradict it.
    private static bool IsTold(TestMove move) => move.Movement == Movement.Nearer
        || (move.Arrival?.Now.Pitch is { } before && move.Now?.Now.Pitch is { } after && before != after);

    // Where nothing bothers, what came with the reed is told before all else; what was noted only after a step isn’t among it.
    private static List<LetterSentence> Rest(BenchLog log, EntryId last, int turn, FoundWords words, Phrasing phrasing)
    {
        List<FindingNow> faults = [.. log.Findings.Where(one => one.Fact.Pass == 0 && one.Finding is { Character: FindingCharacter.Fault, Arose: not Arose.CausedByTheWork }).OrderBy(one => one.Fact.Sequence)];
        if (faults.Find(one => FindingCatalogue.Find(one.Finding.FindingKind) is not null) is not { } first)
        {
            // Where all is right nothing is to be explained; what is good of it is told further on.
            return faults.Count == 0 && !log.Live<Test>().Any(IsOff) ? []
                : [new(phrasing.Say("complaint-rest", turn, faults.Count > 0 ? ComplaintWordings.Follows : ComplaintWordings.Tests), [last])];
        }

        return words.First(first, ComplaintWordings.First);
    }

    private static bool IsOff(LiveFact<Test> test) => test.Now.Step is { } step && TestScale.Of(test.Now.TestKind).FromGood(step) > 0;

    /// <summary>What a finding, its end and the work for it rest on.</summary>
    internal static List<EntryId> Roots(FindingNow found) =>
        [found.Fact.Root, .. found.Ended is { } ended ? [ended.Root] : Array.Empty<EntryId>(), .. found.DoneForIt.Select(work => work.Root)];

    private static LetterSentence? To(Complaint complaint, BenchLog log, int turn, FoundWords words, Phrasing phrasing)
    {
        var move = log.Moves.FirstOrDefault(one => one.TestKind == complaint.Test);
        if (Step(move?.Arrival) is { } before)
        {
            words.SaysTest(complaint.Test!.Value);
            return ByTest(complaint, move!, before, log, turn, phrasing);
        }

        var found = Found(complaint.Findings, log);
        if (found.Count > 0)
        {
            words.SaysItsEnd(found[^1].Fact.Root);
            return ByFinding(complaint, found[^1], log, turn, phrasing);
        }

        if (Step(move?.Now) is not { } only)
        {
            return null;
        }

        words.SaysTest(complaint.Test!.Value);
        return new(phrasing.Say("complaint-now", turn, ComplaintWordings.Later, ("now", Clause(move!.TestKind, only, turn, phrasing))), [move.Now!.Root]);
    }

    private static LetterSentence ByTest(Complaint complaint, TestMove move, int before, BenchLog log, int turn, Phrasing phrasing)
    {
        var was = Clause(move.TestKind, before, turn, phrasing);
        List<EntryId> roots = [move.Arrival!.Root, .. move.Now is { } tested ? [tested.Root] : Array.Empty<EntryId>()];
        if (Step(move.Now) is { } after)
        {
            var since = LetterTried.WorkAfter(log, move.Now!);
            var ways = since.Count > 0 ? ComplaintWordings.BeforeLast : after == before ? ComplaintWordings.Unchanged : IsAfterWork(move, log) ? ComplaintWordings.AfterWork : ComplaintWordings.LaterOn;
            return new(phrasing.Say("complaint-moved", turn, ways, ("was", was), ("before", Before(since)), ("now", Again.Of(was, Clause(move.TestKind, after, turn + 1, phrasing)))), roots);
        }

        return new(phrasing.Say("complaint-once", turn, complaint.IsMet(before) ? ComplaintNamed.Remarked(complaint, log, move.Arrival.Sequence).Count > 0 ? ComplaintWordings.MetThen : LetterTried.IsOffThen(move, log) ? ComplaintWordings.MetNotAgain : ComplaintWordings.Met : complaint.IsOpposed && before != TestScale.Of(move.TestKind).Good ? ComplaintWordings.OppositeMet : ComplaintWordings.NotMet, ("was", was)), roots);
    }

    private static LetterSentence ByFinding(Complaint complaint, FindingNow found, BenchLog log, int turn, Phrasing phrasing)
    {
        IReadOnlyList<string> ways = found.Ended?.Now.Ending switch
        {
            FindingEnding.Unchanged when found.IsAgainstItsTest(log) => found.DoneForIt.Count > 0 ? ComplaintWordings.WorkedOn : ComplaintWordings.FoundToo,
            FindingEnding.Gone when !PutRight.IsWorkedOn(found, log) => ComplaintWordings.GoneByItself,
            { } ending => ComplaintWordings.Ended[ending],
            null when found.DoneForIt.Count > 0 => ComplaintWordings.WorkedOn,
            null when ComplaintNamed.Remarked(complaint, log, found.Fact.Sequence).Count > 0 => ComplaintWordings.FoundThen,
            null when found.Finding.Certainty == Certainty.Suspected => ComplaintWordings.SuspectedToo,
            null when complaint.Findings.Count > MostThatAreTheSame => ComplaintWordings.FoundAlike,
            null when log.Moves.Any(move => move.TestKind == complaint.Test && Step(move.Now) is { } step && !complaint.IsMet(step)) => ComplaintWordings.FoundToo,
            _ => [.. ComplaintWordings.FoundToo, .. ComplaintWordings.Agreed],
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
        if (move.TestKind != TestKind.Crow || IsToldWhole(move, log))
        {
            words.SaysTest(move.TestKind);
        }

        List<EntryId> roots = [.. was is null ? Array.Empty<EntryId>() : [move.Arrival!.Root], .. now is null ? Array.Empty<EntryId>() : [move.Now!.Root]];
        var ways = (was, now) switch
        {
            (null, _) => ComplaintWordings.NearLater,
            (_, null) => ComplaintWordings.NearOnce,
            _ when LetterTried.IsBeforeWork(log, move.Now!) => ComplaintWordings.NearBeforeLast,
            _ => IsAfterWork(move, log) && !CrowDoubt.IsIn(move, log, target) ? ComplaintWordings.NearAfterWork : ComplaintWordings.NearLaterOn,
        };
        ways = ComplaintNamed.IsTouched(complaint, log) ? ComplaintWordings.WithoutUntried(ways) : ways;
        return new(phrasing.Say("complaint-near", turn, ways, ("was", was ?? ""), ("before", Before(move.Now is { } last ? LetterTried.WorkAfter(log, last) : [])), ("now", Again.Of(was, now ?? ""))), roots);
    }

    /// <summary>Whether a crow that answers a complaint is told with that: of one that was tried once and not worked for nothing is left to tell.</summary>
    internal static bool IsToldWhole(TestMove move, BenchLog log) => move.Now is null && !log.Work.Any();

    /// <summary>How a test stood that bears on a complaint; null where it says nothing of it.</summary>
    internal static string? NearClause(LiveFact<Test>? fact, CrowTarget target, int turn, Phrasing phrasing) => fact?.Now switch
    {
        { } crow when OfCrow(crow, target) is { } stood => stood,
        { TestKind: not TestKind.Crow, Step: { } step } test => Clause(test.TestKind, step, turn, phrasing),
        _ => null,
    };

    /// <summary>How a crow stood against the note that it is compared with; null where no pitch of it was said, and of any other test.</summary>
    internal static string? OfCrow(Test test, CrowTarget target) => test is not { TestKind: TestKind.Crow, Pitch: { } pitch } ? null : "its crow stood " + Stand(pitch, target);

    /// <summary>The same in a table: “120 cents below C”, “at C”.</summary>
    internal static string Stand(SaidPitch crow, CrowTarget target) =>
        CentsWords.Stand(crow.Against(target), target.PitchClass.Name) is var stand && stand == target.PitchClass.Name ? "at " + stand : stand;

    /// <summary>Whether work lay between the two times that something was tried.</summary>
    internal static bool IsAfterWork(TestMove move, BenchLog log) => move.Now is { Pass: > 0 } now && !LetterTried.IsBeforeWork(log, now);

    /// <summary>Before what work something was last tried; nothing where none came after it.</summary>
    internal static string Before(IReadOnlyList<LiveFact<Adjustment>> since) => since.Count == 0 ? "" : NowWordings.BeforeWhat(since);

    /// <summary>The word of a test; null where none was said.</summary>
    internal static int? Step(LiveFact<Test>? fact) => fact?.Now.Step;

    /// <summary>How a test stood, inside a sentence.</summary>
    internal static string Clause(TestKind test, int step, int turn, Phrasing phrasing) =>
        phrasing.Clause("stood", turn, [NowWordings.Stood[test][step]], false);
}
