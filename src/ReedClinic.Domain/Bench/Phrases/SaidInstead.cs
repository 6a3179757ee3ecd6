using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“One off the left corner, sorry, the right one”, whatever was heard before it: the side or the blade is put right, and nothing new is said.</summary>
internal static class SaidInstead
{
    private static readonly HashSet<string> Starts = [.. RightWords.Startled, "no", "nope", "wait", "rather", "i"];

    internal static void Keep(Course course)
    {
        if (course.Segments.Count == 0)
        {
            return;
        }

        var tokens = course.Segments[0].Tokens;
        for (var at = 1; at < tokens.Count; at++)
        {
            if (tokens[at - 1].Kind is TokenKind.Break && tokens[at - 1].Text is not "?" && Starts.Contains(tokens[at].Text) && Wrong(course, at) is { } wrong && Meant(tokens, at) is { } meant)
            {
                Settle(course, wrong, at, meant.End, meant.Place);
                at = meant.End - 1;
            }
        }
    }

    // The entry whose words stand right before it.
    private static Draft? Wrong(Course course, int at)
    {
        var segment = SegmentOf(course, at - 1);
        return course.Drafts.Find(draft => draft.First <= segment && segment <= draft.Last) is { Kind: EntryKind.Adjustment or EntryKind.Finding or EntryKind.LeaveAlone, Slots: { Zone: not null, Relation: null } } wrong
            && course.Segments[wrong.Head].First < at && !(wrong.Kind is EntryKind.Adjustment && wrong.Slots.Kind is "open-squeeze" or "close-press" or "clip" or "clip-hair") ? wrong : null;
    }

    private static int SegmentOf(Course course, int token) => Enumerable.Range(0, course.Segments.Count).First(at => token < course.Segments[at].End);

    // Words that put right and a place, as far as nothing else is said: up to a mark or the end.
    private static (Mention Place, int End)? Meant(IReadOnlyList<Token> tokens, int first)
    {
        (Mention, int)? meant = null;
        for (var end = first + 2; end <= tokens.Count; end++)
        {
            if (end < tokens.Count && tokens[end].Kind is not TokenKind.Break || tokens[end - 1].Kind is TokenKind.Break)
            {
                continue;
            }

            var said = string.Join(' ', tokens.Skip(first).Take(end - first).Select(token => token.Text));
            if (PlacePutRight.Read(said, alone: true) is { } place && (place.Side ?? place.Blade) is not null && !PlacePutRight.Agrees(Tokenizer.Cut(said)))
            {
                meant = (place, end);
            }
        }

        return meant;
    }

    private static void Settle(Course course, Draft wrong, int first, int end, Mention meant)
    {
        var zone = wrong.Slots.Zone!.Value;
        if (meant.HasPlace && meant.Usual != zone && (PlaceReader.Of(zone) is not { Length: > 0 } region || PlaceReader.Of(meant.Usual ?? Zone.WholeReed) != region)
            || !IsNamed(Places(course, wrong, first), meant) || course.Drafts.Exists(draft => draft != wrong && course.Segments[draft.First].First >= first && course.Segments[draft.First].First < end && course.Segments[draft.Last].End > end && course.Segments[draft.Head].First < end))
        {
            return;
        }

        var said = Places(course, wrong, first);
        wrong.Slots = wrong.Slots with
        {
            Sides = meant.Side switch { "Left" => Sides.Left, "Right" => Sides.Right, "Other" => Flip(said.Select(place => place.OneSide).LastOrDefault(side => side is not null)) ?? wrong.Slots.Sides, _ => wrong.Slots.Sides },
            Blades = meant.Blade switch { "Upper" => Blades.Upper, "Lower" => Blades.Lower, "Other" => Flip(said.Select(place => place.OneBlade).LastOrDefault(blade => blade is not null)) ?? wrong.Slots.Blades, _ => wrong.Slots.Blades },
        };
        course.Drafts.RemoveAll(draft => draft != wrong && course.Segments[draft.First].First >= first && course.Segments[draft.Last].End <= end + 1);
        var last = SegmentOf(course, end - 1);
        foreach (var later in course.Drafts.Where(draft => draft != wrong && draft.First <= last && draft.First > wrong.Last))
        {
            later.First = last + 1;
        }

        course.Left.RemoveAll(left => left > wrong.First && left <= last);
        wrong.Last = Math.Max(wrong.Last, last);
    }

    // A side stands where one was said, and a blade where one was.
    private static bool IsNamed(List<Mention> said, Mention meant) => (meant.Side is null || said.Exists(place => place.OneSide is not null)) && (meant.Blade is null || said.Exists(place => place.OneBlade is not null));

    // What was named before it was put right.
    private static List<Mention> Places(Course course, Draft wrong, int end)
    {
        var whole = Spoken.Whole(course, Spoken.Lead(course, wrong), wrong.Last);
        return PlaceReader.Read(whole.Part(whole.First, Math.Min(end, whole.End)));
    }

    private static Sides? Flip(Sides? side) => side switch { Sides.Left => Sides.Right, Sides.Right => Sides.Left, _ => null };

    private static Blades? Flip(Blades? blade) => blade switch { Blades.Upper => Blades.Lower, Blades.Lower => Blades.Upper, _ => null };
}
