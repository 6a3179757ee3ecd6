using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>What holds an adjustment back on this reed, whatever it is worth. The first that applies is told.</summary>
internal static class Bars
{
    private static readonly Func<ReedNow, AdjustmentEntry, HeldBack?>[] Rules =
    [
        Refused, NotAllowed, GoesByPost, WetAlready, NotByThisHand, OwnChoice, NotThisReed, LeftAlone, ThinAlready, DryStill, NotTheReed, Leaking, Untested,
        MerelyHardAndNew, CrowBars.ResistanceGone, CrowBars.EasyAndSharp, CrowBars.HeldByCrow, CrowBars.NoLength, AgainstWinding, ProportionUsedUp,
    ];

    private static readonly EvidenceMark OnRecord = new(Evidence.OnRecord, "this reed’s log");

    // Refused, and why (mould, a crack through the heart, cut rails, a missing corner): common practice.
    private static readonly (string Sign, string Words)[] EndsCaneWork =
    [
        ("body-cracked", "The cane has split behind the tip: more work isn’t proposed on it."),
        ("rails-cut", "The rails are cut: no more cane is proposed from this reed."),
        ("tip-corner-broken", "A corner is missing: whether to cut past it is an adjuster’s own choice."),
    ];

    private static readonly (string[] Signs, Zone[] Zones, string Words)[] Thin =
    [
        (["tip-thin", "tip-even-across", "tip-centre-thin"], [Zone.TipCentre], "The centre of the tip has nothing left to give; sides and corners may still be worked."),
        (["heart-thin"], [Zone.HeartCentre, Zone.HeartSides], "The heart is thin already: never the heart itself."),
        (["spine-scraped"], [Zone.Spine], "The spine has gone already."),
        (["back-thin"], [Zone.Windows, Zone.WindowBase], "The back is thin already."),
    ];

    internal static HeldBack? Of(ReedNow now, AdjustmentEntry entry) => Rules.Select(rule => rule(now, entry)).OfType<HeldBack>().FirstOrDefault();

    /// <summary>Why no cane is proposed from this reed at all; null where nothing speaks against it.</summary>
    internal static string? Refusal(ReedNow now) => now switch
    {
        { IsHere: false } => "This reed isn’t here.",
        { Fitness: Fitness.Mould } => MouldWords,
        _ when now.HasSurely("mould-seen") => MouldWords,
        { Fitness: Fitness.DryFirst } => "The reed is damp: it dries in moving air first, and is looked at again.",
        _ => EndsCaneWork.Where(one => now.HasSurely(one.Sign)).Select(one => one.Words).FirstOrDefault(),
    };

    /// <summary>Places that this reed’s log or what was seen keeps the knife from, in sentences.</summary>
    internal static IEnumerable<string> Kept(ReedNow now) =>
    [
        .. now.LeftAlone.Select(kept => $"Leave alone: {kept.Place.Say()}."),
        .. Thin.Where(thin => thin.Signs.Any(now.Has)).Select(thin => thin.Words),
    ];

    internal static bool TakesCane(AdjustmentEntry entry) => entry.Undo == Reversible.No && entry.Id.Value is not ("retie" or "retire" or "change-staple");

    internal static HeldBack Hold(AdjustmentEntry entry, string reason, EvidenceMark? mark = null) => new(entry.Id, reason, mark ?? EvidenceMark.CommonPractice);

    private const string MouldWords = "There is mould: nobody plays it, nothing is done to it, and it isn’t posted.";

    private static HeldBack? Refused(ReedNow now, AdjustmentEntry entry) =>
        Refusal(now) is not { } why || entry.Id.Value == "retire" ? null
        : !now.IsHere || now.Fitness is Fitness.Mould or Fitness.DryFirst || now.HasSurely("mould-seen") || TakesCane(entry) ? Hold(entry, why)
        : null;

    private static HeldBack? NotAllowed(ReedNow now, AdjustmentEntry entry) => now.AgreedSince || entry.Id.Value is "retire" ? null : now.Permission switch
    {
        Permission.AdviseOnly when !IsLook(entry) => Hold(entry, "The student asked for advice only.", new EvidenceMark(Evidence.OnRecord, "what the student asked for")),
        Permission.SafeChangesOnly when entry.Undo == Reversible.No =>
            Hold(entry, "The student asked for safe changes only, and the cane that this takes off can’t be put back.", new EvidenceMark(Evidence.OnRecord, "what the student asked for")),
        _ => null,
    };

    /// <summary>Days of playing happen at home.</summary>
    private static HeldBack? GoesByPost(ReedNow now, AdjustmentEntry entry) =>
        now.ByPost && entry.Id.Value == "wait" ? Hold(entry, "It goes back by post: playing it in is for its player. Say so in the letter.") : null;

    /// <summary>What was worked on is wet; to soak it again undoes what was pressed.</summary>
    private static HeldBack? WetAlready(ReedNow now, AdjustmentEntry entry) =>
        now.ByPost && entry.Id.Value == "soak" && now.Work.Count > 0 && !now.Has("dry") && !now.Has("crow-silent")
            ? Hold(entry, "It was worked on here, so it is wet enough.") : null;

