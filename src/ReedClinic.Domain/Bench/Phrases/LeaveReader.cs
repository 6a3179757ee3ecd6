using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads what is not to be touched.</summary>
internal static class LeaveReader
{
    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        if (IsNoLeaving(segment))
        {
            return false;
        }

        var mentions = PlaceReader.Read(segment);
        var named = mentions.FirstOrDefault(mention => mention.HasPlace) ?? mentions.Select(mention => mention with { Zone = Zone.WholeReed }).FirstOrDefault(mention => mention.OneBlade is not null || mention.OneSide is not null) ?? (course.Pending is { HasPlace: true } ahead && Says(segment) ? ahead : null);
        var meant = named is null && (Pronoun(segment) || IsBare(segment)) ? SpokenOf(course) : null;
        var place = named ?? meant ?? (Pronoun(segment) || IsBare(segment) ? OfLog(course) : null);
        if (place is null || !(Says(segment) || IsForbidden(segment) || KeepOff.Says(segment)))
        {
            return false;
        }

        if (mentions.Count == 0 && Found(course) is { } found)
        {
            course.Add(EntryKind.FindingEnded, new ReadSlots { Kind = found, Ending = FindingEnding.LeftOnPurpose });
            return true;
        }

        place = mentions.Aggregate(place, (all, other) => ReferenceEquals(other, place) ? all : all with { Blade = all.Blade ?? other.Blade, Side = all.Side ?? other.Side });
        if (course.LastInSentence is { Kind: EntryKind.LeaveAlone } said && said.Slots.Zone == place.Usual && mentions.All(mention => !mention.HasPlace) && said.Last == course.At - 1)
        {
            return course.Absorb(aside: false);
        }

        var left = course.Add(EntryKind.LeaveAlone, new ReadSlots { Zone = place.Usual, Blades = place.OneBlade, Sides = place.OneSide });
        if (named is null && meant is null)
        {
            left.Doubts.Add(new Doubt("zone", "unsure what is to be left, so the last place is taken"));
        }

