namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>Reads how an earlier finding ended.</summary>
internal static class EndedReader
{
    internal static bool TryRead(Course course)
    {
        var segment = course.Segment;
        var finding = course.Before.LastFinding is not null || course.LastOf(EntryKind.Finding) is not null;
        var noMore = segment.Has(Cat.NoMore) && segment.Has(Cat.Quality);
        if (!(finding || noMore || IsTheOne(segment) || Leaves(course, segment)) || segment.Asked || Moods.IsQuestion(segment))
        {
            return false;
        }

        if (segment.Has(Cat.Me) && Moods.Head(segment) is { } did && Moods.Form(did) is 'P' && Moods.Action(did) is not ("light" or "take" or "other") && segment.Word(did.End) is "it" or "that" or "them" or "those" or "this" or "the")
        {
            return false;
        }

        if (segment.Find(Cat.Ended) is { Value: "LeftOnPurpose" } && course.LastInSentence is { Kind: EntryKind.LeaveAlone } && !segment.Has(Cat.Quality))
        {
            return course.Absorb(aside: false);
        }

        if (Ending(course, segment) is not { } ending || segment.Has(Cat.Test) || segment.Has(Cat.Taste) || segment.Has(Cat.Plan) || PitchReader.NotesIn(segment).Count > 0)
        {
            return false;
        }

        var mentions = PlaceReader.Read(segment);
        if (Kind(course, segment, mentions) is not { } kind || (ending is FindingEnding.Unchanged && segment.HasWord("still") && !WasFound(course, kind)))
        {
            return false;
        }

        if (course.LastInSentence is { Kind: EntryKind.FindingEnded } same && (kind == same.Slots.Kind || (same.Slots.Ending == ending && segment.Find(Cat.Quality) is null)))
        {
            return course.Absorb(aside: false);
        }

        course.Add(EntryKind.FindingEnded, new ReadSlots { Kind = kind, Ending = ending });
        return true;
    }

    /// <summary>Whether a finding of this kind stands, in the log or earlier in the phrase.</summary>
    internal static bool WasFound(Course course, string kind) => course.Before.Log.Findings.Any(now => now.Finding.FindingKind.Value == kind) || course.Drafts.Exists(draft => draft.Kind is EntryKind.Finding && draft.Slots.Kind == kind);

    // “The leak’s gone”, “leaving that slant”, “not as thick as it was”: a finding that is known without having been said here.
    private static bool IsTheOne(Segment segment) => segment.Find(Cat.Quality) is { } quality && (segment.Word(quality.First - 1) is "the" or "that" or "your" | (quality.First == segment.First && segment.Items.Any(item => item.Cat is Cat.Ended && item.First >= quality.End)) | Enumerable.Range(segment.First, quality.First - segment.First).Any(at => segment.Word(at) is "stopped" or "ceased" or "cured") && segment.Items.Any(item => (item.Cat is Cat.Ended or Cat.Leave && item.First >= segment.First) || segment.Word(item.First) is "stopped" or "ceased")
        && quality.Value is "leak" or "bump" or "barkspot" or "slanted" or "cracked" or "steep" or "slipped" or "dirty" or "lopsided" or "uneven" or "against" or "wavy" || IsLess(segment));

    // “Not as thick as it was”, “less steep than before”.
    private static bool IsLess(Segment segment) => segment.Find(Cat.Quality) is { } quality && (segment.Word(quality.First - 1) is "less" || (segment.Word(quality.First - 1) is "as" or "so" && segment.IndexOfWord("not") is >= 0 and var not && not < quality.First))
        && segment.Word(quality.End) is "as" or "than" && segment.Word(quality.End + 1) is "it" or "before" or "they" or "that" or "when";

    private static FindingEnding? Ending(Course course, Segment segment)
    {
        if (IsLess(segment))
        {
            return FindingEnding.Better;
        }

        if (Leaves(course, segment))
        {
            return FindingEnding.LeftOnPurpose;
        }

        if (course.Before.LastFinding is not null && IsMore(segment))
        {
            return FindingEnding.Better;
        }

        if (HasCeased(segment))
        {
            return FindingEnding.Gone;
        }

        if (segment.Find(Cat.Leave) is { } leave && IsTheOne(segment) && !segment.Items.Any(item => item.Cat == Cat.Other && item.First < leave.First && segment.Word(item.First) is not "your"))
        {
            return FindingEnding.LeftOnPurpose;
        }

        if (segment.Find(Cat.Ended) is { } ended)
        {
            var value = Enum.Parse<FindingEnding>(ended.Value);
            var denied = segment.All(Cat.Not).Any(not => not.End <= ended.First && ended.First - not.End <= 3);
            return denied && value is FindingEnding.Better or FindingEnding.Gone ? (segment.HasWord("quite") ? FindingEnding.Better : FindingEnding.Unchanged) : value;
        }

        return Silently(course, segment);
    }

