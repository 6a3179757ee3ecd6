using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>One reed: how it played when it arrived against how it plays now.</summary>
internal static class NowBlock
{
    private const int MostInOneBreath = 4;

    internal static LetterBlock? Of(LetterMaterial material, Reed reed, BenchLog log, Phrasing phrasing, LetterSoFar told)
    {
        List<BeforeAndNow> rows = [.. log.Moves.Select(move => Row(move, log, material.Batch.CrowTarget)).OfType<BeforeAndNow>()];

        // A length that was taken once says nothing about how the reed plays.
        var once = log.Moves.Where(move => move.TestKind != TestKind.Length && Say(move.Now, material.Batch.CrowTarget) is null && move.Arrival is { } arrival && Say(arrival, material.Batch.CrowTarget) is not null && !LetterLog.IsBare(arrival.Now) && !told.ToldTest(move.TestKind, reed.Number) && !IsFound(log, move)).ToList();
        if (rows.Count + once.Count == 0)
        {
            return null;
        }

        var since = rows.Count > 0 ? LetterTried.WorkSince(log) : [];
        List<LetterSentence> sentences = [.. Moved(reed, log, material.Batch.CrowTarget, phrasing, told), .. Once(material, reed, log, once, rows.Count > 0, since.Count > 0, phrasing, told)];
        if (since.Count > 0)
        {
            sentences.Add(new(phrasing.Say("untried", reed.Number, NowWordings.NotTriedSince), [.. since.Select(work => work.Root)]));
        }

        return new LetterBlock(LetterComposer.Key(reed, "now"), BlockKind.ReedNow, sentences.Count == 0 ? [] : [new(sentences)])
        {
            Reed = reed.Id,
            Rows = rows,
        };
    }

    // “The opening is large” was said of a reed on which nothing was done: that it was large when it was tried, is the same once more.
    private static bool IsFound(BenchLog log, TestMove move) => move.Arrival?.Now is { Step: { } step, Pitch: null, Millimetres: null } && !log.Work.Any()
        && log.Findings.Any(one => one.Finding is { Character: FindingCharacter.Fault, Certainty: Certainty.Certain } && FindingPast.IsShownBy(one.Finding.FindingKind, move.TestKind, step));

    // That it wasn’t tried again is said once.
    private static IEnumerable<LetterSentence> Once(LetterMaterial material, Reed reed, BenchLog log, List<TestMove> once, bool hasRows, bool isSaidBelow, Phrasing phrasing, LetterSoFar told)
    {
        if (once.Count == 0)
        {
            return [];
        }

        var isNew = !hasRows || (told.Says("tried once") && !isSaidBelow);
        var worked = log.Work.Any();
        return once.Chunk(MostInOneBreath).Select((some, index) =>
        {
            var ways = !worked ? NowWordings.Tried
                : !isNew && !isSaidBelow && some.Any(LetterTried.IsOff) ? NowWordings.TriedOnlyThenOff
                : index > 0 || !isNew ? NowWordings.TriedOnlyThenAgain
                : hasRows ? NowWordings.TriedOnlyThen : NowWordings.NotTriedAgain;
            return new LetterSentence(phrasing.Say("once", reed.Number + index, ways, ("tests", Tests(some, reed.Number, material.Batch.CrowTarget, phrasing))), Roots(some));
        });
    }

    private static IEnumerable<LetterSentence> Moved(Reed reed, BenchLog log, CrowTarget target, Phrasing phrasing, LetterSoFar told)
    {
        // What was tried before the last work says nothing of how the reed is now; the table keeps it.
        var better = log.Moves.Where(move => LetterMoved.Of(move, log, target) == Movement.Nearer && NowWordings.Gains.ContainsKey(move.TestKind) && !told.ToldTest(move.TestKind, reed.Number)).ToList();
        var worse = log.Moves.Where(move => LetterMoved.Of(move, log, target) == Movement.Further && !CrowDoubt.IsIn(move, log, target)).ToList();
        if (better.Count > 0)
        {
            var gains = Prose.List([.. better.Take(3).Select((move, index) => phrasing.Clause("gain", reed.Number + index, [Gain(move, target)], false))]);
            IReadOnlyList<string> ways = better.Count == 1 ? NowWordings.Better : NowWordings.BetterMany;
            ways = better.Take(3).Any(IsThere) ? [.. ways.Where(way => way.Contains(": <gains>", StringComparison.Ordinal))] : ways;
            yield return new(phrasing.Say("gains", reed.Number, ways, ("gains", gains)), Roots(better));
        }

        if (worse.Count > 0)
        {
            var losses = Prose.List([.. worse.Take(2).Select(move => "the " + TableWordings.Name(move.TestKind))]);
            var ways = !log.Work.Any() ? NowWordings.WorseByItself : better.Count > 0 ? NowWordings.WorseInExchange : NowWordings.Worse;
            yield return new(phrasing.Say("losses", reed.Number, ways, ("losses", losses)), Roots(worse));
        }
    }

