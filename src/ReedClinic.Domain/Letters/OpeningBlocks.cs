using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;

namespace ReedClinic.Domain.Letters;

/// <summary>How a letter begins: a greeting, what was good, what lay in the parcel.</summary>
internal static class OpeningBlocks
{
    internal static LetterBlock Greeting(LetterMaterial material, Phrasing phrasing)
    {
        var here = material.Batch.Reeds.Count(reed => reed.IsHere);
        if (here == 0)
        {
            return Begin(material, "Thank you for writing to me.", "None of your reeds has been in my hands yet, so this letter is a short one.");
        }

        var reeds = here == 1 ? "reed" : Prose.Number(here) + " reeds";
        var thanks = phrasing.Pick(
            "thanks",
            $"Thank you for your {reeds}.",
            $"It was good to open your parcel and find your {reeds} in it.",
            $"Your {reeds} arrived, and I have enjoyed getting to know {(here == 1 ? "it" : "them")}.");
        var them = here == 1 ? "it" : "them";
        var what = here > 1 && TriedFirst(material)
            ? phrasing.Pick(
                "what",
                "I tried them next to each other before I touched any of them, because reeds explain each other.",
                "Before I touched any of them I tried them all, one beside the other, and wrote down what I noticed.")
            : phrasing.Pick(
                "what",
                $"I have spent some quiet time with {them} at the bench, and this is what I found out.",
                here == 1 ? "This is what I can tell you about it." : "This is what I can tell you about each of them.");
        return Begin(material, thanks, what, How(material, here, phrasing));
    }

    // Only what the letter really holds is announced.
    private static string How(LetterMaterial material, int here, Phrasing phrasing)
    {
        var lesson = material.Thread.HasLesson;
        if (here == 1)
        {
            return lesson ? "Near the end you will find a short plan for the next one." : "At the end you will find how to play it in and look after it.";
        }

        return phrasing.Pick(
            "how",
            lesson && DoneWell(material, phrasing) is not null
                ? "First comes what is good, then each reed by itself, and at the end what I would try on the next one."
                : "You will find each reed by the number on its tag.",
            lesson
                ? "You will find each reed by its number, and near the end a short plan for the next one."
                : "You will find each reed by its number, and at the end how to look after them.",
            "It is easiest to read this letter with the reeds beside you: they carry the same numbers as here.");
    }

    private static LetterBlock Begin(LetterMaterial material, params ReadOnlySpan<string> sentences) =>
        new("greeting", BlockKind.Greeting,
        [
            LetterParagraph.Plain($"Dear {material.StudentName.Split(' ')[0]},"),
            new([.. sentences.ToArray().Select(LetterSentence.Plain)]),
        ]);

    // Every reed was tried before the first of them was worked on.
    private static bool TriedFirst(LetterMaterial material)
    {
        var logs = material.Batch.Reeds.Where(reed => reed.IsHere).Select(reed => material.LogOf(reed.Id)).ToList();
        var work = logs.SelectMany(log => FirstSaid(log, EntryKind.Adjustment)).DefaultIfEmpty(DateTimeOffset.MaxValue).Min();
        return logs.TrueForAll(log => FirstSaid(log, EntryKind.Test).Any(tried => tried < work));
    }

    // A wording that was mended later says nothing about when the thing itself happened.
    private static IEnumerable<DateTimeOffset> FirstSaid(BenchLog log, EntryKind kind) =>
        log.Facts.Where(fact => fact.Kind == kind && fact.Now is not null).Select(fact => fact.Chain[0].RecordedAt);

