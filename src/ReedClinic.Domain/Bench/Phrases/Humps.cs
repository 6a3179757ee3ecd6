using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“A hump in the heart”, “a high spot in the heart”: cane that stands too high there, and never too little of it.</summary>
internal static class Humps
{
    private static readonly HashSet<string> Hump = ["hump", "humps", "bulge", "bulges", "mound", "swelling", "hillock"];

    private static readonly HashSet<string> Humped = ["humped", "humpy", "humps", "bulges", "bulging", "humping"];

    private static readonly HashSet<string> Bump = ["bump", "bumps", "lump", "lumps", "ridge", "ridges", "spot", "patch"];

    private static readonly HashSet<string> Lead = [.. "a an the is 's there and but also with plus some one another big little small slight real bit of i see feel can find found still has have got shows now too".Split(' ')];

    internal static void Keep(Course course)
    {
        for (var at = 0; at < course.Segments.Count; at++)
        {
            var segment = course.Segments[at];
            if (segment.Asked || segment.Has(Cat.Not) || segment.Has(Cat.NoMore) || segment.Has(Cat.Plan) || segment.Has(Cat.Cond) || segment.Has(Cat.Leave) || segment.Has(Cat.Ended) || segment.Has(Cat.Off) || segment.Has(Cat.Sake) || segment.Has(Cat.Good) || !segment.HasWord("heart") || Said(segment) is not { } said || Entry(course, at) is not { } draft)
            {
                continue;
            }

            draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind");
            if (draft.Kind is not EntryKind.Finding || draft.Slots.Kind != said.Kind || draft.Slots.Zone is not (Zone.HeartCentre or Zone.HeartSides or Zone.HeartBottom))
            {
                Find(segment, draft, said.Kind);
            }

            draft.Slots = draft.Slots with { Degree = draft.Slots.Degree ?? FindingReader.Degree(segment, new Item(Cat.Quality, "", said.At, said.At + 1)) };
        }
    }

    private static Draft? Entry(Course course, int at) => course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is { Kind: not (EntryKind.Finding or EntryKind.Note or EntryKind.Test) } ? null : Alone.Of(course, at);

    private static void Find(Segment segment, Draft draft, string kind)
    {
        var places = PlaceReader.Read(segment);
        draft.Kind = EntryKind.Finding;
        draft.Doubts.Clear();
        draft.Slots = new ReadSlots
        {
            Kind = kind,
            Character = FindingCharacter.Fault,
            Zone = Zone.HeartCentre,
            Blades = places.Select(place => place.OneBlade).FirstOrDefault(blade => blade is not null) ?? draft.Slots.Blades,
            Sides = places.Select(place => place.OneSide).FirstOrDefault(side => side is not null) ?? draft.Slots.Sides,
            Certainty = segment.Has(Cat.Hedge) ? Certainty.Suspected : null,
            Known = FindingReader.Known(segment),
        };
    }

    // “A hump in the heart”, “the heart has a hump”, “heart a bit humpy”.
    private static (string Kind, int At)? Said(Segment segment)
    {
        var heart = segment.IndexOfWord("heart");
        for (var at = segment.First; at < segment.End; at++)
        {
            var (hump, bump) = (Hump.Contains(segment.Word(at)), Bump.Contains(segment.Word(at)) && (segment.Word(at) is not ("spot" or "patch") || segment.Word(at - 1) is "high" or "proud" or "raised"));
            if (at > heart && Humped.Contains(segment.Word(at)) && Enumerable.Range(heart + 1, at - heart - 1).All(between => Lead.Contains(segment.Word(between)) || segment.Covered(between, Cat.Degree) || segment.Word(between) is "up" or "quite" or "rather" or ""))
            {
                return ("heart-thick", at);
            }

            if (!(hump || bump) || at + 1 < heart && !(heart - at <= 6 && segment.Word(at + 1) is "in" or "on" or "at" or "across"))
            {
                continue;
            }

            var lead = Enumerable.Range(segment.First, at - segment.First).All(before => Lead.Contains(segment.Word(before)) || segment.Word(before) is "" or "heart" or "high" or "proud" or "raised" || segment.Covered(before, Cat.Filler) || segment.Covered(before, Cat.Hedge) || segment.Covered(before, Cat.Blade) || segment.Covered(before, Cat.Side) || segment.Covered(before, Cat.Degree));
            if (lead && (at < heart || Enumerable.Range(heart, at - heart).Any(between => segment.Word(between) is "has" or "have" or "got" or "shows" or "with" or "a" or "'s")))
            {
                return (hump ? "heart-thick" : "bumps", at);
            }
        }

        return null;
    }
}
