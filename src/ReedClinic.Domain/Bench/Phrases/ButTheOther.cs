using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“The thread doesn’t leak but the sides do”, “too thin on the upper, too thick on the lower”: what is said of the second place with the words, or with the place, of the first.</summary>
internal static class ButTheOther
{
    private static readonly HashSet<string> Doing = ["do", "does", "is", "are", "'s", "has", "have"];

    private static readonly HashSet<string> Beside = ["but", "and", "though", "the", "my", "its", "your", "one", "blade", "side", "whereas", "while", "both", "of", "", "only"];

    // All that may stand beside the quality and its place: no verb, no noun, nobody who says it, and no time gone by.
    private static readonly HashSet<string> Measured = [.. "but and though whereas while too a bit rather little touch quite far very much slightly really somewhat the on blade side one half is 's are there still my its".Split(' ')];

    private static readonly Doubt Turned = new("kind", "the words of another place, and of this one they mean something else");

    private static readonly Doubt Bare = new("kind", "unsure whether this is a fault");

    internal static void Keep(Course course)
    {
        for (var at = 1; at < course.Segments.Count; at++)
        {
            var segment = course.Segments[at];
            if (segment.Asked || Moods.IsQuestion(segment) || course.Segments[at - 1].Sentence != segment.Sentence)
            {
                continue;
            }

            if (IsBare(segment, out var denied))
            {
                OfThoseWords(course, at, denied);
            }
            else if (OwnPart(segment) is { } part)
            {
                OfThatPlace(course, at, part);
            }
        }
    }

    // A place, and “do”, “is”, “isn’t”, with nothing behind it.
    private static bool IsBare(Segment segment, out bool denied)
    {
        var last = segment.End - 1;
        while (last > segment.First && segment.Tokens[last].Kind is TokenKind.Break)
        {
            last--;
        }

        denied = segment.Word(last) is "not";
        last = denied ? last - 1 : last;
        var places = PlaceReader.Read(segment);
        return Doing.Contains(segment.Word(last)) && places.Count == 1 && Enumerable.Range(segment.First, last - segment.First).All(at => Beside.Contains(segment.Word(at)) || segment.Covered(at, Cat.Filler) || places[0].First <= at && at < places[0].End);
    }

