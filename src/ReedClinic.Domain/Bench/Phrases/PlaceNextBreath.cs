namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Took two strokes. Left side of the tip.”, “scraped (upper, left rail)”: where it was done is said in the next breath, or in brackets.</summary>
internal static class PlaceNextBreath
{
    internal static void Keep(Course course)
    {
        var (end, carried) = (course.At, course.Carried);
        for (var at = 0; at + 1 < course.Segments.Count; at++)
        {
            (course.At, course.Carried) = (at, Mood.None);
            var last = at;
            while (last + 1 < course.Segments.Count && IsOnlyPlace(course.Segments[last + 1]))
            {
                last++;
            }

            if (last > at && Place(course, at, last) is { } place && IsApart(course, at, last) && Work(course.Segments[at]) is { } action && DeedTable.Kind(action, MorePlaces.Key(place)) is { } kind && IsFree(course, at, last) && Moods.Of(course, course.Segments[at], Moods.Head(course.Segments[at])) is Mood.Done)
            {
                Write(course, (at, last), place, action, kind);
            }
        }

        (course.At, course.Carried) = (end, carried);
    }

    private static bool IsOnlyPlace(Segment segment) => !segment.Asked && PlaceReader.Read(segment).Count > 0 && Enumerable.Range(segment.First, segment.End - segment.First).All(at => PlaceSaidAfter.IsOfPlace(segment, at));

    // One place, with the blade and the side that are said of it.
    private static Mention? Place(Course course, int at, int last)
    {
        var said = PlaceReader.Read(course.Segments[at]);
        if (said.Exists(mention => mention.HasPlace || mention.Part is not null))
        {
            return null;
        }

        said.AddRange(Enumerable.Range(at + 1, last - at).SelectMany(segment => PlaceReader.Read(course.Segments[segment])));
        return said.Count(mention => mention.HasPlace) != 1 ? null
            : said.Aggregate(new Mention(), (all, one) => all with { Zone = all.Zone ?? one.Zone, Region = all.Region ?? one.Region, Blade = PlaceSaidAfter.Either(all.Blade, one.Blade), Side = PlaceSaidAfter.Either(all.Side, one.Side) });
    }

    // A new sentence, a bracket or a comma before it, and nothing said of it behind.
    private static bool IsApart(Course course, int at, int last) => course.Segments[at] is var deed && deed.Tokens[deed.End - 1].Kind is TokenKind.Break
        && (last + 1 == course.Segments.Count || course.Segments[last + 1] is var next && (next.Sentence != course.Segments[last].Sentence || next.Joint is "and" or "then" or "but" or "so"));

    // What takes cane, and nothing besides: a verb, or strokes and no verb.
    private static string? Work(Segment segment)
    {
        if (segment.Asked || segment.Items.Any(item => item.Cat is Cat.Not or Cat.NoMore or Cat.Plan or Cat.Cond or Cat.Hedge or Cat.May or Cat.Habit or Cat.Leave or Cat.Test or Cat.Quality or Cat.Good or Cat.Other or Cat.Risk or Cat.Thing or Cat.Than or Cat.Again or Cat.Same))
        {
            return null;
        }

        var amount = AmountReader.Read(segment, segment.First, segment.End);
        return Moods.Head(segment) is not { } verb ? amount is { Bare: false } && segment.Has(Cat.Stroke) ? "take" : null
            : Moods.Action(verb) is var action && (action is "scrape" or "dust" or "sand" or "narrow" || action is "take" or "light" && amount is { Mm: null }) ? action : null;
    }

    // Nothing of it belongs to another entry.
    private static bool IsFree(Course course, int at, int last) => course.Drafts.Where(draft => draft.Last >= at && draft.First <= last).All(draft => draft.Last <= last && (draft.First >= at || draft.Head == at));

    private static void Write(Course course, (int First, int Last) span, Mention place, string action, string kind)
    {
        var segment = course.Segments[span.First];
        var olds = course.Drafts.Where(draft => draft.Last >= span.First && draft.First <= span.Last).ToList();
        var amount = AmountReader.Read(segment, segment.First, segment.End);
        var to = olds.Count > 0 ? course.Drafts.IndexOf(olds[0]) : course.Drafts.Count(draft => draft.Last < span.First);
        var written = new Draft
        {
            Kind = EntryKind.Adjustment,
            Slots = new ReadSlots { Kind = kind, Zone = place.Usual, Blades = place.OneBlade, Sides = place.OneSide, Strokes = amount?.Strokes, Words = amount?.Words },
            Head = span.First,
            First = Math.Min(span.First, olds.Select(old => old.First).DefaultIfEmpty(span.First).Min()),
            Last = span.Last,
            Sentence = segment.Sentence,
            Verb = action,
            ZoneSaid = true,
        };
        written.Doubts.Add(Doubt.Done);
        course.Drafts.RemoveAll(olds.Contains);
        course.Drafts.Insert(to, written);
        course.Left.RemoveAll(at => at >= span.First && at <= span.Last);
        Carry(course, written, olds);
    }

    // “… and two on the other blade as well”: of the same place; as much on both is one entry.
    private static void Carry(Course course, Draft written, List<Draft> olds)
    {
        var index = course.Drafts.IndexOf(written) + 1;
        if (index >= course.Drafts.Count || course.Drafts[index] is not { Kind: EntryKind.Adjustment } next
            || !Spoken.Whole(course, next).HasWord("other") && !olds.Exists(old => old.Slots.Kind == next.Slots.Kind && old.Slots.Zone == next.Slots.Zone) || PlaceReader.Read(Spoken.Whole(course, next)).Exists(mention => mention.HasPlace))
        {
            return;
        }

        next.Slots = next.Slots with { Kind = written.Slots.Kind, Zone = written.Slots.Zone };
        if (next.Slots with { Sake = null } == written.Slots && Spoken.Whole(course, next).HasWord("other"))
        {
            Spoken.Join(course, written, next);
        }
    }
}
