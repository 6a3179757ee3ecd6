using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters.Wordings;

namespace ReedClinic.Domain.Letters;

/// <summary>How a letter begins: a greeting, what was good, what lay in the parcel.</summary>
internal static class OpeningBlocks
{
    private const int ManyWords = 12;

    internal static LetterBlock Greeting(LetterMaterial material, Phrasing phrasing)
    {
        var here = material.Batch.Reeds.Count(reed => reed.IsHere);
        if (here == 0)
        {
            return Begin(material, "Thank you for writing to me.", phrasing.Say("nothing", 0, OpeningWordings.NothingYet));
        }

        var reeds = ("reeds", here == 1 ? "reed" : Prose.Number(here) + " reeds");
        var them = ("them", here == 1 ? "it" : "them");
        var thanks = phrasing.Say("thanks", 0, Thanks(material), reeds, them);
        var what = here > 1 && TriedFirst(material)
            ? phrasing.Say("tried-first", 0, OpeningWordings.TriedFirst)
            : phrasing.Say("looked", 0, Looked(material), them, ("each", here == 1 ? "it" : "each of them"));
        var beginning = How(material, here, phrasing) is { } how ? Begin(material, thanks, what, phrasing.Say("how", 0, how)) : Begin(material, thanks, what);
        return material.Thread.HasLesson || LessonBefore.Of(material, phrasing) is not { IsGone: false } again
            ? beginning
            : beginning with { Paragraphs = [.. beginning.Paragraphs, new([again.Sentence()])] };
    }

    // What the student wrote is praised only where there is something to praise.
    private static IReadOnlyList<string> Thanks(LetterMaterial material)
    {
        var words = material.Batch.Reeds.Sum(reed => WordsIn(reed.Bothers) + WordsIn(reed.Likes));
        return
        [
            .. OpeningWordings.Thanks,
            .. words == 0 ? [] : OpeningWordings.ThanksForWords,
            .. words < ManyWords ? [] : OpeningWordings.ThanksForManyWords,
        ];
    }

    private static int WordsIn(string? text) => text?.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length ?? 0;

    private static IReadOnlyList<string> Looked(LetterMaterial material) =>
        material.Batch.Reeds.Where(reed => reed.IsHere).All(reed => material.LogOf(reed.Id).Live<Test>().Any())
            ? [.. OpeningWordings.LookedClosely, .. OpeningWordings.Looked]
            : OpeningWordings.Looked;

