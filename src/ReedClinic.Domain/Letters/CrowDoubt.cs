using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Bench.Story;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>A crow that stands where the work can hardly have brought it: the letter tells what was heard and calls it no effect, and the teacher is asked.</summary>
/// <remarks>Shortening raises the pitch, and scraping lowers it (common practice). How many cents are too many is this program’s own measure.</remarks>
internal static class CrowDoubt
{
    private const double MostCents = 100;

    // A crow wavers by so much by itself: nobody is asked about less.
    private const double Wavers = 10;

    /// <summary>Whether a step is in doubt: lower after nothing but a clip, or further than a semitone at once.</summary>
    /// <param name="step">The step.</param>
    /// <param name="story">The story it belongs to.</param>
    /// <param name="log">The reed’s log.</param>
    internal static bool IsOf(CrowStep step, CrowStory story, BenchLog log) => IsTooFar(step) || IsAgainstTheClip(step, story, log);

    /// <summary>Whether one of the steps between the first and the last time that a crow was heard is in doubt.</summary>
    /// <param name="move">A test, as it was first and as it was last.</param>
    /// <param name="log">The reed’s log.</param>
    /// <param name="target">What a crow is compared with.</param>
    internal static bool IsIn(TestMove move, BenchLog log, CrowTarget target) =>
        move.TestKind == TestKind.Crow && CrowStory.Of(log, target) is var story && story.Steps.Any(step => IsOf(step, story, log));

    /// <summary>The gap that asks the teacher whether such an entry is right; null where there is none.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="target">What its crow is compared with.</param>
    internal static LetterGap? Gap(Reed reed, BenchLog log, CrowTarget target)
    {
        var story = CrowStory.Of(log, target);
        List<string> odd =
        [
            .. story.Steps.Where(step => IsTooFar(step) || (IsAgainstTheClip(step, story, log) && step.Change.Middle.Value <= -Wavers))
                .Select(step => $"from {Stand(story.Points[step.From], target)} to {Stand(story.Points[step.To], target)} {After([.. Work(step, story, log)])}"),
        ];
        return odd.Count == 0 ? null : new(
            "crow-" + Prose.Number(reed.Number),
            GapKind.CrowAgainstTheWork,
            $"In the log of reed {Prose.Number(reed.Number)} the crow goes {Prose.List(odd)}: is that entry right? The letter tells what was heard, and not that the work did it.")
        {
            Reed = reed.Id,
            IsToldOnly = true,
        };
    }

    private static bool IsTooFar(CrowStep step) => Math.Abs(step.Change.Middle.Value) > MostCents;

    private static bool IsAgainstTheClip(CrowStep step, CrowStory story, BenchLog log) =>
        step.Change is { High.Value: <= 0, Low.Value: < 0 } && IsClip([.. Work(step, story, log)]);

    // What else was done in the same breath may well have lowered it.
    private static bool IsClip(List<LiveFact<Adjustment>> work) => work.Count > 0 && work.TrueForAll(done => WorkKinds.IsClip(done.Now.AdjustmentKind));

    private static IEnumerable<LiveFact<Adjustment>> Work(CrowStep step, CrowStory story, BenchLog log) =>
        log.Work.Where(work => IsAfter(work, story.Points[step.From]) && !IsAfter(work, story.Points[step.To]));

    private static bool IsAfter(LiveFact<Adjustment> work, CrowPoint crow) => (work.Pass, work.Sequence).CompareTo((crow.Pass, crow.Sequence)) > 0;

    private static string Stand(CrowPoint crow, CrowTarget target) => CentsWords.Stand(crow.Cents!.Value, target.PitchClass.Name);

    private static string After(List<LiveFact<Adjustment>> work) =>
        work.Count == 0 ? "with no work in between" : IsClip(work) ? "after a clip" : "after the work in between";
}
