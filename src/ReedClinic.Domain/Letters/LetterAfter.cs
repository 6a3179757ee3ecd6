using ReedClinic.Domain.Bench;

namespace ReedClinic.Domain.Letters;

/// <summary>What was written down at the bench after a letter was sent, and the letter doesn’t tell.</summary>
public static class LetterAfter
{
    /// <summary>The facts of one reed that were said, said better or taken back since; what was both said and taken back since is none, nor is what was taken back and no letter tells.</summary>
    /// <param name="log">The reed’s log.</param>
    /// <param name="sentAt">When the letter was sent last.</param>
    /// <param name="letter">The letter as it stands: what a part that was written anew tells is in it.</param>
    public static IReadOnlyList<BenchFact> Of(BenchLog log, DateTimeOffset sentAt, LetterDraft letter)
    {
        ArgumentNullException.ThrowIfNull(log);
        ArgumentNullException.ThrowIfNull(letter);
        var told = letter.Blocks.SelectMany(block => block.Paragraphs).SelectMany(paragraph => paragraph.Sentences).SelectMany(sentence => sentence.From)
            .Concat(letter.Blocks.SelectMany(block => block.Rows).SelectMany(row => row.From)).ToHashSet();
        return
        [
            .. log.Facts.Where(fact => fact.Last is not (AdviceSetAside or CauseJudged)
                && (fact.Chain[0].RecordedAt > sentAt ? fact.Now is not null && !told.Contains(fact.Root) : fact.Chain[^1].RecordedAt > sentAt && (fact.Now is not null || told.Contains(fact.Root)))),
        ];
    }
}