    // Only what the letter really holds is announced.
    private static IReadOnlyList<string>? How(LetterMaterial material, int here, Phrasing phrasing) => (here, material.Thread.HasLesson) switch
    {
        (1, false) when material.Playable.Count == 0 => null,
        (_, false) when material.Playable.Count == 0 => OpeningWordings.HowBare,
        (1, true) => OpeningWordings.HowOneWithPlan,
        (1, false) => OpeningWordings.HowOne,
        (_, true) when HasGood(material, phrasing) => [.. OpeningWordings.HowWithGood, .. OpeningWordings.HowWithPlan],
        (_, true) => OpeningWordings.HowWithPlan,
        _ => OpeningWordings.How,
    };

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
        var work = logs.SelectMany(log => FirstSaid(log, entry => entry is Adjustment { Prepares: false })).DefaultIfEmpty(DateTimeOffset.MaxValue).Min();
        return logs.TrueForAll(log => FirstSaid(log, entry => entry is Test).Any(tried => tried < work));
    }

    // A wording that was mended later says nothing about when the thing itself happened.
    private static IEnumerable<DateTimeOffset> FirstSaid(BenchLog log, Func<BenchEntry, bool> sort) =>
        log.Facts.Where(fact => fact.Now is { } now && sort(now)).Select(fact => fact.Chain[0].RecordedAt);

    internal static LetterBlock? DoneWell(LetterMaterial material, Phrasing phrasing)
    {
        var sentences = Named(material, phrasing).ToList();
        sentences.AddRange(Others(material).Select((group, index) => Good(material, group.Key, [.. group], index + 1, phrasing)));
        sentences.AddRange(LessonBefore.Of(material, phrasing) is { IsGone: true } gone ? [gone.Sentence()] : Array.Empty<LetterSentence>());
        if (sentences.Count == 0)
        {
            return null;
        }

        sentences.Insert(0, LetterSentence.Plain(phrasing.Say("good-first", 0, sentences.Count > 1 ? OpeningWordings.GoodFirst : OpeningWordings.GoodFirstAlone)));
        if (sentences.Count > 2 && phrasing.OnceIn("good-end", 2))
        {
            sentences.Add(LetterSentence.Plain(phrasing.Say("good-end", 0, OpeningWordings.GoodEnd)));
        }

        return new LetterBlock("done-well", BlockKind.DoneWell, [new(sentences)]) { Heading = "What you do well" };
    }

    private static bool HasGood(LetterMaterial material, Phrasing phrasing) =>
        material.Thread.StrengthWords is not null || FindingWording.Of(material.Thread.StrengthKind) is not null || Others(material).Any() || LessonBefore.Of(material, phrasing) is { IsGone: true };

    private static IEnumerable<LetterSentence> Named(LetterMaterial material, Phrasing phrasing)
    {
        var thread = material.Thread;
        var having = Strengths(material).Where(strength => strength.Finding.FindingKind == thread.StrengthKind).ToList();
        if (thread.StrengthWords is { } words)
        {
            List<EntryId> roots = [.. having.Select(strength => strength.Fact.Root)];
            yield return new(Prose.Sentence(words), roots);
            if (material.Batch.Reeds.Count(reed => reed.IsHere) > 1 && SeenIn.Reeds(thread.StrengthEvidence, Numbers(material, having), material.Batch.Reeds.Count(reed => reed.IsHere)) is { } where)
            {
                yield return new(phrasing.Say("strength-seen", 0, OpeningWordings.SeenIn, ("where", where)), roots);
            }
        }
        else if (thread.StrengthKind is { } kind && FindingWording.Of(kind) is not null)
        {
            yield return Good(material, kind, having, 0, phrasing);
        }
    }

    private static LetterSentence Good(
        LetterMaterial material, FindingKindId kind, List<FindingNow> having, int turn, Phrasing phrasing)
    {
        var wording = FindingWording.Of(kind)!;
        List<EntryId> roots = [.. having.Select(strength => strength.Fact.Root)];
        var numbers = Numbers(material, having);
        var where = numbers.Count == 0 ? null : SeenIn.Reeds(numbers, material.Batch.Reeds.Count(reed => reed.IsHere));
        var (what, shows) = FindingWordsOf(kind, wording, turn, phrasing);
        return new(
            shows is null ? Prose.Sentence(where is null ? what : $"{where} {what}")
            : where is null ? phrasing.Say("good", turn, OpeningWordings.Good, ("what", what), ("shows", shows))
            : phrasing.Say("good-in", turn, OpeningWordings.GoodInReeds, ("where", where), ("what", what), ("shows", shows)),
            roots);
    }

    private static List<int> Numbers(LetterMaterial material, List<FindingNow> having)
    {
        var roots = having.Select(strength => strength.Fact.Root).ToHashSet();
        return [.. material.Batch.Reeds.Where(reed => material.LogOf(reed.Id).Findings.Any(finding => roots.Contains(finding.Fact.Root))).Select(reed => reed.Number)];
    }

    // What a fault does is no praise.
    private static (string What, string? Shows) FindingWordsOf(FindingKindId kind, FindingWording wording, int turn, Phrasing phrasing)
    {
        var what = phrasing.Clause("good-" + kind.Value, turn, [wording.What], false);
        return (what, FindingCatalogue.Find(kind)?.Usually == FindingCharacter.Strength && wording.Shows is { } shows
            ? phrasing.Clause("good-shows-" + kind.Value, turn, [shows], false)
            : null);
    }

    internal static LetterBlock? Arrival(LetterMaterial material, Phrasing phrasing)
    {
        var batch = material.Batch;
        List<LetterSentence> sentences = [.. batch.Mismatches.Select(mismatch => LetterSentence.Plain(Tell(mismatch, material, phrasing)))];
        if (batch is { ArrivalNote: { } written, ArrivalNoteInLetter: true } && SpokenOf.Without(written, material.StudentName) is { } note)
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
        (string, string)[] slots = [("reed", reed), ("words", words)];
        return mismatch.Kind switch
        {
            MismatchKind.Missing => phrasing.Say("missing", mismatch.Number, ArrivalWordings.Missing, slots),
            MismatchKind.Extra => phrasing.Say("extra", mismatch.Number, ArrivalWordings.Extra, slots)
                + (material.LogOf(mismatch.Reed).Work.Any() || material.Batch.Reeds.Any(other => other.Id == mismatch.Reed && !other.MayBePlayed)
                    ? ""
                    : " " + phrasing.Say("extra-left", mismatch.Number, ArrivalWordings.ExtraLeft)),
            MismatchKind.Damaged => phrasing.Say("damaged", mismatch.Number, ArrivalWordings.Damaged, slots),
            MismatchKind.Damp => phrasing.Say("damp", mismatch.Number, ArrivalWordings.Damp, slots),
            _ => phrasing.Say("mould", mismatch.Number, CautionWordings.MouldOnArrival, slots)
                + (material.Batch.Reeds.Count > 1 ? " " + phrasing.Say("others-dry", mismatch.Number, ArrivalWordings.OthersDry) : ""),
        };
    }

    /// <summary>The kinds of strength that the beginning of the letter explains: after that they are only named.</summary>
    internal static HashSet<FindingKindId> Told(LetterMaterial material) =>
        [.. Others(material).Select(group => group.Key), .. material.Thread is { StrengthWords: null, StrengthKind: { } kind } ? [kind] : Array.Empty<FindingKindId>()];

    private static IEnumerable<IGrouping<FindingKindId, FindingNow>> Others(LetterMaterial material) => Strengths(material)
        .Where(strength => strength.Finding.FindingKind != material.Thread.StrengthKind && FindingWording.Of(strength.Finding.FindingKind) is not null)
        .GroupBy(strength => strength.Finding.FindingKind)
        .OrderByDescending(group => group.Count())
        .Take(2);

    private static List<FindingNow> Strengths(LetterMaterial material) =>
    [
        .. material.Batch.Reeds.SelectMany(reed => material.LogOf(reed.Id).Findings)
            .Where(finding => finding.Finding is { Character: FindingCharacter.Strength, Arose: not Arose.CausedByTheWork }),
    ];
}
