using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Letters;

/// <summary>What was done to a reed, in the order in which it was done.</summary>
internal sealed class WorkStory
{
    private const int MostInOneBreath = 4;

    private static readonly HashSet<Zone> NotOfCane =
        [Zone.WholeReed, Zone.Opening, Zone.Inside, Zone.Wire, Zone.Thread, Zone.Eye, Zone.Cork];

    private readonly List<LetterSentence> _sentences = [];
    private readonly List<string> _breath = [];
    private readonly List<EntryId> _roots = [];
    private bool _later;
    private bool _stopped;

    private WorkStory()
    {
    }

    /// <summary>Tells it. Where the work was stopped and taken up again, that is told in its place.</summary>
    /// <param name="log">The log.</param>
    internal static IReadOnlyList<LetterSentence> Tell(BenchLog log)
    {
        var work = log.Live<Adjustment>().OrderBy(adjustment => adjustment.Sequence).ToList();
        var last = work.Count == 0 ? 0 : work[^1].Sequence;
        var stops = log.Live<Stopped>().Where(stop => stop.Sequence < last).OrderBy(stop => stop.Sequence).ToList();
        var story = new WorkStory();
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
            var kind = AdjustmentCatalogue.Find(run[0].Now.AdjustmentKind);
            var had = kind is not null && kind.Done.StartsWith("had ", StringComparison.Ordinal);
            if (kind is null)
            {
                EndSentence();
                Say(Agreement.Without(run[0].Now.Words) is { } words ? Prose.Sentence(words) : $"{Start()} was worked on.", run);
            }
            else if (had || run[0].Now.ForTheSakeOf is not null)
            {
                EndSentence();
                Say($"{Start()} {(had ? "" : "was ")}{kind.Done}{HowMuch(run)}{Sake(run[0].Now.ForTheSakeOf)}.", run);
            }
            else
            {
                _breath.Add(kind.Done + HowMuch(run));
                _roots.AddRange(run.Select(adjustment => adjustment.Root));
                if (_breath.Count == MostInOneBreath)
                {
                    EndSentence();
                }
            }
        }
    }

    private void Stop(LiveFact<Stopped> stop)
    {
        EndSentence();
        if (_sentences.Count == 0)
        {
            return;
        }

        var there = _stopped ? "There I stopped again." : "There I stopped at first.";
        _sentences.Add(new(stop.Now.Words is { } why ? $"{there} {Prose.Sentence(why)}" : there, [stop.Root]));
        _later = _stopped = true;
    }

    private void EndSentence()
    {
        if (_breath.Count > 0)
        {
            _sentences.Add(new($"{Start()} was {Prose.List(_breath)}.", [.. _roots]));
            _breath.Clear();
            _roots.Clear();
        }
    }

    private void Say(string sentence, List<LiveFact<Adjustment>> run) => _sentences.Add(new(sentence, [.. run.Select(work => work.Root)]));

    private string Start()
    {
        var start = _later ? "Later it" : _sentences.Count == 0 ? "It" : _sentences.Count % 2 == 1 ? "Then it" : "After that it";
        _later = false;
        return start;
    }

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
        one.AdjustmentKind != AdjustmentKindId.SomethingElse
        && (one.AdjustmentKind, one.ForTheSakeOf, one.Place) == (other.AdjustmentKind, other.ForTheSakeOf, other.Place);

    private static string HowMuch(List<LiveFact<Adjustment>> run)
    {
        var first = run[0].Now;
        string?[] parts =
        [
            run.Count > 1 ? Prose.Times(run.Count) : first.Amount.IsNotSaid ? null : first.Amount.ToString(),
            first.Blades switch { Blades.Upper => "upper blade", Blades.Lower => "lower blade", _ => null },
            first.Sides switch { Sides.Left => "left side", Sides.Right => "right side", _ => null },
        ];
        return parts.OfType<string>().Any() ? $" ({string.Join(", ", parts.OfType<string>())})" : "";
    }

    private static string Sake(Zone? zone) => zone switch
    {
        null => "",
        { } place when NotOfCane.Contains(place) => $", for the sake of the {place.Name()}",
        { } place => $", which makes the {place.Name()} stronger by comparison",
    };
}
