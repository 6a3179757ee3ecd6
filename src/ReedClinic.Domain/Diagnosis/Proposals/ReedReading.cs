using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Advice;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Diagnosis.Proposals;

/// <summary>Reads from the records what is known of a reed as it stands now.</summary>
public static class ReedReading
{
    // What is played at the bench is played by somebody else on another instrument (common practice).
    private static readonly HashSet<TestKind> Played =
    [
        TestKind.SoftestStart, TestKind.Effort, TestKind.TuningNote, TestKind.TonguedStarts, TestKind.LowResponse, TestKind.HighSteadiness,
        TestKind.Swell, TestKind.Edge, TestKind.Depth,
    ];

    private static readonly HashSet<string> OfPitch = ["whole-sharp", "whole-flat"];

    private static readonly string[] DryOnes = ["dry", "crow-silent"];

    /// <summary>What is known of a reed.</summary>
    /// <param name="catalogue">The catalogue, with the studio’s own changes.</param>
    /// <param name="log">The reed’s log.</param>
    /// <param name="reed">The reed.</param>
    /// <param name="batch">Its batch.</param>
    /// <param name="more">Signs that were asked for by themselves, such as whether the trouble stays with the instrument.</param>
    /// <param name="checks">What was looked at and stands in no record.</param>
    /// <param name="effects">What adjustments do here; what is usually taught where nothing is said.</param>
    public static ReedNow Of(
        Catalogue catalogue, BenchLog log, Reed reed, Batch batch,
        IEnumerable<Sighting>? more = null, FirstChecks checks = default, AdjustmentEffects? effects = null)
    {
        ArgumentNullException.ThrowIfNull(catalogue);
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(reed);
        ArgumentNullException.ThrowIfNull(batch);
        var causes = LikelyCauses.Of(
            catalogue, [.. Seen(catalogue, log, reed, batch), .. more ?? []],
            CauseJudged.Last(log).ToDictionary(word => word.Key, word => word.Value.Answer));
        var tests = log.Counting.ToList();
        var work = log.Live<Adjustment>().ToList();
        return new ReedNow(catalogue, causes)
        {
            Permission = reed.Permission,
            AgreedSince = work.Exists(done => Agreement.IsIn(done.Now.Words)),
            IsHere = reed.Presence != Presence.Missing,
            Fitness = reed.Fitness,
            LeftAlone = [.. log.LeftAlone.Select(left => new KeptPlace(left.Now.Place, left.Now.Words))],
            Length = ReedLengths.Left(log, int.MaxValue),
            Floor = ReedLengths.FloorOf(batch.Instrument, batch.Scrape),
            Crow = LastCrow(log)?.Now.Pitch!.Against(batch.CrowTarget),
            Work = [.. work.Select(done => new WorkDone(done.Now.AdjustmentKind, done.Now.Place, done.Pass))],
            Untested = work.Exists(done => WorkKinds.TakesCane(done.Now.AdjustmentKind) && !tests.Exists(test => test.Sequence > done.Sequence)),
            AgainstWinding = reed.OverlapAgrees == false,
            Checks = checks.And(ChecksOf(causes, tests, work)),
            ThickParts = [.. log.Findings.Where(found => !IsGone(found)).SelectMany(found => Thick(found.Finding))],
            MinutesPlayed = reed.MinutesPlayed,
            Scrape = batch.Scrape,
            Instrument = batch.Instrument,
            Effects = effects ?? AdjustmentEffects.Usual,
            ByPost = true,
        };
    }

