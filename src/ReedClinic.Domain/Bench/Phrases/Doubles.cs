using ReedClinic.Domain.Bench.Phrases.Judging;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Puts together what was said twice: the same entry in a second breath, and one deed that was told side by side.</summary>
internal static class Doubles
{
    // What an entry can say. Its amount and place are told apart below.
    private static readonly Func<ReadSlots, object?>[] Said =
    [
        slots => slots.Test, slots => slots.Step, slots => slots.Pitch, slots => slots.Lean, slots => slots.Cents, slots => slots.Octave, slots => slots.Between, slots => slots.Change, slots => slots.Length,
        slots => slots.Kind, slots => slots.Character, slots => slots.Zone, slots => slots.Blades, slots => slots.Sides, slots => slots.Relation, slots => slots.OtherZone, slots => slots.OtherBlades, slots => slots.OtherSides,
        slots => slots.Degree, slots => slots.Certainty, slots => slots.Known, slots => slots.Arose, slots => slots.Ending, slots => slots.Strokes, slots => slots.Mm, slots => slots.Words, slots => slots.Sake, slots => slots.Outcome, slots => slots.Verdict,
    ];

    internal static void Join(Course course, Judge? judge)
    {
        for (var i = course.Drafts.Count - 2; i >= 0; i--)
        {
            var (one, other) = (course.Drafts[i], course.Drafts[i + 1]);
            if (one.Kind == other.Kind && (one.Kind is not (EntryKind.Note or EntryKind.Risk) || one.Kind is EntryKind.Note && one.Sentence == other.Sentence) && other.First == one.Last + 1 && Together(course, one, other, judge) is { } slots)
            {
                one.Slots = slots;
                one.Last = other.Last;
                one.HasAside |= other.HasAside;
                course.Drafts.RemoveAt(i + 1);
            }
        }
    }

    private static ReadSlots? Together(Course course, Draft one, Draft other, Judge? judge)
    {
        if (one.Kind is EntryKind.Adjustment)
        {
            return IsRepeated(course, other) ? null : BothSides(one.Slots, other.Slots) ?? InTwoBreaths(course, one, other);
        }

        return IsWithin(other.Slots, one.Slots) ? one.Slots : IsWithin(one.Slots, other.Slots) ? other.Slots
            : one.Kind is EntryKind.Test && (IsBareRest(course.Segments[other.Head]) || IsTold(course, one, other)) && WholeTest(one.Slots, other.Slots) is { } whole ? whole
            : one.Kind is EntryKind.Test ? InOtherWords(course, one, other, judge) : null;
    }

    // “Draw the air, it holds, and then you get that little pop”: one test, told in more than one way.
    private static ReadSlots? InOtherWords(Course course, Draft one, Draft other, Judge? judge)
    {
        var (first, second) = (one.Slots, other.Slots);
        var goesOn = one.Sentence == other.Sentence || !(course.Segments[other.Head].Has(Cat.Test) || course.Segments[other.Head].Has(Cat.Now));
        if (!goesOn || first.Test != second.Test || (first.Pitch is not null && second.Pitch is not null && first.Pitch != second.Pitch) || (first.Cents ?? first.Change) is not null & (second.Cents ?? second.Change) is not null
            || first.Length is not null || second.Length is not null || first.Change is not null || second.Change is not null || first.Between is not null & second.Between is not null)
        {
            return null;
        }

        var step = first.Step is null || second.Step is null || first.Step == second.Step ? first.Step ?? second.Step : Likelier(course, one, other, judge);
        return first with { Step = step, Pitch = first.Pitch ?? second.Pitch, Lean = first.Lean ?? second.Lean, Cents = first.Cents ?? second.Cents, Octave = first.Octave ?? second.Octave, Between = first.Between ?? second.Between };
    }

    private static string? Likelier(Course course, Draft one, Draft other, Judge? judge)
    {
        if (judge is null || course.Segments[other.Head].Has(Cat.Now))
        {
            return other.Slots.Step;
        }

        var both = course.Segments[one.Head].With(course.Segments[other.Head]);
        return judge.Chance(both, one.Slots) > judge.Chance(both, other.Slots) ? one.Slots.Step : other.Slots.Step;
    }

