using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Letters;

/// <summary>What the student allowed, held against what the log says was done.</summary>
internal static class LetterWish
{
    /// <summary>The work that goes beyond what was allowed and wasn't agreed on since; empty when there is none.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="target">What a crow is held against.</param>
    internal static IReadOnlyList<EntryId> Beyond(Reed reed, BenchLog log, CrowTarget target) => Roots(Further(reed, log, target).Where(work => !IsAgreed(work)));

    /// <summary>The gap that asks the teacher to explain it.</summary>
    /// <param name="reed">The reed.</param>
    internal static LetterGap Gap(Reed reed) => new(
        KeyOf(reed),
        GapKind.WorkBeyondTheWish,
        $"{Named(reed)} Say why; the student reads it.")
    {
        Reed = reed.Id,
    };

    /// <summary>The key of that gap.</summary>
    /// <param name="reed">The reed.</param>
    internal static string KeyOf(Reed reed) => "wish-" + Prose.Number(reed.Number);

    /// <summary>What the letter says about the wish; nothing where no work was done or anything was allowed.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    /// <param name="target">What a crow is held against.</param>
    /// <param name="reason">Why it was done all the same.</param>
    /// <param name="phrasing">Chooses the words.</param>
    /// <param name="told">What was told so far: that the wish was kept is told in full once, and not of more than two reeds.</param>
    internal static IEnumerable<LetterSentence> Sentences(Reed reed, BenchLog log, CrowTarget target, string? reason, Phrasing phrasing, LetterSoFar told)
    {
        var further = Further(reed, log, target);
        if (further.Count == 0)
        {
            List<LiveFact<Adjustment>> work = reed.Permission == Permission.SafeChangesOnly ? [.. log.Work] : [];
            if (work.Count > 0 && Kept(work, log, told) is { } ways)
            {
                yield return new(phrasing.Say("safe", reed.Number, ways), Roots(work));
            }

            yield break;
        }

        var agreed = further.Where(IsAgreed).ToList();
        if (agreed.Count == further.Count)
        {
            yield return new(
                phrasing.Say("wish-agreed", reed.Number, WishWordings.Agreed, ("asked", Asked(reed, phrasing)), ("work", What(reed, agreed))), Roots(agreed));
            yield break;
        }

        var beyond = further.Where(work => !IsAgreed(work)).ToList();
        yield return new(
            phrasing.Say("wish-beyond", reed.Number, beyond.TrueForAll(IsUnagreed) ? WishWordings.Unagreed : WishWordings.Beyond, ("asked", Asked(reed, phrasing)), ("work", What(reed, beyond))), Roots(beyond));
        if (reason is not null)
        {
            yield return new(Prose.Sentence(reason), Roots(beyond));
        }

        if (agreed.Count > 0)
        {
            yield return new(phrasing.Say("wish-also", reed.Number, WishWordings.AlsoAgreed), Roots(agreed));
        }
    }

    // That each pass was tried is told only where each was; that the wish was kept, only where nobody could think otherwise.
    private static IReadOnlyList<string>? Kept(List<LiveFact<Adjustment>> work, BenchLog log, LetterSoFar told)
    {
        var takesCane = work.Exists(done => SafeChanges.TakesCane(done.Now.AdjustmentKind) != false);
        if (work.Exists(done => Agreement.IsSaid(done.Now.Words)) || (takesCane && (!LetterTried.IsTriedAfterEachPass(log) || work.Where(done => WorkKinds.IsClip(done.Now.AdjustmentKind)).CountBy(done => done.Pass).Any(pass => pass.Value > 1))))
        {
            return null;
        }

        if (work.Exists(IsNoPlainSafeChange))
        {
            return told.Says("wish kept with care") ? (takesCane ? WishWordings.SmallStepsAlone : WishWordings.NoCaneAlone) : null;
        }

        return told.Says("wish kept") ? (takesCane ? WishWordings.SmallSteps : WishWordings.SafeOnly)
            : told.Says("wish kept again") ? (takesCane ? WishWordings.SmallStepsAgain : WishWordings.SafeOnlyAgain)
            : null;
    }

    // Within what was allowed, and yet a cut, or a reed set to another opening: the student may think otherwise of it.
    private static bool IsNoPlainSafeChange(LiveFact<Adjustment> work) =>
        WorkKinds.IsClip(work.Now.AdjustmentKind) || work.Now.AdjustmentKind.Value is "open-squeeze" or "close-press" or "bend-wire";

    private static List<LiveFact<Adjustment>> Further(Reed reed, BenchLog log, CrowTarget target) => [.. log.Work
        .Where(work => Agreement.IsAsked(reed.Permission, work.Now.AdjustmentKind, work.Now.Amount, SafeChanges.CrowBefore(log, target, work.Sequence)))];

    private static bool IsAgreed(LiveFact<Adjustment> work) => Agreement.IsIn(work.Now.Words);

    private static bool IsUnagreed(LiveFact<Adjustment> work) => Agreement.IsSaid(work.Now.Words) && !IsAgreed(work);

    private static List<EntryId> Roots(IEnumerable<LiveFact<Adjustment>> works) => [.. works.Select(work => work.Root)];

    private static string Asked(Reed reed, Phrasing phrasing) => phrasing.Clause(
        "wish-asked",
        reed.Number,
        reed.Presence == Presence.Extra ? WishWordings.SaidNothing
        : reed.Permission == Permission.AdviseOnly ? WishWordings.AskedForAdvice
        : WishWordings.AskedForSafeChanges,
        false);

    private static string What(Reed reed, List<LiveFact<Adjustment>> works) =>
        reed.Permission == Permission.SafeChangesOnly && works.Exists(work => SafeChanges.TakesCane(work.Now.AdjustmentKind) == true) ? "take some cane away" : "work on it";

    private static string Named(Reed reed) =>
        $"Reed {Prose.Number(reed.Number)} ({reed.HowToRecognise}) was worked on, although "
        + (reed.Presence == Presence.Extra ? "nothing was said about it."
            : reed.Permission == Permission.AdviseOnly ? "advice only was asked for."
            : "safe changes only were asked for.");
}
