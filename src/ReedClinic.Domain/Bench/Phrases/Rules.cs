namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads one segment by rules: the first reader that knows what it says takes it.</summary>
internal static class Rules
{
    /// <summary>Reads the segment.</summary>
    internal static void Read(Course course)
    {
        Enter(course);
        var behind = Afterthought.Of(course);
        course.Pending = behind ?? course.Pending;
        var known = course.Drafts.Count(draft => draft.Kind is not EntryKind.Note);
        if (!Understand(course))
        {
            Leave(course);
        }

        if (behind is not null && course.Drafts.Count(draft => draft.Kind is not EntryKind.Note) > known)
        {
            course.Drafts[^1].Last = ++course.At;
            course.Topic = behind;
            course.Pending = null;
        }

        Carry(course, said: course.Drafts.Count(draft => draft.Kind is not EntryKind.Note) > known);
    }

    /// <summary>At a new sentence nothing is carried over but what is being spoken of.</summary>
    private static void Enter(Course course)
    {
        if (course.At > 0 && course.Segments[course.At - 1].Sentence != course.Segment.Sentence)
        {
            course.Carried = Mood.None;
            course.Sake = null;
            course.Ahead = course.Ahead.Arose is not null && course.Last?.Sentence != course.Segments[course.At - 1].Sentence ? course.Ahead : ReadSlots.None;
            course.BreathBlade = null;
            course.BreathSide = null;
        }

        if (course.Segment.Joint is "but" or "though" or "although" or "however")
        {
            course.Carried = Mood.None;
        }
    }

    /// <summary>“Plan: …”, “when it’s dry, …”: what follows in the sentence is only talked of, too.</summary>
    private static void Carry(Course course, bool said)
    {
        if (!said && course.Carried is Mood.None && course.Segment.Items.Any(item => item.Cat is Cat.Plan or Cat.Habit or Cat.Cond))
        {
            course.Carried = course.Segment.Has(Cat.Plan) ? Mood.Plan : Mood.Condition;
        }

        Unsay(course);
        if (!said && course.At + 1 < course.Segments.Count && course.Segments[course.At + 1].Joint is ":" && Reports(course.Segment))
        {
            course.Carried = Mood.Others;
        }
    }

    private static bool Reported(Course course)
    {
        if (course.Carried is not Mood.Others || course.Segment.Joint is not ":")
        {
            return false;
        }

        course.AddNote();
        return true;
    }

    /// <summary>“Clip a hair, she says”; “a hair off the tip and it’ll sing”: nothing was done yet, or not here.</summary>
    private static void Unsay(Course course)
    {
        var segment = course.Segment;
        var told = segment.Has(Cat.Other) && segment.HasWord("says") | segment.HasWord("said") | segment.HasWord("told") | segment.HasWord("reckons") | segment.HasWord("thinks") | segment.HasWord("wrote");
        told |= segment.Has(Cat.Other) && segment.HasWord("all") && segment.HasWord("'s") | segment.HasWord("is");
        told |= segment.Word(segment.First) is "or" && segment.HasWord("not") && segment.End - segment.First <= 3;
        var hoped = segment.HasWord("and") && segment.HasWord("will") | segment.HasWord("would") && !segment.Has(Cat.Me);
        var deed = course.Drafts.LastOrDefault(draft => draft.Sentence == segment.Sentence && draft.Kind is EntryKind.Adjustment && draft.First < course.At);
        if (deed is null || deed.Last < course.At - 1 || !(told || hoped) || Moods.Head(course.Segments[deed.First]) is { } verb && Moods.Form(verb) is not 'B')
        {
            return;
        }

        deed.Kind = EntryKind.Note;
        deed.Slots = ReadSlots.None;
        deed.Doubts.Clear();
        deed.Doubts.Add(new Doubt("kind", "unsure whether this was done, so it is kept as a note"));
    }

