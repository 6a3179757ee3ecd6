namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Three strokes from the windows without touching the rails”, “thinned the wings and left the centre alone”: the work, and the place that was kept off.</summary>
internal static class Sparing
{
    private static readonly HashSet<string> Talked = ["can", "could", "will", "'ll", "would", "should", "may", "might", "must", "if", "how", "?", "he", "she", "they", "you", "not", "never", "want", "going", "try", "trying", "hard", "difficult"];

    private static readonly HashSet<string> Nothing = ["reed", "it", "anything", "them", "this", "that", "knife", "cane"];

    private static readonly Doubt Untold = new("kind", "work that is only talked of, so it is kept as a note");

    /// <summary>Hears “without touching” as a breath of its own: the characters stay where they are.</summary>
    internal static void Quiet(List<Token> tokens)
    {
        for (var at = 2; at + 2 < tokens.Count; at++)
        {
            if (!tokens[at].Is("without") || Last(tokens, at) is not (> 0 and var last) || last + 1 >= tokens.Count)
            {
                continue;
            }

            var thing = tokens[last + 1].Text is "the" or "my" or "its" or "either" ? last + 2 : last + 1;
            if (thing < tokens.Count && !Nothing.Contains(tokens[thing].Text) && tokens[thing].Kind is TokenKind.Word && IsDone(tokens, at))
            {
                tokens[at] = tokens[at] with { Text = "not" };
                tokens[last] = tokens[last] with { Text = "touching" };
                for (var word = at + 1; word < last; word++)
                {
                    tokens[word] = tokens[word] with { Text = "um", Kind = TokenKind.Word };
                }

                if (tokens[at - 1].Kind is not TokenKind.Break)
                {
                    tokens.Insert(at, new Token(",", tokens[at - 1].End, 0, TokenKind.Break));
                }

                return;
            }
        }
    }

    // The last word of “touching”, “going near”, “taking anything off”.
    private static int Last(List<Token> tokens, int at) => tokens[at + 1].Text switch
    {
        "touching" or "disturbing" => at + 1,
        "going" or "getting" or "coming" when tokens[at + 2].Text is "near" or "into" => at + 2,
        "taking" or "scraping" when tokens[at + 2].Text is "anything" or "any" or "cane" && at + 3 < tokens.Count && tokens[at + 3].Text is "off" or "from" => at + 3,
        _ => 0,
    };

    private static bool IsDone(List<Token> tokens, int end)
    {
        var done = false;
        for (var at = 0; at < end; at++)
        {
            if (Talked.Contains(tokens[at].Text))
            {
                return false;
            }

            done |= tokens[at].Text is "took" or "strokes" or "stroke" or "did" || tokens[at].Text.EndsWith("ed", StringComparison.Ordinal);
        }

        return done;
    }

    /// <summary>“And left the centre alone” behind a deed is told of its own.</summary>
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.LeaveAlone && course.Segments[draft.Head].IndexOfWord("without") is > 0 and var without && PlaceReader.Read(course.Segments[draft.Head]).Find(mention => mention.HasPlace) is { } worked && worked.First < without && worked.Usual == draft.Slots.Zone))
        {
            Spoken.Unmake(draft, Untold);
        }

        for (var at = 1; at < course.Segments.Count; at++)
        {
            var segment = course.Segments[at];
            if (segment.Asked || course.Drafts.Find(draft => draft.First <= at && at <= draft.Last) is not { Kind: EntryKind.Adjustment } over || over.Head >= at || !IsLeft(segment) || segment.Items.Any(item => item.Cat is Cat.Quality or Cat.Other or Cat.Plan or Cat.Cond or Cat.Not) || Place(segment, over) is not { } place || Alone.Of(course, at) is not { } draft)
            {
                continue;
            }

            (draft.Kind, draft.Slots) = (EntryKind.LeaveAlone, new ReadSlots { Zone = place.Usual, Blades = place.OneBlade, Sides = place.OneSide });
        }
    }

    private static bool IsLeft(Segment segment) => Enumerable.Range(segment.First, Math.Min(4, segment.End - segment.First)).Any(at => segment.Word(at) is "left" or "leaving") && segment.HasWord("alone");

    private static Mention? Place(Segment segment, Draft over)
    {
        var mentions = PlaceReader.Read(segment);
        return mentions.Find(mention => mention.HasPlace) ?? (mentions.Find(mention => mention.Part is not null) is { Part: { } part } && over.Slots.Zone is { } zone && PlaceReader.Named(part, PlaceReader.Of(zone)) is { } named ? new Mention { Zone = named } : null);
    }
}
