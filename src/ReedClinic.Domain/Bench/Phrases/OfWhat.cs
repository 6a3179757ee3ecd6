using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Response better now” after praise of a heart, “no change” after work: an ending is of the thing that is spoken of, and no praise is better or unchanged by it.</summary>
internal static class OfWhat
{
    private static readonly string[] Playing = ["respon", "tone", "sound", "pitch", "intonation", "attack", "articul", "tongu", "crow", "peep", "tuning", "resist", "effort", "dynamic", "project", "stabil", "timbre", "flexib", "volume", "vibrat"];

    private static readonly HashSet<string> Plays = ["plays", "blows", "speaks", "starts", "sounds", "staccato", "legato", "pp", "ff"];

    private static readonly Doubt Unsure = new("kind", "which finding that was isn’t clear, so it is kept as a note");

    private static readonly Doubt Tried = new("kind", "taken for what the work just done has changed, and kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.FindingEnded, Slots: { Kind: not null, Ending: FindingEnding.Better or FindingEnding.Unchanged or FindingEnding.Gone } }).ToList())
        {
            var segment = course.Segments[draft.Head];
            var named = Spoken.Of(course, draft).Any(one => one.Has(Cat.Quality) || PlaceReader.Read(one).Any(mention => mention.HasPlace || mention.Part is not null));
            if (named)
            {
                continue;
            }

            if (draft.Slots.Ending is FindingEnding.Unchanged && IsBareChange(segment) && WorkBefore(course, draft) is { } work && !IsAt(course, draft.Slots.Kind!, work))
            {
                Spoken.Unmake(draft, Tried);
            }
            else if (IsPlaying(segment, draft.Slots.Ending is FindingEnding.Gone) && !IsOf(course, draft.Slots.Kind!, segment))
            {
                Turn(draft, segment);
            }
            else if (IsPraise(course, draft.Slots.Kind!))
            {
                ToFault(course, draft);
            }
        }
    }

    // How notes respond is the low notes’ test; of a sound or an attack nobody said which.
    private static void Turn(Draft draft, Segment segment)
    {
        if (Spoken.HasStem(segment, "respon") || segment.Find(Cat.Test) is not null)
        {
            var test = segment.Find(Cat.Test) is { } item ? Enum.Parse<TestKind>(item.Value) : TestKind.LowResponse;
            draft.Kind = EntryKind.Test;
            draft.Doubts.Clear();
            Spoken.Unscale(draft, new ReadSlots { Test = test }, "only compared: which word of the scale it is now wasn’t said");
        }
        else
        {
            Spoken.Unmake(draft, Unsure);
        }
    }

    // What is better is a fault: the last that stands, if one does.
    private static void ToFault(Course course, Draft draft)
    {
        var fault = course.Before.Log.Findings.Where(now => now.Finding.Character is not FindingCharacter.Strength).Select(now => now.Finding.FindingKind.Value).LastOrDefault();
        if (fault is null)
        {
            Spoken.Unmake(draft, Unsure);
        }
        else
        {
            draft.Slots = draft.Slots with { Kind = fault };
            draft.Doubts.Add(new Doubt("kind", "which finding wasn’t said, so the last one was taken"));
        }
    }

    private static bool IsPlaying(Segment segment, bool gone) => Spoken.HasStem(segment, Playing) || segment.Has(Cat.Test) || segment.Has(Cat.Sound) || !gone && Spoken.HasAny(segment, Plays);

    private static bool IsBareChange(Segment segment) => segment.HasWord("change") || segment.HasWord("changed") || segment.HasWord("difference") || segment.HasWord("different") || segment.HasWord("effect") || segment.HasWord("unchanged");

    private static Reeds.Zone? WorkBefore(Course course, Draft draft) =>
        course.Drafts.LastOrDefault(other => other.Head < draft.Head && other.Kind is EntryKind.Adjustment) is { Slots.Zone: { } said } ? said
        : course.Before.Log.Facts.Where(fact => fact.Now is Adjustment or Finding).MaxBy(fact => fact.Sequence)?.Now is Adjustment work ? work.Place.Zone : null;

    // Work of the same part of the reed was for that finding.
    private static bool IsAt(Course course, string kind, Reeds.Zone work)
    {
        var zones = course.Before.Log.Findings.Where(now => now.Finding.FindingKind.Value == kind).Select(now => now.Finding.Zone).Concat(course.Drafts.Where(draft => draft.Kind is EntryKind.Finding && draft.Slots.Kind == kind).Select(draft => draft.Slots.Zone ?? Reeds.Zone.WholeReed)).ToList();
        return !IsPraise(course, kind) && zones.Exists(zone => zone == work || zone is Reeds.Zone.WholeReed || work is Reeds.Zone.WholeReed || PlaceReader.Of(zone) is { Length: > 0 } region && region == PlaceReader.Of(work));
    }

    private static bool IsPraise(Course course, string kind) => course.Before.Log.Findings.LastOrDefault(now => now.Finding.FindingKind.Value == kind) is { } found ? found.Finding.Character is FindingCharacter.Strength
        : course.Drafts.LastOrDefault(draft => draft.Kind is EntryKind.Finding && draft.Slots.Kind == kind) is { } said ? said.Slots.Character is FindingCharacter.Strength : FindingCatalogue.Find(new FindingKindId(kind))?.Usually is FindingCharacter.Strength;

    // The finding’s own words, or its name, speak of the same.
    private static bool IsOf(Course course, string kind, Segment segment)
    {
        var about = FindingCatalogue.NameOf(new FindingKindId(kind)) + " " + string.Join(' ', course.Before.Log.Findings.Where(now => now.Finding.FindingKind.Value == kind).Select(now => now.Finding.Words))
            + " " + string.Join(' ', course.Drafts.Where(draft => draft.Kind is EntryKind.Finding && draft.Slots.Kind == kind).SelectMany(draft => Spoken.Of(course, draft)).SelectMany(one => Enumerable.Range(one.First, one.End - one.First).Select(one.Word)));
        return Array.Exists(Playing, stem => Spoken.HasStem(segment, stem) && about.Contains(stem, StringComparison.OrdinalIgnoreCase)) || segment.Has(Cat.Sound) && about.Contains("bright", StringComparison.OrdinalIgnoreCase);
    }
}
