using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Plays A at 440”, “leaks at the sides a bit”, “two and three quarter strokes”, “…, less resistance”, “done now, tip thinned”: what is told beside is kept with it.</summary>
internal static class ToldBeside
{
    private static readonly HashSet<string> Deeds = ["thinned", "scraped", "clipped", "dusted", "took", "opened", "squeezed", "rounded", "flattened", "narrowed", "blended", "evened", "smoothed", "lightened"];

    private static readonly HashSet<string> Compared = ["less", "more", "resistance", "effort", "now", "a", "bit", "little", "lot", "and", "the", "with", "easier", "harder", "to", "blow", "much", "slightly"];

    private static readonly Doubt How = new("step", "only compared: which word of the scale it is now wasn’t said");

    private static readonly Doubt Sides = new("kind", "the two sides match: of the two blades nothing was said");

    /// <summary>Hears “done now” ahead of work as a filler, and no stop: the characters stay where they are.</summary>
    internal static void Quiet(List<Token> tokens)
    {
        var end = tokens.Count > 3 && tokens[0].Is("done") ? tokens[1].Is("now") ? 2 : 1 : 0;
        if (end == 0 || tokens[end].Kind is not TokenKind.Break || tokens[end].Text is "." or "?" or ";" || !tokens.Skip(end + 1).Any(token => Deeds.Contains(token.Text)))
        {
            return;
        }

        for (var at = 0; at < end; at++)
        {
            tokens[at] = tokens[at] with { Text = "um", Kind = TokenKind.Word };
        }
    }

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.TuningNote, Pitch: null, Cents: null, Step: null } } when Hertz(said) is { } hertz:
                    draft.Slots = draft.Slots with { Pitch = "A", Cents = (decimal)Math.Round(1200 * Math.Log2(hertz / course.A4)) };
                    break;
                case { Kind: EntryKind.Finding, Slots: { Degree: null, Character: FindingCharacter.Fault, Relation: null } } when Degree(said) is { } degree:
                    draft.Slots = draft.Slots with { Degree = degree };
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "quadrants-matched", Zone: Zone.WholeReed } } when said.HasWord("left") && said.HasWord("right") && !Spoken.HasStem(said, "blade", "upper", "lower", "all", "four", "quadrant", "half"):
                    draft.HasAside = true;
                    draft.Doubts.Add(Sides);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: "rails-cut", Character: FindingCharacter.Fault } } when said.HasWord("uneven") && !Spoken.HasStem(said, "cut", "through", "gone", "scrap", "miss", "broke"):
                    draft.Slots = draft.Slots with { Kind = "something-else" };
                    draft.HasAside = true;
                    break;
                case { Kind: EntryKind.Adjustment, Slots.Words: { } words } when Counted(said, words) is { } whole:
                    draft.Slots = draft.Slots with { Words = whole };
                    break;
            }
        }

        Crack(course);
        Efforts(course);
    }

    private static double? Hertz(Segment said)
    {
        for (var at = said.First + 1; at < said.End; at++)
        {
            if (said.Tokens[at] is { Kind: TokenKind.Number, Number: >= 425 and <= 460 and var number } && said.Word(at - 1) is "at" or "to" or "on" && PitchReader.NotesIn(said).Exists(note => note.Name is "A"))
            {
                return (double)number;
            }
        }

        return null;
    }

    // “… a bit” at the end, “leaks badly”.
    private static string? Degree(Segment said)
    {
        var last = said.End - 1;
        while (last > said.First && said.Tokens[last].Kind is TokenKind.Break)
        {
            last--;
        }

        return said.Asked || said.Has(Cat.Not) ? null : (said.Word(last - 1), said.Word(last)) switch
        {
            ("a", "bit" or "touch" or "little" or "tad") when !said.HasWord("wait") && !Spoken.HasStem(said, "need", "want") && last - said.First > 2 && said.Word(last - 2) is not ("not" or "quite") => "slight",
            (_, "slightly") when last - said.First > 1 => "slight",
            _ => Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "leaks" or "leaking" && said.Word(at + 1) is "badly") ? "strong" : null,
        };
    }

    // “Two and three quarter strokes” is one count.
    private static string? Counted(Segment said, string words)
    {
        if (words is not ("quarter strokes" or "quarter stroke" or "half strokes" or "half stroke" or "third strokes"))
        {
            return null;
        }

        var at = Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(token => words.StartsWith(said.Word(token), StringComparison.Ordinal) && words.EndsWith(said.Word(token + 1), StringComparison.Ordinal) && said.Word(token).Length > 0, -1);
        var first = at;
        while (first > said.First && (said.Word(first - 1) is "and" or "a" || said.Tokens[first - 1].Kind is TokenKind.Number || Numbers.Word(said.Word(first - 1)) is not null))
        {
            first--;
        }

        return at > first && said.Word(first) is not "and" ? AmountReader.Text(said, first, at + 2) : null;
    }

    // “Up the middle”: of the tip’s centre.
    private static void Crack(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding, Slots: { Kind: "tip-cracked", Zone: Zone.TipSides, Sides: null } }))
        {
            var said = Spoken.Whole(course, draft);
            if (Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "middle" or "centre" or "center") && !said.HasWord("side") && !said.HasWord("sides") && !said.HasWord("corner"))
            {
                draft.Slots = draft.Slots with { Zone = Zone.TipCentre };
            }
        }
    }

    // “…, less resistance”, behind a test or work that swallowed it.
    private static void Efforts(Course course)
    {
        for (var at = 1; at < course.Segments.Count; at++)
        {
            var segment = course.Segments[at];
            if (!segment.Asked && segment.Joint is "," or "and" or ":" && segment.HasWord("resistance") && (segment.HasWord("less") || segment.HasWord("more")) && Enumerable.Range(segment.First, segment.End - segment.First).All(word => segment.Tokens[word].Kind is TokenKind.Break || Compared.Contains(segment.Word(word)))
                && course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is { Kind: EntryKind.Test or EntryKind.Adjustment } over && over.Head < at && over.Last == at && Alone.Of(course, at) is { } draft)
            {
                (draft.Kind, draft.Slots, draft.HasAside) = (EntryKind.Test, new ReadSlots { Test = TestKind.Effort }, true);
                draft.Doubts.Clear();
                draft.Doubts.Add(How);
            }
        }
    }
}
