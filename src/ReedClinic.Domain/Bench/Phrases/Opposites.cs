using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Keeps a finding from being read as its opposite: words that say thin are never what is called thick.</summary>
internal static class Opposites
{
    // What a scale is told with at its two ends: words, readings of words, and parts of the lasting names of kinds.
    private static readonly (HashSet<string> One, HashSet<string> Other)[] Scales =
    [
        (["thick", "stiff", "shallow"], ["thin", "soft", "deep", "away"]),
        (["long", "lengthy"], ["short"]),
        (["wide", "open", "big"], ["narrow", "closed", "shut", "small"]),
        (["high", "up"], ["low", "down"]),
        (["steep", "abrupt"], ["gentle", "smooth", "gradual"]),
        (["bright", "brighter"], ["dark", "darker", "dull"]),
        (["blunt", "blunter"], ["pointed", "pointy"]),
        (["loose"], ["tight", "snug"]),
        (["even", "matched", "even_across"], ["uneven", "lopsided"]),
        (["straight"], ["crooked", "slanted"]),
        (["well-separated", "clear"], ["not-separate", "merged"]),
        (["intact", "kept"], ["scraped", "cut", "away"]),
        (["seals"], ["leak"]),
    ];

    /// <summary>Whether the words say one end of a scale, and only that, and the kind is named for the other.</summary>
    /// <param name="segment">The words.</param>
    /// <param name="kind">The lasting name of a kind of finding.</param>
    /// <param name="denied">Whether words that are denied count as well, as where something was looked for.</param>
    internal static bool Contradicts(Segment segment, string kind, bool denied = false)
    {
        var said = Said(segment, denied).ToHashSet();
        return !IsCompared(segment) && Scales.Any(scale => IsNamed(kind, scale.One) ? IsOnly(said, scale.Other, scale.One) : IsNamed(kind, scale.Other) && IsOnly(said, scale.One, scale.Other));
    }

    /// <summary>What was read the wrong way round is something else, in its own words and in doubt.</summary>
    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding or EntryKind.LookedFor, Slots: { Kind: not null, Relation: null } }
            && Contradicts(course.Segments[draft.Head], draft.Slots.Kind, draft.Kind is EntryKind.LookedFor)))
        {
            draft.Slots = draft.Slots with { Kind = FindingKindId.SomethingElse.Value };
            draft.HasAside = true;
            draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind");
            draft.Doubts.Add(new Doubt("kind", "unsure which finding was meant, so its words are kept"));
        }
    }

    private static IEnumerable<string> Said(Segment segment, bool denied)
    {
        foreach (var quality in segment.All(Cat.Quality).Where(quality => denied || !Denials.IsDenied(segment, quality)))
        {
            yield return quality.Value;
        }

        for (var at = segment.First; at < segment.End; at++)
        {
            if (!segment.Items.Any(item => item.Cat is Cat.Quality && item.Count > 1 && item.First <= at && at < item.End) && !(segment.Has(Cat.Not) && !denied))
            {
                yield return segment.Word(at);
            }
        }
    }

    private static bool IsOnly(HashSet<string> said, HashSet<string> end, HashSet<string> other) => said.Overlaps(end) && !said.Overlaps(other);

    private static bool IsNamed(string kind, HashSet<string> end) => end.Any(part => $"-{kind}-".Contains($"-{part}-", StringComparison.Ordinal));

    // “The middle is thinner than the sides”: what is thin here is thick there.
    private static bool IsCompared(Segment segment) => segment.Find(Cat.Than) is { } than && PlaceReader.Read(segment).Any(mention => mention.First >= than.End);
}
