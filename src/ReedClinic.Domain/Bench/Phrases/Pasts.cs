namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Verbs whose form doesn’t show that they are past, and words before a verb that do.</summary>
internal static class Pasts
{
    private static readonly HashSet<string> Alike = ["put", "cut", "set", "let", "shut", "spread", "recut", "reset", "wet", "split", "fit", "knit", "offset"];

    private static readonly HashSet<string> Between = ["just", "also", "now", "only", "already", "then", "really", "simply", "finally", "lightly", "gently", "carefully", "", "even", "actually"];

    /// <summary>“I’ve put”, “I cut”, “had to take”, “managed to open”, “ended up clipping”: done.</summary>
    internal static Item Told(Segment segment, Item verb)
    {
        if (Moods.Form(verb) is not ('B' or 'G'))
        {
            return verb;
        }

        var at = verb.First - 1;
        while (at > segment.First && Between.Contains(segment.Word(at)))
        {
            at--;
        }

        var (last, before) = (segment.Word(at), segment.Word(at - 1));
        var done = Moods.Form(verb) is 'G'
            ? (last is "up" && before is "ended" or "finished" or "wound") || (last is "by" && before is "began" or "started" or "finished" or "ended")
            : (Alike.Contains(segment.Word(verb.First)) && last is "have" or "'ve" or "had" or "has" or "i" or "we")
                || (last is "to" && (before is "had" || before is "managed" || before is "needed" && segment.Has(Cat.Me)) && !IsMeant(segment, at - 1))
                || (last is "and" && before is "went");
        return done ? verb with { Value = Moods.Action(verb) + "/P" } : verb;
    }

    // “Would have had to”, “if I had to”, “never had to”.
    private static bool IsMeant(Segment segment, int at)
    {
        for (var i = segment.First; i < at; i++)
        {
            if (segment.Word(i) is "would" or "might" or "could" or "should" or "may" or "if" or "not" or "never" or "will" or "until" or "whoever" or "she" or "he" or "they" or "you" || segment.Covered(i, Cat.Not))
            {
                return true;
            }
        }

        return false;
    }
}
