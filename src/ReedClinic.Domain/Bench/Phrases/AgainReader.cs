using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Same on the other blade”, “clip again”, “and the other side”: the deed before, with what is changed changed.</summary>
internal static class AgainReader
{
    internal static bool TryRead(DeedParts deed, Zone? sake)
    {
        var course = deed.Course;
        var segment = deed.Segment;
        if ((deed.Action is "tie" && !segment.Has(Cat.Same) && !segment.HasWord("too")) || (segment.Has(Cat.Quality) && deed.Verb is null && !segment.Has(Cat.Again)))
        {
            return false;
        }

        if (IsHeading(deed) || (Belongs(deed) && course.Absorb(aside: false)))
        {
            return true;
        }

        if (IsState(deed) || Base(deed) is not { } slots || segment.Has(Cat.Test) || segment.Has(Cat.Good) || segment.Has(Cat.SameAs) || segment.Has(Cat.Ended) || (segment.Has(Cat.Change) && deed.Verb is null && deed.Amount is { Bare: true }))
        {
            return false;
        }

        var mood = Moods.Of(course, segment, deed.Verb);
        if (mood is not Mood.Done)
        {
            course.Carried = mood is Mood.Unsure ? course.Carried : mood;
            course.AddNote(unsure: mood is Mood.Unsure);
            return true;
        }

        if (deed.Object is { HasPlace: true } place && place.Usual != slots.Zone)
        {
            return Elsewhere(deed, slots, place, sake);
        }

        var draft = course.Add(EntryKind.Adjustment, Changed(deed, slots) with { Sake = sake ?? slots.Sake }, deed.Action);
        draft.PlaceCarried = true;
        course.BreathBlade = draft.Slots.Blades ?? course.BreathBlade;
        return true;
    }

    // “It’s closed again”.
    private static bool IsState(DeedParts deed) => deed.Verb is null && deed.Segment.Items.Any(item => item.Cat is Cat.Verb && Moods.Form(item) is 'P' or 'N' && deed.Segment.Word(item.First - 1) is "is" or "'s" or "are" or "was" or "been" or "it" or "they");

    // “Same place: …”.
    private static bool IsHeading(DeedParts deed) => deed.Verb is null && deed.Amount is null && deed.Course.At + 1 < deed.Course.Segments.Count && deed.Course.Segments[deed.Course.At + 1].Joint is ":" && deed.Segment.Has(Cat.Same) && deed.Segment.End - deed.Segment.First <= 4;

    // “The lower, same again”, “same, other blade”: two ways of saying it, or the place of what was just said.
    private static bool Belongs(DeedParts deed)
    {
        var (course, segment) = (deed.Course, deed.Segment);
        if (course.LastInSentence is not { Kind: EntryKind.Adjustment, PlaceCarried: true } last || last.Last != course.At - 1 || segment.Joint is not "," || deed.Verb is not null || deed.Amount is not null || deed.Object is not null || deed.Part is not null)
        {
            return false;
        }

        var again = segment.Has(Cat.Same) || segment.Has(Cat.Again);
        if (again)
        {
            return deed.Blade is null && deed.Side is null;
        }

        if (PlaceReader.Read(course.Segments[last.First]).Count > 0)
        {
            return false;
        }

        last.Slots = Changed(deed, last.Slots);
        return true;
    }

    /// <summary>“Took another”: nothing but once more.</summary>
    internal static bool IsAnother(Segment segment, Item? verb) => verb is null ? IsAnotherAlone(segment) : verb is { } took && Moods.Action(took) is "take" or "light" && Moods.Form(took) is 'P' or 'N' or 'G' && segment.Word(took.End) is "another" or "one"
        && Enumerable.Range(took.End, segment.End - took.End).All(at => segment.Tokens[at].Kind is TokenKind.Break || segment.Word(at) is "another" or "one" or "more" or "off" or "of" or "those" or "then" or "too" || segment.Covered(at, Cat.Filler) || segment.Covered(at, Cat.Now));

