using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>What is the studio’s own is named as what it is, and explained once in the sentence that its owner wrote for students.</summary>
public sealed class LetterOwnEntryTests
{
    private const string Means = "The two shoulders stand apart, so air gets out between them.";
    private const string Does = "It lifts the last turns, so that the blades meet again.";

    private static readonly StudioEntry Gapped = Made(new StudioEntryWords(StudioEntryKind.Fault, "gapped shoulders", Means)
    {
        Zone = Zone.WholeReed,
        SeenBy = new TestCardId("look-plaque"),
        Steps = [new AdjustmentKindId("realign")],
    });

    private static readonly StudioEntry Tease = Made(new StudioEntryWords(StudioEntryKind.Adjustment, "Tease the thread up", Does)
    {
        Zone = Zone.Thread,
        Undo = Reversible.Yes,
        Caution = "Gently",
    });

    [Fact]
    public void A_fault_of_the_studios_own_is_named_and_explained_in_its_owners_sentence_once()
    {
        var letter = Letter(reeds: 2, tease: 0);

        Assert.Contains("“gapped shoulders”", Story(letter, 1), StringComparison.Ordinal);
        Assert.Contains(Means, Story(letter, 1), StringComparison.Ordinal);
        Assert.Contains("“gapped shoulders”", Story(letter, 2), StringComparison.Ordinal);
        Assert.DoesNotContain(Means, Story(letter, 2), StringComparison.Ordinal);
        Assert.DoesNotContain(Sentences(letter), sentence => sentence.StartsWith("Gapped shoulders", StringComparison.Ordinal));
    }

    [Fact]
    public void Work_of_the_studios_own_is_told_as_done_and_never_as_an_order()
    {
        var letter = Letter(reeds: 1, tease: 2);

        Assert.Contains("did", Sentences(letter).First(sentence => sentence.Contains("“tease the thread up”", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.Contains("t does: it lifts the last turns, so that the blades meet again.", Story(letter, 1), StringComparison.Ordinal);
        Assert.Equal(2, Sentences(letter).Count(sentence => sentence.Contains("“tease the thread up”", StringComparison.Ordinal)));
        Assert.Single(Sentences(letter), sentence => sentence.Contains("does: it lifts", StringComparison.Ordinal));
        Assert.DoesNotContain(Sentences(letter), sentence => sentence.StartsWith("Tease", StringComparison.Ordinal));
    }

    [Fact]
    public void What_was_remarked_beside_a_name_is_said_after_it()
    {
        var scene = new LetterScene(1);
        scene.Arrive(1);
        scene.Log(1, Finding.Of(new(Gapped.Key), FindingCharacter.Fault, new Place(Zone.WholeReed), words: OwnId.Words("gapped shoulders", "only when it is wet")));

        Assert.Contains(" Only when it is wet.", Story(LetterComposer.Compose(scene.Material with { Own = Own }), 1), StringComparison.Ordinal);
        Assert.Contains("“gapped shoulders”", Story(LetterComposer.Compose(scene.Material), 1), StringComparison.Ordinal);
    }

    private static OwnKinds Own => StudioCatalogue.Of([Gapped, Tease]).Own;

    private static LetterDraft Letter(int reeds, int tease)
    {
        var scene = new LetterScene(reeds);
        for (var number = 1; number <= reeds; number++)
        {
            scene.Arrive(number);
            scene.Log(number, Finding.Of(new(Gapped.Key), FindingCharacter.Fault, new Place(Zone.WholeReed), words: "gapped shoulders"));
            for (var time = 0; time < tease; time++)
            {
                scene.Log(number, Adjustment.Of(new(Tease.Key), new Place(Zone.Thread), words: "Tease the thread up"));
                scene.Log(number, Test.Of(TestKind.Seal, 2));
            }
        }

        return LetterComposer.Compose(scene.Material with { Own = Own });
    }

    private static string Story(LetterDraft letter, int reed) => letter.Blocks.Single(block => block.Key == FormattableString.Invariant($"reed-{reed}-story")).Text;

    private static IEnumerable<string> Sentences(LetterDraft letter) => letter.Blocks.SelectMany(block => block.Paragraphs).SelectMany(part => part.Sentences).Select(one => one.Text);

    private static StudioEntry Made(StudioEntryWords words) =>
        Assert.IsType<Outcome<StudioEntry>.Done>(StudioEntry.Of(new StudioEntryId(LetterScene.Id()), words, [], default, default)).Value;
}
