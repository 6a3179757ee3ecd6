using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Advice;

/// <summary>
/// Advice from the latest crow and the latest effort. How the reed arrived doesn’t count: one that came a little high may rightly
/// be clipped several times, since scraping lowers it in between (common practice).
/// </summary>
internal static class CrowRules
{
    internal static AdviceLine? ResistanceGone(AdviceMatter matter)
    {
        if (matter.IsOver || matter.Effort != 0 || matter.Plans(kind => !WorkKinds.IsScrape(kind)))
        {
            return null;
        }

        var run = AdviceMatter.Run(matter.Efforts, test => test.Now.Step == 0);
        var before = matter.Efforts.LastOrDefault(test => test.Now.Step > 0 && test.Sequence < run.Sequence);
        return before is null
            || !matter.Work.Any(done => done.Sequence > before.Sequence && done.Sequence < run.Sequence)
            || matter.DoneSince(run.Sequence, done => WorkKinds.IsScrape(done.AdjustmentKind))
            ? null
            : new AdviceLine(
                AdviceMatter.IdOf("resistance-gone", run.Root), AdviceKind.ResistanceGone,
                "Hardly anything is left to blow against: no more thinning for now.",
                "A crow that falls while a thick tip comes down is ordinary; resistance that goes with it is not. A clip adds some.",
                EvidenceMark.CommonPractice);
    }

    internal static AdviceLine? EasyAndSharp(AdviceMatter matter) =>
        matter.Crow != CrowStand.Sharp || !matter.IsEasy || !matter.Plans(WorkKinds.IsScrape) || ScrapedSince(matter)
            ? null
            : new AdviceLine(
                AdviceMatter.IdOf("easy-and-sharp", matter.BothRun.Root), AdviceKind.EasyAndSharp,
                "Easy and sharp at once: too much cane has usually gone already.",
                "More scraping makes it easier still. Opening it a little can be tried; often there is no rescue.",
                EvidenceMark.Published(TradeTexts.ReedFixes));

    internal static AdviceLine? ClipWhenSharp(AdviceMatter matter) =>
        matter.Crow != CrowStand.Sharp || !matter.Plans(WorkKinds.IsClip)
            || matter.DoneSince(matter.CrowRun.Sequence, done => WorkKinds.IsClip(done.AdjustmentKind))
            ? null
            : new AdviceLine(
                AdviceMatter.IdOf("clip-when-sharp", matter.CrowRun.Root), AdviceKind.ClipWhenSharp,
                $"The latest crow stands {matter.SayCrow()}: a clip takes it higher.",
                "A clip raises pitch and resistance. Taking a little cane first brings it down.",
                EvidenceMark.Published(TradeTexts.ReedFixes));

    /// <summary>The first clip before any crow has told where the reed stands.</summary>
    internal static AdviceLine? ClipUnheard(AdviceMatter matter) =>
        matter.Crow != CrowStand.NotHeard || !matter.Plans(WorkKinds.IsClip)
            || matter.Log.Live<Adjustment>().Any(done => WorkKinds.IsClip(done.Now.AdjustmentKind))
            ? null
            : new AdviceLine(
                new AdviceId("clip-unheard/start"), AdviceKind.ClipUnheard,
                "No crow with a pitch stands here yet, and a clip can’t be put back.",
                "A clip takes the crow higher: the crow before it tells whether it may, and the one after it what it did.",
                EvidenceMark.CommonPractice);

    /// <summary>
    /// Scraping a reed that is flat and easy. Right all the same where the tip is thick and a clip can follow, and at the edges and
    /// corners of a tip whose centre is thin (common practice).
    /// </summary>
    internal static AdviceLine? ScrapeWhenFlatAndEasy(AdviceMatter matter)
    {
        if (matter.Crow != CrowStand.Flat || !matter.IsEasy || matter.Planned is not { } plan || !WorkKinds.IsScrape(plan.Kind)
            || (matter.Found("tip-thick", "tip-corners-thick") && RoomForAClip(matter))
            || (WorkKinds.KeepsTheCentre(plan.Kind) && matter.Found("tip-centre-thin", "tip-even-across", "tip-thin"))
            || ScrapedSince(matter))
        {
            return null;
        }

        return new AdviceLine(
            AdviceMatter.IdOf("scrape-when-flat", matter.BothRun.Root), AdviceKind.ScrapeWhenFlatAndEasy,
            $"The latest crow stands {matter.SayCrow()} and the reed is easy: scraping takes both further down.",
            "A clip raises pitch and resistance; close it a little, or clip a hair, before more cane goes.",
            EvidenceMark.Published(TradeTexts.ReedFixes));
    }

    internal static AdviceLine? ClosingFirst(AdviceMatter matter) =>
        matter.Crow != CrowStand.Flat || !matter.IsHard || !matter.Plans(WorkKinds.IsScrape)
            || matter.WasTried(TestKind.ClosingOrder) || ScrapedSince(matter)
            ? null
            : new AdviceLine(
                AdviceMatter.IdOf("closing-first", matter.BothRun.Root), AdviceKind.ClosingFirst,
                "Not yet tried: which part closes first.",
                "Flat and hard at once often comes from how it opens and closes; look at that before scraping.",
                EvidenceMark.CommonPractice);

    private static bool ScrapedSince(AdviceMatter matter) =>
        matter.DoneSince(matter.BothRun.Sequence, done => WorkKinds.IsScrape(done.AdjustmentKind));

    private static bool RoomForAClip(AdviceMatter matter) =>
        matter is not { Length: { } left, Floor: { } floor } || left.Millimetres - ReedLengths.UsualHair >= floor.Millimetres;
}
