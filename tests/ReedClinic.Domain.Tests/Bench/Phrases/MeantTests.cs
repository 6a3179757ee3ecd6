using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Outcomes;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Praise is never its opposite, a verdict is meant, an ending is of its own thing, and small words are no notes.</summary>
public sealed class MeantTests
{
    private static readonly string[] Worse = ["hollow", "thin", "will not speak", "late", "drops out", "wanders", "covered", "a little covered", "very edgy", "a little edgy", "thuds", "unsure", "breaks", "will not start softly", "needs a push"];

    [Theory]
    [InlineData("tone's nice, low notes warm")]
    [InlineData("tone dark and warm")]
    [InlineData("low notes warm and round")]
    [InlineData("low notes warm")]
    [InlineData("tone's lovely")]
    [InlineData("low notes round")]
    [InlineData("nice dark tone")]
    [InlineData("the low notes are lovely and warm")]
    [InlineData("warm low notes")]
    [InlineData("velvety low notes")]
    [InlineData("tone's sweet")]
    [InlineData("creamy sound")]
    [InlineData("round sound, not dull")]
    [InlineData("tone is dark but not covered")]
    [InlineData("dark, but not dull")]
    [InlineData("dark but not thin")]
    [InlineData("warm, not bright")]
    [InlineData("lovely dark sound")]
    [InlineData("lovely response")]
    public void Praise_of_a_sound_is_no_step_that_is_worse_and_no_finding(string phrase)
    {
        var read = Read(phrase);

        Assert.DoesNotContain(read, entry => Worse.Contains(entry.Slots.Step));
        Assert.DoesNotContain(read, entry => entry.Kind is EntryKind.Finding or EntryKind.LookedFor);
        Assert.Equal(phrase, string.Join(' ', read.Select(entry => entry.Said)));
    }

    [Theory]
    [InlineData("low notes rich")]
    [InlineData("low notes warm and round")]
    public void What_a_note_sounds_like_says_nothing_of_when_it_speaks(string phrase) => Assert.DoesNotContain(Read(phrase), entry => entry.Slots.Step is not null);

    [Theory]
    [InlineData("low notes warm but late", "late")]
    [InlineData("tone nice but hollow", "hollow")]
    [InlineData("sound warm, a bit thin", "thin")]
    [InlineData("nice, but the low notes are late", "late")]
    [InlineData("still late, those low notes", "late")]
    [InlineData("top end sings now", "holds")]
    [InlineData("sound full and round", "full")]
    public void What_is_said_beside_praise_is_still_heard(string phrase, string step) => Assert.Equal(step, Assert.Single(Read(phrase)).Slots.Step);

    [Theory]
    [InlineData("low notes good, high notes wander a bit", "speaks at once", "wanders")]
    [InlineData("high notes hold, low notes late", "holds", "late")]
    public void A_fault_behind_praise_of_another_test_is_one_of_its_own(string phrase, params string[] steps) => Assert.Equal(steps, Read(phrase).Select(entry => entry.Slots.Step));

    [Theory]
    [InlineData("tone lovely, bit bright")]
    [InlineData("nice and bright")]
    [InlineData("sound nice and bright")]
    [InlineData("low notes not nice")]
    public void What_another_scale_has_a_word_for_is_no_step_and_no_fault(string phrase) => Assert.Equal(EntryKind.Note, Assert.Single(Read(phrase)).Kind);

    [Theory]
    [InlineData("tone clean")]
    [InlineData("high notes clean and clear")]
    public void What_is_clean_in_a_sound_is_no_tonguing(string phrase) => Assert.DoesNotContain(Read(phrase), entry => entry.Slots.Test is TestKind.TonguedStarts);

    [Theory]
    [InlineData("plays pp now, no bump")]
    [InlineData("plays pp now")]
    [InlineData("plays all the way down to pp")]
    [InlineData("plays p now and no rattle")]
    [InlineData("improved response")]
    [InlineData("tone improved")]
    [InlineData("improved, low notes speak")]
    [InlineData("easier to play, improved")]
    [InlineData("plays better now")]
    public void How_a_reed_plays_is_no_verdict(string phrase)
    {
        var read = Read(phrase, "tip thick");

        Assert.DoesNotContain(read, entry => entry.Kind is EntryKind.Verdict or EntryKind.FindingEnded);
        Assert.Equal(phrase, Assert.Single(read).Said);
    }

