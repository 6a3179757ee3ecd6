using CsCheck;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

public sealed class LetterComposerTests
{
    [Fact]
    public void A_letter_has_its_parts_in_order_and_begins_with_what_is_good()
    {
        var letter = LetterComposer.Compose(LetterScene.Usual().Material);

        Assert.Equal(
            [
                "greeting", "done-well", "answers", "reed-1-story", "reed-1-now", "reed-1-use", "reed-2-story", "reed-2-now",
                "reed-2-answers", "reed-2-use", "reed-3-story", "reed-3-now", "reed-3-use", "lesson", "habit", "check", "stroke",
                "plan", "care", "cautions", "closing",
            ],
            letter.Blocks.Select(block => block.Key));
        Assert.Equal("The Harbour Bench", letter.Studio);
        Assert.StartsWith("Dear Ines,", letter.Blocks[0].Text, StringComparison.Ordinal);
        Assert.EndsWith("Mara, at the harbour bench", letter.Blocks[^1].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Sentences_about_the_reed_name_the_entries_they_came_from()
    {
        var scene = LetterScene.Usual();
        var letter = LetterComposer.Compose(scene.Material);
        var log = scene.Material.LogOf(scene.Reed(1).Id);
        var corners = log.Findings.Single(finding => finding.Finding.FindingKind.Value == "tip-corners-thick");
        var story = Block(letter, "reed-1-story").Paragraphs.SelectMany(paragraph => paragraph.Sentences).ToList();

        var found = Assert.Single(story, sentence => sentence.From.SequenceEqual([corners.Fact.Root, corners.Ended!.Root]));
        Assert.Matches(@"(corners|ends) of the tip\b.* \(on the upper blade\)", found.Text);
        Assert.Contains(story, sentence => sentence.From.SequenceEqual([log.Verdict!.Root]));
        Assert.All(Block(letter, "reed-1-now").Rows, row => Assert.NotEmpty(row.From));
        Assert.Equal(3, Block(letter, "lesson").Paragraphs[0].Sentences[1].From.Count);
        Assert.Subset(scene.EntryIds.ToHashSet(), AllFrom(letter).ToHashSet());
    }

    [Fact]
    public void Before_and_now_stand_beside_each_other_as_musicians_say_them()
    {
        var rows = Block(LetterComposer.Compose(LetterScene.Usual().Material), "reed-1-now").Rows;

        Assert.Equal(["crow", "softest start"], rows.Select(row => row.Test));
        Assert.Equal(("high only; 20 cents above C", "high first, then low as well; at C"), (rows[0].Before, rows[0].Now));
        Assert.Equal(Movement.Nearer, rows[1].Movement);
    }

    [Fact]
    public void A_letter_with_everything_said_has_no_gap()
    {
        Assert.Empty(LetterComposer.Gaps(WithoutOpenRisks(LetterScene.Usual()).Material));
    }

    [Fact]
    public void Every_gap_is_named()
    {
        var scene = new LetterScene { Thread = LetterThread.Nothing };
        scene.Arrive(1);
        scene.Arrive(2, new ReedArrival(Presence.Missing));
        scene.Arrive(3, new ReedArrival(Presence.Here, Fitness: Fitness.Mould));
        scene.Log(1, Risk.Of("it may split"));
        scene.Log(1, Verdict.Of(VerdictKind.Improved));

        var gaps = LetterComposer.Gaps(scene.Material);

        Assert.Equal(
            [
                GapKind.UnansweredQuestion, GapKind.UnansweredQuestion, GapKind.ReedWithoutVerdict, GapKind.OpenRisk,
                GapKind.WorkNotInTheLog, GapKind.NoCommonLesson,
            ],
            gaps.Select(gap => gap.Kind));
        Assert.Equal(scene.Reed(3).Id, gaps[2].Reed);
        Assert.Equal(gaps.Count, gaps.Select(gap => gap.Key).Distinct().Count());
    }

    [Fact]
    public void What_was_missing_damaged_or_mouldy_is_told_and_mould_is_not_played()
    {
        var scene = new LetterScene();
        scene.Arrive(1, new ReedArrival(Presence.Here, Damage: "left corner chipped", Fitness: Fitness.Fit));
        scene.Arrive(2, new ReedArrival(Presence.Missing));
        scene.Arrive(3, new ReedArrival(Presence.Here, Fitness: Fitness.Mould));
        scene.Batch.AddExtra(new ReedId(LetterScene.Id()), "No tag, blue thread", scene.Batch.SubmittedAt);

        var letter = LetterComposer.Compose(scene.Material);

        var arrival = Block(letter, "arrival").Text;
        Assert.Contains("reed two", arrival, StringComparison.Ordinal);
        Assert.Contains("left corner chipped", arrival, StringComparison.Ordinal);
        Assert.Matches("mould on reed three|On reed three I found mould", arrival);
        Assert.Contains("blue thread", arrival, StringComparison.Ordinal);
        Assert.DoesNotContain(letter.Blocks, block => block.Key.StartsWith("reed-2", StringComparison.Ordinal));
        Assert.Contains("don’t play it", Block(letter, "reed-3-use").Text, StringComparison.Ordinal);
        Assert.DoesNotContain("Soak", Block(letter, "reed-3-use").Text, StringComparison.OrdinalIgnoreCase);
        Assert.Contains("closed bag", Block(letter, "cautions").Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_habit_is_always_perhaps_and_advice_only_means_that_nothing_was_taken()
    {
        var scene = new LetterScene(1, change: form => form.Reeds[0].Permission = "AdviseOnly");
        scene.Arrive(1);
        var letter = LetterComposer.Compose(scene.Material);

        Assert.StartsWith("Perhaps ", Block(letter, "habit").Text, StringComparison.Ordinal);
        Assert.Matches("advice only|left the cane alone|took nothing away|scraped nothing", Block(letter, "reed-1-story").Text);
    }

    [Fact]
    public void Exactly_one_reed_is_to_be_played_first_and_a_concert_reed_is_kept()
    {
        var scene = new LetterScene(3, change: form => form.Reeds[0].UsedFor = "Concert");
        for (var number = 1; number <= 3; number++)
        {
            scene.Arrive(number);
            scene.Log(number, Test.Of(TestKind.SoftestStart, 3));
            scene.Log(number, Verdict.Of(VerdictKind.Improved));
        }

        var letter = LetterComposer.Compose(scene.Material);

        Assert.Contains("concert", Block(letter, "reed-1-use").Text, StringComparison.Ordinal);
        Assert.Contains(" first", Block(letter, "reed-2-use").Text, StringComparison.Ordinal);
        Assert.DoesNotContain(letter.Blocks, block => block.Key == "reed-3-use" && block.Text.Contains("first", StringComparison.Ordinal));
    }

    [Fact]
    public void The_same_batch_gives_the_same_letter_and_other_batches_other_words()
    {
        var batch = LetterScene.Id();

        var one = Enumerable.Range(0, 2).Select(_ => Texts(LetterScene.Usual(batch))).Distinct();
        var many = Enumerable.Range(0, 20).Select(_ => Texts(LetterScene.Usual())).Distinct();

        Assert.Single(one);
        Assert.True(many.Count() > 15);
    }

    [Fact]
    public void Neighbouring_reeds_are_not_told_in_the_same_words()
    {
        var letter = LetterComposer.Compose(LetterScene.Usual().Material);
        var first = Block(letter, "reed-1-story").Paragraphs[1].Sentences[0].Text;
        var second = Block(letter, "reed-2-story").Paragraphs[1].Sentences[0].Text;

        Assert.NotEqual(first, second);
    }

    [Fact]
    public void Every_fault_of_the_catalogue_is_taught_in_at_most_five_steps_with_two_or_three_tests() =>
        Assert.All(FindingCatalogue.All.Where(kind => kind.Usually == FindingCharacter.Fault), kind =>
        {
            Assert.True(TeachingNote.HasOwn(kind.Id), kind.Id.Value);
            var note = TeachingNote.For(kind.Id);
            Assert.InRange(note.Checks.Count, 2, 3);
            Assert.InRange(note.Plan.Count, 1, TeachingNote.MostSteps);
        });

    // Common practice: a short scrape is one field behind the heart, with bark from there to the thread.
    [Fact]
    public void No_lesson_about_a_short_scrape_speaks_of_what_only_a_long_one_has()
    {
        string[] ofALongOne = ["window", "rail", "four windows", "each of the four,", "bark above the thread", "three millimetres of bark", "darkest {place|spot|part} {in front of the thread"];
        IEnumerable<string> Told(ScrapeStyle? scrape) => FindingCatalogue.All.Where(kind => kind.Usually == FindingCharacter.Fault)
            .Select(kind => TeachingNote.For(kind.Id, scrape)).SelectMany(note => note.Checks.Concat(note.Stroke ?? []).Concat(note.Plan)).Distinct();

        Assert.All(Told(ScrapeStyle.ShortScrape), words => Assert.All(ofALongOne, word => Assert.DoesNotContain(word, words, StringComparison.Ordinal)));
        Assert.All(ofALongOne[..2], word => Assert.Contains(Told(ScrapeStyle.LongScrape), words => words.Contains(word, StringComparison.Ordinal)));
        Assert.Equal(Told(ScrapeStyle.LongScrape), Told(null));
        Assert.All(FindingCatalogue.All.Where(kind => kind.Usually == FindingCharacter.Fault), kind => Assert.InRange(TeachingNote.For(kind.Id, ScrapeStyle.ShortScrape).Checks.Count, 2, 3));
    }

    [Fact]
    public void Whatever_the_log_says_a_letter_comes_of_it_and_rests_on_the_log_alone() =>
        Gen.Select(Gen.Int[0, FindingCatalogue.All.Count - 1].Array[0, 5], Gen.Int[0, AdjustmentCatalogue.All.Count - 1].Array[0, 6],
                Gen.Int[0, 13].Array[0, 6], Gen.Int[0, 7].Nullable(), Gen.Int[0, 3])
            .Sample((findings, works, tests, verdict, ending) =>
            {
                var scene = new LetterScene(1);
                scene.Arrive(1);
                foreach (var kind in findings.Select(index => FindingCatalogue.All[index]))
                {
                    var id = scene.Log(1, Finding.Of(kind.Id, kind.Usually, new Place(kind.Zone)));
                    scene.Log(1, FindingEnded.Of(id, (FindingEnding)ending));
                }

                foreach (var (work, index) in works.Select((work, index) => (work, index)))
                {
                    var kind = AdjustmentCatalogue.All[work];
                    scene.Log(1, Adjustment.Of(kind.Id, new Place(kind.Zone), new Amount(index + 1)));
                    if (index < tests.Length)
                    {
                        scene.Log(1, Test.Of((TestKind)tests[index], 0));
                    }
                }

                if (verdict is { } said)
                {
                    scene.Log(1, Verdict.Of((VerdictKind)said));
                }

                var letter = LetterComposer.Compose(scene.Material);
                Assert.Subset(scene.EntryIds.ToHashSet(), AllFrom(letter).ToHashSet());
                Assert.All(letter.Blocks.SelectMany(block => block.Paragraphs).SelectMany(p => p.Sentences), sentence =>
                {
                    Assert.DoesNotMatch(@"  |\.\.|\{|%| ,|\bbad\b|\bwrong\b|\bmistake\b|\bfail", sentence.Text);
                    Assert.NotEmpty(sentence.Text);
                });
                Assert.Equal(letter.Blocks.Count, letter.Blocks.Select(block => block.Key).Distinct().Count());
                Assert.All(letter.Blocks, block => Assert.InRange(block.Text.Length, 0, LetterBlock.LongestText));
            }, iter: 300);

    internal static LetterBlock Block(LetterDraft letter, string key) => letter.Blocks.Single(block => block.Key == key);

    private static LetterScene WithoutOpenRisks(LetterScene scene)
    {
        foreach (var reed in scene.Batch.Reeds)
        {
            var risk = scene.Material.LogOf(reed.Id).Risks.Single();
            scene.Log(reed.Number, RiskClosed.Of(risk.Fact.Root, RiskOutcome.DidNotHappen));
        }

        return scene;
    }

    private static IEnumerable<EntryId> AllFrom(LetterDraft letter) => letter.Blocks.SelectMany(block =>
        block.Paragraphs.SelectMany(paragraph => paragraph.Sentences).SelectMany(sentence => sentence.From)
            .Concat(block.Rows.SelectMany(row => row.From)));

    private static string Texts(LetterScene scene) =>
        string.Join('\n', LetterComposer.Compose(scene.Material).Blocks.Select(block => block.Text));
}
