using ReedClinic.Domain.Faults;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Spine not intact”, “spine broken through”, “low D never secure”, “anything but in tune”: what is denied, or said to be broken, is no strength and no best word of a scale.</summary>
internal static class DeniedBest
{
    private static readonly Dictionary<string, string> Contraries = new()
    {
        ["opening-even"] = "opening-lopsided",
        ["spine-intact"] = "spine-scraped",
        ["rails-intact"] = "rails-cut",
        ["tip-well-separated"] = "tip-not-separate",
        ["tip-falls-to-sides"] = "tip-even-across",
        ["blend-smooth"] = "step-abrupt",
        ["quadrants-matched"] = "left-right-uneven",
        ["seals-well"] = "side-leak",
        ["tied-straight"] = "crooked-on-staple",
    };

    private static readonly Doubt NoPraise = new("kind", "denied, and so no praise; of which fault it tells isn’t clear, so it is kept as a note");

    private static readonly Doubt Which = new("kind", "denied praise: unsure which fault is meant");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var said = course.Segments[draft.Head];
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Strength, Relation: null } } when IsDenied(course, draft) || IsBroken(said):
                case { Kind: EntryKind.LookedFor } when IsStrength(draft.Slots.Kind):
                case { Kind: EntryKind.FindingEnded, Slots.Ending: FindingEnding.Gone } when IsStrength(draft.Slots.Kind) && !IsKnown(course, draft) && IsDenied(course, draft):
                    Turn(draft, draft.Slots.Kind, said);
                    break;
                case { Kind: EntryKind.LeaveAlone } when !Spoken.HasStem(said, "leav", "left", "alone", "touch", "off", "keep", "hand", "away", "spar", "stay", "go", "work") && IsDenied(course, draft):
                    Turn(draft, Of(draft.Slots.Zone), said);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Kind: "spine-scraped" or "rails-cut" } slots } when Denying.IsWholeAfterAll(said):
                    draft.Slots = slots with { Kind = slots.Kind is "rails-cut" ? "rails-intact" : "spine-intact", Character = FindingCharacter.Strength, Degree = null };
                    draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind");
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: { } test, Step: { } step } } when TestScale.Of(test) is { } scale && scale.Steps[scale.Good] == step && IsDenied(course, draft):
                    Spoken.Unscale(draft, draft.Slots with { Test = Named(said) ?? test }, "denied: which word of the scale that is wasn’t said, so its words are kept");
                    break;
            }
        }
    }

    private static bool IsDenied(Course course, Draft draft) => Denying.OfBest(course.Segments[draft.Head]) || draft.Last > draft.First && Denying.OfBest(Spoken.Whole(course, draft));

    private static bool IsBroken(Segment said) => !said.Asked && Denying.IsBroken(said);

    private static bool IsStrength(string? kind) => kind is not null && FindingCatalogue.Find(new FindingKindId(kind)) is { Usually: FindingCharacter.Strength };

    private static bool IsKnown(Course course, Draft draft) => course.Before.Log.Findings.Any(finding => finding.Fact.Now.FindingKind.Value == draft.Slots.Kind);

    private static TestKind? Named(Segment said) => said.Find(Cat.Test) is { } named && Enum.TryParse<TestKind>(named.Value, out var test) ? test : null;

    private static string? Of(Reeds.Zone? zone) => zone switch
    {
        Reeds.Zone.Spine => "spine-intact",
        Reeds.Zone.Rails => "rails-intact",
        Reeds.Zone.Opening => "opening-even",
        Reeds.Zone.Transition => "blend-smooth",
        Reeds.Zone.Rooftop or Reeds.Zone.TipSides => "tip-well-separated",
        _ => null,
    };

    private static void Turn(Draft draft, string? kind, Segment said)
    {
        if (kind is null || !Contraries.TryGetValue(kind, out var contrary) || said.Asked)
        {
            Spoken.Unmake(draft, NoPraise);
            return;
        }

        contrary = contrary is "left-right-uneven" && Spoken.HasStem(said, "blade") ? "blades-uneven" : contrary;
        (draft.Kind, draft.Slots) = (EntryKind.Finding, new ReadSlots { Kind = contrary, Character = FindingCharacter.Fault, Zone = draft.Slots.Zone ?? FindingCatalogue.Find(new FindingKindId(contrary))?.Zone, Blades = draft.Slots.Blades, Sides = draft.Slots.Sides, Known = draft.Slots.Known });
        draft.Doubts.Clear();
        if (contrary is "step-abrupt")
        {
            draft.Doubts.Add(Which);
        }
    }
}