    // “Written on the slip: please don’t thin my tip”.
    private static bool Reports(Segment segment) => segment.HasWord("written") || segment.HasWord("says") || segment.HasWord("said") || segment.HasWord("wrote") || segment.HasWord("writes")
        || segment.HasWord("letter") || segment.HasWord("instructions") || segment.HasWord("recipe") || segment.HasWord("advice") || segment.HasWord("homework") || segment.HasWord("steps") || segment.HasWord("list") || segment.HasWord("orders") || segment.HasWord("asks") || segment.HasWord("asked") || (segment.HasWord("note") || segment.HasWord("slip")) && !segment.Has(Cat.Test);

    // In this order; the name of the first that takes the segment says how far it can be trusted.
    private static readonly (string Name, Func<Course, bool> Read)[] Ways =
    [
        ("OutcomeReader.Spares", OutcomeReader.Spares),
        ("Being", Being),
        ("Asides.TryRead", Asides.TryRead),
        ("Question", Question),
        ("Reported", Reported),
        ("Purpose.TryRead", Purpose.TryRead),
        ("Purpose.Ahead", Purpose.Ahead),
        ("LeaveReader.TryRead", LeaveReader.TryRead),
        ("OutcomeReader.TryRead", OutcomeReader.TryRead),
        ("OutcomeReader.Risk", OutcomeReader.Risk),
        ("Denials.Refutes", Denials.Refutes),
        ("EndedReader.TryRead", EndedReader.TryRead),
        ("Instead", Instead),
        ("SameFinding.Instead", SameFinding.Instead),
        ("SameFinding.TryRead", SameFinding.TryRead),
        ("DeedReader.TryRead", DeedReader.TryRead),
        ("Colours.KnownToo", Colours.KnownToo),
        ("Remark", Remark),
        ("TestReader.TryRead", TestReader.TryRead),
        ("FindingReader.TryRead", FindingReader.TryRead),
        ("Fragments.TryRead", Fragments.TryRead),
    ];

    private static bool Understand(Course course)
    {
        foreach (var (name, read) in Ways)
        {
            if (read(course))
            {
                course.Way = name;
                return true;
            }
        }

        course.Way = "nothing";
        return false;
    }

    // “…, it being a short one, …”: a reason.
    private static bool Being(Course course) => course.Segment.IndexOfWord("being") is >= 0 and var at && at - course.Segment.First <= 2 && course.Segment.Joint is "," && course.LastInSentence is not null && course.Absorb();

    /// <summary>“Instead of clipping I thinned the corners”: what wasn’t done leads up to what was.</summary>
    private static bool Instead(Course course)
    {
        var segment = course.Segment;
        if (segment.Word(segment.First) is not ("instead" or "rather" or "without") || !segment.Has(Cat.Verb) || course.At + 1 >= course.Segments.Count || course.Segments[course.At + 1].Sentence != segment.Sentence || course.LastInSentence is not null)
        {
            return false;
        }

        course.AddNote();
        course.Last!.IsLoose = true;
        return true;
    }

    /// <summary>A question or a condition is a remark, whatever it is about.</summary>
    private static bool Question(Course course)
    {
        var segment = course.Segment;
        var asks = Moods.IsQuestion(segment);
        var conditional = segment.Items.Any(item => item.Cat == Cat.Cond && Moods.IsIf(segment, item) && item.First - segment.First <= 3);
        if ((!asks && !conditional) || !(HasTrade(segment) || segment.Has(Cat.Side) || segment.Has(Cat.Verb) || (conditional && course.At + 1 < course.Segments.Count)))
        {
            return false;
        }

        course.Carried = asks ? Mood.Asked : Mood.Condition;
        course.AddNote();
        return true;
    }

