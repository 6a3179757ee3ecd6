namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Ragged corner’s tidied”, “ragged edge trimmed”: a fault with the work that was done to it behind its name is no fault that is found.</summary>
internal static class Tidied
{
    private static readonly HashSet<string> Done = ["tidied", "trimmed", "smoothed", "evened", "cleaned", "sanded", "polished", "scraped", "dusted", "thinned", "blended", "flattened", "squared", "straightened", "sorted", "mended", "fixed", "repaired", "removed", "sealed", "cured"];

    private static readonly HashSet<string> Wanted = ["be", "needs", "need", "wants", "want", "should", "must", "over", "too", "badly", "poorly", "unevenly", "was", "were", "been", "not", "n't", "never", "half"];

    private static readonly Doubt Unsure = new("done", "unsure whether this was done, so its words are kept");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Fault }))
        {
            var segment = course.Segments[draft.Head];
            if (segment.All(Cat.Quality).FirstOrDefault() is { Count: > 0 } fault && Enumerable.Range(fault.End, Math.Max(0, segment.End - fault.End)).Any(at => Done.Contains(segment.Word(at)))
                && !Enumerable.Range(segment.First, segment.End - segment.First).Any(at => Wanted.Contains(segment.Word(at))) && !segment.Has(Cat.Not))
            {
                Spoken.Unmake(draft, Unsure);
            }
        }
    }
}