    // “C. Twenty cents flat.”; not “now C”, “then C”, “the crow C”.
    private static bool IsBareRest(Segment segment) => !segment.Has(Cat.Test) && !segment.Has(Cat.Now) && segment.Joint is not ("then" or "but") && !segment.HasWord("then") && !segment.HasWord("after");

    // “On G the softest start fails: it won’t start softly”.
    private static bool IsTold(Course course, Draft one, Draft other) => one.Sentence == other.Sentence && one.Slots is { Step: null, Pitch: not null, Cents: null, Lean: null } && other.Slots is { Step: not null, Pitch: null } && !course.Segments[other.Head].Has(Cat.Now);

    /// <summary>Halves of one test: its note and how far from it, or its note and its step.</summary>
    private static ReadSlots? WholeTest(ReadSlots one, ReadSlots other)
    {
        var apart = one.Test == other.Test && (one.Step is null || other.Step is null) && (one.Pitch is null || other.Pitch is null) && (one.Cents ?? one.Change) is null | (other.Cents ?? other.Change) is null
            && (one.Lean is null || other.Lean is null) && one.Between is null | other.Between is null && one.Change is null && other.Change is null && one.Length is null && other.Length is null;
        return apart && (one.Pitch is not null || other.Pitch is not null)
            ? one with { Step = one.Step ?? other.Step, Pitch = one.Pitch ?? other.Pitch, Lean = one.Lean ?? other.Lean, Cents = one.Cents ?? other.Cents, Octave = one.Octave ?? other.Octave, Between = one.Between ?? other.Between }
            : null;
    }

    // “Again”, “another”, “the same on the right”: done twice.
    private static bool IsRepeated(Course course, Draft draft) => Enumerable.Range(draft.First, draft.Last - draft.First + 1).Select(at => course.Segments[at])
        .Any(segment => segment.Has(Cat.Again) || segment.Has(Cat.Same) || segment.Has(Cat.More) || segment.HasWord("another") || segment.HasWord("more"));

    /// <summary>“One stroke off the left ear and one off the right”: one deed on both.</summary>
    private static ReadSlots? BothSides(ReadSlots one, ReadSlots other)
    {
        var sides = one.Sides is Sides.Left && other.Sides is Sides.Right || one.Sides is Sides.Right && other.Sides is Sides.Left;
        if (sides && one with { Sides = null } == other with { Sides = null })
        {
            return one with { Sides = null };
        }

        var blades = one.Blades is Blades.Upper && other.Blades is Blades.Lower || one.Blades is Blades.Lower && other.Blades is Blades.Upper;
        return blades && one with { Blades = null } == other with { Blades = null } ? one with { Blades = null } : null;
    }

    /// <summary>“Blended heart into tip. Ten strokes.”; “dusted it, the heart, I mean, one stroke”: one deed, with what either breath says of it.</summary>
    private static ReadSlots? InTwoBreaths(Course course, Draft one, Draft other)
    {
        var (first, second) = (one.Slots, other.Slots);
        var halves = first.Kind == second.Kind && first.Zone == second.Zone && (HasNoAmount(first) || HasNoAmount(second)) && (first.Sides is null || second.Sides is null || first.Sides == second.Sides)
            && (first.Blades is null || second.Blades is null || first.Blades == second.Blades) && (first.Sake is null || second.Sake is null);
        var segment = course.Segments[other.Head];
        return halves && segment.Joint is not "then" && !segment.HasWord("then") && !segment.Has(Cat.Also) && !segment.HasWord("after")
            ? first with { Sides = first.Sides ?? second.Sides, Blades = first.Blades ?? second.Blades, Strokes = first.Strokes ?? second.Strokes, Mm = first.Mm ?? second.Mm, Words = first.Words ?? second.Words, Sake = first.Sake ?? second.Sake }
            : null;
    }

    private static bool HasNoAmount(ReadSlots slots) => slots is { Strokes: null, Mm: null, Words: null };

    private static bool IsWithin(ReadSlots part, ReadSlots whole) => Array.TrueForAll(Said, slot => slot(part) is not { } value || value.Equals(slot(whole)));
}