    // “And another”.
    private static bool IsAnotherAlone(Segment segment)
    {
        var words = string.Join(' ', Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is TokenKind.Word && !segment.Covered(at, Cat.Filler) && !segment.Covered(at, Cat.Now) && segment.Word(at) is not ("and" or "then" or "just" or "so" or "but")).Select(segment.Word));
        return words is "another" or "another one" or "and another" or "yet another" or "one more" or "one more of those";
    }

    private static bool Elsewhere(DeedParts deed, ReadSlots slots, Mention place, Zone? sake)
    {
        var moved = new DeedParts(deed.Course, deed.Segment, deed.Verb ?? new Item(Cat.Verb, "take/P", 0, 0), [place], deed.Amount ?? Amount(slots));
        DeedReader.Write(moved, sake);
        return true;
    }

    internal static ReadSlots Changed(DeedParts deed, ReadSlots slots)
    {
        var saidBlade = deed.Blade ?? BareBlade(deed.Segment);
        var saidSide = deed.Side ?? BareSide(deed.Segment);
        var blade = DeedReader.Resolve(saidBlade, null, null, slots.Blades ?? DeedReader.LastBlade(deed.Course)) ?? (saidBlade is null ? slots.Blades : null);
        var side = DeedReader.ResolveSide(saidSide, null, null, slots.Sides ?? DeedReader.LastSide(deed.Course)) ?? (saidSide is null ? slots.Sides : null);
        var moved = slots with { Blades = blade, Sides = side };
        return deed.IsTwice ? moved with { Strokes = slots.Strokes * 2, Mm = slots.Mm * 2, Words = null }
            : deed.Amount is { } amount ? WithAmount(slots, amount) with { Blades = blade, Sides = side } : moved;
    }

    // “Ditto right”: the last word, and no filler there.
    private static string? BareSide(Segment segment)
    {
        var last = segment.End - 1;
        while (last > segment.First && segment.Tokens[last].Kind is TokenKind.Break)
        {
            last--;
        }

        return last > segment.First && segment.Has(Cat.Same) | segment.Has(Cat.Again) ? segment.Word(last) switch { "left" => "Left", "right" => "Right", _ => null } : null;
    }

    // “Likewise below”, “same on top”.
    private static string? BareBlade(Segment segment) => !(segment.Has(Cat.Same) || segment.Has(Cat.Again)) ? null
        : segment.HasWord("below") || segment.HasWord("underneath") || segment.HasWord("beneath") || segment.HasWord("bottom") ? "Lower"
        : segment.HasWord("above") || segment.HasWord("top") ? "Upper" : null;

    internal static ReadSlots WithAmount(ReadSlots slots, SaidAmount amount)
    {
        var changed = slots with { Strokes = amount.Strokes, Mm = amount.Mm, Words = amount.Words };
        return slots.Kind is "clip" or "clip-hair" && amount.Mm is { } mm ? changed with { Kind = mm < 0.3m ? "clip-hair" : "clip" } : changed;
    }

    private static SaidAmount? Amount(ReadSlots slots) => slots.Strokes is null && slots.Mm is null && slots.Words is null
        ? null
        : new SaidAmount(slots.Strokes, slots.Mm, slots.Words, 0, 0);

    private static ReadSlots? Base(DeedParts deed)
    {
        var slots = deed.Course.LastOf(EntryKind.Adjustment)?.Slots ?? (deed.Course.Before.LastWork is { } work ? Of(work) : null);
        if (slots is null || deed.Verb is null || deed.Action is "light" or "take")
        {
            return slots;
        }

        var kind = DeedKind.Of(deed);
        if (deed.Action is "clip")
        {
            return slots.Kind is "clip" or "clip-hair" && deed.Amount is null ? slots : deed.Course.Before.Log.Live<Adjustment>().Select(fact => Of(fact.Now)).LastOrDefault(other => deed.Amount is null && other.Kind is "clip" or "clip-hair");
        }

        return kind == slots.Kind || (deed.Object is null && deed.Amount is null) ? slots : null;
    }

    internal static ReadSlots Of(Adjustment work) => new()
    {
        Kind = work.AdjustmentKind.Value,
        Zone = work.Zone,
        Blades = work.Blades is Blades.Both ? null : work.Blades,
        Sides = work.Sides is Sides.Both ? null : work.Sides,
        Strokes = work.AmountStrokes,
        Mm = work.AmountMicrometres / 1000m,
        Words = work.AmountWords,
        Sake = work.ForTheSakeOf,
    };
}
