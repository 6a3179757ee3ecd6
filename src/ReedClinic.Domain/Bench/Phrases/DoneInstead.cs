namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“I meant to clip it, but I only squared the tip”: what was meant is a remark, and what was done instead is done.</summary>
internal static class DoneInstead
{
    private static readonly HashSet<string> Unsure = ["after", "before", "when", "until", "if", "unless", "would", "could", "might", "should", "will", "'ll", "may", "nearly", "almost", "by", "what", "needs", "need", "needed", "wants", "want", "are", "is", "'s"];

    // Small words of work, behind which nothing is left unsaid.
    private static readonly HashSet<string> Plain = [.. "the a an of off from in on at along across each both either it its this that with and i we just only instead but took take taken did to into down lightly gently carefully slightly very little bit touch hair whisker stroke strokes pass passes scrape scrapes one light gentle small single".Split(' ')];

    private static readonly Doubt NotTaken = new("done", "unsure whether this was done, so its words are kept");

    internal static void Keep(Course course)
    {
        for (var at = 1; at < course.Segments.Count; at++)
        {
            var segment = course.Segments[at];
            if (segment.Asked || course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is not { Kind: EntryKind.Note } note || note.Head >= at || course.Segments[at - 1].Sentence != segment.Sentence
                || !IsTurn(segment) || Spoken.HasAny(segment, Unsure) || Enumerable.Range(note.First, at - note.First).LastOrDefault(lead => course.Segments[lead].Sentence == segment.Sentence && IsMeant(course.Segments[lead]), -1) is not (>= 0 and var meant) || Deed(course, at, course.Segments[meant]) is not { } slots)
            {
                continue;
            }

            var last = note.Last;
            note.Last = at;
            if (segment.Joint is "and" && note.First == meant && meant == at - 1)
            {
                (note.Kind, note.Slots, note.Last) = (EntryKind.Adjustment, slots, last);
                note.Doubts.Clear();
            }
            else if (Alone.Of(course, at) is { } draft)
            {
                (draft.Kind, draft.Slots, draft.Last) = (EntryKind.Adjustment, slots, last);
                draft.Doubts.Clear();
            }
            else
            {
                note.Last = last;
            }
        }
    }

    private static bool IsTurn(Segment segment) => segment.Joint is "but" || segment.HasWord("instead") || segment.HasWord("only") || segment.Joint is "and" && segment.Word(segment.First) is "and" or "took" or "i" && segment.HasWord("took");

    // “Meant to”, “wanted to”, “was going to”, “thought of”, by who speaks.
    private static bool IsMeant(Segment segment) => !segment.Has(Cat.Other) && Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Word(at) switch
    {
        "meant" or "planned" or "intended" or "wanted" or "hoped" => segment.Word(at + 1) is "to",
        "going" or "about" or "tempted" => segment.Word(at + 1) is "to" && segment.Word(at - 1) is "was" or "were" or "been",
        "thought" or "thinking" => segment.Word(at + 1) is "of" or "about",
        "instead" or "rather" => false,
        _ => false,
    });

    private static ReadSlots? Deed(Course course, int at, Segment meant)
    {
        var segment = course.Segments[at];
        if (segment.Has(Cat.Other) || segment.Has(Cat.Not) || segment.HasWord("other") || Moods.Head(segment) is not { } verb || Moods.Form(verb) is not ('P' or 'N') || Moods.Action(verb) is "light" && PlaceReader.Read(segment).Count == 0)
        {
            return null;
        }

        var ruled = course.Copy();
        (ruled.At, ruled.Carried) = (at, Mood.None);
        ruled.Drafts.Clear();
        (ruled.Topic, ruled.Pending, ruled.BreathBlade, ruled.BreathSide) = (null, null, null, null);
        var amount = AmountReader.Read(segment, segment.First, segment.End);
        if (PlaceReader.Read(segment).Count == 0 && segment.Word(verb.First) is "took" && amount is { Strokes: not null })
        {
            DeedReader.Write(new DeedParts(ruled, segment, verb, PlaceReader.Read(meant), amount), null);
        }
        else if (!DeedReader.TryRead(ruled))
        {
            return null;
        }

        return ruled.Last is { Kind: EntryKind.Adjustment, Slots: { Kind: not ("something-else" or null) } slots } done && done.Head == at && IsOfThisReed(segment, verb, amount) ? slots : null;
    }

    // “Two strokes on my finger”, “the tip of my pencil”, “last week”: nothing stands behind the verb that isn’t understood as work on this reed.
    private static bool IsOfThisReed(Segment segment, Item verb, SaidAmount? amount)
    {
        var places = PlaceReader.Read(segment);
        for (var at = verb.First; at < segment.End; at++)
        {
            var told = segment.Tokens[at].Kind is not TokenKind.Word || Plain.Contains(segment.Word(at)) || verb.First <= at && at < verb.End || amount is { } much && much.First <= at && at < much.End
                || places.Exists(place => place.First <= at && at < place.End) || segment.Covered(at, Cat.Zone) || segment.Covered(at, Cat.Region) || segment.Covered(at, Cat.Part) || segment.Covered(at, Cat.Stroke) || segment.Covered(at, Cat.Mm) || segment.Covered(at, Cat.Tenth);
            if (!told || segment.Word(at) is "reed" or "reeds")
            {
                return false;
            }

            // “On the plaque”, “of my pencil”, “to think”: a place or a size follows, or nothing does.
            if (segment.Word(at) is "on" or "of" or "to" && !Enumerable.Range(at + 1, segment.End - at - 1).Any(next => places.Exists(place => place.First <= next && next < place.End) || segment.Covered(next, Cat.Zone) || amount is { } of && of.First <= next && next < of.End || segment.Word(next) is "it" or "each" or "both"))
            {
                return false;
            }
        }

        return true;
    }
}
