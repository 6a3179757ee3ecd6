using System.Security.Cryptography;
using System.Text;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>The labelled phrases against the reader; README.md says how each figure is counted.</summary>
public sealed class OpenPhraseTests(ITestOutputHelper output)
{
    /// <summary>A file with the sealed phrases, once they may be looked at.</summary>
    private const string SealedVariable = "REEDCLINIC_SEALED_PHRASES";

    [Theory]
    [InlineData("open.txt", 180)]
    [InlineData("sealed.txt", 180)]
    [InlineData("second-open.txt", 120)]
    [InlineData("second-sealed.txt", 120)]
    [InlineData("third-a.txt", 120)]
    [InlineData("third-b.txt", 120)]
    [InlineData("third-c.txt", 120)]
    [InlineData("twelfth-s.txt", 260)]
    [InlineData("thirteenth.txt", 260)]
    public void The_phrases_that_may_be_looked_at_are_understood_as_they_were_labelled(string file, int phrases)
    {
        var score = PhraseScore.Of(PhraseCorpus.InFile(file));
        Tell(score);

        Assert.Equal(phrases, score.Phrases);
        Assert.Equal(0, score.FalseAdjustments);
        Assert.True(score.Kind >= 0.97, score.ToString());
        Assert.True(score.Slots >= 0.90, score.ToString());
        Assert.True(score.AdjustmentsRecalled >= 0.90, score.ToString());
    }

    [Theory]
    [InlineData("fourth-e.txt", 240)]
    [InlineData("fourth-f.txt", 240)]
    [InlineData("fourth-g.txt", 240)]
    [InlineData("fourth-h.txt", 240)]
    [InlineData("fourth-s.txt", 240)]
    [InlineData("fifth-i.txt", 240)]
    [InlineData("fifth-j.txt", 240)]
    [InlineData("fifth-k.txt", 240)]
    [InlineData("fifth-l.txt", 240)]
    [InlineData("fifth-s.txt", 240)]
    [InlineData("sixth-n.txt", 240)]
    [InlineData("sixth-o.txt", 240)]
    [InlineData("seventh-p.txt", 320)]
    [InlineData("seventh-q.txt", 320)]
    [InlineData("seventh-r.txt", 320)]
    [InlineData("seventh-s.txt", 260)]
    [InlineData("seventh-t.txt", 340)]
    [InlineData("seventh-u.txt", 340)]
    [InlineData("eighth-x.txt", 169)]
    [InlineData("ninth-b.txt", 300)]
    [InlineData("ninth-c.txt", 300)]
    [InlineData("ninth-s.txt", 260)]
    [InlineData("tenth-s.txt", 260)]
    public void Phrases_that_only_the_judge_was_taught_with_are_understood_better_than_by_the_rules(string file, int phrases)
    {
        var score = PhraseScore.Of(PhraseCorpus.InFile(file));
        var ruled = PhraseScore.Of(PhraseCorpus.InFile(file), (text, context) => PhraseReader.Read(text, context, null));
        Tell(score);
        output.WriteLine($"by the rules alone: {ruled}");

        Assert.Equal(phrases, score.Phrases);
        Assert.InRange(score.FalseAdjustments, 0, Math.Min(2, ruled.FalseAdjustments));
        Assert.Equal(0, score.UndoubtedFalseAdjustments);
        Assert.True(score.Kind >= 0.90, score.ToString());
        Assert.True(score.Slots >= (file is "seventh-u.txt" ? 0.84 : 0.87), score.ToString());
        Assert.True(score.AdjustmentsRecalled >= ruled.AdjustmentsRecalled, score.ToString());
    }

    [Fact]
    public void Phrases_of_our_own_are_understood_as_they_were_labelled()
    {
        var score = PhraseScore.Of(PhraseCorpus.InFile("own.txt"));
        Tell(score);

        Assert.InRange(score.Phrases, 400, int.MaxValue);
        Assert.InRange(score.Exact, score.Phrases * 99 / 100, score.Phrases);
        Assert.Equal(score.Phrases, PhraseScore.Of(PhraseCorpus.InFile("own.txt"), (text, context) => PhraseReader.Read(text, context, null)).Exact);
    }

