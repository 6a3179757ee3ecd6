using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Warm and round now”, “there was a bump, but it’s gone”, “the heart could be lighter”: what sounds like work, a fault or the opposite of what was meant, and isn’t.</summary>
internal static class HeardOtherwise
{
    private static readonly string[] Eyes = ["eye", "mandrel", "staple", "tube", "wire", "thread", "bore", "socket", "opening", "mouth", "tool", "base", "end"];

    private static readonly HashSet<string> Sounding = [.. "warm dark full mellow bright sweet rich tone sound sounding sounds now dull clear soft hollow deep velvety lovely nicely".Split(' ')];

    private static readonly HashSet<string> Wishing = ["could", "should", "might", "would", "wants", "want", "needs", "need", "ought", "may"];

    private static readonly HashSet<string> More = [.. "lighter thinner heavier thicker fuller shorter longer narrower wider smaller looser tighter finer flatter rounder stronger weaker lower higher deeper shallower".Split(' ')];

    private static readonly HashSet<string> Compared = ["better", "worse", "already", "now", "much", "a", "bit", "little", "lot", "slightly", "even", "is", "'s", "it", "that", "far", "and", "so", "still", "yes", "already", "again", "got", "getting", "any", "no", ""];

    private static readonly HashSet<string> Wholes = ["tied", "scrape", "lay", "overall", "reed", "blades", "cane", "body", "staple", "blank", "total", "length"];

    private static readonly HashSet<string> Through = ["light", "daylight", "plaque", "finger", "lamp", "glow", "shadow"];

    private static readonly Doubt Heard = new("kind", "how it sounds, and no work, so it is kept as a note");

    private static readonly Doubt Was = new("kind", "it was there and is gone, so it is kept as a note");

    private static readonly Doubt Wish = new("kind", "how it ought to be, and not how it is, so it is kept as a note");

    private static readonly Doubt Only = new("test", "only compared, and no test was named, so it is kept as a note");

    private static readonly Doubt Scale = new("test", "a scale that was played, and no crow, so it is kept as a note");

    private static readonly Doubt Long = new("kind", "too long or too short, and no word of the tip, so its words are kept");