    // What has ended without a word for it.
    private static FindingEnding? Silently(Course course, Segment segment)
    {
        // “Corners fine now”, “no bump left”, “it doesn't leak any more”.
        var said = course.Before.LastFinding is not null && segment.Has(Cat.Now) && !segment.Has(Cat.Verb);
        if (said && segment.Has(Cat.Good) | segment.Has(Cat.Quality, "even") | segment.Has(Cat.Quality, "smooth") | segment.Has(Cat.Quality, "straight") | segment.Has(Cat.Quality, "seals"))
        {
            return FindingEnding.Gone;
        }

        if (segment.Has(Cat.Quality) && (course.Before.LastFinding is not null || segment.Has(Cat.NoMore)))
        {
            return segment.Has(Cat.NoMore) || (segment.Has(Cat.Not) && (segment.HasWord("left") || segment.HasWord("now"))) ? FindingEnding.Gone
                : segment.HasWord("still") ? FindingEnding.Unchanged : null;
        }

        return null;
    }

    // “A lot straighter”, “more even now”.
    private static bool IsMore(Segment segment) => segment.Find(Cat.Quality) is { } good && FindingTable.IsPraise(good.Value) && !segment.Has(Cat.Than) && !segment.Has(Cat.Not)
        && (segment.Word(good.First) is "more" || segment.Word(good.First - 1) is "more" || segment.Word(good.First).EndsWith("er", StringComparison.Ordinal));

    // “It’s stopped hissing”.
    private static bool HasCeased(Segment segment) => segment.Find(Cat.Quality) is { } fault && !FindingTable.IsPraise(fault.Value)
        && Enumerable.Range(segment.First, fault.First - segment.First).Any(at => segment.Word(at) is "stopped" or "ceased" or "quit");

    // “I’m leaving the tip long, on purpose”, “uneven windows left so on purpose”.
    private static bool Leaves(Course course, Segment segment)
    {
        var next = course.At + 1 < course.Segments.Count && course.Segments[course.At + 1].Sentence == segment.Sentence ? course.Segments[course.At + 1] : null;
        var meant = segment.Has(Cat.Ended, nameof(FindingEnding.LeftOnPurpose)) || next?.Has(Cat.Ended, nameof(FindingEnding.LeftOnPurpose)) == true;
        return segment.Has(Cat.Quality) && segment.All(Cat.Other).All(item => segment.Word(item.First) is "they" or "them" or "your") && segment.Has(Cat.Leave) | segment.HasWord("left") && (meant || segment.Has(Cat.Me) && segment.Has(Cat.Leave) && course.Before.LastFinding is not null);
    }

    /// <summary>The finding that is meant by words that were read before, by its kind.</summary>
    /// <param name="course">What was understood.</param>
    /// <param name="at">The segment that says it.</param>
    /// <param name="whole">All the words.</param>
    internal static string? KindAt(Course course, int at, Segment whole)
    {
        var end = course.At;
        course.At = at;
        var kind = Kind(course, whole, PlaceReader.Read(whole));
        course.At = end;
        return kind;
    }

    /// <summary>The finding that is meant, by its kind.</summary>
    internal static string? Kind(Course course, Segment segment, List<Mention> mentions)
    {
        var place = mentions.FirstOrDefault(mention => mention.HasPlace);
        string? named = null;
        foreach (var quality in segment.All(Cat.Quality))
        {
            named ??= FindingTable.Kind(FindingReader.PlaceOf(course, mentions, quality), quality.Value);
        }

        var live = course.Before.Log.Findings.Select(now => (Kind: now.Finding.FindingKind.Value, now.Finding.Zone)).Reverse()
            .Concat(course.Drafts.Where(draft => draft.Kind == EntryKind.Finding).Select(draft => (Kind: draft.Slots.Kind!, Zone: draft.Slots.Zone!.Value)).Reverse())
            .ToList();
        var draft = course.LastOf(EntryKind.Finding)?.Slots;
        if (Leaves(course, segment) && place?.Usual is { } left && live.FirstOrDefault(finding => finding.Zone == left).Kind is { } kept && (named is null || FindingTable.IsPraise(segment.Find(Cat.Quality)!.Value.Value)))
        {
            return kept;
        }

        if (named is not null && live.Any(finding => finding.Kind == named))
        {
            return named;
        }

        if (named is not null && (segment.Has(Cat.NoMore) || IsTheOne(segment) || Leaves(course, segment)))
        {
            return named;
        }

        if (place?.Usual is { } zone)
        {
            var there = live.FirstOrDefault(finding => finding.Zone == zone || PlaceReader.Of(finding.Zone) is { Length: > 0 } region && region == place.Region);
            return there.Kind ?? (named is not null && !FindingTable.IsPraise(segment.Find(Cat.Quality)!.Value.Value) ? named : null);
        }

        return draft?.Kind ?? (live.Count > 0 ? live[0].Kind : null);
    }
}