    // What has come to be right isn’t “nearer to right” as well.
    private static string Gain(TestMove move, CrowTarget target) => move.TestKind == TestKind.Crow && LetterMoved.IsByPitch(move) ? NowWordings.NearerInPitch(target.PitchClass.Name) : IsThere(move) ? NowWordings.There[move.TestKind] : NowWordings.Gains[move.TestKind];

    private static bool IsThere(TestMove move) => NowWordings.There.ContainsKey(move.TestKind) && move.Now?.Now.Step is { } step && TestScale.Of(move.TestKind).FromGood(step) == 0;

    // What was tried only once has no row of its own: nothing stands beside it.
    private static string Tests(TestMove[] moves, int reed, CrowTarget target, Phrasing phrasing) =>
        Prose.Clauses([.. moves.Select((move, index) => Clause(move, reed + index, target, phrasing))]);

    /// <summary>“The opening was a little wide”; what has no word of its scale stands as it was said.</summary>
    /// <param name="move">A test that was made when the reed came.</param>
    /// <param name="turn">Makes neighbours choose other words.</param>
    /// <param name="target">What a crow is held against.</param>
    /// <param name="phrasing">Chooses the words.</param>
    internal static string Clause(TestMove move, int turn, CrowTarget target, Phrasing phrasing)
    {
        if (move.Arrival!.Now is { Step: { } step } test)
        {
            var stood = phrasing.Clause("stood", turn, [NowWordings.Stood[move.TestKind][step]], false);
            return Beside(test, target) is { } note ? $"{stood} ({note})" : stood;
        }

        if (ComplaintAnswer.OfCrow(move.Arrival.Now, target) is { } crow)
        {
            return crow;
        }

        var name = TableWordings.Name(move.TestKind);
        return Note(move.Arrival.Now.Pitch) is { } heard ? $"its {name} gave {heard}" : $"my note on the {name} says {Prose.Quoted(move.Arrival.Now.Words ?? "")}";
    }

    private static BeforeAndNow? Row(TestMove move, BenchLog log, CrowTarget target)
    {
        var before = move.Arrival is { } arrival && LetterLog.IsBare(arrival.Now) ? null : Say(move.Arrival, target);
        var now = Say(move.Now, target);
        return now is null || (before is null && LetterLog.IsBare(move.Now!.Now))
            ? null
            : new(TableWordings.Name(move.TestKind), before, now + NowWordings.LastTried(LetterTried.WorkAfter(log, move.Now!)), LetterMoved.Of(move, log, target), Roots([move]));
    }

    private static string? Say(LiveFact<Test>? fact, CrowTarget target)
    {
        if (fact?.Now is not { } test)
        {
            return null;
        }

        string?[] parts = [TableWordings.Step(test), Beside(test, target), test.MeasuredWords];
        var said = string.Join("; ", parts.OfType<string>());
        return said.Length > 0 ? said : test.Words;
    }

    // One crow is told in one way wherever a letter speaks of it: from the note that it is compared with, as the drawing counts.
    // The tuning note is told once: “a little flat” of an A needs no “an A” beside it.
    private static string? Beside(Test test, CrowTarget target) => test is { TestKind: TestKind.Crow, Pitch: { } pitch } ? ComplaintAnswer.Stand(pitch, target)
        : test is { TestKind: TestKind.TuningNote, Step: not null, Pitch: { Cents.Value: 0, Between: null, Lean: null } } ? null : Note(test.Pitch);

    // Without its octave: the drawing beside the table and the words of the letter name a note by its letter alone.
    private static string? Note(SaidPitch? pitch) => pitch?.ShowNote();

    private static List<EntryId> Roots(IEnumerable<TestMove> moves) =>
        [.. moves.SelectMany(move => new[] { move.Arrival?.Root, move.Now?.Root }).OfType<EntryId>()];
}
