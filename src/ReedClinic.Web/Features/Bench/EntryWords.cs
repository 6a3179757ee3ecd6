using Microsoft.Extensions.Localization;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Web.Features.Bench;

/// <summary>One entry in words.</summary>
/// <param name="Label">What kind of thing it is.</param>
/// <param name="Title">The thing itself.</param>
/// <param name="Details">What more was said, one phrase each.</param>
/// <param name="Mark">The mark that it has on the reed map, if any.</param>
public sealed record EntryLine(string Label, string Title, IReadOnlyList<string> Details, MarkKind? Mark)
{
    /// <summary>True for a finding that is only suspected.</summary>
    public bool Suspected { get; init; }
}

/// <summary>Says the entries of one log in words.</summary>
public sealed class EntryWords(IStringLocalizer<BenchText> t, BenchLog log, Tuning tuning, Catalogue? catalogue = null)
{
    private readonly Catalogue causes = catalogue ?? Catalogue.Shipped;

    private static readonly char[] Stops = [' ', '.', ',', ';', ':'];

    private readonly PitchLine pitches = new(t);

    /// <summary>One entry in words.</summary>
    /// <param name="entry">The entry.</param>
    public EntryLine Say(BenchEntry entry) => entry switch
    {
        Test test => Line(entry, $"{TestScale.Of(test.TestKind).Name}: {test.StepWord}".TrimEnd(' ', ':'), null,
            test.MeasuredWords, test.Pitch is { } pitch ? pitches.Tell(test.TestKind, pitch, tuning) : null, test.Words),
        Finding finding => Found(finding),
        LookedFor looked => Line(entry, Named(looked.FindingKind, looked.Words), null, looked.KnownBy.Name(), Remark(looked.FindingKind, looked.Words)),
        FindingEnded ended => Line(entry, $"{Led(OfFinding(ended.FindingId))} {ended.Ending.Name()}", null, ended.Words),
        LeaveAlone left => Line(entry, left.Place.Say(), MarkKind.LeaveAlone, left.Words),
        Adjustment work => Worked(work),
        Risk risk => Line(entry, risk.Words, null, risk.Zone?.Name()),
        RiskClosed closed => Line(entry, $"{Led(OfRisk(closed.RiskId))} {closed.Outcome.Name()}", null, closed.Words),
        Note note => Line(entry, note.Words, null),
        Stopped stop => Line(entry, stop.Words ?? t["StopHere"], null),
        Verdict verdict => Line(entry, verdict.VerdictKind.Name(), null, verdict.Words),
        AdviceSetAside aside => Line(entry, aside.Words ?? t["AdviceGone"], null),
        Parked parked => Line(entry, parked.Words ?? t["ParkedHere"], null),
        CauseJudged word => Line(entry, causes.Find(word.Cause)?.Name ?? t["CauseGone"], null, word.Answer.Name()),
        _ => Line(entry, "", null),
    };

    /// <summary>One entry in one short line: the thing itself, and where or how much.</summary>
    /// <param name="entry">The entry.</param>
    public string InShort(BenchEntry entry)
    {
        var line = Say(entry);
        return entry switch
        {
            Adjustment work => string.Join(", ", new[] { line.Title, Beyond(work), work.AmountBeside() }.Where(part => !string.IsNullOrEmpty(part))),
            LookedFor => t["LookedForNot", line.Title.TrimEnd(Stops)],
            _ => string.Join(", ", line.Details.Take(1).Prepend(line.Title)),
        };
    }

    // The usual place of a kind of work is in its words already: then only the blade and the side are said.
    private string? Beyond(Adjustment work)
    {
        var (usual, said) = (causes.Own.Find(work.AdjustmentKind)?.Zone ?? Zone.WholeReed, work.Place.Say());
        return work.Zone != usual ? said : work.Place == new Place(usual) ? null : said[(usual.Name().Length + 2)..];
    }

    /// <summary>A finding, by its first entry, in a few words.</summary>
    /// <param name="root">The finding's first entry.</param>
    public string OfFinding(EntryId root) => log.FactOf(root) switch
    {
        { Now: Finding finding } => Placed(finding),
        { Now: null, Last: Finding finding } => t["TakenBackNamed", Placed(finding)],
        _ => t["TakenBackThing"],
    };

