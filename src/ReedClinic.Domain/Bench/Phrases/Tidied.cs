namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Ragged corner’s tidied”, “ragged edge trimmed”: a fault with the work that was done to it behind its name is no fault that is found.</summary>
internal static class Tidied
{
    private static readonly HashSet<string> Done = ["tidied", "trimmed", "smoothed", "evened", "cleaned", "sanded", "polished", "scraped", "dusted", "thinned", "blended", "flattened", "squared", "straightened", "sorted", "mended", "fixed", "repaired", "removed", "sealed", "cured"];

    private static readonly HashSet<string> Wanted = ["be", "needs", "need", "wants", "want", "should", "must", "over", "too", "badly", "poorly", "unevenly", "was", "were", "been", "not", "n't", "never", "half"];

    private static readonly HashSet<string> Being = [.. "'s is are has have all now both nicely properly one edge corner the on of in there that that's thread wire cork bump ridge it got".Split(' ')];

    private static readonly HashSet<string> Despite = [.. "still after where since from when even how although though despite because by i she he they you we who".Split(' ')];

    private static readonly Doubt Unsure = new("done", "unsure whether this was done, so its words are kept");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Fault }))
        {
            var segment = course.Segments[draft.Head];
            if (segment.All(Cat.Quality).FirstOrDefault() is { Count: > 0 } fault && IsDone(segment, fault) && !Enumerable.Range(segment.First, segment.End - segment.First).Any(at => Wanted.Contains(segment.Word(at))) && !segment.Has(Cat.Not))
            {
                Spoken.Unmake(draft, Unsure);
            }
        }
    }

    // “Edge’s trimmed”, “edge trimmed”: said of the fault itself; not “ragged after I trimmed it”, “ragged where it’s scraped”.
    private static bool IsDone(Segment segment, Item fault)
    {
        var done = Enumerable.Range(fault.End, Math.Max(0, segment.End - fault.End)).FirstOrDefault(at => Done.Contains(segment.Word(at)), -1);
        return done > 0 && segment.Word(fault.First - 1) is not ("is" or "'s" or "are" or "still" or "looks" or "feels") && !Enumerable.Range(segment.First, done - segment.First).Any(at => Despite.Contains(segment.Word(at)))
            && Enumerable.Range(fault.End, done - fault.End).All(at => Being.Contains(segment.Word(at)) || segment.Covered(at, Cat.Zone) || segment.Covered(at, Cat.Region) || segment.Covered(at, Cat.Part) || segment.Covered(at, Cat.Side) || segment.Covered(at, Cat.Blade));
    }
}