    [Theory]
    [InlineData("hardly improved")]
    [InlineData("no improvement")]
    [InlineData("not improved")]
    [InlineData("not really improved")]
    [InlineData("hardly better than it came")]
    [InlineData("verdict: not improved")]
    public void What_is_denied_is_no_verdict(string phrase)
    {
        Assert.DoesNotContain(Read(phrase), entry => entry.Kind is EntryKind.Verdict);
        Assert.DoesNotContain(Read(phrase, "tip thick"), entry => entry.Kind is EntryKind.Verdict);
    }

    [Theory]
    [InlineData("improved")]
    [InlineData("much improved")]
    [InlineData("verdict: improved")]
    [InlineData("call it improved")]
    [InlineData("that'll do, improved")]
    [InlineData("done. improved")]
    [InlineData("it plays better than it came")]
    [InlineData("goes home better")]
    public void A_verdict_that_is_called_so_is_one(string phrase) => Assert.Contains(Read(phrase), entry => entry is { Kind: EntryKind.Verdict, Slots.Verdict: VerdictKind.Improved });

    [Theory]
    [InlineData("response better now", TestKind.LowResponse)]
    [InlineData("attack better", TestKind.TonguedStarts)]
    [InlineData("low notes better", TestKind.LowResponse)]
    public void What_responds_better_ends_no_praise(string phrase, TestKind test)
    {
        var read = Assert.Single(Read(phrase, "heart nicely kept"));

        Assert.Equal((EntryKind.Test, test, null), (read.Kind, read.Slots.Test, read.Slots.Step));
    }

    [Theory]
    [InlineData("tone better now")]
    [InlineData("much better")]
    [InlineData("better now")]
    public void Praise_that_stands_is_not_better(string phrase) => Assert.Equal(EntryKind.Note, Assert.Single(Read(phrase, "heart nicely kept")).Kind);

    [Fact]
    public void What_is_better_is_the_fault_and_not_the_praise_after_it() => Assert.Equal("tip-thick", Assert.Single(Read("much better", "tip thick", "heart nicely kept")).Slots.Kind);

    [Theory]
    [InlineData("no change", "heart nicely kept", "clipped a hair")]
    [InlineData("no change", "tip thick", "scraped windows 2 strokes")]
    [InlineData("no difference", "tip thick", "scraped windows 2 strokes")]
    [InlineData("no change", "windows uneven", "clipped a hair", "crow C")]
    public void No_change_after_work_is_of_that_work(string phrase, params string[] before) => Assert.Equal(EntryKind.Note, Assert.Single(Read(phrase, before)).Kind);

    [Fact]
    public void No_change_after_work_on_what_was_found_is_of_the_finding() =>
        Assert.Equal((EntryKind.FindingEnded, "tip-thick"), (Assert.Single(Read("no change", "tip thick", "thinned the tip one stroke")) is var read ? read : null)! is { } ended ? (ended.Kind, ended.Slots.Kind) : default);

    [Theory]
    [InlineData("crow is C. Next.", null)]
    [InlineData("next: crow is C", null)]
    [InlineData("tested, crow is C", null)]
    [InlineData("crow C, stable now", "crow C, stable now")]
    [InlineData("tip thick, ok next", null)]
    [InlineData("sound warm, a bit thin", "sound warm, a bit thin")]
    public void Small_words_beside_an_entry_are_no_notes_and_those_that_matter_stay_with_it(string phrase, string? words)
    {
        var reading = PhraseReader.Read(phrase, PhraseCorpus.Context([]));
        var entry = Assert.IsType<Outcome<BenchEntry>.Done>(Assert.Single(reading.Entries).ToEntry(PhraseCorpus.Context([]))).Value;

        Assert.Empty(reading.Kept);
        Assert.NotEqual(EntryKind.Note, entry.Kind);
        Assert.True(words is null || entry is Domain.Bench.Test { Words: { } kept } && kept == words, phrase);
    }

    [Theory]
    [InlineData("not yet")]
    [InlineData("next")]
    [InlineData("tested")]
    public void Small_words_alone_are_kept_as_they_were_typed(string phrase) => Assert.Equal(phrase, Assert.Single(Read(phrase)).Said);

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;
}
