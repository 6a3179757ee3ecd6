using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>Whatever a batch holds, a letter comes of it, and what was typed stands in it as it was typed.</summary>
public sealed class LetterHostileTests
{
    private static readonly string LongWord = string.Concat(Enumerable.Repeat("reed", 25));

    public static TheoryData<string> Typed =>
    [
        "🎶🪵 a thump 👩🏽‍🎤, then nothing", "נשמע חנוק בבוקר", "يبدأ متأخراً قليلاً", "{a|b} [is/was] <what> <mark>", "the “tip (of the heart” and <reeds>",
        string.Concat(Enumerable.Repeat("🎶", 25)) + " so", "Ωμέγα: ǆ ﬀ e\u0301 — “quoted”", "it's 'so' & <b>so</b>",
    ];

    [Theory, MemberData(nameof(Typed))]
    public void What_was_typed_stands_in_the_letter_letter_for_letter(string words)
    {
        var scene = new LetterScene(3, change: form =>
        {
            form.Questions = words;
            foreach (var (reed, index) in form.Reeds.Select((reed, index) => (reed, index)))
            {
                (reed.Bothers, reed.Likes, reed.HowToRecognise) = (words, words, FormattableString.Invariant($"{words} {index + 1}"));
            }
        })
        {
            Student = words,
        };
        for (var number = 1; number <= 3; number++)
        {
            scene.Arrive(number, new ReedArrival(Presence.Here, words, Damage: words, Fitness: Fitness.Fit));
            var found = scene.Log(number, Finding.Of(new("tip-long"), FindingCharacter.Fault, new Place(Zone.Rooftop), words: words));
            scene.Log(number, Adjustment.Of(new("something-else"), new Place(Zone.Rails), words: words));
            scene.Log(number, Adjustment.Of(new("clip"), new Place(Zone.TipEdge), new Amount(null, null, words)));
            scene.Log(number, FindingEnded.Of(found, FindingEnding.Better, words));
            scene.Log(number, LeaveAlone.Of(new Place(Zone.Spine), words));
            scene.Log(number, Stopped.Of(words));
            scene.Log(number, Verdict.Of(VerdictKind.StoppedToProtectIt, words));
        }

        scene.Batch.Questions[0].AnswerWith(words, scene.Batch.SubmittedAt);
        scene.Thread = new LetterThread(new("tip-long"), words, "In all three reeds.", null, words, null, words);

        var letter = LetterComposer.Compose(scene.Material);

        var text = string.Join("\n", letter.Blocks.Select(block => block.Text));
        Assert.InRange(text.Split(words[1..], StringSplitOptions.None).Length - 1, 20, 60);
        Assert.All(text.EnumerateRunes(), rune => Assert.NotEqual(0xFFFD, rune.Value));
        Assert.All(letter.Reeds.SelectMany(reed => reed.Marks), mark => Assert.All(mark.Words.EnumerateRunes(), rune => Assert.NotEqual(0xFFFD, rune.Value)));
    }

    [Fact]
    public void Twelve_reeds_with_long_words_and_everything_the_matter_make_a_letter()
    {
        var scene = new LetterScene(12, change: form => form.Reeds[0].Bothers = LongWord + " " + LongWord) { Student = LongWord };
        for (var number = 1; number <= 12; number++)
        {
            scene.Arrive(number);
            foreach (var kind in FindingCatalogue.All)
            {
                scene.Log(number, Finding.Of(kind.Id, kind.Usually, new Place(kind.Zone), words: kind.Usually == FindingCharacter.Taste ? LongWord : null));
            }

            foreach (var kind in AdjustmentCatalogue.All)
            {
                scene.Log(number, Adjustment.Of(kind.Id, new Place(kind.Zone)));
            }
        }

        var letter = LetterComposer.Compose(scene.Material);

        Assert.Equal(12, letter.Blocks.Count(block => block.Kind == BlockKind.ReedStory));
        Assert.Contains("twelve reeds", letter.Blocks[0].Text, StringComparison.Ordinal);
    }

    [Fact]
    public void A_batch_of_which_nothing_is_known_makes_a_letter_that_says_nothing_of_findings()
    {
        var scene = new LetterScene(12) { Thread = LetterThread.Nothing };
        for (var number = 1; number <= 12; number++)
        {
            scene.Arrive(number);
        }

        var letter = LetterComposer.Compose(scene.Material);

        Assert.DoesNotContain(letter.Blocks, block => block.Kind is BlockKind.DoneWell or BlockKind.Lesson or BlockKind.Plan or BlockKind.ReedNow or BlockKind.ReedUse);
        Assert.All(letter.Blocks.Where(block => block.Kind == BlockKind.ReedStory), block => Assert.Single(block.Paragraphs));
    }
}