    private static HeldBack? NotByThisHand(ReedNow now, AdjustmentEntry entry) =>
        now.Hand == Hand.YoungerStudent && !now.KnifeAgreed && entry.Undo != Reversible.Yes
            ? Hold(entry, "For a younger student: only once guardian and teacher have both said yes.")
            : null;

    private static HeldBack? OwnChoice(ReedNow now, AdjustmentEntry entry) =>
        entry.ByChoice.Value || entry.Risk.Value >= 5 ? Hold(entry, "Never proposed unasked: it is an adjuster’s own choice.", entry.ByChoice.Mark) : null;

    private static HeldBack? NotThisReed(ReedNow now, AdjustmentEntry entry) => (entry.Zone, entry.Id.Value) switch
    {
        (Zone.Windows or Zone.Spine or Zone.Rails, _) or (_, "extend-windows") when now.Scrape == ScrapeStyle.ShortScrape =>
            Hold(entry, "A short scrape has no such part."),
        (_, "scrape-lay-base") when now.Scrape != ScrapeStyle.ShortScrape => Hold(entry, "Only a short scrape has such a lay."),
        (Zone.Cork, "refit-cork") when !ReedMeasures.IsOboe(now.Instrument) => Hold(entry, "This reed has no cork."),
        _ => null,
    };

    private static HeldBack? LeftAlone(ReedNow now, AdjustmentEntry entry)
    {
        var plan = new PlannedWork(entry.Id, new Place(entry.Zone));
        var kept = now.LeftAlone.Where(kept => WorkKinds.Reaches(plan, kept.Place)).ToList();
        return kept.Count == 0 ? null : Hold(entry, $"To be left alone: {kept[0].Place.Say()}. {kept[0].Why}", OnRecord);
    }

    private static HeldBack? ThinAlready(ReedNow now, AdjustmentEntry entry) =>
        !TakesCane(entry) || WorkKinds.IsClip(entry.Id) ? null
        : Thin.Where(thin => thin.Signs.Any(now.Has) && WorkKinds.ZonesOf(new PlannedWork(entry.Id, new Place(entry.Zone))).Intersect(thin.Zones).Any())
            .Select(thin => Hold(entry, thin.Words)).FirstOrDefault();

    /// <summary>Never a knife or a pinch on dry cane.</summary>
    private static HeldBack? DryStill(ReedNow now, AdjustmentEntry entry) =>
        (now.Has("dry") || now.Has("crow-silent")) && (TakesCane(entry) || entry.Undo == Reversible.Partly)
            ? Hold(entry, "The reed may still be dry: water first, and dry cane splits.")
            : null;

    private static HeldBack? NotTheReed(ReedNow now, AdjustmentEntry entry) =>
        !TakesCane(entry) ? null
        : now.HasSurely("stays-with-instrument") || now.HasSurely("several-reeds-same") ? Hold(entry, "The trouble stays with the instrument: no knife helps there.")
        : now.HasSurely("goes-with-player") ? Hold(entry, "With another player the trouble is gone: no knife helps there.")
        : null;

    private static HeldBack? Leaking(ReedNow now, AdjustmentEntry entry) =>
        TakesCane(entry) && (now.Has("no-vacuum") || now.Has("bubbles-at-side") || now.Has("bubbles-at-thread"))
            ? Hold(entry, "It leaks: that comes before any cane, since a leak feels like half the faults there are.")
            : null;

    private static HeldBack? Untested(ReedNow now, AdjustmentEntry entry) =>
        now.Untested && TakesCane(entry)
            ? Hold(entry, "Cane was taken and nothing was tried since: try it first.", EvidenceMark.Published(TradeTexts.ReedFixes))
            : null;

    /// <summary>A new reed that is merely hard is played in first.</summary>
    private static HeldBack? MerelyHardAndNew(ReedNow now, AdjustmentEntry entry) =>
        TakesCane(entry) && Settling.SettlingAnswers.IsNew(now.MinutesPlayed) && Settling.SettlingAnswers.IsMerelyHard(now.Causes.Counted)
            ? Hold(entry, "It is new and merely hard: play it in for a few days first.", EvidenceMark.Published(TradeTexts.TeachingHandbook))
            : null;

    private static HeldBack? AgainstWinding(ReedNow now, AdjustmentEntry entry) =>
        entry.Id.Value == "realign" && (now.AgainstWinding || now.Has("slipped-against-winding"))
            ? Hold(entry, "It leans against the winding and would creep back: write it down, work round it, teach it at tying.")
            : null;

    private static HeldBack? ProportionUsedUp(ReedNow now, AdjustmentEntry entry) =>
        Proportion.IsUsedUp(now, entry.Id) ? Hold(entry, "What stands around it has given what it can: proportion has its limits.") : null;

    internal static bool IsLook(AdjustmentEntry entry) => entry.Id.Value is "check-instrument" or "check-player";
}
