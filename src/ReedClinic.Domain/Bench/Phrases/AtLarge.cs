namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“It plays well”, “starts better”, “it grumbles”: how the reed is at large names no test and no finding, and ends none.</summary>
internal static class AtLarge
{
    private static readonly HashSet<string> Ways =
        ["plays", "play", "played", "playing", "starts", "start", "started", "speaks", "responds", "sounds", "feels", "grumbles", "grumble", "wobbles", "wobble", "blows", "works", "behaves", "sulks", "complains", "smiles", "purrs", "goes", "talks", "happier", "happy", "moans", "groans", "fights", "misbehaves"];

    private static readonly HashSet<string> Rest =
        ["it", "she", "he", "this", "that", "the", "reed", "one", "is", "'s", "well", "better", "nicely", "good", "fine", "great", "lovely", "beautifully", "a", "an", "bit", "little", "much", "lot", "now", "again", "still", "already", "really", "very", "quite", "so", "and", "but", "ok", "okay", "all", "right", "too", "more", "worse", "badly", "even", "far", "just", "at", "last", "than", "before", "like", "charm", "dream", "today", "slightly", "somewhat", "rather", ""];

    /// <summary>True where the segment is all that its sentence says, and nothing in it says more than that.</summary>
    internal static bool Says(Course course)
    {
        var segment = course.Segment;
        var words = Enumerable.Range(segment.First, segment.End - segment.First).Where(at => segment.Tokens[at].Kind is not TokenKind.Break).Select(segment.Word).ToList();
        return course.Segments.Count(other => other.Sentence == segment.Sentence) == 1 && !segment.Asked && words.Exists(Ways.Contains) && words.TrueForAll(word => Ways.Contains(word) || Rest.Contains(word));
    }
}