    /// <summary>A risk, by its first entry.</summary>
    /// <param name="root">The risk's first entry.</param>
    public string OfRisk(EntryId root) => log.FactOf(root) switch
    {
        { Now: Risk risk } => risk.Words,
        { Now: null, Last: Risk risk } => t["TakenBackNamed", risk.Words.TrimEnd(Stops)],
        _ => t["TakenBackThing"],
    };

    /// <summary>What is answered when a fact’s wording has been taken back: what it was, what stands again, and what hangs on it.</summary>
    /// <param name="fact">The fact as it stands before.</param>
    public string OfTakingBack(BenchFact fact)
    {
        ArgumentNullException.ThrowIfNull(fact);
        var earlier = fact.Earlier;
        var hanging = earlier is null ? log.HangingOn(fact).Select(other => InShort(other.Now!)).ToList() : [];
        return string.Join(' ', new[]
        {
            fact is { Now: AdviceSetAside, Earlier: null } ? t["AdviceBack"].Value : t["TakenBackNow", InShort(fact.Now!)].Value,
            earlier is null ? null : t["TakenBackEarlier", InShort(earlier)].Value,
            hanging.Count == 0 ? null : t["TakenBackHanging", string.Join(" · ", hanging)].Value,
        }.Where(part => part is not null));
    }

    private static string Placed(Finding finding) => $"{Named(finding.FindingKind, finding.Words).TrimEnd(Stops)} ({finding.Place.Say()})";

    private static EntryLine Found(Finding finding)
    {
        var mark = finding.Character switch
        {
            FindingCharacter.Strength => MarkKind.Strength,
            FindingCharacter.Taste => MarkKind.Taste,
            _ => MarkKind.Fault,
        };
        var line = Line(
            finding,
            Named(finding.FindingKind, finding.Words),
            mark,
            finding.OtherPlace is { } other && finding.Relation is { } relation
                ? $"{finding.Place.Say()} {relation.Name()} {other.Say()}"
                : finding.Place == new Place(FindingCatalogue.Find(finding.FindingKind)?.Zone ?? Zone.WholeReed) ? null : finding.Place.Say(),
            finding.Shape is FindingShape.Spot or FindingShape.Comparison || finding.Shape == FindingCatalogue.Find(finding.FindingKind)?.Shape ? null : finding.Shape.Name(),
            finding.KnownBy.Name(),
            finding.Certainty == Certainty.Suspected ? finding.Certainty.Name() : null,
            finding.Arose == Arose.AsItArrived ? null : finding.Arose.Name(),
            Remark(finding.FindingKind, finding.Words));
        return line with { Label = finding.Character.Name(), Suspected = finding.Certainty == Certainty.Suspected };
    }

    private EntryLine Worked(Adjustment work)
    {
        var kind = AdjustmentCatalogue.Find(work.AdjustmentKind);
        var own = kind?.Done ?? work.Words ?? causes.Own.Find(work.AdjustmentKind)?.Name ?? "";
        var line = Line(
            work,
            own,
            work.Prepares ? null : MarkKind.Worked,
            Beyond(work),
            work.AmountBeside(),
            work.ForFindingId is { } finding ? t["ForFinding", OfFinding(finding)].Value : null,
            work.ForTheSakeOf is { } zone ? t["ForTheSakeOf", zone.Name()].Value : null,
            kind is null ? null : work.Words);
        return work.Prepares ? line with { Label = t["MadeReady"] } : line;
    }

    // Somebody's sentence with what became of it: one mark between them, not two.
    private static string Led(string words) => words.TrimEnd(Stops) is var bare && bare.EndsWith('?') || bare.EndsWith('!') ? $"{bare} –" : $"{bare}:";

    private static EntryLine Line(BenchEntry entry, string title, MarkKind? mark, params string?[] details) =>
        new(entry.Kind.Name(), title, [.. details.Where(detail => !string.IsNullOrEmpty(detail)).Select(detail => detail!)], mark);

    private static string Named(FindingKindId kind, string? words) =>
        kind.IsInWords ? words ?? "" : FindingCatalogue.NameOf(kind);

    private static string? Remark(FindingKindId kind, string? words) => kind.IsInWords ? null : words;
}
