using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>What was good of a reed on which nothing was done: more is said of it than that it was left alone.</summary>
internal static class GoodOfIt
{
    private const int MostInOneBreath = 3;

    /// <summary>One sentence, of the tests that came out right; nothing where none did, or the reed isn’t to be played. Its strengths were told before.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="target">What its crow is compared with.</param>
    /// <param name="phrasing">Chooses the words.</param>
    /// <param name="told">What was told so far: a test is told once.</param>
    internal static IEnumerable<LetterSentence> Sentences(Reed reed, BenchLog log, CrowTarget target, Phrasing phrasing, LetterSoFar told)
    {
        if (log.Work.Any() || reed.Fitness == Fitness.Mould || ComplaintAnswer.IsGivenUp(log))
        {
            yield break;
        }

        List<TestMove> right = [.. log.Moves.Where(move => move.Now is null && move.Arrival is { } test && IsRight(test.Now, target) && !told.ToldTest(move.TestKind, reed.Number)).Take(MostInOneBreath)];
        if (right.Count > 0)
        {
            right.ForEach(move => told.TellTest(move.TestKind, reed.Number));
            var goods = Prose.Clauses([.. right.Select((move, index) => NowBlock.Clause(move, reed.Number + index, target, phrasing))]);
            yield return new(phrasing.Say("good-of-it", reed.Number, WorkFrames.GoodOfIt, ("goods", goods)), [.. right.Select(move => move.Arrival!.Root)]);
        }
    }

    private static bool IsRight(Test test, CrowTarget target) => test.Step is { } step && TestScale.Of(test.TestKind).FromGood(step) == 0
        && (test is not { TestKind: TestKind.Crow, Pitch: { } pitch } || Math.Abs(pitch.Against(target).Middle.Value) <= CrowTarget.ToleranceCents);
}
