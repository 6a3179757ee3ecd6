using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters.Wordings;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>What was done to a reed, in the order in which it was done.</summary>
internal sealed class WorkStory
{
    private const int MostInOneBreath = 3;
    private const int MostWordsInOneBreath = 26;

    // Shorter than “as on reed three” it is said again.
    private const int MostLettersAgain = 15;

    private static readonly HashSet<Zone> NotOfCane =
        [Zone.WholeReed, Zone.Opening, Zone.Inside, Zone.Wire, Zone.Thread, Zone.Eye, Zone.Cork];

    private readonly List<LetterSentence> _sentences = [];
    private readonly List<string> _breath = [];
    private readonly List<EntryId> _roots = [];
    private readonly HashSet<int> _within = [];
    private readonly Phrasing _phrasing;
    private readonly LetterSoFar _told;
    private readonly int _reed;
    private readonly IReadOnlyList<string> _first;
    private readonly int _count;
    private string? _passes;
    private int _words;
    private int _turn;
    private bool _later;
    private bool _stopped;

    private WorkStory(int reed, int passes, IReadOnlyList<string> first, Phrasing phrasing, LetterSoFar told) =>
        (_reed, _turn, _count, _passes, _first, _phrasing, _told) = (reed, reed, passes, passes == 1 ? "one pass" : Prose.Number(passes) + " passes", first, phrasing, told);

    /// <summary>Tells it. Where the work was stopped and taken up again, that is told in its place.</summary>
    /// <param name="reed">The reed's number.</param>
    /// <param name="log">The log.</param>
    /// <param name="phrasing">Chooses the words.</param>
    /// <param name="told">What was told so far: a long phrase is said once.</param>
    internal static IReadOnlyList<LetterSentence> Tell(int reed, BenchLog log, Phrasing phrasing, LetterSoFar told)
    {
        // What made the reed ready to be played is told only in between: what comes before the first work is how it arrived.
        var work = log.Live<Adjustment>().OrderBy(adjustment => adjustment.Sequence).SkipWhile(adjustment => adjustment.Now.Prepares).ToList();
        if (work.Count == 0)
        {
            return [];
        }

        var stops = log.Live<Stopped>().Where(stop => stop.Sequence < work[^1].Sequence).OrderBy(stop => stop.Sequence).ToList();
        var passes = log.Work.Select(adjustment => adjustment.Pass).Distinct().Count();
        var first = !LetterTried.IsTriedAfterEachPass(log) ? WorkFrames.First : passes == 1 ? WorkFrames.FirstTestedOnce : WorkFrames.FirstTested;
        var story = new WorkStory(reed, passes, first, phrasing, told);
        var from = 0L;
        foreach (var stop in stops)
        {
            story.Work([.. work.Where(adjustment => adjustment.Sequence > from && adjustment.Sequence < stop.Sequence)]);
            story.Stop(stop);
            from = stop.Sequence;
        }

        story.Work([.. work.Where(adjustment => adjustment.Sequence > from)]);
        story.EndSentence();
        return story._sentences;
    }

    private void Work(List<LiveFact<Adjustment>> work)
    {
        foreach (var run in Runs(work))
        {
            var first = run[0].Now;
            if (AdjustmentCatalogue.Find(first.AdjustmentKind) is not { } kind)
            {
                EndSentence();
                Typed(run);
                continue;
            }

            var ways = run.Count == 1 ? WorkVerbs.Of(first) : WorkVerbs.All[kind.Id.Value];
            var verb = _phrasing.Clause("verb-" + kind.Id.Value, _turn + _breath.Count, [ways], false);
            var told = verb + HowMuch(run) + Sake(first.ForTheSakeOf);
            // How much is one breath doesn’t hang on which words are chosen.
            var words = Longest(ways) + Words(told[verb.Length..]);
            if (first.ForTheSakeOf is not null || words + _words > MostWordsInOneBreath)
            {
                EndSentence();
            }

            _breath.Add(told);
            _words += words;
            _roots.AddRange(run.Select(adjustment => adjustment.Root));
            _within.UnionWith(run.Select(adjustment => adjustment.Pass));
            if (_breath.Count == MostInOneBreath || first.ForTheSakeOf is not null)
            {
                EndSentence();
            }
        }
    }

    // What isn't in the catalogue stands in the teacher's own words; the passes are told before it.
    private void Typed(List<LiveFact<Adjustment>> run)
    {
        List<EntryId> roots = [.. run.Select(work => work.Root)];
        Rhythm(roots);
        if (OwnId.Is(run[0].Now.AdjustmentKind.Value))
        {
            OwnKind(run, roots);
        }
        else
        {
            _sentences.Add(new(Agreement.Without(run[0].Now.Words) is { } words ? BenchSaid.Sentence(words, _turn++, _phrasing) : "It was worked on.", roots));
        }
    }

    private void Rhythm(List<EntryId> roots)
    {
        if (_passes is { } passes)
        {
            var ways = _first == WorkFrames.FirstTested ? WorkFrames.Rhythm : WorkFrames.RhythmUntested;
            _sentences.Add(new(_phrasing.Say("rhythm", _reed, ways, ("passes", passes)), roots));
            _passes = null;
        }
    }

