using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“A scrape off the tip, upper blade right corner”: the place that is said behind the comma is where in it the work was done.</summary>
internal static class PlaceSaidAfter
{
    private static readonly HashSet<string> Small = ["the", "on", "at", "of", "in", "only", "just", "its", "a", "to", "blade", "side", "one", "and"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots.Kind: "thin-whole-tip" or "dust-heart" or "open-windows" }).ToList())
        {
            var index = course.Drafts.IndexOf(draft);
            var next = index + 1 < course.Drafts.Count && course.Drafts[index + 1] is { } other && other.Sentence == draft.Sentence && other.First == draft.Last + 1 && other.Last - other.First <= 1 ? other : null;
            if (Tail(course, draft, draft.Last) is { } tail)
            {
                draft.Slots = Narrowed(draft, tail);
            }
            else if (next is { Kind: EntryKind.Note } && Tail(course, draft, next.Last) is { } told && Narrowed(draft, told) is var narrowed && narrowed != draft.Slots)
            {
                draft.Slots = narrowed;
                draft.Last = next.Last;
                course.Drafts.Remove(next);
            }
            else if (next is not null && IsWhere(course, draft, next))
            {
                Join(course, draft, next);
            }
        }
    }

    // What stands behind the first comma, where it is a place and nothing else.
    private static Mention? Tail(Course course, Draft draft, int last)
    {
        var whole = course.Segments[draft.First].With(course.Segments[last]);
        var comma = Enumerable.Range(whole.First, whole.End - whole.First).FirstOrDefault(at => whole.Tokens[at].Kind is TokenKind.Break or TokenKind.Symbol && at + 1 < whole.End && PlaceReader.Read(whole.Part(whole.First, at)).Any(mention => mention.HasPlace), -1);
        if (comma < 0 || whole.Tokens[comma].Text is "." or ";" or "!" or "?" or "/" or "+" or "&")
        {
            return null;
        }

        var tail = whole.Part(comma + 1, whole.End);
        var said = PlaceReader.Read(tail);
        return said.Count == 0 || said.Count(mention => mention.HasPlace) > 1 || !Enumerable.Range(tail.First, tail.End - tail.First).All(at => IsOfPlace(tail, at)) ? null
            : said.Aggregate(new Mention(), (all, one) => all with { Zone = all.Zone ?? one.Zone, Region = all.Region ?? one.Region, Part = all.Part ?? one.Part, Blade = Either(all.Blade, one.Blade), Side = Either(all.Side, one.Side) });
    }

    internal static bool IsOfPlace(Segment tail, int at) => tail.Tokens[at].Kind is TokenKind.Break or TokenKind.Symbol || Small.Contains(tail.Word(at)) || tail.Word(at).Length == 0
        || tail.Items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Side or Cat.Blade or Cat.Filler);

    // “Left and right corner”: both.
    internal static string? Either(string? one, string? other) => one is null || other is null || one == other ? one ?? other : "Both";

    private static ReadSlots Narrowed(Draft draft, Mention tail)
    {
        var region = PlaceReader.Of(draft.Slots.Zone!.Value);
        var zone = tail.Zone is { } named && PlaceReader.Of(named) == region ? named
            : tail.HasPlace || tail.OneSide is null ? draft.Slots.Zone!.Value
            : region switch { "heart" => Zone.HeartSides, "tip" => Zone.TipSides, _ => draft.Slots.Zone!.Value };
        var kind = zone switch
        {
            Zone.TipSides when tail.OneSide is not null => "thin-tip-sides",
            _ when zone == draft.Slots.Zone => draft.Slots.Kind,
            _ => Kind(zone) ?? draft.Slots.Kind,
        };
        return tail.HasPlace && (tail.Usual is not { } usual || PlaceReader.Of(usual) != region) ? draft.Slots
            : draft.Slots with { Kind = kind, Zone = zone, Blades = draft.Slots.Blades ?? tail.OneBlade, Sides = draft.Slots.Sides ?? tail.OneSide };
    }

    private static string? Kind(Zone zone) => DeedTable.Kind("take", zone.ToString());

    // “…, left corner lower blade”: no deed of its own, and in the same part of the reed.
    private static bool IsWhere(Course course, Draft draft, Draft next) => next is { Kind: EntryKind.Adjustment, Slots.Zone: { } zone } && (zone != draft.Slots.Zone || draft.Slots is { Blades: null, Sides: null } && next.Slots.Sides is not null)
        && PlaceReader.Of(zone) == PlaceReader.Of(draft.Slots.Zone!.Value) && course.Segments[next.First].With(course.Segments[next.Last]) is var segment && segment.Joint is "," && segment.Has(Cat.Zone) | segment.Has(Cat.Part) && !segment.Items.Any(item => item.Cat is Cat.Verb or Cat.Stroke or Cat.Mm or Cat.Off or Cat.Same or Cat.Again or Cat.Also)
        && next.Slots.Strokes == draft.Slots.Strokes && next.Slots.Mm == draft.Slots.Mm;

    private static void Join(Course course, Draft draft, Draft next)
    {
        draft.Slots = next.Slots with { Words = draft.Slots.Words, Strokes = draft.Slots.Strokes };
        draft.Last = next.Last;
        course.Drafts.Remove(next);
    }
}
