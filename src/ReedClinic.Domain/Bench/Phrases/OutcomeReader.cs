namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads risks and what became of them, the decision to stop, and the verdict.</summary>
internal static class OutcomeReader
{
    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        if (segment.Asked || Moods.IsQuestion(segment) || segment.Items.Any(item => item.Cat == Cat.Cond && Moods.IsIf(segment, item)))
        {
            return false;
        }

        return Closed(course) || StopOrVerdict(course);
    }

    /// <summary>“If I do any more I’ll wreck it, so I’m quitting”: why the work stops is the verdict.</summary>
    internal static bool Spares(Course course)
    {
        var segment = course.Segment;
        var sentence = course.Segments.Where(other => other.Sentence == segment.Sentence && !other.Has(Cat.Stop)).ToList();
        var more = segment.HasWord("more") || segment.HasWord("another") || segment.HasWord("further");
        if (!(more || IsHarm(segment)) || segment.Has(Cat.Other) || segment.Has(Cat.Stop) || !sentence.Any(other => other.HasWord("more") || other.HasWord("another") || other.HasWord("further")) || !sentence.Any(IsHarm)
            || !course.Segments.Skip(course.At + 1).Any(other => other.Sentence <= segment.Sentence + 1 && other.Has(Cat.Stop)))
        {
            return false;
        }

        course.Spared = true;
        return true;
    }

    private static bool IsHarm(Segment segment) => segment.HasWord("it") && (segment.HasWord("ruin") || segment.HasWord("wreck") || segment.HasWord("spoil") || segment.HasWord("kill") || segment.HasWord("lose") || segment.HasWord("destroy") || segment.HasWord("break") || segment.HasWord("harm") || segment.HasWord("damage") || segment.HasWord("hurt"));

    private static bool Closed(Course course)
    {
        var segment = course.Segment;
        if (course.Last is null && course.Before.LastRisk is { } open && (IsAnswer(segment) ?? IsOf(segment, open)) is { } outcome)
        {
            course.Add(EntryKind.RiskClosed, new ReadSlots { Outcome = outcome });
            return true;
        }

        if (segment.Find(Cat.RiskClosed) is not { } closed)
        {
            return false;
        }

        if (IsCutShort(segment, closed))
        {
            return false;
        }

        var feared = course.LastInSentence is { Kind: EntryKind.Risk } risk ? risk : null;
        var told = feared is not null || course.Before.LastRisk is not null || course.LastOf(EntryKind.Risk) is not null || segment.Has(Cat.Risk) || (closed.Count > 2 && course.Last is null);
        if (!told || (segment.Has(Cat.Quality) && course.Before.LastRisk is null))
        {
            return false;
        }

        if (course.LastInSentence is { Kind: EntryKind.RiskClosed } same && same.Slots.Outcome == Enum.Parse<RiskOutcome>(closed.Value))
        {
            return course.Absorb(aside: false);
        }

        if (feared is not null && WasPast(course.Segments[feared.First]))
        {
            Merge(course, feared, Enum.Parse<RiskOutcome>(closed.Value));
            return true;
        }

        course.Add(EntryKind.RiskClosed, new ReadSlots { Outcome = Enum.Parse<RiskOutcome>(closed.Value) });
        return true;
    }

    private static readonly HashSet<string> Feared = ["sharp", "flat", "hollow", "collapse", "crack", "split", "close", "drop", "thin", "hard", "sag", "wild", "leak", "tear", "chip", "break"];

    // “It went sharp”, “hasn’t gone flat”, after “this could make it sharp”.
    private static RiskOutcome? IsOf(Segment segment, Risk risk)
    {
        var words = (risk.Words ?? "").ToLowerInvariant().Split([' ', ',', '.', '’', '\''], StringSplitOptions.RemoveEmptyEntries);
        var feared = Enumerable.Range(segment.First, segment.End - segment.First).Any(at => Feared.Contains(Words.StepVerbs.Base(segment.Word(at))) && words.Any(word => Words.StepVerbs.Base(word) == Words.StepVerbs.Base(segment.Word(at))));
        if (!feared || segment.Asked || segment.Has(Cat.Plan) || PitchReader.NotesIn(segment).Count > 0)
        {
            return null;
        }

        return segment.HasWord("not") || segment.HasWord("never") ? RiskOutcome.DidNotHappen
            : segment.HasWord("went") || segment.HasWord("has") || segment.HasWord("'s") || segment.HasWord("did") || segment.HasWord("gone") || segment.HasWord("cracked") || segment.HasWord("collapsed") || segment.HasWord("dropped") || segment.HasWord("closed") ? RiskOutcome.Happened : null;
    }

    // “And it’s come up ten”: not “and it has”.
    private static bool IsCutShort(Segment segment, Item closed) => segment.Word(closed.End - 1) is "has" or "'s" or "did" or "was" && closed.Count <= 3 && closed.End < segment.End && segment.Tokens[closed.End].Kind is not TokenKind.Break
        && !segment.Items.Any(item => item.First == closed.End && item.Cat is Cat.Now or Cat.Filler);

    private static void Merge(Course course, Draft feared, RiskOutcome outcome)
    {
        course.Drafts.Remove(feared);
        var merged = course.Add(EntryKind.RiskClosed, new ReadSlots { Outcome = outcome });
        course.Drafts[^1] = new Draft { Kind = merged.Kind, Slots = merged.Slots, Head = feared.Head, First = feared.First, Last = course.At, Sentence = course.Segment.Sentence };
    }

    // “Didn’t, …”, “it did, …”: nothing else is said.
    private static RiskOutcome? IsAnswer(Segment segment)
    {
        var words = string.Join(' ', Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is TokenKind.Word && !segment.Covered(at, Cat.Filler) && segment.Word(at) is not ("and" or "it" or "that" or "no" or "yes")).Select(segment.Word));
        return words switch
        {
            "did not" or "has not" or "was not" => RiskOutcome.DidNotHappen,
            "did" or "has" or "'s done" or "did too" or "did indeed" => RiskOutcome.Happened,
            _ => null,
        };
    }

    private static bool WasPast(Segment segment) => segment.HasWord("was") || segment.HasWord("feared") || segment.HasWord("worried") || segment.HasWord("had") || segment.HasWord("were") || segment.HasWord("thought") || segment.HasWord("the");

    private static bool StopOrVerdict(Course course)
    {
        var segment = course.Segment;
        var stop = Stop(course, segment);
        var verdict = Verdict(course, segment) ?? (IsCaneSpent(segment) ? VerdictKind.AsGoodAsThisCaneGets : (VerdictKind?)null) ?? (IsBetterThanItCame(segment) ? VerdictKind.Improved : (VerdictKind?)null) ?? (CameGood(segment) ? VerdictKind.GoodOnArrivalRefined : (VerdictKind?)null) ?? (IsToBePlayedIn(segment) ? VerdictKind.NeedsPlayingIn : null);
        if (stop)
        {
            course.Add(EntryKind.Stopped, ReadSlots.None);
        }

        if (stop && course.Spared)
        {
            course.Spared = false;
            verdict ??= VerdictKind.StoppedToProtectIt;
        }

        if (verdict is { } given && course.LastOf(EntryKind.Verdict)?.Slots.Verdict != given)
        {
            course.Add(EntryKind.Verdict, new ReadSlots { Verdict = given });
            return true;
        }

        return stop || verdict is not null;
    }

    private static bool Stop(Course course, Segment segment)
    {
        if (segment.Joint is ":" || segment.Find(Cat.Stop) is not { } stop || segment.Has(Cat.Quality) || segment.All(Cat.Not).Any(not => not.First < stop.First) || segment.Items.Any(item => item.Cat is Cat.Other && item.First < stop.First) || IsStopped(segment, stop) || segment.Word(stop.End - 1) is "done" or "finished" && segment.Word(stop.End) is "in" or "up" or "for" or "off")
        {
            return false;
        }

        if (segment.Word(stop.First) is "done" or "finished" && stop.Count == 1 && !Enumerable.Range(segment.First, segment.End - segment.First).All(at => at == stop.First || segment.Tokens[at].Kind is TokenKind.Break || segment.Covered(at, Cat.Filler) || segment.Covered(at, Cat.Now)))
        {
            return false;
        }

        var bare = stop.Count == 1;
        var verb = Moods.Head(segment);
        return verb is null && (!bare || IsBare(segment, stop)) && course.Drafts.LastOrDefault(draft => draft.Kind is not (EntryKind.Note or EntryKind.Verdict))?.Kind is not EntryKind.Stopped;
    }

    // “I stop the end” is done to the reed.
    private static bool IsStopped(Segment segment, Item stop) => (segment.Word(stop.End - 1) is "it" && stop.End < segment.End && segment.Tokens[stop.End].Kind is not TokenKind.Break && !segment.Items.Any(item => item.First == stop.End && item.Cat is Cat.Now or Cat.Filler or Cat.Verdict or Cat.Stop) && segment.Word(stop.End) is not ("for" or "from" or "then" or "with" or "i" or "on")) || segment.Word(stop.End - 1) is "stop" or "stopped" or "stopping" && segment.Word(stop.End) is "the" or "it" or "that" or "its" or "up";

    // “Stop” alone or before a reason; not “stop the leak” or “enough cane”.
    private static bool IsBare(Segment segment, Item stop)
    {
        var next = segment.Word(stop.End);
        var rest = stop.End >= segment.End || segment.Tokens[stop.End].Kind == TokenKind.Break
            || segment.Items.Any(item => item.First <= stop.End + 1 && item.First >= stop.End && item.Cat is Cat.Verdict or Cat.Now);
        if (!rest && next is not ("here" or "there" or "now" or "before" or "with" or "while" or "to" or "for" or "at" or "on"))
        {
            return false;
        }

        if (segment.Word(stop.First) is "enough")
        {
            return rest && PlaceReader.Read(segment).Count == 0 && !segment.Has(Cat.Test) && stop.First - segment.First <= 2;
        }

        return PlaceReader.Read(segment).Count == 0;
    }

    private static VerdictKind? Verdict(Course course, Segment segment)
    {
        foreach (var item in segment.All(Cat.Verdict))
        {
            var verdict = Enum.Parse<VerdictKind>(item.Value);
            var denied = segment.All(Cat.Not).Any(not => not.First < item.First && item.First - not.End <= 3);
            if (denied || segment.Has(Cat.Test) || (item.Count == 1 && verdict is VerdictKind.Improved or VerdictKind.GoodOnArrivalRefined && (segment.Has(Cat.Verb) && segment.Has(Cat.Zone) || PlaceReader.Read(segment).Any(mention => mention.HasPlace))))
            {
                continue;
            }

            var stops = verdict is VerdictKind.StoppedToProtectIt;
            if (!stops || segment.Has(Cat.Stop) || course.LastInSentence is { Kind: EntryKind.Stopped } || course.LastOf(EntryKind.Stopped) is not null || IsSaidOnward(course))
            {
                return verdict;
            }
        }

        return null;
    }

    // “Best this bit of cane will ever do”.
    private static bool IsCaneSpent(Segment segment) => segment.IndexOfWord("cane") is >= 0 and var cane && (segment.HasWord("this") || segment.HasWord("the") || segment.HasWord("that")) && PlaceReader.Read(segment).All(mention => !mention.HasPlace)
        && (segment.HasWord("best") || segment.HasWord("every") || segment.HasWord("everything") || segment.HasWord("last") || segment.HasWord("limit") || segment.HasWord("limits") || segment.HasWord("most") || segment.HasWord("all") || (segment.HasWord("as") && segment.HasWord("good")) || (segment.HasWord("no") && segment.HasWord("more")))
        && Enumerable.Range(segment.First, segment.End - segment.First).Any(at => at != cane && segment.Word(at) is "will" or "can" or "gets" or "ever" or "goes" or "has" or "allows" or "got" or "give" or "gives" or "get");

    // “A good deal happier than it was on arrival”.
    private static bool IsBetterThanItCame(Segment segment) => segment.Find(Cat.Than) is { } than && !segment.Has(Cat.Not) && PlaceReader.Read(segment).All(mention => !mention.HasPlace)
        && (segment.HasWord("came") || segment.HasWord("arrived") || segment.HasWord("arrival") || (segment.HasWord("got") && segment.HasWord("here")) || segment.HasWord("before") || (segment.HasWord("when") && segment.HasWord("it")))
        && Enumerable.Range(segment.First, than.First - segment.First).Any(at => segment.Word(at) is "better" or "happier" or "nicer" or "freer" or "livelier" or "healthier");

    // “It was a good reed when it got here”.
    private static bool CameGood(Segment segment) => segment.Has(Cat.Good) && segment.HasWord("when") && segment.HasWord("it")
        && (segment.HasWord("came") || segment.HasWord("arrived") || segment.HasWord("got") || segment.HasWord("reached")) && PlaceReader.Read(segment).All(mention => !mention.HasPlace) && !segment.Has(Cat.Not);

    // “All it needs now is playing in”.
    internal static bool IsToBePlayedIn(Segment segment) => !segment.Has(Cat.Not) && !segment.Has(Cat.Other) && PlaceReader.Read(segment).All(mention => !mention.HasPlace)
        && Enumerable.Range(segment.First, Math.Max(0, segment.End - segment.First - 1)).Any(at => segment.Word(at) is "playing" or "breaking" or "blowing" or "played" or "broken" or "blown" && segment.Word(at + 1) is "in" && segment.Word(at + 2) is not ("a" or "the" or "tune" or "an" or "our" or "my" or "your" or "this" or "it"))
        && Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) is "needs" or "need" or "wants" or "want" or "give" or "just" or "only" or "all" or "requires" or "now" or "ready" or "few" or "week" or "days" or "must" or "should");

    private static bool IsSaidOnward(Course course) => course.At + 1 < course.Segments.Count && course.Segments[course.At + 1].Has(Cat.Stop);

    internal static bool Risk(Course course)
    {
        var segment = course.Segment;
        var may = segment.Has(Cat.Risk) || (segment.Find(Cat.May) is { } word && segment.Items.Any(item => item.Cat is Cat.Verb && item.First >= word.End && item.First - word.End <= 2 && Moods.Action(item) is "harm")
            && !Speaks(segment, word)) || Threatens(segment);
        if (!may || (segment.Find(Cat.Risk) is { Count: 1 } fear && segment.Word(fear.First - 1) is "not" or "no" or "never") || segment.HasWord("wonder") || segment.HasWord("whether") || segment.Asked || Moods.IsQuestion(segment) || (segment.Find(Cat.Risk) is { } risk && Speaks(segment, risk) && segment.Word(risk.First) is "might" or "may" or "could" or "can" && segment.Word(risk.First - 1) is "i" or "we" && !IsLoss(segment)))
        {
            return false;
        }

        if (segment.Has(Cat.Other) && segment.Has(Cat.Habit))
        {
            return false;
        }

        var places = PlaceReader.Read(segment).Where(mention => mention.HasPlace).ToList();
        var place = places.Count > 1 && segment.Word(places[0].First) is "opening" && places[1].First - places[0].End <= 2 ? places[1] : places.FirstOrDefault();
        course.Topic = place ?? course.Topic;
        if (course.LastInSentence is { Kind: EntryKind.Risk } same && same.Last == course.At - 1)
        {
            same.Slots = same.Slots with { Zone = same.Slots.Zone ?? place?.Usual };
            return course.Absorb(aside: false);
        }

        course.Add(EntryKind.Risk, new ReadSlots { Zone = place?.Usual });
        return true;
    }

    // “I might lose the heart doing this”.
    private static bool IsLoss(Segment segment) => segment.HasWord("lose") || segment.HasWord("ruin") || segment.HasWord("spoil") || segment.HasWord("wreck") || segment.HasWord("kill") || segment.HasWord("damage") || segment.HasWord("crack") || segment.HasWord("split") || segment.HasWord("cost") || segment.HasWord("chip") || segment.HasWord("regret");

    private static readonly HashSet<string> Harmless = ["be", "have", "need", "want", "do", "help", "work", "settle", "open", "improve", "like", "try", "come", "play", "well", "still", "also", "just", "as", "not", "say", "see", "use", "make", "benefit", "stand", "take", "get"];

    /// <summary>“That might well take the bottom out of the sound”: something that may do more than is wanted.</summary>
    private static bool Threatens(Segment segment)
    {
        for (var i = segment.First + 1; i < segment.End - 1; i++)
        {
            var next = segment.Word(i + 1) is "well" or "easily" or "also" or "even" or "still" or "yet" ? i + 2 : i + 1;
            if (segment.Word(i) is "might" or "may" or "could" && segment.Word(i - 1) is "that" or "this" or "which" or "it" or "clipping" or "scraping" && !segment.Covered(i, Cat.Hedge)
                && (!Harmless.Contains(segment.Word(next)) || (segment.Word(next) is "take" or "make" or "get" && segment.Word(i - 1) is not "it")))
            {
                return !segment.Has(Cat.Me) && !segment.Has(Cat.Not);
            }
        }

        return false;
    }

    private static bool Speaks(Segment segment, Item may) => segment.Word(may.First - 1) is "i" or "we" or "you";
}
