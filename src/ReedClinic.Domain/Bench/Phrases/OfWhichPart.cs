using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Bark split”, “reed’s too long”, “the gouge is thick in the middle”, “sanded the rails”, “heart thick, left side”: of which part it is, where a kind’s usual part is another.</summary>
internal static class OfWhichPart
{
    private static readonly HashSet<string> Playing = ["when", "play", "plays", "playing", "played", "while", "blow", "blown", "after", "minutes", "minute", "keeps", "pressure"];

    private static readonly Doubt Long = new("kind", "too long or too short, and no part was named, so its words are kept");

    private static readonly Doubt Gouge = new("kind", "said of the gouge, and of no part of the scrape, so its words are kept");

    private static readonly Doubt Rubbed = new("kind", "rubbed with something fine elsewhere than at the tip, so its words are kept");

    private static readonly Doubt Back = new("zone", "the back was named and no window: taken for its windows");

    private static readonly Doubt Measure = new("kind", "a measure, and nothing that is wrong, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var said = Spoken.Whole(course, draft);
            if (draft.Kind is EntryKind.Finding)
            {
                Found(draft, said, Spoken.Sentence(course, draft));
            }
            else if (draft is { Kind: EntryKind.Adjustment, Slots: { Kind: "smooth-edge", Zone: { } zone } } && Rubbing(said, zone) is { } there)
            {
                Other(draft, draft.Slots with { Kind = "something-else", Zone = there }, Rubbed);
            }
            else if (draft is { Kind: EntryKind.LeaveAlone, Slots.Zone: Zone.Windows } && said.HasWord("back") && !Spoken.HasStem(said, "window", "channel"))
            {
                draft.Doubts.Add(Back);
            }
        }
    }

    private static void Found(Draft draft, Segment said, Segment sentence)
    {
        switch (draft.Slots)
        {
            case { Kind: "tip-long" or "tip-short" or "heart-length" or "something-else", Character: FindingCharacter.Fault } when IsMeasured(said):
                Spoken.Unmake(draft, Measure);
                break;
            case { Kind: "body-cracked", Zone: Zone.Bark } slots when PlaceReader.Read(said).TrueForAll(place => place.Usual is null or Zone.Bark or Zone.Thread):
                Other(draft, slots with { Kind = "something-else" }, null);
                break;
            case { Kind: "tip-long" or "tip-short" } slots when sentence.Word(sentence.First) is "heart" && sentence.Tokens[sentence.First + 1].Is(":") && !Spoken.HasStem(sentence, "tip"):
                draft.Slots = slots with { Kind = "heart-length", Zone = Zone.HeartBottom };
                break;
            case { Kind: "heart-length" } slots when !Spoken.HasStem(sentence, "heart") && PlaceReader.Read(sentence).FindAll(place => place.HasPlace) is [{ Region: "tip" } or { Zone: Zone.TipSides }] && (sentence.HasWord("long") || sentence.HasWord("short")):
                draft.Slots = slots with { Kind = sentence.HasWord("long") ? "tip-long" : "tip-short", Zone = Zone.Rooftop };
                draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind" or "zone");
                break;
            case { Kind: "heart-length" } slots when !Spoken.HasStem(sentence, "heart") && PlaceReader.Read(said).TrueForAll(place => !place.HasPlace):
                Other(draft, slots with { Kind = "something-else", Zone = Zone.WholeReed }, Long);
                break;
            case { Character: FindingCharacter.Fault, Relation: null } slots when IsOfTheGouge(said):
                Other(draft, slots with { Kind = "something-else", Zone = Zone.WholeReed }, Gouge);
                break;
            case { Kind: "heart-thick" or "heart-thin", Zone: Zone.HeartCentre, Sides: not null, Relation: null } slots when FindingTable.Kind(new Mention { Zone = Zone.HeartSides }, slots.Kind is "heart-thick" ? "thick" : "thin") is { } kind:
                draft.Slots = slots with { Kind = kind, Zone = Zone.HeartSides };
                break;
            case { Kind: "closes-in-play" } when (said.HasWord("shut") || said.HasWord("closed")) && (said.HasWord("is") || said.HasWord("'s")) && !Spoken.HasAny(sentence, Playing) && !said.HasWord("up"):
                (draft.Kind, draft.Slots) = (EntryKind.Test, new ReadSlots { Test = TestKind.Opening, Step = "closed" });
                draft.Doubts.Clear();
                break;
        }
    }

    // “Tip is 4 mm long”, “sixty nine and three quarters long”: a measure, and no fault.
    private static bool IsMeasured(Segment said) => !said.HasWord("too") && Enumerable.Range(said.First + 1, said.End - said.First - 1).Any(at => said.Word(at) is "long" or "short" or "wide" && (said.Word(at - 1) is "mm" or "millimetres" or "millimetre" or "millimeters" or "quarters" or "quarter" || said.Tokens[at - 1].Kind is TokenKind.Number));

    private static void Other(Draft draft, ReadSlots slots, Doubt? doubt)
    {
        (draft.Slots, draft.HasAside) = (slots, true);
        draft.Doubts.RemoveAll(old => old.Slot is "kind" or "zone");
        if (doubt is not null)
        {
            draft.Doubts.Add(doubt);
        }
    }

    // “The gouge is thick in the middle”: how the cane was gouged.
    private static bool IsOfTheGouge(Segment said) => said.IndexOfWord("gouge") is >= 0 and var at && (said.Word(at + 1) is "is" or "'s" or "was" or "looks" or "too" or "a" or "quite" or "very" or "thick" or "thin" or "rather" || said.Word(at + 1).Length == 0) && !said.Items.Any(item => item.Cat is Cat.Zone or Cat.Region);

    // The part that is named where it isn’t the tip’s.
    private static Zone? Rubbing(Segment said, Zone zone)
    {
        var there = PlaceReader.Read(said).FindAll(place => place.HasPlace) is [{ Usual: { } named }] ? named : zone;
        return there is Zone.TipEdge or Zone.TipCorners or Zone.TipSides or Zone.TipCentre or Zone.Inside or Zone.SideEdges ? null : there;
    }
}
