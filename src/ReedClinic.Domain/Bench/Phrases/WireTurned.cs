using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Tightened the wire a quarter turn”, “eased the wire off”: a wire that is twisted tighter or looser is neither rounded nor flattened, and none is put on.</summary>
internal static class WireTurned
{
    private static readonly string[] Twists = ["tighten", "loosen", "slacken", "snug", "twist", "untwist"];

    private static readonly string[] Bent = ["round", "flat", "squeez", "pinch", "press", "squash", "bend", "bent", "oval", "nip"];

    private static readonly HashSet<string> New = ["a", "new", "second", "third", "another", "extra", "on", "put", "add", "added", "fitted", "wound"];

    private static readonly Doubt Own = new("kind", "a wire tightened or loosened: that has no name of its own, so it is kept in your words");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Adjustment, Slots.Kind: "bend-wire" or "add-wire" or "open-windows" or "something-else" }))
        {
            var said = Spoken.Whole(course, draft);
            var wire = Enumerable.Range(said.First, said.End - said.First).FirstOrDefault(at => said.Word(at) is "wire" or "wires", -1);
            if (wire < 0 && draft.Slots.Zone is not Zone.Wire || draft.Slots.Zone is not Zone.Wire && !(wire > said.First && said.Word(wire - 1) is "back") || Spoken.HasStem(said, Bent) || !IsTurned(said))
            {
                continue;
            }

            var before = Enumerable.Range(said.First, Math.Max(0, wire - said.First)).Select(said.Word).ToList();
            if (draft.Slots.Kind is "add-wire" && (wire < 0 || New.Contains(said.Word(wire - 1)) || before.Exists(word => word is "put" or "add" or "added" or "fitted" or "wound" or "new" or "second")))
            {
                continue;
            }

            draft.Slots = draft.Slots with { Kind = "something-else", Zone = Zone.Wire };
            draft.HasAside = true;
            draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind" || doubt.Words.StartsWith("no such work", StringComparison.Ordinal));
            draft.Doubts.Add(Own);
        }
    }

    private static bool IsTurned(Segment said) => Spoken.HasStem(said, Twists) || Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "turn" or "turns" && (said.Word(at - 1) is "half" or "quarter" or "full" or "one" or "two" or "more" or "a" || said.Tokens[Math.Max(said.First, at - 1)].Kind is TokenKind.Number))
        && Enumerable.Range(said.First, said.End - said.First).Any(at => said.Word(at) is "gave" or "give" or "given" or "eased" or "ease" or "backed" or "let" or "another" or "more" or "further");
}
