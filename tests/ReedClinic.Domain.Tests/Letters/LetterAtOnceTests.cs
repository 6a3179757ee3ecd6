using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter says a thing once, as sure as the log is of it, and nothing beside the purpose. Read over many invented batches.</summary>
public sealed partial class LetterAtOnceTests
{
    private static readonly IReadOnlyList<(InventedBatch Batch, LetterDraft Letter)> Drafts =
        [.. Enumerable.Range(1, 250).Select(seed => InventedBatch.Of(seed)).Select(batch => (batch, LetterComposer.Compose(batch.Scene.Material)))];

    [Fact]
    public void What_is_only_suspected_is_no_more_than_suspected_in_the_lesson()
    {
        var doubted = 0;
        foreach (var (batch, letter) in Drafts.Where(draft => draft.Batch.Scene.Thread.LessonKind is not null))
        {
            var found = batch.Scene.Batch.Reeds.Select(reed => (reed.Number, Findings: batch.Scene.Material.LogOf(reed.Id).Findings
                .Where(one => one.Finding.FindingKind == batch.Scene.Thread.LessonKind && one.Finding is { Character: FindingCharacter.Fault, Arose: not Arose.CausedByTheWork }).ToList()))
                .Where(reed => reed.Findings.Count > 0).ToList();
            if (found.Exists(reed => reed.Findings.TrueForAll(one => one.Finding.Certainty == Certainty.Suspected)))
            {
                Assert.Matches("suspect|suspicion|not (certain|sure)", letter.Blocks.Single(block => block.Kind == BlockKind.Lesson).Text);
                doubted++;
            }
        }

        Assert.InRange(doubted, 20, 250);
    }

    [Fact]
    public void What_is_counted_as_done_well_over_time_is_told_in_the_letter() => Assert.Empty(Drafts.SelectMany(draft =>
    {
        var told = draft.Letter.Blocks.SelectMany(Sentences).SelectMany(sentence => sentence.From).ToHashSet();
        return draft.Batch.Scene.Batch.Reeds.Where(reed => reed.IsHere).SelectMany(reed => draft.Batch.Scene.Material.LogOf(reed.Id).Findings)
            .Where(found => found.Finding is { Character: FindingCharacter.Strength, Arose: not Arose.CausedByTheWork } && !told.Contains(found.Fact.Root))
            .Select(found => found.Finding.FindingKind.Value);
    }).ToList());

    [Fact]
    public void Of_a_reed_whose_cane_is_to_go_nothing_is_to_be_left_alone() => Assert.Empty(Reeds(VerdictKind.NotToBeSaved, 15).SelectMany(reed =>
        reed.Letter.Blocks.Where(block => block.Kind == BlockKind.ReedUse && block.Reed == reed.Log.Reed).SelectMany(Sentences)
            .Where(sentence => reed.Log.Log.LeftAlone.Any(left => sentence.From.Contains(left.Root))).Select(sentence => sentence.Text)).ToList());

    [Fact]
    public void That_a_reed_goes_home_as_it_came_is_said_with_what_was_not_done() => Assert.Empty(Reeds(VerdictKind.LeftAsItCame, 50)
        .Select(reed => reed.Letter.Blocks.Single(block => block.Kind == BlockKind.ReedStory && block.Reed == reed.Log.Reed).Paragraphs[^1].Sentences
            .Where(sentence => sentence.From.Contains(reed.Log.Log.Verdict!.Root) && !reed.Batch.Typed.Any(typed => sentence.Text.StartsWith(typed, StringComparison.Ordinal)))
            .Select(sentence => sentence.Text).ToList())
        .Where(said => said.Count != 1).Select(said => string.Join(' ', said)).ToList());

    [Theory]
    [InlineData("into the instrument")]
    [InlineData("slip in the case")]
    [InlineData("Take turns")]
    public void How_reeds_are_kept_is_said_once(string words) => Assert.DoesNotContain(
        Drafts.Select(draft => string.Join('\n', draft.Letter.Blocks.Where(block => block.Kind is BlockKind.CheckYourself or BlockKind.Plan or BlockKind.Care).Select(block => block.Text))),
        said => said.Split(words).Length > 2);

    [Fact]
    public void A_question_that_was_answered_in_the_same_words_is_answered_once() => Assert.Empty(Drafts.SelectMany(draft =>
        draft.Batch.Scene.Batch.Questions.Select(question => question.Answer!).Distinct().Where(answer =>
            draft.Letter.Blocks.Where(block => block.Kind is BlockKind.Answers or BlockKind.ReedAnswers).SelectMany(block => block.Paragraphs)
                .Count(paragraph => paragraph.Text.Contains(answer, StringComparison.Ordinal)) != 1)).ToList());

    [Fact]
    public void A_word_is_explained_by_a_phrase_of_its_own_kind() => Assert.DoesNotContain(
        Drafts.SelectMany(draft => draft.Letter.Blocks.SelectMany(Sentences)).Select(sentence => sentence.Text), text => OtherKind().IsMatch(text));

    private static List<(InventedBatch Batch, LetterDraft Letter, (ReedId Reed, BenchLog Log) Log)> Reeds(VerdictKind verdict, int fewest)
    {
        var reeds = Drafts.SelectMany(draft => draft.Batch.Scene.Batch.Reeds.Select(reed => (draft.Batch, draft.Letter, (reed.Id, Log: draft.Batch.Scene.Material.LogOf(reed.Id)))))
            .Where(reed => reed.Item3.Log.Verdict?.Now.VerdictKind == verdict).ToList();
        Assert.InRange(reeds.Count, fewest, 1000);
        return reeds;
    }

    private static IEnumerable<LetterSentence> Sentences(LetterBlock block) => block.Paragraphs.SelectMany(paragraph => paragraph.Sentences);

    [GeneratedRegex(@"“overlap”,? (I mean|means|stands for|is|is used for) one |“crow”,? (I mean|means|stands for|is|is used for) blow |[Cc]row \([^)]*\) it with your lips")]
    private static partial Regex OtherKind();
}