    // The studio’s own kind is named as something to do, so its name stands in quotation marks; what it does is told once.
    private void OwnKind(List<LiveFact<Adjustment>> run, List<EntryId> roots)
    {
        var work = run[0].Now;
        var key = work.AdjustmentKind.Value;
        var ways = _told.Says($"own {key} on {_reed}") ? WorkFrames.Own : WorkFrames.OwnAgain;
        var name = Prose.Quoted(Prose.Inside(OwnId.Called(Agreement.Without(work.Words)).TrimEnd('.')));
        _sentences.Add(new(_phrasing.Say("own-work", _turn++, ways, ("name", name), ("more", HowMuch(run) + Sake(work.ForTheSakeOf))), roots));
        if (_told.Own.LineOf(key) is { } line && _told.Says("does " + key))
        {
            _sentences.Add(new(_phrasing.Say("own-does", _turn, WorkFrames.OwnDoes, ("line", Prose.Ended(Prose.Inside(line)))), roots));
        }

        if (Agreement.Without(OwnId.Remark(key, work.Words)) is { Length: > 0 } remark)
        {
            _sentences.Add(new(BenchSaid.Sentence(remark, _turn++, _phrasing), roots));
        }
    }

    private void Stop(LiveFact<Stopped> stop)
    {
        EndSentence();
        if (_sentences.Count == 0)
        {
            return;
        }

        var why = WorkWords.Reason(stop.Now.Words) is not { } words ? "."
            : BenchSaid.Reason(words) is { } reason ? ": " + reason : ". " + BenchSaid.Sentence(words, _turn, _phrasing);
        _sentences.Add(new(
            _phrasing.Say("stopped-in-between", _turn++, _stopped ? WorkFrames.StoppedAgain : WorkFrames.StoppedAtFirst, ("why", why)), [stop.Root]));
        _later = _stopped = true;
    }

    private void EndSentence()
    {
        if (_breath.Count == 0)
        {
            return;
        }

        // What was done in some of the passes isn’t told of them all.
        var began = _passes is not null && _within.Count < _count;
        if (began)
        {
            Rhythm([.. _roots]);
        }

        var (place, ways) = began ? ("began-work", WorkFrames.Began) : _passes is not null ? ("first-work", _first) : _later ? ("later-work", WorkFrames.Later) : ("next-work", WorkFrames.Next);
        _sentences.Add(new(
            _phrasing.Say(place, _turn++, ways, ("work", Prose.List(_breath)), ("passes", _passes ?? "")), [.. _roots]));
        _passes = null;
        _later = false;
        _breath.Clear();
        _words = 0;
        _roots.Clear();
        _within.Clear();
    }

    private static int Longest(string verb) => Enumerable.Range(0, 3).Max(which => Words(Pattern.Fill(verb, among => Math.Min(which, among - 1), false)));

    private static int Words(string text) => text.Split(' ', StringSplitOptions.RemoveEmptyEntries).Length;

    // What was done again right after itself is told once.
    private static IEnumerable<List<LiveFact<Adjustment>>> Runs(List<LiveFact<Adjustment>> work)
    {
        List<LiveFact<Adjustment>> run = [];
        foreach (var adjustment in work)
        {
            if (run.Count > 0 && !Same(run[0].Now, adjustment.Now))
            {
                yield return run;
                run = [];
            }

            run.Add(adjustment);
        }

        if (run.Count > 0)
        {
            yield return run;
        }
    }

    private static bool Same(Adjustment one, Adjustment other) =>
        !one.AdjustmentKind.IsInWords
        && (one.AdjustmentKind, one.ForTheSakeOf, one.Place) == (other.AdjustmentKind, other.ForTheSakeOf, other.Place);

    private string HowMuch(List<LiveFact<Adjustment>> run)
    {
        var first = run[0].Now;
        string?[] parts =
        [
            run.Count > 1 ? Prose.Times(run.Count) : StrokesSaid.Inside(first) is { Length: > 0 } amount ? Amount(first, amount) : null,
            first.Blades switch { Blades.Upper => "upper blade", Blades.Lower => "lower blade", _ => null },
            first.Sides switch { Sides.Left => "left side", Sides.Right => "right side", _ => null },
        ];
        return parts.OfType<string>().Any() ? $" ({string.Join(", ", parts.OfType<string>())})" : "";
    }

    // What somebody typed for an amount is said once in a letter; after that the reed is named of which it was said.
    private string Amount(Adjustment work, string amount)
    {
        var first = work.Amount.Words is { Length: > MostLettersAgain } ? _told.FirstOf($"{work.AdjustmentKind.Value}: {amount}", _reed) : _reed;
        return first == _reed ? amount : "as on reed " + Prose.Number(first);
    }

    // What makes a place the stronger by comparison is told once in a letter.
    private string Sake(Zone? zone)
    {
        if (zone is not { } place)
        {
            return "";
        }

        var name = LetterPlaces.Name(place);
        return NotOfCane.Contains(place) ? $", for the sake of {name}"
            : _told.FirstOf("sake " + place, _reed) == _reed && _told.Says("sake " + place) ? $", which makes {name} stronger by comparison"
            : "";
    }
}
