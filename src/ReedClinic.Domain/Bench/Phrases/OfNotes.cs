namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Middle register rings nicely”, “D major scale is even”: how notes sound is no praise of a part of the reed, and no order in which it closes.</summary>
internal static class OfNotes
{
    private static readonly HashSet<string> Played = ["register", "registers", "octave", "octaves", "range", "notes", "scale", "scales", "major", "minor", "arpeggio", "arpeggios", "slurs", "intervals"];

    private static readonly string[] Pressed = ["close", "closing", "shut", "press", "squeez"];

    private static readonly Doubt Sound = new("kind", "how notes sound, and no part of the reed, so it is kept as a note");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts.Where(draft => draft is { Kind: EntryKind.Finding, Slots.Character: FindingCharacter.Strength } or { Kind: EntryKind.Test, Slots.Test: TestKind.ClosingOrder }))
        {
            var said = Spoken.Whole(course, Spoken.Lead(course, draft), draft.Last);
            if (Spoken.HasAny(said, Played) && !said.Items.Any(item => item.Cat is Cat.Zone or Cat.Region) && !Spoken.HasStem(said, Pressed))
            {
                Spoken.Unmake(draft, Sound);
            }
        }
    }
}
