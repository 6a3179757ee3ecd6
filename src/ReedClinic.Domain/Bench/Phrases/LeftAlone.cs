using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Rails left alone”, “I left the rails”: a part that the speaker kept off, and no praise of it.</summary>
internal static class LeftAlone
{
    private static readonly HashSet<string> Plain = [.. "i we have 've had just then and but so the that those these both my all of on in at to for left alone well strictly as they it are is 's was were be purpose deliberately quite again entirely completely reed blade blades side sides too also".Split(' ')];

    private static readonly Doubt Whose = new("kind", "taken for a part that you left alone");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.Finding or EntryKind.Note && (draft.Kind is EntryKind.Finding || draft.First == draft.Last)))
        {
            var segment = course.Segments[draft.Head];
            if (!segment.Asked && Verb(segment) is { } left && IsPlain(segment) && PlaceReader.Read(segment).FirstOrDefault(mention => mention.HasPlace) is { } place && !WasFoundThere(course, place.Usual))
            {
                draft.Kind = EntryKind.LeaveAlone;
                draft.Slots = new ReadSlots { Zone = place.Usual, Blades = place.OneBlade, Sides = place.OneSide };
                draft.Doubts.Clear();
                if (!Speaks(segment, left))
                {
                    draft.Doubts.Add(Whose);
                }
            }
        }
    }

    // What was found there and stays is an ending, and no place to be kept off.
    private static bool WasFoundThere(Course course, Zone? zone) => course.Before.Log.Findings.Any(now => now.Finding.Zone == zone);

    // “Left” as what was done, and not as a side.
    private static int? Verb(Segment segment)
    {
        for (var at = segment.First; at < segment.End; at++)
        {
            if (segment.Word(at) is "left" && (Speaks(segment, at) ? IsEnd(segment, at + 1) || IsPlace(segment, at + 1) || IsThe(segment.Word(at + 1)) : (IsThe(segment.Word(at + 1)) && IsFirst(segment, at)) || IsLet(segment, at + 1)))
            {
                return at;
            }
        }

        return null;
    }

    private static bool Speaks(Segment segment, int left) => segment.Word(left - 1) is "i" or "we" || segment.Word(left - 1) is "have" or "'ve" or "had" or "just" && segment.Word(left - 2) is "i" or "we" or "have";

    private static bool IsThe(string word) => word is "the" or "that" or "those" or "these" or "both" or "my";

    private static bool IsFirst(Segment segment, int at) => Enumerable.Range(segment.First, at - segment.First).All(before => segment.Word(before) is "and" or "but" or "then" or "so" or "just" or "have" or "" || segment.Covered(before, Cat.Filler));

    // “Alone”, “well alone”, “as they are”, “be”.
    private static bool IsLet(Segment segment, int at) => segment.Word(at) is "alone" or "be" || segment.Word(at) is "well" or "strictly" && segment.Word(at + 1) is "alone" || segment.Word(at) is "as" && segment.Word(at + 1) is "it" or "they" && segment.Word(at + 2) is "is" or "are" or "was" or "were";

    private static bool IsEnd(Segment segment, int at) => at >= segment.End || segment.Tokens[at].Kind is TokenKind.Break || IsLet(segment, at);

    private static bool IsPlace(Segment segment, int at) => segment.Items.Any(item => item.First == at && item.Cat is Cat.Zone or Cat.Region or Cat.Blade);

    // Nothing else is said of it.
    private static bool IsPlain(Segment segment) => Enumerable.Range(segment.First, segment.End - segment.First).All(at => segment.Tokens[at].Kind is TokenKind.Break || Plain.Contains(segment.Word(at))
        || segment.Items.Any(item => item.First <= at && at < item.End && item.Cat is Cat.Zone or Cat.Region or Cat.Part or Cat.Blade or Cat.Side or Cat.Filler or Cat.Now));
}
