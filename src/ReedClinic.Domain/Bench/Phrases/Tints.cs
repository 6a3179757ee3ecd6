namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Dark, but not dull”, “lovely dark sound”: what is told of a sound and names no part of the reed is no finding there, and what is clean in the sound is no tonguing.</summary>
internal static class Tints
{
    private static readonly HashSet<string> Warm = ["warm", "round", "dark", "mellow", "rich", "sweet", "golden", "velvety", "creamy", "silky", "woody"];

    private static readonly HashSet<string> Told = ["dull", "dark", "bright", "thin", "edgy", "hollow", "covered", "harsh", "shrill", "nasal", "full", "fat", "thick", "light", "heavy", "warm", "round", "clear"];

    private static readonly HashSet<string> Praise = ["nice", "nicely", "lovely", "beautiful", "beautifully", "gorgeous", "clear"];

    private static readonly Doubt Unsure = new("kind", "told of the sound, and of no part of the reed, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var segment = course.Segments[draft.Head];
            switch (draft)
            {
                case { Kind: EntryKind.LookedFor or EntryKind.Finding } when IsOfSound(course, draft) || IsPlayingPraised(course, draft):
                    Spoken.Unmake(draft, Unsure);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: { } test } slots } when test is TestKind.TonguedStarts || slots is { Step: null, Pitch: null, Cents: null, Change: null }:
                    Rename(draft, segment, test);
                    break;
            }
        }
    }

    // A colour is named beside it, or the sound itself, and the words are such as a sound is told with.
    private static bool IsOfSound(Course course, Draft draft)
    {
        var sentence = course.Segments.Where(segment => segment.Sentence == draft.Sentence).ToList();
        return (sentence.Exists(segment => Spoken.HasAny(segment, Warm)) || IsPraisedBright(sentence)) && !sentence.Exists(segment => PlaceReader.Read(segment).Any(mention => mention.HasPlace || mention.Part is not null || mention.Blade is not null))
            && Spoken.Of(course, draft) is var own && own.Any(segment => Spoken.HasAny(segment, Told)) && own.SelectMany(segment => segment.All(Cat.Quality).Select(quality => segment.Word(quality.First))).All(Told.Contains);
    }

    // “Lovely response”: praise of how it plays, and of no part of the cane.
    private static bool IsPlayingPraised(Course course, Draft draft) => draft is { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Strength } && Spoken.Of(course, draft) is var own
        && own.Any(segment => Spoken.HasStem(segment, "respon", "tone", "sound", "tuning", "intonation")) && !own.Any(segment => segment.HasWord("cane") || PlaceReader.Read(segment).Any(mention => mention.HasPlace || mention.Part is not null));

    // “Nice and bright”, and not “bright for me”.
    private static bool IsPraisedBright(List<Segment> sentence) => sentence.Exists(segment => segment.HasWord("bright")) && sentence.Exists(segment => Spoken.HasAny(segment, Praise)) && !sentence.Exists(segment => segment.Has(Cat.Taste) || segment.Has(Cat.Not) || segment.HasWord("too") || segment.HasWord("for"));

    // “High notes clean”, “tone clean”, “attack better”: the test is the one that is named.
    private static void Rename(Draft draft, Segment segment, TestKind test)
    {
        var named = segment.All(Cat.Test).Select(item => Enum.Parse<TestKind>(item.Value)).Distinct().ToList();
        if (named.Contains(test) || Spoken.HasStem(segment, "tongu", "attack", "start", "stacc", "articul", "repeat", "detach", "short"))
        {
            if (named is [var only] && only != test && draft.Slots.Step is null)
            {
                draft.Slots = draft.Slots with { Test = only };
            }

            return;
        }

        if (named is [var other] && !TestScale.Of(other).TakesPitch)
        {
            Spoken.Unscale(draft, new ReadSlots { Test = other }, "no word of its scale was said, so its words are kept");
        }
        else if (named.Count == 0 && test is TestKind.TonguedStarts && segment.Has(Cat.Sound))
        {
            Spoken.Unmake(draft, Unsure);
        }
    }
}
