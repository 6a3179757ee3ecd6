namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Low notes warm and round”, “tone’s nice”: a step of a scale that is worse than its middle is only taken where a word that is worse stands, and praise says none.</summary>
internal static class Worse
{
    private static readonly HashSet<string> Praise =
    [
        .. ("nice nicely nicer lovely lovelier warm warmly warmth round rounded rounder dark sweet sweetly rich richly mellow gorgeous beautiful beautifully pretty pleasing pleasant golden glowing singing sings sing rings ring ringing rang clean cleanly clear clearly "
        + "good great fine well happy perfect perfectly super wonderful wonderfully delightful splendid excellent smooth smoothly easy easily free freely even resonant silky silken velvet velvety creamy buttery plush honeyed noble elegant charming glorious delicious healthy ok okay like love loves").Split(' '),
    ];

    // What a sound is like: nothing of when a note speaks, or whether it holds.
    private static readonly HashSet<string> Colour = [.. "warm warmly warmth round rounded rounder dark darker sweet sweetly rich richly mellow golden glowing silky silken velvet velvety creamy buttery plush honeyed noble woody".Split(' ')];

    // Beginnings of words that say something worse.
    private static readonly string[] Stems =
    [
        .. ("hesita sluggish delay lag wander wobbl drift sag crack burst thud hollow push shov nudg kick fad leak stiff resist stuff cover muffl dull veil edg bright shrill harsh nasal buzz fight tiring refus fail lack unsteady unreliab unstab split spli squeal squeak croak grunt "
        + "fluff fuzz flap slip collaps chok gurgl rattl hiss weak poor shak wav flick flutter trembl jump brick plank blanket cough spit spat stumbl reluctan struggl difficult stubborn bounc sink dip sour flat sharp mud dead dying narrow tinny pale unwilling hate coax persua snag click thump thunk "
        + "blunt wool vague mess uneven sputter stutter patch chanc dodg iffy yell scream swim wait drop break brok thin late slow hard unsure wild heav tough tired tires lip hopeless float").Split(' '),
    ];

    private static readonly HashSet<string> Words = [.. "not no never cannot hardly barely scarcely without nothing none nor neither behind empty dies die died gone lose loses lost loss miss misses bad badly ugly wall sock pillow cloth too falls fall fell out shy away work effort air quit quits asking ask sometimes half".Split(' ')];

    // Words that may go with either: beside praise they say nothing worse.
    private static readonly HashSet<string> Weak = [.. "out away air work ask asking sometimes half too lost fall falls effort".Split(' ')];

    private static readonly HashSet<string> Blameless = ["complaint", "complaints", "fault", "faults", "trouble", "troubles", "problem", "problems", "worry", "worries", "issue", "issues", "grumbles", "bother", "fuss"];

    private static readonly HashSet<string> Small =
    [
        .. ("the a an it is 's are was were be been they this that these those its my his her your of on in at to for with and or but so very really quite rather pretty just now still all both here there too as from up down more much a_bit bit little touch sound sounds sounding tone tones note notes low high top bottom upper lower register "
        + "ones one end range speak speaks come comes coming play plays playing feel feels has have had got getting get nice i me you reed again then also flat sharp natural").Split(' '),
    ];

    // What each of these is told with; a word of another scale is none of its steps.
    private static readonly Dictionary<TestKind, string[]> Own = new()
    {
        [TestKind.Effort] = [.. "hard stiff heav resist stuff tough work tir difficult eas free light effort fight push strain blow stubborn wall plank brick stone log concrete post pressure exhaust air puff lung play fill power".Split(' ')],
        [TestKind.Depth] = [.. "full deep dep bottom rich reson bod core ring round sonor thin hollow empt fat weight ground low found bucket tin pale bare nothing".Split(' ')],
    };

    private static readonly Doubt Unsure = new("test", "no word of a test’s scale stands there, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Test, Slots: { Test: { } test, Step: not null } } && test is not (TestKind.Opening or TestKind.ClosingOrder) && TestScale.Of(test) is { Shape: ScaleShape.OneSided or ScaleShape.TwoSided, TakesPitch: false }).ToList())
        {
            var said = course.Segments[LeadsUp(course, draft) ? draft.First - 1 : draft.First].With(course.Segments[draft.Last]);
            if (IsDeniedColour(course, draft) || !IsRuled(course, draft, said) && (IsWorse(draft.Slots) && !IsSaidWorse(said, draft.Slots.Test!.Value) || IsOnlyColoured(said) || IsOfAnother(draft.Slots.Test!.Value, said)))
            {
                Unsay(course, draft);
            }
        }
    }

