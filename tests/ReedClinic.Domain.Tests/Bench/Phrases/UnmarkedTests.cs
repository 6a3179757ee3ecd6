using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Bench.Phrases.Judging;
using ReedClinic.Domain.Reeds;
using ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Things said one after another without a mark, blades by their letters, and deeds that may be none.</summary>
public sealed class UnmarkedTests
{
    [Theory]
    [InlineData("crow is b flat effort far too hard", "test", "test")]
    [InlineData("new cork on low c speaks at once", "adjustment", "test")]
    public void What_is_said_without_a_mark_is_as_many_entries_as_are_said(string phrase, params string[] kinds)
    {
        Assert.Equal(kinds, Kinds(phrase));
        Assert.NotEqual(kinds, TaughtPhrase.ByRules(phrase, PhraseCorpus.Context([])).Entries.Select(entry => PhraseCorpus.LineOf(entry).Kind));
    }

    [Theory]
    [InlineData("two strokes off the UB wings", Blades.Upper)]
    [InlineData("u.b. wings 2 strokes", Blades.Upper)]
    [InlineData("wings, l.b.: two strokes", Blades.Lower)]
    [InlineData("LB wings, two strokes", Blades.Lower)]
    public void Two_letters_name_a_blade(string phrase, Blades blade) =>
        Assert.Equal((EntryKind.Adjustment, blade), PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(entry => (entry.Kind, entry.Slots.Blades)).Single());

    [Theory]
    [InlineData("crow Lb")]
    [InlineData("sub-bass")]
    public void Letters_within_a_word_name_none(string phrase) =>
        Assert.DoesNotContain(Tokenizer.Cut(phrase), token => token.Text is "upper");

    [Fact]
    public void A_deed_that_may_be_none_says_so_and_others_do_not()
    {
        var deeds = PhraseCorpus.All.SelectMany(labelled => PhraseCorpus.Hear(labelled).Entries).Where(entry => entry.Kind is EntryKind.Adjustment).ToList();
        var doubted = deeds.Count(entry => entry.Doubts.Contains(Doubt.Done));

        Assert.InRange(doubted, 1, deeds.Count / 3);
        Assert.DoesNotContain(PhraseCorpus.All.SelectMany(labelled => PhraseCorpus.Hear(labelled).Entries), entry => entry.Kind is not EntryKind.Adjustment && entry.Doubts.Contains(Doubt.Done));
        Assert.DoesNotContain(Doubt.Done, PhraseReader.Read("clipped a hair", PhraseCorpus.Context([])).Entries.Single().Doubts);
    }

    [Fact]
    public void A_false_deed_in_doubt_is_counted_apart()
    {
        var labelled = PhraseCorpus.Read("= clip\nnote\n\n= clip\nadjustment kind=clip zone=TipEdge");
        var sure = PhraseScore.Of(labelled, Read([]));
        var unsure = PhraseScore.Of(labelled, Read([Doubt.Done]));

        Assert.Equal((1, 1, 0), (sure.FalseAdjustments, sure.UndoubtedFalseAdjustments, sure.Doubted));
        Assert.Equal((1, 0, 1), (unsure.FalseAdjustments, unsure.UndoubtedFalseAdjustments, unsure.Doubted));
    }

    [Fact]
    public void Where_breaths_meet_a_new_thing_begins_and_nowhere_else()
    {
        var breaths = string.Join('\n', Enumerable.Repeat("a clipped a hair | t crow c", 20));
        var judge = new Judge(Teacher.Read(new Teacher([("one", PhraseCorpus.Read("= clip\nadjustment kind=clip zone=TipEdge"))], "@ note\nI'll clip\n", breaths, []).Judge([])));
        var tokens = Tokenizer.Cut("clipped a hair crow c");
        var items = Scanner.Scan(tokens);

        Assert.Equal([3], Enumerable.Range(1, tokens.Count - 1).Where(at => judge.Begins(tokens, items, 0, at)));
    }

    private static Func<string, PhraseContext, PhraseReading> Read(IReadOnlyList<Doubt> doubts) => (text, _) => new PhraseReading(
        text, [new ReadEntry(new TextSpan(0, text.Length), EntryKind.Adjustment, new ReadSlots { Kind = "clip", Zone = Zone.TipEdge }, doubts)], []);

    private static IEnumerable<string> Kinds(string phrase) => PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries.Select(entry => PhraseCorpus.LineOf(entry).Kind);
}