    /// <summary>
    /// The latest word on everything. A finding that has gone is not there any more. What was said of the pitch before the reed was
    /// worked on doesn’t count once a crow was heard after it: the latest crow counts, not the arrival’s (common practice). What was
    /// put right later still belongs where it was first said.
    /// </summary>
    private static IEnumerable<Sighting> Seen(Catalogue catalogue, BenchLog log, Reed reed, Batch batch)
    {
        var places = log.Facts.OrderBy(fact => fact.Pass).ThenBy(fact => fact.Sequence).Select((fact, place) => (fact.Root, place)).ToDictionary(one => one.Root, one => one.place);
        var byEntry = log.Facts.Where(fact => fact.Now is not null).ToDictionary(fact => fact.Now!.Id, fact => places[fact.Root]);
        var gone = log.Findings.Where(IsGone).Select(found => found.Fact.Root).ToHashSet();
        var counting = log.Counting.Select(test => test.Root).ToHashSet();
        var standing = log.Facts.Where(fact => fact.Now is not null && !gone.Contains(fact.Root) && (fact.Now is not Test || counting.Contains(fact.Root))).Select(fact => fact.Now!);
        var there = log.Findings.Where(found => !IsGone(found) && found.Finding.Character == FindingCharacter.Fault).Select(found => found.Finding.FindingKind).ToHashSet();
        var ended = log.Findings.Where(found => IsGone(found) && !there.Contains(found.Finding.FindingKind)).SelectMany(found => catalogue.Signs
            .Where(sign => sign.KnownBy.OfType<SignRoute.ByFinding>().Any(route => route.Finding == found.Finding.FindingKind))
            .Select(sign => new Sighting(sign.Id, Present: false, Order: places[found.Ended!.Root], WasThere: true)));
        // A reed that crows on a note is wet enough.
        var speaks = LastCrow(log) is { } heard
            ? DryOnes.Select(sign => new SignId(sign)).Where(sign => catalogue.Find(sign) is not null)
                .Select(sign => new Sighting(sign, Present: false, Order: places[heard.Root]))
            : [];
        var all = Sightings.Of(catalogue, reed.Scales).Concat(Sightings.Of(catalogue, standing, batch.CrowTarget, entry => byEntry[entry.Id])).Concat(ended).Concat(speaks);
        return WorkBeforeCrow(log) is not { } work
            ? all
            : all.Where(one => !OfPitch.Contains(one.Sign.Value) || (one.By == Teller.Bench && one.Order > places[work.Root]));
    }

    /// <summary>The last work before the latest crow; null when there was none.</summary>
    private static LiveFact<Adjustment>? WorkBeforeCrow(BenchLog log) => LastCrow(log) is not { } crow ? null
        : log.Work.Where(work => work.Sequence < crow.Sequence).MaxBy(work => work.Sequence);

    private static LiveFact<Test>? LastCrow(BenchLog log) =>
        log.Counting.Where(test => test.Now is { TestKind: TestKind.Crow, Pitch: not null }).OrderBy(test => test.Pass).ThenBy(test => test.Sequence).LastOrDefault();

    private static bool IsGone(FindingNow found) => found.Ended?.Now.Ending == FindingEnding.Gone;

    private static FirstChecks ChecksOf(LikelyCauses causes, List<LiveFact<Test>> tests, List<LiveFact<Adjustment>> work)
    {
        var played = tests.Exists(test => Played.Contains(test.Now.TestKind));
        bool Told(params string[] signs) => causes.Counted.Any(one => one.By == Teller.Bench && signs.Contains(one.Sign.Value));
        return new FirstChecks(
            Wet: played || tests.Exists(test => test.Now.TestKind == TestKind.Crow) || work.Exists(done => done.Now.AdjustmentKind.Value == "soak")
                || Told("dry", "crow-silent", "left-in-water"),
            Sealed: tests.Exists(test => test.Now.TestKind == TestKind.Seal) || Told("no-vacuum", "bubbles-at-side", "bubbles-at-thread"),
            Instrument: played || Told("stays-with-instrument", "several-reeds-same"),
            Player: played || Told("goes-with-player"));
    }

    private static IEnumerable<ThickPart> Thick(Finding found) => (found.Relation, found.OtherPlace) switch
    {
        (Relation.ThickerThan or Relation.StifferThan, _) => [new ThickPart(new SignId(found.FindingKind.Value), found.Place)],
        (Relation.ThinnerThan, { } other) => [new ThickPart(new SignId(found.FindingKind.Value), other)],
        _ => [],
    };
}
