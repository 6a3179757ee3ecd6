namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>What is said of a deed in general, or of what it did: no deed of its own.</summary>
internal static class Generals
{
    /// <summary>“Taking cane off there costs the low notes”.</summary>
    internal static bool Says(Segment segment, Item verb)
    {
        for (var i = verb.End; i < segment.End; i++)
        {
            if (segment.Items.Any(item => item.First < i && i < item.End))
            {
                continue;
            }

            if (segment.Word(i) is "is" or "'s" or "costs" or "makes" or "helps" or "would" or "will" or "does" or "lowers" or "raises" or "means" or "gives" or "takes" or "usually" or "was"
                && (segment.Word(i - 1) is not ("it" or "that" or "which" or "what" or "where") || (i - 1 == verb.End && Moods.Form(verb) is 'G' && segment.Word(i - 1) is "it" or "that")))
            {
                return true;
            }
        }

        return Moods.Form(verb) is 'G' && (DoesOfItself(segment, verb) || segment.Word(verb.End) is "helped" or "worked" or "did" or "made" or "fixed" or "cured" or "has" or "had" or "seems" or "did" or "only" or "just" && !segment.Has(Cat.Me) && Pace(segment.Word(verb.End + 1)));
    }

    private static bool Pace(string word) => word is not ("a" or "the" or "two" or "one" or "lightly" or "at" or "over" or "along" or "round" or "there" or "here");

    // “Clipping lifts the pitch”: what the deed is followed by is a verb of its own.
    private static bool DoesOfItself(Segment segment, Item verb)
    {
        for (var i = verb.End; i < segment.End; i++)
        {
            var word = segment.Word(i);
            if (word.Length > 3 && word[^1] == 's' && word[^2] is not ('s' or 'u' or 'i') && segment.Word(i - 1) is not ("it" or "that" or "which" or "what" or "where" or "a" or "the" or "two" or "both" or "all" or "of")
                && !segment.Items.Any(item => item.First <= i && i < item.End && item.Cat is not (Cat.Verb or Cat.Test or Cat.Quality)) && Numbers.Word(segment.Word(i - 1)) is null && segment.Tokens[Math.Max(i - 1, 0)].Kind is not TokenKind.Number)
            {
                return true;
            }

            if (word is "can" or "may" or "might" or "could" or "never" or "always" or "often" or "rarely")
            {
                return true;
            }
        }

        return false;
    }
}
