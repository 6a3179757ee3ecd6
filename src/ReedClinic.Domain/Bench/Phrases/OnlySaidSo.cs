namespace ReedClinic.Domain.Bench.Phrases;

/// <summary>“Heart hasn’t been scraped yet”, “the heart’s a bit bossy”, “it came up fine”, “clip again” where nothing was: what the words don’t carry is a remark, or in doubt.</summary>
internal static class OnlySaidSo
{
    private static readonly HashSet<string> Worked = [.. "scraped touched worked thinned sanded filed dusted clipped trimmed cut blended smoothed opened done cleared taken adjusted bent tied sealed polished".Split(' ')];

    private static readonly HashSet<string> Enough = ["enough", "properly", "evenly", "right", "well", "fully", "quite", "far", "straight"];

    // How a person is, said of a part of the reed.
    private static readonly HashSet<string> Persons = [.. "bossy cheeky grumpy stubborn domineering shy moody sulky stroppy fussy greedy lazy timid bold sleepy nervous jolly cocky sassy grouchy cranky temperamental unfriendly unwilling rebellious obstinate wilful haughty pushy bullying overbearing sullen surly crabby petulant tetchy coy reluctant needy smug silly naughty".Split(' ')];

    private static readonly HashSet<string> Fine = ["fine", "nice", "nicely", "good", "well", "lovely", "great", "beautifully", "ok", "okay", "grand", "splendidly", "perfect", "perfectly", "alright", "right"];

    private static readonly HashSet<string> Beside = [.. "it that this came come comes has 's up out all now again very really quite so and too just the reed one rather pretty in end on a treat".Split(' ')];

    private static readonly HashSet<string> Anew = ["again", "another", "more", "same", "further"];

    private static readonly Doubt NotYet = new("kind", "that it wasn’t done, and no word of how it is, so it is kept as a note");

    private static readonly Doubt Person = new("kind", "a word of taste that may mean several findings, so its words are kept");

    private static readonly Doubt Good = new("test", "good, and of no test that was named, so it is kept as a note");

    private static readonly Doubt First = new("done", "no such work stands before it: was it done before, or is this the first time?");

    internal static void Keep(Course course)
    {
        foreach (var draft in course.Drafts)
        {
            var whole = Spoken.Whole(course, draft);
            switch (draft)
            {
                case { Kind: EntryKind.Finding, Slots.Kind: not ("spine-intact" or "rails-intact") } when IsNotYet(whole):
                    Spoken.Unmake(draft, NotYet);
                    break;
                case { Kind: EntryKind.Finding, Slots: { Kind: not "something-else", Relation: null } } when !whole.Has(Cat.Not) && Spoken.HasAny(whole, Persons) && course.Segments[draft.Head] is var head && Spoken.HasAny(head, Persons) && !head.Has(Cat.Quality) && PlaceReader.Read(head) is [{ HasPlace: true } place]:
                    draft.Slots = draft.Slots with { Kind = "something-else", Character = FindingCharacter.Taste, Zone = place.Usual ?? draft.Slots.Zone };
                    draft.HasAside = true;
                    draft.Doubts.RemoveAll(doubt => doubt.Slot is "kind");
                    draft.Doubts.Add(Person);
                    break;
                case { Kind: EntryKind.Test, Slots: { Pitch: null, Cents: null, Change: null } } when IsFine(whole):
                    Spoken.Unmake(draft, Good);
                    break;
                case { Kind: EntryKind.Adjustment } when Spoken.HasAny(whole, Anew) && IsFirst(course, draft) && !whole.HasWord("than"):
                    draft.Doubts.RemoveAll(doubt => doubt.Slot is "done");
                    draft.Doubts.Add(First);
                    break;
            }
        }
    }

    // “Hasn’t been scraped yet”, “not touched yet”; “hasn’t been thinned enough” is a fault.
    private static bool IsNotYet(Segment whole)
    {
        var not = Enumerable.Range(whole.First, whole.End - whole.First).FirstOrDefault(at => whole.Word(at) is "not" or "never", -1);
        if (not < 0 || whole.Asked || Spoken.HasAny(whole, Enough))
        {
            return false;
        }

        var verb = not + 1;
        while (whole.Word(verb) is "been" or "yet" or "even" or "really" or "actually" or "had" or "a" or "being" or "ever" || whole.Word(verb - 1) is "been" && whole.Word(verb) is "")
        {
            verb++;
        }

        return Worked.Contains(whole.Word(verb)) && Enumerable.Range(verb + 1, Math.Max(0, whole.End - verb - 1)).All(at => whole.Tokens[at].Kind is TokenKind.Break || whole.Word(at) is "yet" or "at" or "all" or "on" or "so" or "today" or "still" or "up" or "out" or "");
    }

    // “It came up fine”, “came out lovely”.
    private static bool IsFine(Segment whole) => (whole.HasWord("up") || whole.HasWord("out")) && (whole.HasWord("came") || whole.HasWord("come") || whole.HasWord("comes")) && Spoken.HasAny(whole, Fine)
        && Enumerable.Range(whole.First, whole.End - whole.First).All(at => whole.Tokens[at].Kind is TokenKind.Break || whole.Word(at).Length == 0 || Fine.Contains(whole.Word(at)) || Beside.Contains(whole.Word(at)) || whole.Covered(at, Cat.Filler));

    // Nothing was done before, neither in this phrase nor on this reed.
    private static bool IsFirst(Course course, Draft draft) => course.Before.Last is null && !course.Drafts.Exists(other => other.Kind is EntryKind.Adjustment && other.Head < draft.Head);
}
