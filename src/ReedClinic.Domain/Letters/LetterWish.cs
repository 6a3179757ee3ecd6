using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>What the student allowed, held against what the log says was done.</summary>
internal static class LetterWish
{
    private static readonly AdjustmentKindId[] TakeNoCane = [new("retie"), new("retire")];

    /// <summary>The work that goes beyond what was allowed; empty when there is none.</summary>
    /// <param name="reed">The reed.</param>
    /// <param name="log">Its log.</param>
    internal static IReadOnlyList<EntryId> Beyond(Reed reed, BenchLog log) => reed.Permission switch
    {
        Permission.AdviseOnly => [.. log.Live<Adjustment>().Select(work => work.Root)],
        Permission.SafeChangesOnly => [.. log.Live<Adjustment>().Where(work => TakesCane(work.Now) != false).Select(work => work.Root)],
        _ => [],
    };

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
    /// <param name="reason">Why it was done all the same.</param>
    internal static IEnumerable<LetterSentence> Sentences(Reed reed, BenchLog log, string? reason)
    {
        var beyond = Beyond(reed, log);
        if (beyond.Count == 0)
        {
            if (reed.Permission == Permission.SafeChangesOnly && log.Live<Adjustment>().Any())
            {
                yield return new(
                    "You had asked for safe changes only, and nothing that I did took any cane away.",
                    [.. log.Live<Adjustment>().Select(work => work.Root)]);
            }

            yield break;
        }

        yield return new(
            reed.Presence == Presence.Extra ? "You had said nothing about this one, and I did work on it."
            : reed.Permission == Permission.AdviseOnly ? "You had asked for advice only, and I did work on it."
            : log.Live<Adjustment>().Any(work => TakesCane(work.Now) == true) ? "You had asked for safe changes only, and I did take some cane away."
            : "You had asked for safe changes only, and I did work on it.",
            beyond);
        if (reason is not null)
        {
            yield return new(Prose.Sentence(reason), beyond);
        }
    }

    private static string Named(Reed reed) =>
        $"Reed {Prose.Number(reed.Number)} ({reed.HowToRecognise}) was worked on, although "
        + (reed.Presence == Presence.Extra ? "nothing was said about it."
            : reed.Permission == Permission.AdviseOnly ? "advice only was asked for."
            : "safe changes only were asked for.");

    // Null for what isn't in the catalogue: nobody but the teacher knows.
    private static bool? TakesCane(Adjustment work) => AdjustmentCatalogue.Find(work.AdjustmentKind) is { } kind
        ? kind.Reversible == Reversible.No && !TakeNoCane.Contains(kind.Id)
        : null;
}
