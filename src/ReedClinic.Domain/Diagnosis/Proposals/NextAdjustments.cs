using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>
/// What to do next with a reed: looks first, then what can be undone, then cane, the clip last unless the crow is low; each only where it is
/// worth more than to stop. Nothing is proposed that the student, the log or the rules of the trade hold back.
/// </summary>
/// <remarks>
/// Worth: the hope that an adjustment meets a likely cause (what the evidence lifts the cause by, less for later steps and for work already
/// done) and what it moves to the good, less side effects on six scales as ranges, risk, and that cane is gone. See docs/reasoning/proposals.md.
/// </remarks>
public static class NextAdjustments
{
    /// <summary>Less hope than this isn’t worth a line; this program’s own default.</summary>
    private const double LeastHope = 0.05;

    private const int MostRemarks = 12;

    /// <summary>The proposals, the first to take first.</summary>
    /// <param name="now">The reed.</param>
    public static NextSteps For(ReedNow now)
    {
        ArgumentNullException.ThrowIfNull(now);
        var stands = new ScaleStands(now);
        var worth = new Worth(now, stands);
        var wording = new Wording(now, stands);
        var hoped = now.Catalogue.Adjustments.Where(entry => entry.Id.Value != "retire").Select(worth.Of).Where(one => one.Hope >= LeastHope).ToList();
        List<HeldBack> held = [.. hoped.Select(one => Bars.Of(now, one.Entry)).OfType<HeldBack>()];
        var standing = hoped.Where(one => held.TrueForAll(bar => bar.Adjustment != one.Entry.Id) && one.Value > worth.OfStopping).OrderBy(one => Order(now, one)).ToList();
        var warned = Begin(now, standing);
        held.AddRange(warned.Select(one => Bars.Hold(one.Entry, $"Not to begin with, while it may be: {one.By.Cause.Name}.", one.By.Cause.StepsMark)));
        var stop = wording.Stop(worth.OfStopping, now.Causes.Counted.Count == 0 ? null : now.Causes.Causes.FirstOrDefault(one => Worth.Lift(one) >= LeastHope));
        var retire = Retiring(now, worth, wording, [.. standing.Select(one => one.Entry.Id), .. warned.Select(one => one.Entry.Id)]);
        List<Proposal> proposals =
        [
            .. new Looks(now).Due(standing, warned),
            .. standing.Select(one => wording.Of(one, KindOf(one.Entry))),
            .. IsOver(now) ? new[] { retire, stop }.OfType<Proposal>() : new[] { stop, retire }.OfType<Proposal>(),
        ];
        return new NextSteps(proposals, held, [.. Remarks(now, held).Distinct().Take(MostRemarks)]);
    }

    /// <summary>Takes out of what stands whatever mustn’t be begun with and would come first.</summary>
    private static List<(AdjustmentEntry Entry, LikelyCause By, Sign? Tell)> Begin(ReedNow now, List<Weighed> standing)
    {
        var beginnings = new Beginnings(now);
        List<(AdjustmentEntry, LikelyCause, Sign?)> warned = [];
        while (standing.Count > 0 && beginnings.Warns(standing[0].Entry) is { } by)
        {
            warned.Add((standing[0].Entry, by, beginnings.WouldTell(by.Cause)));
            standing.RemoveAt(0);
        }

        return warned;
    }

    private static (int Kind, int Clip, double Value, string Id) Order(ReedNow now, Weighed one) =>
        ((int)KindOf(one.Entry), WorkKinds.IsClip(one.Entry.Id) && !now.CrowIsLow ? 1 : 0, -one.Value, one.Entry.Id.Value);

    private static ProposalKind KindOf(AdjustmentEntry entry) => entry switch
    {
        { Undo: Reversible.No } => ProposalKind.Cane,
        _ => ProposalKind.Undoable,
    };

    /// <summary>A reed that is refused for good.</summary>
    private static bool IsOver(ReedNow now) => now.Fitness == Fitness.Mould || now.HasSurely("mould-seen") || now.HasSurely("body-cracked");

    /// <summary>
    /// To retire a reed is proposed where it is refused for good; and, after stopping, where a likely cause leads there and no other step
    /// against it is left.
    /// </summary>
    private static Proposal? Retiring(ReedNow now, Worth worth, Wording wording, List<AdjustmentKindId> others)
    {
        var retire = new AdjustmentKindId("retire");
        if (now.Catalogue.Find(retire) is not { Retired: false } entry || !now.IsHere)
        {
            return null;
        }

        var likely = now.Causes.Causes.Any(one => one.Chance >= worth.Weight("likely") && one.Cause.Steps.Contains(retire)
            && !one.Cause.Steps.Any(others.Contains));
        return IsOver(now) || likely ? wording.Of(worth.Of(entry), ProposalKind.Retire) : null;
    }

    private static IEnumerable<string> Remarks(ReedNow now, List<HeldBack> held)
    {
        if (Bars.Refusal(now) is { } refusal)
        {
            yield return refusal;
        }

        foreach (var remark in now.Causes.Remarks)
        {
            yield return remark;
        }

        if (now.Has("feels-easy") && (now.CrowIsHigh || (now.Crow is null && now.Has("whole-sharp"))))
        {
            yield return "Easy and sharp at once: too much cane has usually gone, and there is often no rescue.";
        }

        if (NotWonBack(now) is { } fall)
        {
            yield return fall;
        }

        foreach (var bar in held.Where(bar => bar.Mark.Evidence == Evidence.OnRecord))
        {
            yield return bar.Reason;
        }

        if (now.Passes > 0 && Missing(now) is { Count: > 0 } missing)
        {
            yield return $"Before two measurements are compared, note beside them: {string.Join(", ", missing)}.";
        }

        foreach (var step in now.Causes.Causes.Where(one => Worth.Lift(one) >= LeastHope).SelectMany(one => one.Cause.Steps).Distinct())
        {
            if (now.Catalogue.Find(step) is { Retired: true } gone)
            {
                yield return $"“{gone.Name}” is no longer used here, and isn’t proposed.";
            }
        }
    }

    /// <summary>A fall that the length left can’t win back; while it can, even a long fall is ordinary.</summary>
    private static string? NotWonBack(ReedNow now)
    {
        if (!now.CrowIsLow || now is not { Crow: { } crow, Length: { } left, Floor: { } floor })
        {
            return null;
        }

        var spare = Math.Max(0, (double)(left.Millimetres - floor.Millimetres));
        var wonBack = spare * 10 * ClipEffect.OfABeam.CentsPerTenth;
        return -crow.Middle.Value - Pitch.CrowTarget.ToleranceCents <= wonBack
            ? null
            : KnownNumber.Say($"The crow is lower than clips in the {spare:0.0} mm that are left can win back: about {wonBack:0} cents, worked out for a clamped beam.");
    }

    private static List<string> Missing(ReedNow now) =>
    [
        .. new[]
        {
            now.Circumstances.WetMinutes is null ? "how long it was in water" : null,
            now.Circumstances.AltitudeMetres is null ? "how high above the sea" : null,
            now.Circumstances.RoomCelsius is null ? "how warm the room was" : null,
            now.MinutesPlayed is null ? "how long it has been played" : null,
        }.OfType<string>(),
    ];
}
