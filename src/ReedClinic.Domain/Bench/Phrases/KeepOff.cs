namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Ways of saying that a place is kept off: “keep the knife out of the windows”, “the rails must stay”, “no more off the heart”.</summary>
internal static class KeepOff
{
    /// <summary>Whether the segment says so; a place is looked for elsewhere.</summary>
    internal static bool Says(Segment segment) => segment.All(Cat.Other).All(item => segment.Word(item.First) is "you") && (Keeps(segment) || Stays(segment) || IsEnough(segment));

    // “Keep the knife out of …”, “staying well away from …”, “the knife stays off …”.
    private static bool Keeps(Segment segment)
    {
        for (var i = segment.First; i < segment.End - 1; i++)
        {
            if (segment.Word(i) is not ("keep" or "keeping" or "stay" or "staying" or "stays" or "keeps" or "steer" or "steering" or "kept" or "stayed"))
            {
                continue;
            }

            for (var at = i + 1; at < segment.End && at < i + 6; at++)
            {
                if ((segment.Word(at) is "off" || (segment.Word(at) is "out" or "clear" && segment.Word(at + 1) is "of") || (segment.Word(at) is "away" && segment.Word(at + 1) is "from")) && !segment.Has(Cat.Quality))
                {
                    return true;
                }
            }
        }

        // “Well away from the spine we stay”.
        return segment.HasWord("away") && segment.Word(segment.IndexOfWord("away") + 1) is "from" && (segment.HasWord("stay") || segment.HasWord("keep")) && !segment.Has(Cat.Quality);
    }

    // “Heart stays”, “the rails must stay as they are”.
    private static bool Stays(Segment segment)
    {
        for (var i = segment.First; i < segment.End; i++)
        {
            if (segment.Word(i) is not ("stay" or "stays" or "remains" or "remain" or "staying"))
            {
                continue;
            }

            var after = i + 1;
            while (after < segment.End && (segment.Word(after) is "now" or "then" or "put" or "exactly" or "just" or "as" or "it" or "they" or "is" or "are" or "'s" or "there" or "the" or "way" or "that" or "alone" or "on" || segment.Covered(after, Cat.Filler)))
            {
                after++;
            }

            var ends = after >= segment.End || segment.Tokens[after].Kind is TokenKind.Break;
            return ends && i > segment.First && segment.Items.Any(item => item.Cat is Cat.Zone or Cat.Region && item.End <= i) && segment.Items.All(item => item.Cat is not (Cat.Test or Cat.Quality or Cat.Not or Cat.Thing)) && !segment.HasWord("notes") && !segment.HasWord("open") && !segment.HasWord("will");
        }

        return false;
    }

    // “No more scraping on the heart”, “nothing more off the back”, “not another stroke on the spine”.
    private static bool IsEnough(Segment segment)
    {
        for (var i = segment.First; i < segment.End - 1; i++)
        {
            if (segment.Word(i) is "no" && segment.Covered(i + 1, Cat.Stroke) && i - segment.First <= 2 && (segment.HasWord("there") || segment.HasWord("on")) && (segment.HasWord("from") || segment.HasWord("please") || segment.HasWord("ever")))
            {
                return true;
            }

            if ((segment.Word(i) is "no" or "nothing" && segment.Word(i + 1) is "more" or "further") || (segment.Word(i) is "not" && segment.Word(i + 1) is "another" or "one"))
            {
                return i - segment.First <= 2 && !segment.HasWord("until") && !segment.HasWord("today") && segment.Items.Any(item => (item.Cat is Cat.Stop && item.First == i) || item.First > i && (item.Cat is Cat.Stroke or Cat.Off || (item.Cat is Cat.Verb && Moods.Form(item) is 'G' or 'B' && Moods.Action(item) is not ("light" or "other" or "harm"))))
                    && segment.Items.Any(item => item.First > i && item.Cat is Cat.Zone or Cat.Region);
            }
        }

        return false;
    }
}