    private static void OfThoseWords(Course course, int at, bool denied)
    {
        if (course.Drafts.Find(draft => draft.Head == at) is { Kind: EntryKind.Finding, Slots.Kind: "something-else", Doubts: { Count: 0 } doubts })
        {
            doubts.Add(Turned);
        }

        var before = course.Drafts.LastOrDefault(draft => draft.Head < at && draft.Sentence == course.Segments[at].Sentence && draft.Kind is EntryKind.LookedFor or EntryKind.Finding);
        if (before is null || (before.Kind is EntryKind.LookedFor) == denied || before.Slots is { Kind: null } || before.Kind is EntryKind.Finding && before.Slots.Character is not FindingCharacter.Fault
            || course.Segments[before.Head].Find(Cat.Quality) is not { } quality || FindingTable.IsPraise(quality.Value) || course.Drafts.Exists(draft => draft.Head == at && draft.Kind is not EntryKind.Note))
        {
            return;
        }

        var said = PlaceReader.Read(course.Segments[at])[0];
        if (quality.Value is "leak" or "leaks" or "leaky" && !said.HasPlace && (said.Part is "side" || course.Segments[at].HasWord("side") || course.Segments[at].HasWord("sides")))
        {
            said = said with { Zone = Zone.SideEdges };
        }

        var place = said.HasPlace || said.Part is not null ? said : PlaceReader.Read(course.Segments[before.Head]).Find(mention => mention.HasPlace) is { } first ? first with { Side = said.Side ?? first.Side, Blade = said.Blade ?? first.Blade } : said;
        var kind = said.HasPlace || said.Part is not null ? FindingTable.Kind(place.HasPlace ? place : null, quality.Value) : before.Slots.Kind;
        if (kind is null || (denied || said.OneSide is null && said.OneBlade is null) && kind == before.Slots.Kind || said.Side is "Other" || said.Blade is "Other" || Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        var known = FindingCatalogue.Find(new FindingKindId(kind));
        draft.Kind = denied ? EntryKind.LookedFor : EntryKind.Finding;
        draft.Slots = denied ? new ReadSlots { Kind = kind } : new ReadSlots { Kind = kind, Character = FindingCharacter.Fault, Zone = place.Usual ?? known?.Zone ?? Zone.WholeReed, Blades = place.OneBlade, Sides = place.OneSide };
        draft.Doubts.Clear();
        if (!denied && kind != before.Slots.Kind && !kind.Contains(quality.Value, StringComparison.Ordinal))
        {
            draft.Doubts.Add(Turned);
        }
    }

    // “Too thick on the lower”, “the bottom blade’s thick there”: a blade or a side, and no other place.
    private static (Mention Part, Item Quality)? OwnPart(Segment segment)
    {
        if (segment.Find(Cat.Quality) is not { Value: "thick" or "thin" or "stiff" or "soft" or "long" or "short" or "ragged" or "cracked" } quality || segment.Items.Any(item => item.Cat is Cat.Not or Cat.NoMore or Cat.Than or Cat.As or Cat.SameAs or Cat.Plan or Cat.Cond or Cat.Taste or Cat.Test or Cat.Ended or Cat.Stroke or Cat.Off)
            || PlaceReader.Read(segment) is not [{ HasPlace: false, Part: null } part] || part.OneBlade is null == part.OneSide is null)
        {
            return null;
        }

        var on = segment.Word(part.First - 1) is "on" || segment.Word(part.First - 1) is "the" && segment.Word(part.First - 2) is "on" || segment.Word(part.First) is "on";
        if (Enumerable.Range(segment.First, segment.End - segment.First).Any(at => segment.Tokens[at].Kind is not TokenKind.Break && !Measured.Contains(segment.Word(at)) && !(quality.First <= at && at < quality.End) && !(part.First <= at && at < part.End))
            || on && (part.First < quality.First || segment.Word(quality.First - 1) is "a" && !segment.HasWord("too")))
        {
            return null;
        }

        return on || segment.HasWord("there") && segment.Word(segment.IndexOfWord("there") + 1) is not ("is" or "'s" or "are") ? (part, quality) : null;
    }

    private static void OfThatPlace(Course course, int at, (Mention Part, Item Quality) own)
    {
        var (part, quality) = own;
        var segment = course.Segments[at];
        var over = course.Drafts.Find(draft => draft.First <= at && at <= draft.Last);
        if (course.Drafts.LastOrDefault(draft => draft.Head < at && draft.Sentence == segment.Sentence) is not { Kind: EntryKind.Finding, Slots: { Zone: { } zone and not Zone.WholeReed, Relation: null } first } || first.Blades is null && part.OneBlade is not null || first.Sides is null && part.OneSide is not null
            || FindingTable.Kind(new Mention { Zone = zone }, quality.Value) is not { } kind || over is { Kind: not (EntryKind.Finding or EntryKind.Note) } || Alone.Of(course, at) is not { } draft)
        {
            return;
        }

        draft.Kind = EntryKind.Finding;
        draft.Slots = new ReadSlots
        {
            Kind = kind,
            Character = FindingCharacter.Fault,
            Zone = quality.Value is "long" or "short" ? FindingCatalogue.Find(new FindingKindId(kind))?.Zone ?? zone : zone,
            Blades = part.OneBlade,
            Sides = part.OneSide,
            Degree = FindingReader.Degree(segment, quality),
            Certainty = segment.Has(Cat.Hedge) ? Certainty.Suspected : null,
            Known = FindingReader.Known(segment),
        };
        draft.Doubts.Clear();
        if (!segment.HasWord("too") && !segment.HasWord("there"))
        {
            draft.Doubts.Add(Bare);
        }
    }
}
