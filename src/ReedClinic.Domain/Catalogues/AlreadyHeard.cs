using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Outcomes;
using ReedClinic.Domain.Pitch;

namespace ReedClinic.Domain.Catalogues;

/// <summary>Whether a name that somebody gives to an entry of their own is understood at the bench without it.</summary>
internal static class AlreadyHeard
{
    // Words that say nothing by themselves.
    private static readonly HashSet<string> Small = ["the", "a", "an", "of", "at", "on", "in", "off", "to", "with", "by", "for", "and", "is", "it", "its", "very", ""];

    /// <summary>What the reader of phrases takes the whole name for; null where it doesn’t know a word of it, or anything is in doubt.</summary>
    /// <param name="name">The name.</param>
    internal static string? As(string name)
    {
        var context = new PhraseContext(BenchLog.Empty, Tuning.Standard);
        var reading = PhraseReader.Read(name, context);
        return HasNewWord(name) || reading.Kept.Count > 0 || reading.Entries is not [{ HasAside: false, Doubts.Count: 0 } read] || read.ToEntry(context) is not Outcome<BenchEntry>.Done(var entry)
            ? null
            : entry switch
            {
                Finding { FindingKind.IsInWords: false } found => $"“{FindingCatalogue.NameOf(found.FindingKind)}”",
                LookedFor { FindingKind.IsInWords: false } looked => $"“no {FindingCatalogue.NameOf(looked.FindingKind)}”",
                Adjustment { AdjustmentKind.IsInWords: false } work => $"“{AdjustmentCatalogue.NameOf(work.AdjustmentKind)}”",
                Test { StepWord: { } word } test => $"“{TestScale.Of(test.TestKind).Name}: {word}”",
                _ => null,
            };
    }

    // The reader passes over what it doesn't know where the rest makes sense: such a name says something of its own.
    private static bool HasNewWord(string name)
    {
        var tokens = Tokenizer.Cut(name);
        var known = Scanner.Scan(tokens).SelectMany(item => Enumerable.Range(item.First, item.Count)).ToHashSet();
        return tokens.Where((token, at) => !known.Contains(at)).Any(token => token.Kind is not (TokenKind.Break or TokenKind.Symbol) && !Small.Contains(token.Text));
    }
}