    // “Still late, those low notes”: the words before it in its sentence that no other test or finding says.
    private static bool LeadsUp(Course course, Draft draft) => draft.First > 0 && course.Segments[draft.First - 1].Sentence == course.Segments[draft.First].Sentence
        && !course.Drafts.Exists(other => other != draft && other.Kind is EntryKind.Test or EntryKind.Finding && other.First < draft.First && draft.First - 1 <= other.Last);

    // The note that was named is kept with what was said of it; where none was, and the sentence has a test of the same sound before it, the words are that one’s.
    private static void Unsay(Course course, Draft draft)
    {
        if (draft.Slots.Pitch is not null)
        {
            Spoken.Unscale(draft, draft.Slots, "no word of its scale was said, so its words are kept");
        }
        else if (course.Drafts.IndexOf(draft) is > 0 and var at && course.Drafts[at - 1] is { Kind: EntryKind.Test } before && before.Sentence == draft.Sentence && before.Last == draft.First - 1 && !Spoken.Of(course, draft).Any(segment => segment.Has(Cat.Test)))
        {
            Spoken.Join(course, before, draft);
        }
        else
        {
            Spoken.Unmake(draft, Unsure);
        }
    }

    private static bool IsOfAnother(TestKind test, Segment said) => Own.TryGetValue(test, out var own) && !Spoken.HasStem(said, own);

    private static bool IsWorse(ReadSlots slots)
    {
        var scale = TestScale.Of(slots.Test!.Value);
        var step = scale.Steps.ToList().IndexOf(slots.Step!);
        return scale.Shape is ScaleShape.OneSided ? step < scale.Good - 1 : step != scale.Good;
    }

    // The rules hear the same step in these words.
    private static bool IsRuled(Course course, Draft draft, Segment said) =>
        Spoken.Of(course, draft).Append(said).Any(segment => StepReader.Step(segment, draft.Slots.Test!.Value, null, new HeardPitch()) == draft.Slots.Step);

    private static bool IsSaidWorse(Segment said, TestKind test)
    {
        var praised = test is not TestKind.Effort && Spoken.HasAny(said, Praise);
        return Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is { Length: > 0 } word && !(IsDenial(word) && Blameless.Contains(said.Word(at + 1)))
            && (Words.Contains(word) && !(praised && (Weak.Contains(word) || IsDenial(word))) || Array.Exists(Stems, stem => word.StartsWith(stem, StringComparison.Ordinal) || IsSlip(word, stem))));
    }

    // “Wnader”: the same letters, two of them in each other’s place.
    private static bool IsSlip(string word, string stem) => word.Length > 4 && word.Length == stem.Length && word[0] == stem[0] && word.Order().SequenceEqual(stem.Order());

    // “Low B flat speaks warm”: a colour, and nothing else that is told of these notes.
    private static bool IsOnlyColoured(Segment said) => Spoken.HasAny(said, Colour) && Enumerable.Range(said.First, said.End - said.First).All(at =>
        said.Tokens[at].Kind is not TokenKind.Word || said.Word(at).Length == 1 || Colour.Contains(said.Word(at)) || Small.Contains(said.Word(at)) || Praise.Contains(said.Word(at)) || said.Items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Test or Cat.Filler or Cat.Degree or Cat.Now or Cat.Hedge or Cat.Octave));

    // “Round, not dull”: what is denied of a sound is not what it is.
    private static bool IsDeniedColour(Course course, Draft draft)
    {
        if (draft.Slots.Test is not (TestKind.Edge or TestKind.Depth) || !IsWorse(draft.Slots))
        {
            return false;
        }

        var faults = Spoken.Of(course, draft).SelectMany(segment => Enumerable.Range(segment.First, segment.End - segment.First).Where(at => !IsDenial(segment.Word(at)) && Array.Exists(Stems, stem => segment.Word(at).StartsWith(stem, StringComparison.Ordinal))).Select(at => (segment, at))).ToList();
        return faults.Count > 0 && faults.TrueForAll(fault => IsDenial(fault.segment.Word(fault.at - 1)) || fault.segment.Word(fault.at - 1) is "at" or "all" or "too" or "a" && Enumerable.Range(Math.Max(fault.segment.First, fault.at - 4), fault.at - Math.Max(fault.segment.First, fault.at - 4)).Any(at => IsDenial(fault.segment.Word(at))));
    }

    private static bool IsDenial(string word) => word is "not" or "no" or "never" or "without" or "nor";
}
