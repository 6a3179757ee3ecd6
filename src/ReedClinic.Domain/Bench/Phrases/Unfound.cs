using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“That rattle is gone”, after “nice cane”: an ending is of the finding that it names, and of none that only stands there.</summary>
internal static class Unfound
{
    private static readonly HashSet<string> Pointing = ["the", "that", "this", "your", "his", "her", "their", "my", "its", "those", "these"];

    private static readonly HashSet<string> Plain = ["one", "thing", "problem", "trouble", "fault", "same", "whole", "lot", "it", "both", "two", "rest", "is", "'s", "was", "are", "were", "has", "have", "now", "all", "just", "there", "here", "too", "way", "first", "last", "other", "little", "small", "big", "left", "right", "gone", "better"];

    private static readonly string[] Noises = ["rattl", "buzz", "squeak", "squeal", "whistl", "gurgl", "rasp", "growl", "grumbl", "fuzz", "click", "wooll"];

    private static readonly Doubt Unsure = new("kind", "which finding that was isn’t clear, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft.Kind is EntryKind.FindingEnded))
        {
            var segment = course.Segments[draft.Head];
            if (IsPlaceKeptOff(course, draft, segment) is { } place)
            {
                draft.Kind = EntryKind.LeaveAlone;
                draft.Slots = new ReadSlots { Zone = place.Usual, Blades = place.OneBlade, Sides = place.OneSide };
            }
            else if (draft.Slots is { Kind: { } kind, Ending: FindingEnding.Gone or FindingEnding.Better } && Subject(segment, kind == FindingKindId.SomethingElse.Value) is { } subject && !IsOf(course, kind, subject))
            {
                Spoken.Unmake(draft, Unsure);
            }
        }
    }

    // “Rails left alone on purpose”, where nothing was found in the rails.
    private static Mention? IsPlaceKeptOff(Course course, Draft draft, Segment segment) => draft.Slots is { Ending: FindingEnding.LeftOnPurpose, Kind: { } kind } && segment.HasWord("alone") && !EndedReader.WasFound(course, kind) ? PlaceReader.Read(segment).FirstOrDefault(mention => mention.HasPlace)
        : null;

    // A noise that is gone, or, of a finding that has no name of its own, whatever is.
    private static string? Subject(Segment segment, bool nameless)
    {
        var ended = segment.Find(Cat.Ended)?.First ?? segment.IndexOfWord("gone");
        for (var at = segment.First; at < segment.End && at < ended; at++)
        {
            var points = Pointing.Contains(segment.Word(at - 1)) || at == segment.First;
            var word = segment.Word(at);
            if (Noises.Any(noise => word.StartsWith(noise, StringComparison.Ordinal)) || nameless && points && segment.Tokens[at].Kind is TokenKind.Word && word.Length > 3 && !Pointing.Contains(word) && !Plain.Contains(word))
            {
                return word;
            }
        }

        return null;
    }

    private static bool IsOf(Course course, string kind, string subject)
    {
        var stem = subject.Length > 4 ? subject[..4] : subject;
        return FindingCatalogue.NameOf(new FindingKindId(kind)).Contains(stem, StringComparison.OrdinalIgnoreCase)
            || course.Before.Log.Findings.Any(now => now.Finding.FindingKind.Value == kind && now.Finding.Words?.Contains(stem, StringComparison.OrdinalIgnoreCase) == true)
            || course.Drafts.Exists(draft => draft.Kind is EntryKind.Finding && draft.Slots.Kind == kind && Spoken.Of(course, draft).Any(segment => Spoken.HasStem(segment, stem)));
    }
}