    private static readonly Doubt Cracked = new("kind", "a crack, and none in the cane of the tip, so its words are kept");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList().Where(course.Drafts.Contains))
        {
            var whole = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "round-eye", Strokes: null, Mm: null } } when Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last) is var heard && heard.HasWord("round") && !heard.HasWord("i") && !Spoken.HasStem(heard, Eyes) && Spoken.HasAny(heard, Sounding):
                    Spoken.Unmake(draft, Heard);
                    break;
                case { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Fault } when WasThere(course, draft) is { } last:
                    draft.Last = Math.Max(draft.Last, last);
                    Spoken.Unmake(draft, Was);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Relation: null } } when IsWish(whole):
                    Spoken.Unmake(draft, Wish);
                    break;
                case { Kind: EntryKind.Test, Slots: { Pitch: null, Cents: null, Change: null, Step: null } } when IsCompared(whole):
                    Spoken.Unmake(draft, Only);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow or TestKind.Peep, Pitch: not null } } when !Spoken.HasStem(whole, "crow", "peep") && Spoken.HasStem(whole, "scale", "arpeggio", "major", "minor"):
                    Spoken.Unmake(draft, Scale);
                    break;
                default:
                    Place(course, draft, whole);
                    break;
            }
        }
    }

    // Of which part it is.
    private static void Place(Course course, Draft draft, Segment whole)
    {
        switch (draft)
        {
            case { Kind: EntryKind.Finding, Slots.Kind: "tip-long" or "tip-short" } when !Spoken.HasStem(whole, "tip", "rooftop", "slope") && Spoken.HasAny(whole, Wholes):
                Other(draft, Zone.WholeReed, Long);
                break;
            case { Kind: EntryKind.Finding, Slots.Kind: "tip-cracked" or "body-cracked" } when whole.HasWord("cork") || whole.HasWord("staple"):
                Other(draft, whole.HasWord("cork") ? Zone.Cork : Zone.Eye, Cracked);
                break;
            case { Kind: EntryKind.Finding, Slots: { Kind: "heart-thin" or "tip-thin" or "back-thin" } } when Shown(course, draft) is { Place: var place, At: var at } && FindingTable.Kind(place, "thin") is { } thin:
                draft.First = at;
                draft.Slots = draft.Slots with { Kind = thin, Zone = place.Usual ?? draft.Slots.Zone, Blades = place.OneBlade ?? draft.Slots.Blades, Sides = place.OneSide ?? draft.Slots.Sides, Known = draft.Slots.Known ?? KnownBy.Light };
                draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind" or "zone");
                course.Left.RemoveAll(left => left == at);
                break;
        }
    }

    private static void Other(Draft draft, Zone zone, Doubt doubt)
    {
        (draft.Slots, draft.HasAside) = (draft.Slots with { Kind = "something-else", Zone = zone }, true);
        draft.Doubts.RemoveAll(old => old.Slot is "kind" or "zone");
        draft.Doubts.Add(doubt);
    }

    // “There was a bump on the left, but it’s gone”: found and gone in one breath.
    private static int? WasThere(Course course, Draft draft)
    {
        var first = course.Segments[draft.Head];
        var was = Enumerable.Range(first.First, first.End - first.First).FirstOrDefault(at => first.Word(at) is "was" or "were" or "had", -1);
        if (was < 0 || first.Asked)
        {
            return null;
        }

        for (var at = draft.Head; at < course.Segments.Count && at <= draft.Head + 1 && course.Segments[at].Sentence == first.Sentence; at++)
        {
            var segment = course.Segments[at];
            if (segment.Tokens.Skip(segment.First).Take(segment.End - segment.First).Any(token => token.Start > first.Tokens[was].Start && token.Text is "gone" or "vanished" or "disappeared") && !segment.Has(Cat.Not) && !segment.HasWord("not")
                && course.Drafts.FindAll(other => other != draft && other.First <= at && at <= other.Last) is var over && (at == draft.Head || over.TrueForAll(other => other is { Kind: EntryKind.FindingEnded } && other.Slots.Kind == draft.Slots.Kind && other.Last == at)))
            {
                course.Drafts.RemoveAll(over.Contains);
                return at;
            }
        }

        return null;
    }

    // “Could be a touch lighter”, “wants to be thinner”.
    private static bool IsWish(Segment whole)
    {
        for (var at = whole.First; at < whole.End; at++)
        {
            if (!Wishing.Contains(whole.Word(at)))
            {
                continue;
            }

            var be = Enumerable.Range(at + 1, Math.Min(3, whole.End - at - 1)).FirstOrDefault(next => whole.Word(next) is "be" or "stand" or "go", -1);
            if (be > 0 && Enumerable.Range(be + 1, Math.Min(4, whole.End - be - 1)).Any(next => More.Contains(whole.Word(next))) && !whole.Items.Any(item => item.Cat is Cat.Quality && item.End <= at))
            {
                return true;
            }
        }

        return false;
    }

    // “Better already”: of what, wasn’t said.
    private static bool IsCompared(Segment whole) => (whole.HasWord("better") || whole.HasWord("worse")) && Enumerable.Range(whole.First, whole.End - whole.First).All(at => whole.Tokens[at].Kind is TokenKind.Break || Compared.Contains(whole.Word(at)) || whole.Covered(at, Cat.Filler));

    // “I can see light through the tip, too thin”: the place that was looked through, right before.
    private static (Mention Place, int At)? Shown(Course course, Draft draft)
    {
        var at = draft.Head - 1;
        if (at < 0 || PlaceReader.Read(course.Segments[draft.Head]).Exists(place => place.HasPlace) || course.Segments[at] is not { Asked: false } before || before.Sentence != draft.Sentence || course.Drafts.Exists(other => other != draft && other.First <= at && at <= other.Last) || !before.HasWord("through") || !Spoken.HasAny(before, Through) || before.Has(Cat.Not))
        {
            return null;
        }

        return PlaceReader.Read(before).FindAll(place => place.HasPlace) is [var named] ? (named, at) : null;
    }
}