    [Fact]
    public void What_only_sounds_like_a_deed_is_never_an_adjustment()
    {
        var phrases = File.ReadAllLines(Path.Combine(AppContext.BaseDirectory, "Bench", "Phrases", "never.txt"));

        Assert.InRange(phrases.Length, 190, int.MaxValue);
        Assert.All(phrases, phrase => Assert.DoesNotContain(
            PhraseReader.Read(phrase, PhraseCorpus.Context([])).Entries, entry => entry.Kind is EntryKind.Adjustment));
    }

    /// <summary>Words that nobody knows end nothing that was found: they are kept.</summary>
    [Theory]
    [InlineData("sides of the heart too thin", "blorp the wibble")]
    [InlineData("sides of the heart too thin", "grumble the wibble")]
    [InlineData("left corner of the upper blade too thick", "blorp grumble")]
    public void Unknown_words_end_no_finding(string before, string phrase) =>
        Assert.DoesNotContain(PhraseReader.Read(phrase, PhraseCorpus.Context([before])).Entries, entry => entry.Kind is EntryKind.FindingEnded);

    [Theory]
    [InlineData("kind", "unsure which finding was meant")]
    [InlineData("kind", "unsure which work it was")]
    [InlineData("step", "unsure which test or which word of its scale was meant")]
    [InlineData("zone", "no place was said, so the usual one was taken")]
    public void What_the_judge_named_by_itself_and_is_not_sure_of_is_shown_slot_by_slot(string slot, string words) => Assert.Contains(
        new Doubt(slot, words),
        PhraseCorpus.All.SelectMany(labelled => PhraseCorpus.Hear(labelled).Entries)
            .Concat(PhraseReader.Read("the tip seems tired", PhraseCorpus.Context([])).Entries).SelectMany(entry => entry.Doubts));

    [Fact]
    public void The_sealed_phrases_are_scored_when_their_file_is_given_and_is_the_one_that_was_sealed()
    {
        var expected = SealedHashes();
        Assert.All(expected, hash => Assert.Equal(64, hash.Length));
        if (Environment.GetEnvironmentVariable(SealedVariable) is not { Length: > 0 } path)
        {
            Assert.False(IsSealed(Encoding.UTF8.GetBytes("= crow C\ntest test=Crow pitch=C\n"), expected));
            return;
        }

        var bytes = File.ReadAllBytes(path);
        Assert.True(IsSealed(bytes, expected), "This isn't the file that was sealed.");
        var score = PhraseScore.Of(PhraseCorpus.Read(Encoding.UTF8.GetString(bytes)));
        output.WriteLine(score.ToString());
        Assert.Equal(0, score.FalseAdjustments);
        Assert.True(score.Kind >= 0.97, score.ToString());
        Assert.True(score.Slots >= 0.90, score.ToString());
        Assert.True(score.AdjustmentsRecalled >= 0.90, score.ToString());
    }

    [Fact]
    public void A_wrong_kind_a_wrong_slot_and_an_adjustment_too_many_are_counted()
    {
        var labelled = PhraseCorpus.Read("""
            = tip too thick
            note

            = I'll clip
            note

            = clipped a hair
            note

            = crow C
            test test=Crow pitch=B
            """);

        var score = PhraseScore.Of(labelled);

        Assert.Equal(2 / 4.0, score.Kind);
        Assert.Equal(1 / 2.0, score.Slots);
        Assert.Equal(1, score.FalseAdjustments);
        Assert.Equal(1, score.Exact);
        Assert.Contains("tip too thick", score.Differences, StringComparison.Ordinal);
    }

    private static string[] SealedHashes() => [.. Directory.GetFiles(Path.Combine(AppContext.BaseDirectory, "Bench", "Phrases"), "*-sealed.sha256").Order(StringComparer.Ordinal).Select(file => File.ReadAllText(file).Split(' ')[0])];

    private static bool IsSealed(byte[] bytes, string[] hashes) => hashes.Contains(Convert.ToHexStringLower(SHA256.HashData(bytes)));

    private void Tell(PhraseScore score)
    {
        output.WriteLine(score.Differences);
        output.WriteLine(score.ToString());
    }
}
