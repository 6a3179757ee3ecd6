using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>One reed: how it played when it arrived against how it plays now.</summary>
internal static class NowBlock
{
    internal static LetterBlock? Of(Reed reed, BenchLog log, Phrasing phrasing)
    {
        List<BeforeAndNow> rows = [.. log.Moves.Select(Row).OfType<BeforeAndNow>()];

        // A length that was taken once says nothing about how the reed plays.
        var once = log.Moves.Where(move => move.TestKind != TestKind.Length && Say(move.Now) is null && Say(move.Arrival) is not null).ToList();
        if (rows.Count + once.Count == 0)
        {
            return null;
        }

        List<LetterSentence> sentences = [.. Moved(reed, log, phrasing)];
        if (once.Count > 0)
        {
            sentences.Add(new(Once(once, rows.Count > 0, log.Live<Adjustment>().Any()), Roots(once)));
        }

        return new LetterBlock(LetterComposer.Key(reed, "now"), BlockKind.ReedNow, sentences.Count == 0 ? [] : [new(sentences)])
        {
            Reed = reed.Id,
            Rows = rows,
        };
    }

    private static IEnumerable<LetterSentence> Moved(Reed reed, BenchLog log, Phrasing phrasing)
    {
        var better = log.Moves.Where(move => move.Movement == Movement.Nearer).ToList();
        var worse = log.Moves.Where(move => move.Movement == Movement.Further).ToList();
        if (better.Count > 0)
        {
            var gains = Prose.List([.. better.Take(3).Select(move => Gain(move.TestKind))]);
            yield return new(
                phrasing.Pick(
                    "gains", reed.Number,
                    $"Against how it arrived, {gains}.",
                    $"Compared with the day it came, {gains}.",
                    $"This has changed since it came: {gains}."),
                Roots(better));
        }

        if (worse.Count > 0)
        {
            var losses = Prose.List([.. worse.Take(2).Select(move => "the " + TestScale.Of(move.TestKind).Name)]);
            yield return new(
                better.Count > 0
                    ? $"In exchange it gave up a little in {losses}."
                    : $"It has lost a little in {losses}.",
                Roots(worse));
        }
    }

    // What was tried only once has no row of its own: nothing stands beside it.
    private static string Once(List<TestMove> moves, bool others, bool worked)
    {
        var tests = Prose.List([.. moves.Select(move => $"the {TestScale.Of(move.TestKind).Name} ({Say(move.Arrival)})")]);
        return others ? $"I tried {tests} only when it came."
            : worked ? $"When it came I tried {tests}, and I did not try that again after the work."
            : $"When it came I tried {tests}.";
    }

    private static BeforeAndNow? Row(TestMove move)
    {
        var before = Say(move.Arrival);
        var now = Say(move.Now);
        return now is null
            ? null
            : new(TestScale.Of(move.TestKind).Name, before, now, move.Movement, Roots([move]));
    }

    private static string? Say(LiveFact<Test>? fact)
    {
        if (fact?.Now is not { } test)
        {
            return null;
        }

        string?[] parts = [test.StepWord, test.Pitch?.Show(), test.MeasuredWords];
        var said = string.Join("; ", parts.OfType<string>());
        return said.Length > 0 ? said : test.Words;
    }

    private static List<EntryId> Roots(IEnumerable<TestMove> moves) =>
        [.. moves.SelectMany(move => new[] { move.Arrival?.Root, move.Now?.Root }).OfType<EntryId>()];

    private static string Gain(TestKind test) => test switch
    {
        TestKind.Opening => "the opening is nearer to where it should be",
        TestKind.ClosingOrder => "the blades close in a better order",
        TestKind.Seal => "it holds its air better",
        TestKind.Crow => "the crow is in better order",
        TestKind.Peep => "the peep is cleaner",
        TestKind.SoftestStart => "soft notes start more easily",
        TestKind.Effort => "it asks for a more comfortable effort",
        TestKind.TuningNote => "the tuning note sits closer to where it belongs",
        TestKind.TonguedStarts => "tongued notes are cleaner",
        TestKind.LowResponse => "the low notes speak sooner",
        TestKind.HighSteadiness => "the high notes hold better",
        TestKind.Swell => "a long note keeps its place better from soft to loud",
        TestKind.Edge => "the edge of the sound is nearer to right",
        _ => "the sound has more depth",
    };
}
