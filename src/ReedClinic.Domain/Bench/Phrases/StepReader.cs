namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Which word of a test's scale is meant.</summary>
internal static class StepReader
{
    internal static string? Step(Segment segment, TestKind test, Course? course, HeardPitch pitch)
    {
        // “Nothing wrong with the opening” is how it should be, and not how it is when nothing works.
        if (segment.All(Cat.Good).Any(good => good.Count > 2 && segment.Word(good.First) is "nothing" or "no"))
        {
            return test is TestKind.Opening or TestKind.Effort or TestKind.Edge ? TestScale.Of(test).Steps[TestScale.Of(test).Good] : null;
        }

        var step = test switch
        {
            TestKind.Crow => Crow(segment) ?? (IsDouble(segment) || (course?.LastInSentence is { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Step: null } } && segment.Has(Cat.Together)) ? 1 : null),
            TestKind.Effort => Effort(segment),
            TestKind.TuningNote => Tuning(segment, pitch),
            TestKind.Opening => Opening(segment),
            TestKind.Edge => Edge(segment),
            TestKind.ClosingOrder => StepRules.Closing(segment),
            TestKind.HighSteadiness => StepRules.Helped(segment) ?? StepWays.Find(segment, test),
            TestKind.SoftestStart => StepRules.Soft(segment) ?? StepWays.Find(segment, test),
            TestKind.Peep => segment.IndexOfWord("peep") is >= 0 and var peeps && segment.Word(peeps - 1) is "not" or "never" ? 1 : segment.Has(Cat.Not) && segment.Has(Cat.Test, "Crow") ? 0 : StepWays.Find(segment, test),
            _ => StepWays.Find(segment, test),
        };
        return step is { } index ? TestScale.Of(test).Steps[index] : null;
    }

    // “Double C”.
    private static bool IsDouble(Segment segment) => segment.IndexOfWord("double") is >= 0 and var at && Notes.At(segment.Tokens, at + 1, segment.End) is not null;

    /// <summary>Which octaves sound in the crow, and when each comes in.</summary>
    private static int? Crow(Segment segment)
    {
        var high = segment.HasWord("high") || segment.HasWord("top") || segment.HasWord("upper") || segment.HasWord("higher");
        var low = IsLow(segment);
        var only = segment.Has(Cat.Only) || segment.HasWord("no") || segment.HasWord("without");
        var octaves = segment.Has(Cat.Octave) || (high && low);
        if (segment.Has(Cat.Both) && segment.Has(Cat.Octave) && !only || (octaves && segment.Has(Cat.Together)))
        {
            return segment.Has(Cat.Join) && high && !segment.Has(Cat.Together) ? 0 : 1;
        }

        if (segment.HasWord("octaves") && !high && !low && !only && !segment.Has(Cat.Not) && !segment.HasWord("between") && segment.Has(Cat.Test, "Crow"))
        {
            return 1;
        }

        if (high && low && segment.HasWord("then") | segment.Has(Cat.Join) | segment.HasWord("first") | segment.HasWord("before") | segment.HasWord("after"))
        {
            return 0;
        }

        if (Bare(segment) is { } half)
        {
            return half;
        }

        if (only && high != low)
        {
            return DeniedHalf(segment) ? (high ? 2 : 3) : (high ? 3 : 2);
        }

        if (only && high && low)
        {
            return Nearest(segment) ? 3 : 2;
        }

        return null;
    }

    // “Nothing under it”, “nothing on top”.
    private static int? Bare(Segment segment)
    {
        var at = segment.IndexOfWord("nothing") is >= 0 and var none ? none : segment.HasWord("no") && segment.HasWord("anything") ? segment.IndexOfWord("anything") : -1;
        return at < 0 ? null
            : segment.Word(at + 1) is "under" or "underneath" or "below" or "beneath" ? 3
            : segment.Word(at + 1) is "above" or "over" || (segment.Word(at + 1) is "on" && segment.Word(at + 2) is "top") ? 2 : null;
    }

    private static bool IsLow(Segment segment) => segment.HasWord("low") && (segment.Has(Cat.Octave) || segment.HasWord("high") || segment.Has(Cat.Only) || segment.HasWord("growl") || segment.HasWord("joins")
            || segment.HasWord("one") || segment.HasWord("rattle") || segment.Has(Cat.Join)) && PitchReader.NotesIn(segment).All(note => segment.Word(note.First - 1) != "low")
        || (segment.HasWord("bottom") && (segment.Has(Cat.Octave) || (segment.HasWord("top") && segment.Has(Cat.Join)))) || segment.HasWord("lower") && segment.Has(Cat.Octave);

    // “No low”, “nothing high”: what is denied is the other half.
    private static bool DeniedHalf(Segment segment)
    {
        for (var i = segment.First; i < segment.End - 1; i++)
        {
            if (segment.Word(i) is "no" or "without" or "nothing" or "not" && (segment.Word(i + 1) is "low" or "high" or "top" or "bottom" or "upper" or "lower" || segment.Word(i + 2) is "low" or "high" or "top" or "bottom"))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>With both halves named, “only” belongs to the one right after it; “no” to the other.</summary>
    private static bool Nearest(Segment segment)
    {
        for (var i = segment.First; i < segment.End - 1; i++)
        {
            if (segment.Word(i) is "only" or "just")
            {
                return segment.Word(i + 1) is "high" or "top" || segment.Word(i + 2) is "high" or "top";
            }

            if (segment.Word(i) is "no" or "without" or "nothing" && segment.Word(i + 1) is "low" or "bottom")
            {
                return true;
            }
        }

        return segment.IndexOfWord("high") < segment.IndexOfWord("low");
    }

    internal static bool IsEffort(Segment segment) => Effort(segment) is not null || segment.HasWord("blow") || segment.HasWord("effort") || segment.HasWord("resistance") || (segment.HasWord("hard") && segment.HasWord("work"));

    /// <summary>“Stuffy low notes”: which notes don’t come freely; nothing of when they speak, and nothing of how hard the reed is to blow.</summary>
    internal static TestKind? StuffyNotes(Segment segment) =>
        segment.HasWord("stuffy") && segment.Items.FirstOrDefault(item => item.Cat is Cat.Test && item.Value is nameof(TestKind.LowResponse) or nameof(TestKind.HighSteadiness)) is { Value: { } notes }
            ? Enum.Parse<TestKind>(notes) : null;

    /// <summary>“Sounds brighter now”: which way the edge went, and not where it stands.</summary>
    internal static bool IsBrighter(Segment segment) => segment.HasWord("brighter") && Enumerable.Range(segment.First, segment.End - segment.First).All(at =>
        segment.Tokens[at].Kind is TokenKind.Break || segment.Covered(at, Cat.Degree) || segment.Covered(at, Cat.Filler) || segment.Covered(at, Cat.Now)
        || segment.Word(at) is "brighter" or "sounds" or "sound" or "sounding" or "tone" or "the" or "it" or "is" or "'s" or "now" or "a" or "bit" or "little" or "touch" or "much" or "reed" or "this" or "that" or "plays" or "already" or "again" or "and" or "but");

    private static int? Effort(Segment segment)
    {
        var none = segment.HasWord("resistance") && segment.Has(Cat.Not);
        var easy = segment.HasWord("easy") || segment.HasWord("easily") || segment.HasWord("easier") || segment.HasWord("free") || segment.HasWord("freely") || segment.HasWord("light") || segment.HasWord("effortless") || segment.HasWord("effortlessly") || none || segment.HasWord("little") && segment.HasWord("resistance");
        var wall = segment.HasWord("like") && (segment.HasWord("brick") || segment.HasWord("wall") || segment.HasWord("plank") || segment.HasWord("stone") || segment.HasWord("log") || segment.HasWord("concrete") || segment.HasWord("post"));
        var hard = wall || segment.HasWord("fights") || segment.HasWord("tires") || (segment.HasWord("resistance") && (segment.HasWord("plenty") || segment.HasWord("lot") || segment.HasWord("lots"))) || segment.HasWord("tiring") || segment.HasWord("exhausting") || (segment.HasWord("much") && segment.HasWord("resistance")) || segment.HasWord("hard") || segment.HasWord("stiff") || segment.HasWord("heavy") || segment.HasWord("stubborn") || segment.HasWord("harder") || segment.HasWord("difficult") || segment.HasWord("tough") || segment.HasWord("resistant") || segment.HasWord("stuffy");
        if (easy != hard && !none && segment.Items.Any(item => item.Cat is Cat.Not or Cat.NoMore) && !segment.HasWord("enough"))
        {
            return easy ? 3 : 2;
        }

        if (easy == hard)
        {
            return segment.Has(Cat.Good) || segment.HasWord("comfortable") || segment.HasWord("right") ? 2 : null;
        }

        var slight = segment.Has(Cat.Degree, "slight");
        var far = wall || segment.Has(Cat.Degree, "strong") || segment.HasWord("too");
        return easy ? (slight ? 1 : far ? 0 : 1) : slight ? 3 : far ? 4 : 3;
    }

    private static int? Tuning(Segment segment, HeardPitch pitch)
    {
        if (segment.HasWord("tune") || segment.HasWord("right") || segment.HasWord("spot") || segment.HasWord("bang") || segment.HasWord("pitch") && segment.HasWord("at"))
        {
            return segment.All(Cat.Not).Any(not => segment.Word(not.First) is not "without") || segment.HasWord("out") ? null : 2;
        }

        var lean = segment.Items.FirstOrDefault(item => item.Cat == Cat.Lean && item.Value is not null).Value ?? pitch.Lean;
        if (lean is null || pitch.Cents is not null)
        {
            return null;
        }

        var slight = segment.Has(Cat.Degree, "slight");
        return lean == "flat" ? (slight ? 1 : 0) : slight ? 3 : 4;
    }

    internal static int? Opening(Segment segment)
    {
        if (segment.HasWord("too") || segment.Has(Cat.Taste) || segment.Has(Cat.Than))
        {
            return null;
        }

        var slight = segment.Has(Cat.Degree, "slight");
        if (segment.HasWord("closed") || segment.HasWord("shut"))
        {
            return slight ? 1 : 0;
        }

        if (segment.HasWord("open") && !segment.HasWord("more"))
        {
            return slight ? 3 : 4;
        }

        return IsRight(segment) || segment.HasWord("fine") || segment.HasWord("good") && !segment.Has(Cat.Quality) ? 2 : null;
    }

    // “Just right”; not “a gap on the right”.
    private static bool IsRight(Segment segment) => segment.IndexOfWord("right") is >= 0 and var at && !PlaceReader.Read(segment).Any(mention => mention.Side is "Right" && mention.First <= at && at < mention.End);

    private static int? Edge(Segment segment)
    {
        var slight = segment.Has(Cat.Degree, "slight");
        if (segment.HasWord("covered") || segment.HasWord("muffled") || segment.HasWord("dull"))
        {
            return slight ? 1 : 0;
        }

        if (segment.HasWord("edgy") || segment.HasWord("edginess") || segment.HasWord("edgier"))
        {
            return segment.Has(Cat.Degree, "strong") || segment.HasWord("too") ? 4 : 3;
        }

        if (segment.HasWord("edge") && segment.Has(Cat.Sound))
        {
            return segment.HasWord("right") || segment.HasWord("enough") ? 2 : segment.Has(Cat.Degree, "strong") || segment.HasWord("much") ? 4 : segment.Has(Cat.Degree, "slight") ? 3 : null;
        }

        return null;
    }

    /// <summary>A test that its words tell without its name.</summary>
    internal static TestKind? Alone(Segment segment)
    {
        if ((segment.HasWord("fights") || segment.HasWord("tires") && segment.Has(Cat.Me) || segment.HasWord("resistant") || segment.HasWord("stuffy") || segment.HasWord("effortless")) && PlaceReader.Read(segment).All(mention => !mention.HasPlace))
        {
            return TestKind.Effort;
        }

        if ((segment.HasWord("starts") || segment.HasWord("start")) && (segment.HasWord("breath") || segment.HasWord("whisper") || segment.HasWord("softly") || segment.HasWord("quietly")) && PlaceReader.Read(segment).Count == 0)
        {
            return TestKind.SoftestStart;
        }

        if (segment.HasWord("too") && segment.HasWord("easy") | segment.HasWord("hard") | segment.HasWord("free") && PlaceReader.Read(segment).All(mention => !mention.HasPlace) && !segment.HasWord("see"))
        {
            return TestKind.Effort;
        }

        if (StepRules.Soft(segment) is not null && PlaceReader.Read(segment).Count == 0)
        {
            return TestKind.SoftestStart;
        }

        if (segment.HasWord("closes") || segment.HasWord("close") || segment.HasWord("meet") || segment.HasWord("meets") || segment.HasWord("kiss") || segment.HasWord("touch"))
        {
            return segment.Has(Cat.Test, "ClosingOrder") || StepRules.Closing(segment) is 2 ? TestKind.ClosingOrder : null;
        }

        var both = (segment.HasWord("high") || segment.HasWord("top")) && (segment.HasWord("low") || segment.HasWord("bottom")) && segment.Has(Cat.Together) | segment.Has(Cat.Join) && !segment.HasWord("notes") && !segment.Has(Cat.Quality);
        return segment.Has(Cat.Octave) | both && Crow(segment) is not null ? TestKind.Crow : null;
    }

    /// <summary>Whether the sound's edge or its depth is told.</summary>
    internal static TestKind? OfSound(Segment segment) => Edge(segment) is not null ? TestKind.Edge
        : StepWays.Find(segment, TestKind.Depth) is not null ? TestKind.Depth : null;
}
