namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>
/// Which way a squeeze goes: by the sides it opens, by top and bottom it closes. Where neither is said, what was found before tells
/// it; it is shown as in doubt wherever it would open what nobody called closed.
/// </summary>
internal static class Squeezes
{
    private static readonly string[] Ways = ["open", "opened", "opener", "opens", "wider", "close", "closed", "closer", "shut", "flat", "flatter", "top", "bottom", "face", "faces", "side", "sides", "sideways", "edge", "edges", "flank", "flanks", "corners"];

    /// <summary>What a squeeze without a direction is, and what is unsure about it; null where nothing is.</summary>
    internal static (string Kind, Doubt Doubt)? InDoubt(DeedParts deed, string kind) =>
        kind is not ("open-squeeze" or "close-press") || deed.Action is not "squeeze" || Ways.Any(deed.Course.Segment.HasWord) ? null
        : TooOpen(deed.Course) switch
        {
            true => ("close-press", new Doubt("kind", "which way it was squeezed wasn’t said: it was too open, so by top and bottom, to close it?")),
            null => ("open-squeeze", new Doubt("kind", "which way it was squeezed wasn’t said: by the sides, to open it?")),
            false => null,
        };

    /// <summary>Whether words that name no way would turn a squeeze that stands into its opposite.</summary>
    internal static bool TurnsRound(Adjustment was, Adjustment now, string said) =>
        was.AdjustmentKind != now.AdjustmentKind && IsSqueeze(was) && IsSqueeze(now) && !Tokenizer.Cut(said).Exists(token => Ways.Contains(token.Text));

    private static bool IsSqueeze(Adjustment work) => work.AdjustmentKind.Value is "open-squeeze" or "close-press";

    private static bool? TooOpen(Course course)
    {
        foreach (var draft in Enumerable.Reverse(course.Drafts))
        {
            if (Of(draft.Slots.Kind, draft.Slots.Test is TestKind.Opening ? draft.Slots.Step : null) is { } said)
            {
                return said;
            }
        }

        return course.Before.Log.Facts.Select(fact => fact.Now).Select(entry => entry switch
        {
            Finding finding => Of(finding.FindingKind.Value, null),
            Test { TestKind: TestKind.Opening } test => Of(null, test.StepWord),
            _ => null,
        }).LastOrDefault(said => said is not null);
    }

    private static bool? Of(string? finding, string? step) => (finding, step) switch
    {
        ("opening-wide", _) or (_, "a little open" or "very open") => true,
        ("opening-narrow", _) or (_, "a little closed" or "closed") => false,
        _ => null,
    };
}