    /// <summary>Plans and habits without a deed's verb: “needs more time”, “every time you clip”.</summary>
    private static bool Remark(Course course)
    {
        var segment = course.Segment;
        if (Moods.IsIntention(segment))
        {
            course.AddNote();
            course.Carried = Mood.Plan;
            return true;
        }

        if (!(segment.Has(Cat.Plan) || segment.Has(Cat.Habit)) || !(HasTrade(segment) || PlaceReader.Read(segment).Count > 0) || (segment.Has(Cat.Test) && StepReader.Step(segment, TestKind.SoftestStart, course, new HeardPitch()) is not null))
        {
            return false;
        }

        if (!segment.Has(Cat.Me) && (TestReader.NoteWithHeight(segment) ?? (segment.Find(Cat.Test) is { } named ? Enum.Parse<TestKind>(named.Value) : null)) is { } heard && heard is TestKind.LowResponse or TestKind.HighSteadiness or TestKind.TonguedStarts or TestKind.Swell
            && StepReader.Step(segment, heard, course, new HeardPitch()) is not null)
        {
            return false;
        }

        if (segment.Has(Cat.Quality) && !segment.Has(Cat.Habit) && segment.Find(Cat.Plan) is { } plan && plan.First > segment.Find(Cat.Quality)!.Value.First)
        {
            return false;
        }

        course.Carried = segment.Has(Cat.Habit) ? Mood.Condition : Mood.Plan;
        if (course.LastInSentence is { Kind: EntryKind.Finding or EntryKind.Test } && segment.HasWord("it") && Moods.Head(segment) is null && !segment.Has(Cat.Me) && PlaceReader.Read(segment).All(mention => !mention.HasPlace) && !segment.Has(Cat.Stage))
        {
            return course.Absorb();
        }

        course.AddNote();
        return true;
    }

    /// <summary>What isn't understood: an aside beside an entry, a remark about the trade, or nothing.</summary>
    private static void Leave(Course course)
    {
        var segment = course.Segment;
        if (Fragments.IsEmpty(segment) || IsHeading(course))
        {
            return;
        }

        course.Carried = segment.Has(Cat.Other) ? Mood.Others : course.Carried;
        course.Topic = PlaceReader.Read(segment).FirstOrDefault(mention => mention.HasPlace) ?? course.Topic;
        if (course.Last is { Kind: EntryKind.Stopped } stopped && Moods.Head(segment) is { } verb && Moods.Action(verb) is "harm")
        {
            stopped.Last = course.At;
            return;
        }

        if (course.Carried is not Mood.None && course.LastInSentence is { Kind: EntryKind.Note })
        {
            course.AddNote();
        }
        else if (course.LastInSentence is null && course.Last is { Kind: EntryKind.Note } asked && AnswersItself(course, asked))
        {
            asked.Last = course.At;
        }
        else if (course.LastInSentence is not null)
        {
            course.Absorb();
        }
        else if (HasTrade(segment) || Asides.Concerns(segment) || (segment.Has(Cat.Plan) && segment.Has(Cat.Verb) && (course.At + 1 >= course.Segments.Count || course.Segments[course.At + 1].Sentence != segment.Sentence)))
        {
            course.AddNote();
            course.Last!.IsLoose = !segment.Items.Any(item => item.Cat is Cat.Plan or Cat.Habit or Cat.Cond or Cat.Not || (item.Cat is Cat.Other && segment.Word(item.First) is not "your"));
        }
        else
        {
            course.Left.Add(course.At);
        }
    }

    // “Scraped: …”.
    private static bool IsHeading(Course course) => course.At + 1 < course.Segments.Count && course.Segments[course.At + 1].Joint is ":" && Moods.Head(course.Segment) is { } heading && Moods.Form(heading) is 'P' or 'G'
        && heading.First == course.Segment.First && course.Segment.Items.All(item => item.Cat is Cat.Verb);

    // “Dust the heart then? No, crow first”.
    private static bool AnswersItself(Course course, Draft asked) => course.Segments[asked.First].Asked && course.Segment.Sentence == asked.Sentence + 1 && !course.Segment.Has(Cat.Verb)
        && course.Segments.First(other => other.Sentence == course.Segment.Sentence) is var answer && answer.Word(answer.First) is "no" or "yes" or "nah" or "nope" or "yep";

    private static bool HasTrade(Segment segment) => segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region or Cat.Quality or Cat.Leave or Cat.Taste or Cat.Verdict or Cat.Stage or Cat.Stroke or Cat.Thing
        || (item.Cat is Cat.Test && item.Value is not "Effort") || item.Cat is Cat.Sound
        || (item.Cat is Cat.Verb && Moods.Action(item) is not ("light" or "take" or "other" or "realign" or "wait" or "draw" or "fit" or "harm"))
        || item.Cat is Cat.Part or Cat.Blade);
}
