using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Not enough off the tip”, “heart not thick enough”, “no heart left”: what there is too little of, and not its opposite.</summary>
internal static class Shortfalls
{
    private static readonly HashSet<string> Taken = ["off", "from", "out"];

    private static readonly HashSet<string> Between = ["cane", "wood", "taken", "scraped", "came", "come", "has", "have", "been", "was", "is", "went", "gone", "done"];

    private static readonly Dictionary<string, string> Opposites = new() { ["thick"] = "thin", ["full"] = "thin", ["heavy"] = "thin", ["thin"] = "thick", ["deep"] = "thick", ["long"] = "short", ["short"] = "long", ["wide"] = "narrow", ["open"] = "narrow", ["narrow"] = "wide" };

    private static readonly Doubt Little = new("kind", "not enough was taken there, so it is kept as a note");

    private static readonly Doubt Gone = new("kind", "none left, and of what that is a fault isn’t clear, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList().Where(course.Drafts.Contains))
        {
            var said = Spoken.Sentence(course, draft);
            if (said.Asked || course.Drafts.Exists(other => other != draft && other.Sentence == draft.Sentence && other.Kind is not (EntryKind.Stopped or EntryKind.Note)))
            {
                continue;
            }

            var place = PlaceReader.Read(said).FindAll(one => one.HasPlace) is [var named] ? named : null;
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Relation: null } } when NotTaken(said):
                    Fault(draft, place, "thick", Little);
                    break;
                case { Kind: EntryKind.LookedFor or EntryKind.Finding } when NotEnough(said) is { } opposite && place is not null && (draft.Kind is EntryKind.LookedFor || draft.Slots.Kind is "windows-uneven" && !said.HasWord("left") && !said.HasWord("right")):
                    Fault(draft, place, opposite, Little);
                    course.Drafts.RemoveAll(other => other.Kind is EntryKind.Stopped && other.Sentence == draft.Sentence);
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Opening, Step: "a little closed" or "closed" } } when NotClosed(said):
                    draft.Slots = draft.Slots with { Step = "a little open" };
                    course.Drafts.RemoveAll(other => other.Kind is EntryKind.Stopped && other.Sentence == draft.Sentence);
                    break;
                case { Kind: EntryKind.LookedFor } or { Kind: EntryKind.Finding, Slots.Kind: "tip-not-separate" } when place is { Usual: { } zone } && NoneLeft(said, place):
                    None(draft, zone);
                    break;
            }
        }
    }

    private static void Fault(Draft draft, Mention? place, string value, Doubt otherwise)
    {
        if (place is null || FindingTable.Kind(place, value) is not { } kind)
        {
            Spoken.Unmake(draft, otherwise);
            return;
        }

        (draft.Kind, draft.Slots) = (EntryKind.Finding, new ReadSlots { Kind = kind, Character = FindingCharacter.Fault, Zone = place.Usual, Blades = place.OneBlade, Sides = place.OneSide });
        draft.Doubts.Clear();
    }

    private static void None(Draft draft, Zone zone)
    {
        var kind = zone switch
        {
            Zone.HeartCentre => "heart-thin",
            Zone.Spine => "spine-scraped",
            Zone.Rails => "rails-cut",
            Zone.Opening => "opening-narrow",
            _ => null,
        };
        if (kind is null)
        {
            Spoken.Unmake(draft, Gone);
            return;
        }

        (draft.Kind, draft.Slots) = (EntryKind.Finding, new ReadSlots { Kind = kind, Character = FindingCharacter.Fault, Zone = zone });
        draft.Doubts.Clear();
    }

    // “Not enough cane off the back”.
    private static bool NotTaken(Segment said)
    {
        var at = Enough(said);
        if (at < 0)
        {
            return false;
        }

        at++;
        while (Between.Contains(said.Word(at)))
        {
            at++;
        }

        return Taken.Contains(said.Word(at));
    }

    private static int Enough(Segment said) => Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(at => said.Word(at) is "enough" && said.Word(at - 1) is "not", -1);

    // “Not thick enough”.
    private static string? NotEnough(Segment said)
    {
        for (var at = said.First; at + 2 < said.End; at++)
        {
            if (said.Word(at) is "not" && said.Word(at + 2) is "enough" && Opposites.TryGetValue(said.Word(at + 1), out var opposite))
            {
                return opposite;
            }
        }

        return null;
    }

    private static bool NotClosed(Segment said) => Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "not" && said.Word(at + 1) is "closed" or "shut" && said.Word(at + 2) is "enough");

    // “No heart left”, “no spine to speak of”.
    private static bool NoneLeft(Segment said, Mention place) => said.Word(place.First - 1) is "no" && (said.Word(place.End) is "left" && said.Word(place.End + 1) is "" or "at" or "now" || said.Word(place.End) is "to" && said.Word(place.End + 1) is "speak")
        && place.Usual is not (Zone.Bark or Zone.Cork or Zone.Thread or Zone.Transition or Zone.SideEdges);
}
