using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Segments that say only a part: a blade, a side, an amount, another place for the same.</summary>
internal static class Fragments
{
    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        if (IsEmpty(segment))
        {
            return course.Absorb(aside: false);
        }

        var mentions = PlaceReader.Read(segment);
        var amount = AmountReader.Read(segment, segment.First, segment.End);
        if (mentions.Count == 0 && amount is { } much && segment.Has(Cat.Hedge) && IsFragment(segment, mentions, amount) && course.LastInSentence is { Kind: EntryKind.Adjustment } done && done.Last == course.At - 1
            && Moods.Head(course.Segments[done.First]) is { } told && Moods.Form(told) is 'P' or 'N')
        {
            return Measure(course, done, much);
        }

        if (Colours.TryRead(course))
        {
            return true;
        }

        if (Degree(course, segment) || !IsFragment(segment, mentions, amount))
        {
            return false;
        }

        if (mentions.FirstOrDefault(mention => mention.HasPlace) is { } place)
        {
            return Coordinate(course, mentions, place, amount) || Announce(course, mentions);
        }

        if (mentions.Count > 0)
        {
            return LeadsOn(course) ? Announce(course, mentions) : Attach(course, mentions, amount) || Announce(course, mentions);
        }

        return amount is { } said && course.LastInSentence is { Kind: EntryKind.Adjustment } last && Measure(course, last, said);
    }

    // “Upper: corners two, lower: corners three”.
    private static bool LeadsOn(Course course) => course.At + 1 < course.Segments.Count && course.Segments[course.At + 1].Joint is ":";

    // “…, a touch”, after a finding.
    private static bool Degree(Course course, Segment segment)
    {
        if (course.LastInSentence is not { Kind: EntryKind.Finding, Slots.Degree: null } found || found.Last != course.At - 1 || segment.Find(Cat.Degree) is not { } said
            || Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Tokens[at].Kind is TokenKind.Word or TokenKind.Number or TokenKind.Note && !segment.Covered(at, Cat.Degree) && !segment.Covered(at, Cat.Filler) && !segment.Covered(at, Cat.Hedge) && segment.Word(at) is not ("a" or "just" or "only" or "but" or "and" or "though" or "so" or "if" or "by" or "not")))
        {
            return false;
        }

        found.Slots = found.Slots with { Degree = FindingReader.Degree(segment, said) ?? found.Slots.Degree, Certainty = segment.Has(Cat.Hedge) ? Certainty.Suspected : found.Slots.Certainty };
        return course.Absorb(aside: false);
    }

    private static bool Measure(Course course, Draft last, SaidAmount amount)
    {
        var none = last.Slots.Strokes is null && last.Slots.Mm is null && last.Slots.Words is null;
        var each = last.Slots.Kind is "clip" or "clip-hair" && last.Slots.Strokes is not null && (amount.Words is not null || amount.Mm is not null);
        var nearer = last.Slots is { Words: not null, Kind: not ("clip" or "clip-hair") } && amount is { Strokes: not null } or { Mm: not null };
        if (none || each || nearer || last.PlaceCarried)
        {
            amount = each ? amount with { Strokes = null } : amount;
            last.Slots = AgainReader.WithAmount(last.Slots, amount);
            last.Slots = last.Slots.Kind is "clip" && amount.Words is not null && DeedKind.IsSmall(amount) ? last.Slots with { Kind = "clip-hair" } : last.Slots;
        }

        return course.Absorb(aside: false);
    }

    internal static bool IsEmpty(Segment segment)
    {
        for (var i = segment.First; i < segment.End; i++)
        {
            if (segment.Tokens[i].Kind is TokenKind.Word or TokenKind.Number or TokenKind.Note && segment.Word(i) is not ("and" or "then" or "but" or "so" or "the" or "a" or "of" or "too" or "or")
                && (!segment.Covered(i, Cat.Filler) || (segment.Word(i) is "right" && (segment.Tokens[i].Length == 1 || segment.Word(i + 1) is ":"))) && !segment.Covered(i, Cat.Now))
            {
                return false;
            }
        }

        return true;
    }

    private static bool IsFragment(Segment segment, List<Mention> mentions, SaidAmount? amount)
    {
        for (var i = segment.First; i < segment.End; i++)
        {
            var known = segment.Tokens[i].Kind is TokenKind.Symbol or TokenKind.Break
                || segment.Word(i) is "and" or "then" or "but" or "so" or "the" or "a" or "of" or "on" or "in" or "at" or "off" or "from" or "only" or "just" or "this" or "that" or "time" or "there" or "for" or "with" or "or" or "plus" or "over" or "not" or "to" or "it" or "here" or "along" or "all" or "down" or "both" or "each" or "i" or "mean" or "'s" or "one" or "am" or "have" or "per" or "quarter" or "quadrant" or "apiece" or "first" or "about" or "around" or "nearly" or "some" or "almost" or "say" or "well" or "no" or "more" or "than" or "maybe" or "perhaps" or "did" or "was" or "took"
                || mentions.Any(mention => mention.First <= i && i < mention.End)
                || (amount is { } said && said.First <= i && i < said.End)
                || segment.Items.Any(item => item.First <= i && i < item.End && item.Cat is Cat.Filler or Cat.Also or Cat.Now or Cat.More or Cat.Degree or Cat.Off or Cat.Stroke or Cat.Again or Cat.Same or Cat.Part or Cat.Hedge);
            if (!known)
            {
                return false;
            }
        }

        return mentions.Count > 0 || amount is not null;
    }

    /// <summary>Another place for the same deed or the same finding.</summary>
    private static bool Coordinate(Course course, List<Mention> mentions, Mention place, SaidAmount? amount)
    {
        var segment = course.Segment;
        var joined = segment.Joint is "and" or "then" or "," or "plus" or "or" || segment.Has(Cat.Also);
        if (!joined || course.LastInSentence is not { } last || segment.Has(Cat.Not))
        {
            return false;
        }

        if (amount is null && last.Kind is EntryKind.Adjustment && segment.Word(segment.First) is "now" or "next" && segment.Joint is ",")
        {
            return course.Absorb();
        }

        if (last.Kind is EntryKind.Note && last.Last == course.At - 1)
        {
            return course.Absorb(aside: false);
        }

        if (last.Kind is EntryKind.Adjustment && (segment.Joint is "and" or "then" or "plus" || segment.Has(Cat.Also) || amount is not null || last.ZoneSaid))
        {
            return DeedToo(course, mentions, place, amount, last);
        }

        if (last.Kind is EntryKind.LeaveAlone)
        {
            course.Add(EntryKind.LeaveAlone, new ReadSlots { Zone = place.Usual, Blades = place.OneBlade, Sides = place.OneSide });
            return true;
        }

        if (last.Kind is EntryKind.Finding && place.Usual == last.Slots.Zone)
        {
            return Attach(course, mentions, amount);
        }

        return last.Kind is EntryKind.Finding && segment.Has(Cat.Also) && FindingToo(course, mentions, place, last);
    }

    private static bool DeedToo(Course course, List<Mention> mentions, Mention place, SaidAmount? amount, Draft last)
    {
        if (place.Usual == last.Slots.Zone && amount is null && place.OneSide == last.Slots.Sides)
        {
            return Attach(course, mentions, amount);
        }

        if (last is { ZoneSaid: false, Slots: { Kind: "something-else", Zone: Zone.WholeReed } } && amount is null)
        {
            return Settle(course, place);
        }

        var slots = last.Slots;
        var verb = new Item(Cat.Verb, (last.Verb ?? "take") + "/P", 0, 0);
        var carried = amount is null;
        amount ??= slots.Strokes is null && slots.Mm is null && slots.Words is null ? null : new SaidAmount(slots.Strokes, slots.Mm, slots.Words, 0, 0);
        DeedReader.Write(new DeedParts(course, course.Segment, verb, mentions, amount), null);
        course.Last!.PlaceCarried |= carried;
        return true;
    }

    /// <summary>“Two off the left, three off the right, in the windows”.</summary>
    private static bool Settle(Course course, Mention place)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Sentence == course.Segment.Sentence && draft is { Kind: EntryKind.Adjustment, ZoneSaid: false, Slots: { Kind: "something-else", Zone: Zone.WholeReed } }))
        {
            var kind = DeedTable.Kind(draft.Verb ?? "take", place.Region ?? place.Zone!.Value.ToString()) ?? "something-else";
            draft.Slots = draft.Slots with { Kind = kind, Zone = place.Usual };
            draft.Doubts.Clear();
        }

        return course.Absorb(aside: false);
    }

    private static bool FindingToo(Course course, List<Mention> mentions, Mention place, Draft last)
    {
        var quality = course.Segments[last.First].Items.FirstOrDefault(item => item.Cat == Cat.Quality);
        if (quality.Value is null || FindingTable.Kind(place, quality.Value) is not { } kind)
        {
            return false;
        }

        return FindingReader.Add(course, FindingReader.PlaceOf(course, mentions, quality), kind, FindingCatalogue.Find(new FindingKindId(kind))!.Usually, new Item(Cat.Quality, quality.Value, course.Segment.First, course.Segment.First));
    }

    /// <summary>A blade or a side: it belongs to what was said just before, or, where that has another, says the same of a second place.</summary>
    private static bool Attach(Course course, List<Mention> mentions, SaidAmount? amount)
    {
        var segment = course.Segment;
        if (course.LastInSentence is not { } last || last.Kind is not (EntryKind.Adjustment or EntryKind.Finding or EntryKind.LeaveAlone) || last.Last != course.At - 1)
        {
            return course.LastInSentence is { Kind: EntryKind.Note or EntryKind.Test or EntryKind.LookedFor } && course.Absorb(aside: false);
        }


        var blade = mentions.FirstOrDefault(mention => mention.Blade is not null)?.Blade;
        var side = mentions.FirstOrDefault(mention => mention.Side is not null)?.Side;
        var slots = last.Slots;
        var bladeNow = DeedReader.Resolve(blade, slots.Blades, null, slots.Blades);
        var sideNow = DeedReader.ResolveSide(side, slots.Sides, null, slots.Sides);
        if (last.Kind is EntryKind.Adjustment && amount is { } much && IsNearer(slots, much, segment, side, blade))
        {
            return Measure(course, last, much);
        }

        var second = last.Kind is EntryKind.Adjustment && (amount is not null && HasAmount(slots)
            || (segment.Joint is "and" or "then" or "plus" && ((slots.Blades is not null && bladeNow != slots.Blades) || (slots.Sides is not null && sideNow != slots.Sides))));
        if (second)
        {
            Second(course, last, bladeNow, sideNow, amount);
            return true;
        }

        last.Slots = (amount is { } said && last.Kind is EntryKind.Adjustment ? AgainReader.WithAmount(slots, said) : slots) with { Blades = bladeNow, Sides = sideNow };
        if (last.Kind is EntryKind.Adjustment)
        {
            DeedReader.Backwards(course, last);
        }

        course.Topic = course.Topic is { } topic ? topic with { Blade = bladeNow?.ToString() ?? topic.Blade, Side = sideNow?.ToString() ?? topic.Side } : null;
        course.BreathBlade = last.Kind is EntryKind.Adjustment ? bladeNow ?? course.BreathBlade : course.BreathBlade;
        return course.Absorb(aside: false);
    }

    // “A fair bit out of the back, maybe five strokes a side”; “clipped the tip, a hair on each blade”.
    private static bool IsNearer(ReadSlots slots, SaidAmount amount, Segment segment, string? side, string? blade) => slots.Kind is "clip" or "clip-hair" && amount.Strokes is null
        || (side is null or "Both" && blade is null or "Both" && amount is { Strokes: not null } or { Mm: not null } && slots is { Words: not null, Strokes: null, Mm: null } && segment.Joint is "," or "");

    // “Left and right”: both sides are no side in particular, so two that only differ in side become one.
    private static void Second(Course course, Draft last, Blades? blade, Sides? side, SaidAmount? amount)
    {
        var slots = last.Slots;
        var other = (amount is { } said ? AgainReader.WithAmount(slots, said) : slots) with { Blades = blade, Sides = side };
        if (other with { Sides = slots.Sides } == slots)
        {
            last.Slots = slots with { Sides = null };
            course.Absorb(aside: false);
        }
        else if (other with { Blades = slots.Blades } == slots)
        {
            last.Slots = slots with { Blades = null };
            course.Absorb(aside: false);
        }
        else
        {
            course.Add(EntryKind.Adjustment, other, last.Verb, last.ZoneSaid);
        }
    }

    private static bool HasAmount(ReadSlots slots) => slots.Strokes is not null || slots.Mm is not null || slots.Words is not null;

    /// <summary>A place ahead of what is said of it: “upper blade: …”.</summary>
    private static bool Announce(Course course, List<Mention> mentions)
    {
        if (course.At + 1 >= course.Segments.Count || course.Segments[course.At + 1].Sentence > course.Segment.Sentence + 1)
        {
            return false;
        }

        if (course.Pending is { HasPlace: true } && mentions[0].HasPlace && course.Segment.Joint is "")
        {
            course.Pending = null;
        }

        var all = course.Pending ?? mentions[0];
        foreach (var mention in mentions.Skip(course.Pending is null ? 1 : 0))
        {
            all = all with { Zone = all.Zone ?? mention.Zone, Region = all.Region ?? mention.Region, Blade = all.Blade ?? mention.Blade, Side = all.Side ?? mention.Side };
        }

        course.Pending = all;
        course.Topic = all.HasPlace ? all : course.Topic;
        return true;
    }
}
