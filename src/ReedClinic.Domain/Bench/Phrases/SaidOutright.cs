namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Scraping the heart again could drop the pitch”, “the swell breaks”, “at last the side leak is gone”, “0.3 mm clipped”: what the words say outright stands, whatever was made of the rest.</summary>
internal static class SaidOutright
{
    private static readonly HashSet<string> Could = ["could", "might", "would", "may", "will", "can", "'ll", "risks"];

    private static readonly HashSet<string> Sounds = ["high", "low", "octave", "octaves", "both", "joins", "join", "together", "two", "double", "single", "top", "bottom", "only", "rattle", "rattly", "once", "multiphonic", "chord"];

    private static readonly string[] Breaking = ["break", "broke", "crack"];

    private static readonly HashSet<string> Passing = ["leak", "ridge", "bump", "lump", "buzz", "rattle", "wobble", "ripple", "burr"];

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.ToList())
        {
            var said = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Adjustment, Slots: { Strokes: null, Mm: null } } when IsOnlyThought(said):
                    Leave(course, draft);
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "clip" or "clip-hair", Mm: null, Words: null } slots } when Millimetres(said) is { } mm:
                    draft.Slots = slots with { Mm = mm };
                    break;
                case { Kind: EntryKind.Adjustment, Slots: { Kind: "clip" or "clip-hair", Mm: not null } slots } when Spoken.HasStem(said, "opening", "gap", "until", "wire"):
                    draft.Slots = slots with { Mm = null };
                    draft.HasAside = true;
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Swell, Step: "keeps its place" } slots } when Spoken.HasStem(said, Breaking) && !said.Has(Cat.Not) && !said.HasWord("no") && !said.HasWord("without"):
                    draft.Slots = slots with { Step = "breaks" };
                    break;
                case { Kind: EntryKind.Test, Slots: { Test: TestKind.Crow, Step: "high, then low joins", Pitch: not null } slots } when !Spoken.HasAny(said, Sounds) && !Spoken.HasStem(said, "good", "fine", "nice", "clean", "healthy", "lovely"):
                    draft.Slots = slots with { Step = null };
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Kind: "back-thin", Relation: null } slots } when Spoken.HasStem(said, "scratch", "scuff", "stain"):
                    draft.Slots = slots with { Kind = "something-else" };
                    draft.HasAside = true;
                    break;
                case { Kind: EntryKind.Finding, Slots: { Character: FindingCharacter.Fault, Kind: { } kind, Relation: null } } when (kind is "bumps" || kind.EndsWith("leak", StringComparison.Ordinal)) && IsGone(said):
                    draft.Kind = EntryKind.FindingEnded;
                    draft.Slots = new ReadSlots { Kind = kind, Ending = FindingEnding.Gone };
                    draft.Doubts.Clear();
                    break;
            }
        }
    }

    // “0.2 mm clipped”: right before the clip; “clipped, opening now 1.2 mm” is another measure.
    private static decimal? Millimetres(Segment said) => Spoken.HasStem(said, "open", "gap", "wire", "until", "length") ? null : Enumerable.Range(said.First, said.End - said.First)
        .Select(at => Numbers.At(said.Tokens, at, said.End) is { Value: > 0 and <= 3 } number && said.Items.FirstOrDefault(item => item.First == number.End && item.Cat is Cat.Mm) is { Count: > 0 } unit && said.Word(unit.End) is "clipped" or "trimmed" or "off" ? number.Value : (decimal?)null).FirstOrDefault(mm => mm is not null);

    // “Scraping the heart again could …”: what would come of it.
    private static bool IsOnlyThought(Segment said) => said.Word(said.First) is not "opening" && IsGerund(said);

    private static bool IsGerund(Segment said) => said.Word(said.First).EndsWith("ing", StringComparison.Ordinal) && Enumerable.Range(said.First, said.End - said.First).Any(at => Could.Contains(said.Word(at)))
        || said.Word(said.First).EndsWith("ing", StringComparison.Ordinal) && said.End < said.Tokens.Count && Could.Contains(said.Tokens[said.End].Text);

    private static void Leave(Course course, Draft draft)
    {
        if (course.Drafts.Find(other => other.Sentence == draft.Sentence && other.First == draft.Last + 1 && other.Kind is EntryKind.Risk or EntryKind.Note) is { } behind)
        {
            (behind.First, behind.HasAside) = (draft.First, true);
            behind.Slots = behind.Kind is EntryKind.Risk && behind.Slots.Zone is null && draft.ZoneSaid ? behind.Slots with { Zone = draft.Slots.Zone } : behind.Slots;
            course.Drafts.Remove(draft);
        }
        else
        {
            Spoken.Unmake(draft, new Doubt("kind", "unsure whether this was done, so it is kept as a note"));
        }
    }

    // “The side leak is gone”; “the corner is gone” is broken off.
    private static bool IsGone(Segment said)
    {
        for (var at = said.First; at < said.End; at++)
        {
            if (Passing.Contains(said.Word(at)) && said.Word(at - 1) is not "spine" && (said.Word(at + 1) is "gone" || said.Word(at + 1) is "is" or "'s" or "has" && said.Word(at + 2) is "gone") && !said.Has(Cat.Not))
            {
                return true;
            }
        }

        return false;
    }
}
