using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What a deed was done for: it says nothing of its own, but it may name another place.</summary>
internal static class Purpose
{
    private static readonly HashSet<string> Verbs =
        ["let", "make", "leave", "help", "give", "have", "keep", "get", "bring", "set", "raise", "stop", "free", "see", "cure", "allow", "support", "protect", "save", "balance", "even", "mend", "lower", "open", "close", "darken", "brighten", "steady", "calm", "tame", "wake", "lift", "be", "match", "thicken", "strengthen", "favour", "spare", "show", "push", "draw", "hold", "reveal", "preserve", "compensate", "ease", "settle", "start", "improve", "warm"];

    /// <summary>The segment without its purpose, and the part of the reed for whose sake it was done.</summary>
    internal static Segment Trim(Course course, out Zone? sake)
    {
        var segment = course.Segment;
        sake = null;
        var at = TailAt(segment);
        if (at < 0)
        {
            return segment;
        }

        var tail = segment.Part(at, segment.End);
        var head = segment.Part(segment.First, at);
        sake = SakeOf(course, tail, PlaceReader.Read(head).FirstOrDefault(mention => mention.HasPlace)?.Usual);
        return head;
    }

    /// <summary>The part of the reed that a purpose names.</summary>
    internal static Zone? SakeOf(Course course, Segment tail, Zone? worked)
    {
        var places = PlaceReader.Read(tail);
        var zone = places.FirstOrDefault(mention => mention.HasPlace)?.Usual;
        if (zone is null && tail.HasWord("it") && !tail.Has(Cat.Test) && !OfTheGap(tail))
        {
            zone = course.LastOf(EntryKind.Finding)?.Slots.Zone ?? course.Before.LastFinding?.Zone;
        }

        return zone is Zone.Opening || zone == worked ? null : zone;
    }

    // “To open it”: the reed's own gap, and no place that was spoken of.
    private static bool OfTheGap(Segment tail) => Spoken.HasStem(tail, "open", "clos", "wide", "round", "flat", "narrow");

    private static int TailAt(Segment segment)
    {
        for (var i = segment.First + 1; i < segment.End - 1; i++)
        {
            var word = segment.Word(i);
            if ((word is "to" && Verbs.Contains(segment.Word(i + 1)) && segment.Word(i - 1) is not ("going" or "want" or "wants" or "need" or "have" or "ought" or "like" or "got" or "needs" or "about"))
                || (word is "for" && segment.Word(i + 1) is "the" && segment.Items.Any(item => item.First <= i && i < item.End && item.Cat == Cat.Sake))
                || (word is "for" && segment.HasWord("sake"))
                || (word is "so" && segment.Word(i - 1) is not ("ever" or "or" or "not" or "quite")) || word is "because")
            {
                return i;
            }
        }

        return -1;
    }

    /// <summary>“So that the heart stands fuller”, after a deed: no entry of its own.</summary>
    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        if (course.LastInSentence is not { Kind: EntryKind.Adjustment } deed || segment.Joint is not ("so" or "," or "") || Moods.Head(segment) is { } verb && segment.HasWord("i") && verb.Count > 0)
        {
            return course.LastInSentence is { Kind: EntryKind.Adjustment } && segment.Has(Cat.Sake) && Take(course);
        }

        if (segment.Has(Cat.Sake))
        {
            return Take(course);
        }

        if (segment.Word(segment.First) is "to" && segment.Items.Any(item => item.Cat is Cat.Verb && item.First <= segment.First + 2 && Moods.Form(item) is 'B') && segment.Joint is ",")
        {
            return Take(course);
        }

        if (segment.Joint is not "so")
        {
            return false;
        }

        var that = segment.Word(segment.First) is "so" && segment.Word(segment.First + 1) is "that";
        var place = PlaceReader.Read(segment).FirstOrDefault(mention => mention.HasPlace);
        var stands = place is not null && segment.Word(place.End) is "stands" or "stand" or "looks" or "holds" or "hold" or "can" or "gets" or "is" or "'s" or "are" or "comes" or "feels" or "seems" or "has" or "stays" or "stay" or "will" or "keeps" or "may";
        var room = segment.HasWord("room") || segment.HasWord("space") || segment.HasWord("hopefully") || (segment.Word(segment.First + 1) is "it" or "they" or "that" && segment.Word(segment.First + 2) is "can" or "will" or "should" or "could" or "may");
        return (that || room || (stands && !segment.Has(Cat.Now))) && place?.Zone is not Zone.Opening && !(segment.Has(Cat.Test) && !that && !segment.HasWord("room") && !segment.HasWord("space")) && Take(course);
    }

    /// <summary>“So that the hump stands out, I’m taking the shoulders down”: said ahead of the deed.</summary>
    internal static bool Ahead(Course course)
    {
        var segment = course.Segment;
        var leads = (segment.Word(segment.First) is "so" && segment.Word(segment.First + 1) is "that") || (segment.Word(segment.First) is "to" && Verbs.Contains(segment.Word(segment.First + 1)));
        if (!leads || course.LastInSentence is not null || course.At + 1 >= course.Segments.Count || course.Segments[course.At + 1] is not { } next || next.Sentence != segment.Sentence || Moods.Head(next) is not { } verb || Moods.Form(verb) is 'S' || segment.Has(Cat.Test))
        {
            return false;
        }

        course.Sake = PlaceReader.Read(segment).FirstOrDefault(mention => mention.HasPlace)?.Usual;
        return true;
    }

    private static bool Take(Course course)
    {
        var deed = course.LastInSentence!;
        deed.Slots = deed.Slots with { Sake = SakeOf(course, course.Segment, deed.Slots.Zone) ?? deed.Slots.Sake };
        return course.Absorb(aside: false);
    }
}
