using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Advice;

/// <summary>Advice that reads this reed’s own record: what was allowed, what is left alone, what was tried.</summary>
internal static class RecordRules
{
    // After ten to fifteen strokes anywhere: rest, wet, crow (common practice).
    private const int StrokesBeforeATest = 15;
    private const int RoundsBeforeATest = 3;
    private const int ZonesOfARound = 2;

    private static readonly EvidenceMark Asked = new(Evidence.OnRecord, "what the student asked for");

    internal static AdviceLine? Permission(AdviceMatter matter)
    {
        if (matter.Planned is not { } plan || !Agreement.IsAsked(matter.Reed.Permission, plan.Kind, plan.Amount, SafeChanges.CrowBefore(matter.Log, matter.Batch.CrowTarget, matter.Until))
            || matter.Log.Work.Any(done => Agreement.IsIn(done.Now.Words)))
        {
            return null;
        }

        var name = matter.Reed switch
        {
            { Presence: Presence.Extra } => "unannounced",
            { Permission: Intake.Permission.AdviseOnly } => "advice-only",
            _ => "safe-only",
        };
        return new AdviceLine(
            new AdviceId("permission/" + name), AdviceKind.Permission, Agreement.Asked(matter.Reed, plan.Kind, plan.Amount),
            "Ask first, or say with the entry that it has been agreed since.", Asked);
    }

    /// <summary>The first small clip where only safe changes were asked for; nothing has to be agreed, and it is cane that goes.</summary>
    internal static AdviceLine? SafeClip(AdviceMatter matter) =>
        matter is { Planned: { } plan, Reed: { Permission: Intake.Permission.SafeChangesOnly, Presence: not Presence.Extra } } && WorkKinds.IsClip(plan.Kind)
        && !Agreement.IsAsked(matter.Reed.Permission, plan.Kind, plan.Amount, SafeChanges.CrowBefore(matter.Log, matter.Batch.CrowTarget, matter.Until))
        && !matter.Log.Work.Any(done => WorkKinds.IsClip(done.Now.AdjustmentKind))
            ? new AdviceLine(
                new AdviceId("safe-clip"), AdviceKind.SafeClip,
                "Safe changes only were asked for, and a clip can’t be put back: a hair, then the crow.",
                "A hair at a time keeps to what was asked for while the latest crow isn’t sharp. Once it is, ask first.", EvidenceMark.CommonPractice)
            : null;

    /// <summary>The work stops, or is about to, and nothing was tried since what was done last; to give the reed up needs no test.</summary>
    internal static AdviceLine? StoppedUntried(AdviceMatter matter)
    {
        if (!matter.Stops || matter.Log.Work.LastOrDefault(done => done.Now.AdjustmentKind.Value is not "retire") is not { } last
            || matter.Log.Live<Test>().Any(test => test.Sequence > last.Sequence))
        {
            return null;
        }

        return new AdviceLine(
            AdviceMatter.IdOf("stopped-untried", last.Root), AdviceKind.StoppedUntried,
            "Not tried since the last work: one more test tells how it leaves.",
            "The letter tells how it plays now by the last test, and what was done after that is in none. Why it stops can be said in the line, such as “stop, it is in tune”.",
            EvidenceMark.CommonPractice);
    }

    internal static AdviceLine? LeaveAlone(AdviceMatter matter)
    {
        var left = matter.Planned is { } plan
            ? matter.Log.LeftAlone.FirstOrDefault(place => WorkKinds.Reaches(plan, place.Now.Place) && !WasWorked(matter, place))
            : null;
        return left is null ? null : new AdviceLine(
            AdviceMatter.IdOf("leave-alone", left.Root), AdviceKind.LeaveAlone,
            $"To be left alone: {left.Now.Place.Say()}.", left.Now.Words, new EvidenceMark(Evidence.OnRecord, "this reed’s log"));
    }

    /// <summary>Worked three times over, or fifteen strokes in one place, since the last test.</summary>
    internal static AdviceLine? Untested(AdviceMatter matter)
    {
        var since = matter.LastTest;
        var works = matter.Log.Work
            .Where(done => done.Sequence > (since?.Sequence ?? 0) && WorkKinds.TakesCane(done.Now.AdjustmentKind))
            .Select(done => done.Now).ToList();
        var line = Rounds(works) >= RoundsBeforeATest ? "Worked three times over since the last test: try it before going on."
            : MostStrokes(works) >= StrokesBeforeATest ? "Fifteen strokes in one place since the last test: try it before going on."
            : null;
        return line is null ? null : new AdviceLine(
            AdviceMatter.IdOf("untested", since?.Root), AdviceKind.Untested, line,
            "A few strokes, then a test: what several changes did together can’t be told apart, and cane can’t be put back.",
            EvidenceMark.Published(TradeTexts.ReedFixes));
    }

    // Both sides and both blades of at most two zones make one round; a place that comes again, or a third zone, begins the next.
    private static int Rounds(IReadOnlyList<Adjustment> works)
    {
        var (rounds, cells, zones) = (0, new HashSet<Place>(), new HashSet<Zone>());
        foreach (var work in works)
        {
            var here = Cells(work.Place).ToList();
            if (rounds == 0 || here.Exists(cells.Contains) || (!zones.Contains(work.Zone) && zones.Count == ZonesOfARound))
            {
                rounds++;
                cells.Clear();
                zones.Clear();
            }

            cells.UnionWith(here);
            zones.Add(work.Zone);
        }

        return rounds;
    }

    private static int MostStrokes(IEnumerable<Adjustment> works) => works
        .SelectMany(work => Cells(work.Place).Select(cell => (Cell: cell, Strokes: work.AmountStrokes ?? 0)))
        .GroupBy(part => part.Cell, part => part.Strokes)
        .Select(cell => cell.Sum()).DefaultIfEmpty().Max();

    private static IEnumerable<Place> Cells(Place place) =>
        from blade in place.Blades == Blades.Both ? [Blades.Upper, Blades.Lower] : new[] { place.Blades }
        from side in place.Sides == Sides.Both ? [Sides.Left, Sides.Right] : new[] { place.Sides }
        select new Place(place.Zone, blade, side);

    private static bool WasWorked(AdviceMatter matter, LiveFact<LeaveAlone> left) => matter.DoneSince(
        left.Sequence, done => WorkKinds.Reaches(new PlannedWork(done.AdjustmentKind, done.Place), left.Now.Place));
}