    internal static LetterBlock? DoneWell(LetterMaterial material, Phrasing phrasing)
    {
        var thread = material.Thread;
        var strengths = Strengths(material);
        var sentences = new List<LetterSentence>();
        if ((thread.StrengthWords ?? Explain(thread.StrengthKind)) is { } named)
        {
            var roots = strengths.Where(strength => strength.Finding.FindingKind == thread.StrengthKind).Select(s => s.Fact.Root).ToList();
            sentences.Add(new(Prose.Sentence(named), roots));
            if (thread.StrengthEvidence is { } evidence)
            {
                sentences.Add(new("I saw this " + Prose.Inside(evidence), roots));
            }
        }

        foreach (var group in Others(material))
        {
            sentences.Add(new(Explain(group.Key)!, [.. group.Select(strength => strength.Fact.Root)]));
        }

        if (sentences.Count == 0)
        {
            return null;
        }

        sentences.Insert(0, LetterSentence.Plain(phrasing.Pick(
            "good-first",
            "Let me begin with what you do well.",
            "Some things are just as they should be, and I hope you will keep them so.",
            "First of all, what is good.")));
        if (sentences.Count > 2)
        {
            sentences.Add(LetterSentence.Plain(phrasing.Pick(
                "good-end", "That is worth a lot, and it is yours.", "Keep that; it is the part that is hard to teach.")));
        }

        return new LetterBlock("done-well", BlockKind.DoneWell, [new(sentences)]) { Heading = "What you do well" };
    }

    internal static LetterBlock? Arrival(LetterMaterial material, Phrasing phrasing)
    {
        var batch = material.Batch;
        List<LetterSentence> sentences = [.. batch.Mismatches.Select(mismatch => LetterSentence.Plain(Tell(mismatch, material, phrasing)))];
        if (batch.ArrivalNote is { } note)
        {
            sentences.Add(LetterSentence.Plain(Prose.Sentence(note)));
        }

        return sentences.Count == 0
            ? null
            : new LetterBlock("arrival", BlockKind.Arrival, [new(sentences)]) { Heading = "When I opened the parcel" };
    }

    private static string Tell(Mismatch mismatch, LetterMaterial material, Phrasing phrasing)
    {
        var reed = $"reed {Prose.Number(mismatch.Number)}";
        var words = Prose.Inside(mismatch.Words.Trim().TrimEnd('.'));
        return mismatch.Kind switch
        {
            MismatchKind.Missing => phrasing.Pick(
                "missing", mismatch.Number,
                $"I did not find {reed} ({words}) in it: please look whether it stayed at home.",
                $"One reed that you wrote about, {reed} ({words}), was not there; perhaps it is still on your desk."),
            MismatchKind.Extra =>
                $"There was one reed more than you wrote about ({words}). I call it {reed}."
                + (material.LogOf(mismatch.Reed).Live<Adjustment>().Any() || material.Batch.Reeds.Any(other => other.Id == mismatch.Reed && !other.MayBePlayed)
                    ? ""
                    : " Because you said nothing about it, I left its cane alone."),
            MismatchKind.Damaged => $"When I unpacked it, {reed} was damaged: {words}.",
            MismatchKind.Damp => $"I found {reed} still damp, so I let it dry before anything else; next time give it a day in the open before you pack it.",
            _ => $"There was mould on {reed}. I did not play it, and please don't either: it can make you ill."
                + (material.Batch.Reeds.Count > 1 ? " Let the others dry well before they go into a case." : ""),
        };
    }

    /// <summary>The kinds of strength that the beginning of the letter explains: after that they are only named.</summary>
    internal static HashSet<FindingKindId> Told(LetterMaterial material) =>
        [.. Others(material).Select(group => group.Key), .. material.Thread is { StrengthWords: null, StrengthKind: { } kind } ? [kind] : Array.Empty<FindingKindId>()];

    private static IEnumerable<IGrouping<FindingKindId, FindingNow>> Others(LetterMaterial material) => Strengths(material)
        .Where(strength => strength.Finding.FindingKind != material.Thread.StrengthKind && Explain(strength.Finding.FindingKind) is not null)
        .GroupBy(strength => strength.Finding.FindingKind)
        .OrderByDescending(group => group.Count())
        .Take(2);

    private static List<FindingNow> Strengths(LetterMaterial material) =>
    [
        .. material.Batch.Reeds.SelectMany(reed => material.LogOf(reed.Id).Findings)
            .Where(finding => finding.Finding is { Character: FindingCharacter.Strength, Arose: not Arose.CausedByTheWork }),
    ];

    private static string? Explain(FindingKindId? kind) => kind is { } id ? FindingCatalogue.Find(id)?.ForStudent : null;
}
