using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Tip thick? No, it isn’t”: asked and answered in one breath, it was looked for and not there.</summary>
internal static class AskedAndAnswered
{
    private const int Few = 6;

    internal static void Keep(Course course)
    {
        for (var at = 0; at + 1 < course.Segments.Count; at++)
        {
            var (asked, answer) = (course.Segments[at], course.Segments[at + 1]);
            if (!asked.Asked || answer.Asked || answer.Sentence != asked.Sentence + 1 || answer.Word(answer.First) is not ("no" or "nope" or "nah") || Fault(asked) is not { } kind)
            {
                continue;
            }

            var last = at + 1;
            while (last + 1 < course.Segments.Count && course.Segments[last + 1].Sentence == answer.Sentence)
            {
                last++;
            }

            var whole = Spoken.Whole(course, at + 1, last);
            var olds = course.Drafts.Where(draft => draft.Last >= at && draft.First <= last).ToList();
            if (whole.End - whole.First <= Few && !whole.Items.Any(item => item.Cat is Cat.Quality or Cat.Test or Cat.Zone or Cat.Verb or Cat.Plan) && olds.All(draft => draft.Kind is EntryKind.Note or EntryKind.Finding or EntryKind.LookedFor && draft.First >= at && draft.Last <= last))
            {
                Write(course, (at, last), olds, kind);
            }
        }
    }

    // A fault of a part that is named, and no plan.
    private static string? Fault(Segment asked) => asked.Find(Cat.Quality) is { } quality && PlaceReader.Read(asked).FirstOrDefault(mention => mention.HasPlace) is { } place && !asked.Items.Any(item => item.Cat is Cat.Plan or Cat.Not or Cat.Test or Cat.Other || item.Cat is Cat.Verb && item.First != quality.First)
        && FindingTable.Kind(place, quality.Value) is { } kind && FindingCatalogue.Find(new FindingKindId(kind))?.Usually is FindingCharacter.Fault ? kind : null;

    private static void Write(Course course, (int First, int Last) span, List<Draft> olds, string kind)
    {
        var to = olds.Count > 0 ? course.Drafts.IndexOf(olds[0]) : course.Drafts.Count(draft => draft.Last < span.First);
        course.Drafts.RemoveAll(olds.Contains);
        course.Drafts.Insert(to, new Draft { Kind = EntryKind.LookedFor, Slots = new ReadSlots { Kind = kind, Known = FindingReader.Known(Spoken.Whole(course, span.First, span.Last)) }, Head = span.First, First = span.First, Last = span.Last, Sentence = course.Segments[span.First].Sentence });
        course.Left.RemoveAll(at => at >= span.First && at <= span.Last);
    }
}
