using System.Text.RegularExpressions;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Tests.Letters.Drafts;

namespace ReedClinic.Domain.Tests.Letters;

/// <summary>A letter reads well aloud: no sentence stumbles over its own words. Read over many invented batches.</summary>
public sealed partial class LetterSoundTests
{
    private static readonly IReadOnlyList<string> Sentences =
        [.. Enumerable.Range(1, 150).Select(seed => InventedBatch.Of(seed)).SelectMany(batch => SaidSentences.Of(LetterComposer.Compose(batch.Scene.Material), batch.Typed)).Distinct()];

    [Fact]
    public void No_sentence_says_that_twice() => Assert.Empty(Sentences.Where(sentence => That().Count(InBrackets().Replace(sentence, "")) > 1).ToList());

    [Fact]
    public void No_explanation_stands_between_a_verb_and_its_object() => Assert.Empty(Sentences.Where(sentence => Split().IsMatch(sentence)).ToList());

    [GeneratedRegex(@"(?i)\bthat\b")]
    private static partial Regex That();

    [GeneratedRegex(@" \([^)]*\)")]
    private static partial Regex InBrackets();

    [GeneratedRegex(@"\) it\b(?! (is|was|has))")]
    private static partial Regex Split();
}