        course.Topic = place;
        return true;
    }

    // What is asked, on a condition, or was only thought of.
    private static bool IsNoLeaving(Segment segment) => segment.Asked || Moods.IsQuestion(segment) || segment.Items.Any(item => item.Cat == Cat.Cond && Moods.IsIf(segment, item))
        || segment.HasWord("thought") || segment.HasWord("meant") || segment.HasWord("wanted") || segment.HasWord("planned");

    /// <summary>What “it” is in this phrase: the place named last where nothing was made of it, as in a question, else what is spoken of.</summary>
    internal static Mention? SpokenOf(Course course)
    {
        for (var at = course.At - 1; at >= 0 && !course.Drafts.Exists(draft => draft.Kind is not EntryKind.Note && draft.First <= at && at <= draft.Last); at--)
        {
            if (PlaceReader.Read(course.Segments[at]).FirstOrDefault(mention => mention.HasPlace) is { } place)
            {
                return Narrowed(course.Segments[at], place);
            }
        }

        return course is { Topic: { HasPlace: true, Zone: null } topic, Last: { Kind: EntryKind.Finding, Slots.Zone: { } zone } } ? topic with { Zone = zone } : course.Topic;
    }

    // “The tip is a hair too long? I’d rather leave it”: where it is long.
    private static Mention Narrowed(Segment segment, Mention place) => place.Zone is null && segment.Find(Cat.Quality) is { } quality
        && FindingTable.Kind(place, quality.Value) is { } kind && FindingCatalogue.Find(new FindingKindId(kind)) is { } known ? place with { Zone = known.Zone } : place;

    // “A bit high, but I’ll leave it”: what was just found stays; what is too thin already is kept off.
    private static string? Found(Course course)
    {
        var segment = course.Segment;
        if (!(segment.Has(Cat.Leave) || segment.HasWord("leave") || segment.HasWord("left") || segment.HasWord("leaving")))
        {
            return null;
        }

        var found = segment.Joint is not "so" && course.LastInSentence is { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Kind: { } said } } ? said
            : course.Last is null && course.Before.Last is Finding { Character: FindingCharacter.Fault } stays && (segment.HasWord("leave") || segment.HasWord("leaving") || segment.Has(Cat.Leave)) ? stays.FindingKind.Value : null;
        return found is null || found.EndsWith("-thin", StringComparison.Ordinal) || found.EndsWith("-short", StringComparison.Ordinal) || found is "spine-scraped" or "rails-cut" ? null : found;
    }

    private static Mention? OfLog(Course course) => course.Before.LastPlace is { } place
        ? new Mention
        {
            Zone = place.Zone,
            Blade = place.Blades is Blades.Both ? null : place.Blades.ToString(),
            Side = place.Sides is Sides.Both ? null : place.Sides.ToString(),
        }
        : null;

    // “Hands off”, “no strokes there”: nothing but that.
    private static bool IsBare(Segment segment) => segment.Find(Cat.Leave) is { Count: > 1 } leave && Enumerable.Range(segment.First, segment.End - segment.First).All(at => segment.Tokens[at].Kind is TokenKind.Break || (leave.First <= at && at < leave.End) || segment.Covered(at, Cat.Filler) || segment.Covered(at, Cat.Now));

    private static bool Pronoun(Segment segment) => segment.HasWord("it") || segment.HasWord("them") || segment.HasWord("there") || segment.HasWord("that") || segment.HasWord("those") || segment.HasWord("these") || segment.HasWord("this");

    private static bool Says(Segment segment)
    {
        if (segment.Find(Cat.Leave) is not { } leave || segment.Items.Any(item => item.Cat == Cat.Other && item.First < leave.First && segment.Word(item.First) is not "your"))
        {
            return IsAlone(segment);
        }

        var word = segment.Word(leave.First);
        if (leave.Count > 1)
        {
            return true;
        }

        // “Leave the heart”, but not “left plenty of heart” or “leaves the tip thin”.
        return word switch
        {
            "leave" or "leaving" => !segment.Has(Cat.Quality) && !segment.Has(Cat.Ended) && !segment.HasWord("until") && !segment.HasWord("for"),
            "leaves" => false,
            _ => !segment.Has(Cat.Quality),
        };
    }

    private static bool IsAlone(Segment segment)
    {
        if (segment.HasWord("let") && segment.Word(segment.End - (segment.Tokens[segment.End - 1].Kind == TokenKind.Break ? 2 : 1)) is "be" or "alone" && !segment.Has(Cat.Quality))
        {
            return true;
        }

        var left = segment.IndexOfWord("left");
        var speaks = left >= 0 && (segment.HasWord("i") || segment.HasWord("we") || Enumerable.Range(segment.First, left - segment.First).All(at => segment.Covered(at, Cat.Filler) || segment.Word(at) is "and" or "then" or "but" or "so" or "just" or "have" or ""));
        return (speaks && !segment.Has(Cat.Other) && !segment.Has(Cat.Quality, "thick") && segment.HasWord("alone") | segment.HasWord("be") | (segment.HasWord("as") && segment.HasWord("it") && segment.HasWord("was") | segment.HasWord("is")) | segment.HasWord("untouched"))
            || (segment.Items.Any(item => item.Cat == Cat.Verb && Moods.Action(item) == "keepoff" && Moods.Form(item) is 'B' or 'G') && !segment.Has(Cat.Other));
    }

    /// <summary>“Don’t touch”, “not scraping”, “I won’t go near”; but not “haven’t touched”.</summary>
    private static bool IsForbidden(Segment segment)
    {
        if (segment.Items.FirstOrDefault(item => item.Cat is Cat.Not or Cat.NoMore) is not { Value: not null } not)
        {
            return false;
        }

        var before = segment.Word(not.First - 1);
        if (before is "have" or "has" or "had" or "did" or "was" or "were" or "is" or "can" or "could" or "does" || segment.Word(not.First) is "nothing" or "hardly" or "any" or "none" || segment.HasWord("yet") || segment.HasWord("got") || segment.HasWord("managed") || segment.HasWord("bothered")
            || segment.Items.Any(item => item.Cat == Cat.Other && item.First < not.First))
        {
            return before is "is" && segment.Items.Any(item => item.Cat == Cat.Leave);
        }

        if (segment.Items.Any(item => item.Cat == Cat.Near && item.First > not.First))
        {
            return true;
        }

        var verb = segment.Items.FirstOrDefault(item => item.Cat == Cat.Verb && item.First >= not.End && item.First - not.End <= 4);
        return verb.Value is not null && (Moods.Form(verb) is 'B' or 'G' || (Moods.Form(verb) is 'S' && segment.Word(not.First) is "nobody")) && Moods.Action(verb) is "scrape" or "take" or "dust" or "light" or "open" or "free" or "define" or "blend" or "smooth" or "lengthen" or "even" or "narrow" or "sand" or "press" or "realign"
            && !segment.Items.Any(item => item.Cat == Cat.Quality && item.First > not.First && item.First != verb.First);
    }
}
