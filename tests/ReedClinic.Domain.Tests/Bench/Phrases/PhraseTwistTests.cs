using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Tests.Bench.Phrases.Teaching;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Phrases changed in a way that changes what they say in a known way, or not at all.</summary>
public sealed partial class PhraseTwistTests
{
    private static readonly IReadOnlyList<Labelled> Plain = [.. PhraseCorpus.Open.Where(labelled => labelled.Before.Count == 0)];

    public static TheoryData<string> Unmaking => new("I'll ", "don't ", "if ", "should I ", "let me ", "she ", "I would ", "haven't ", "going to ");

    [Fact]
    public void Upper_and_lower_changed_round_change_the_blades_and_nothing_else()
    {
        var twisted = Plain.Where(labelled => Blade().IsMatch(labelled.Phrase)).ToList();
        Assert.NotEmpty(twisted);
        Assert.All(twisted, labelled => Assert.Equal(
            Lines(labelled.Phrase).Select(Swap), Lines(Blade().Replace(labelled.Phrase, word => word.Value == "upper" ? "lower" : "upper"))));
    }

    [Theory]
    [InlineData("um ", "")]
    [InlineData("okay so ", "")]
    [InlineData("well, ", "")]
    [InlineData("", " you know")]
    public void Fillers_change_nothing_by_rule_and_hardly_ever_what_is_judged(string before, string after)
    {
        var phrases = Plain.Where(labelled => labelled.Phrase[^1] is not ('.' or '?')).ToList();
        Assert.All(phrases, labelled => Assert.Equal(Ruled(labelled.Phrase), Ruled(before + labelled.Phrase + after)));
        HardlyEverOtherwise(phrases.Count, phrases.Count(labelled => !Lines(labelled.Phrase).SequenceEqual(Lines(before + labelled.Phrase + after))));
    }

    [Theory]
    [MemberData(nameof(Unmaking))]
    public void A_plan_a_ban_a_condition_a_question_or_another_s_deed_is_never_an_adjustment(string words) => Assert.All(
        Plain.Where(labelled => labelled.Lines.Any(line => line.Kind == "adjustment")),
        labelled =>
        {
            foreach (var deed in PhraseReader.Read(labelled.Phrase, PhraseCorpus.Context([])).Entries.Where(entry => entry.Kind == EntryKind.Adjustment))
            {
                var said = labelled.Phrase.Substring(deed.Span.Start, deed.Span.Length);
                Assert.DoesNotContain(Lines(words + Bare(said)), line => line.StartsWith("adjustment", StringComparison.Ordinal));
            }
        });

    [Fact]
    public void Two_phrases_one_after_the_other_say_what_both_say()
    {
        var otherwise = 0;
        for (var i = 0; i + 7 < Plain.Count; i++)
        {
            var (one, other) = (Plain[i].Phrase, Plain[i + 7].Phrase);
            var both = one.TrimEnd('.', '?') + (one[^1] == '?' ? "? " : "; ") + other;
            Assert.Equal(Ruled(one).Concat(Ruled(other)), Ruled(both));
            otherwise += OneRemark(Lines(one).Concat(Lines(other))).SequenceEqual(Lines(both)) ? 0 : 1;
        }

        HardlyEverOtherwise(Plain.Count, otherwise);
    }

    // Remarks in a row are one.
    private static IEnumerable<string> OneRemark(IEnumerable<string> lines)
    {
        var last = "";
        foreach (var line in lines)
        {
            if (line != "note" || last != "note")
            {
                yield return line;
            }

            last = line;
        }
    }

    [Theory]
    [InlineData("centre", "center")]
    [InlineData("’", "'")]
    [InlineData("'", "’")]
    [InlineData("B flat", "B♭")]
    [InlineData("E flat", "Eb")]
    [InlineData("corners", "coners")]
    [InlineData("shoulders", "sholders")]
    [InlineData("channels", "chanels")]
    public void Another_spelling_says_the_same(string one, string other)
    {
        var phrases = PhraseCorpus.Open.Where(labelled => labelled.Phrase.Contains(one, StringComparison.Ordinal)).ToList();
        Assert.All(phrases, labelled => Assert.Equal(
            Heard(labelled), Heard(labelled with { Phrase = labelled.Phrase.Replace(one, other, StringComparison.Ordinal) })));
    }

    [Theory]
    [InlineData("c-15", "C", -15)]
    [InlineData("c -15", "C", -15)]
    [InlineData("C+8", "C", 8)]
    [InlineData("b", "B", null)]
    [InlineData("bb+10", "Bb", 10)]
    [InlineData("c#", "C#", null)]
    public void A_pitch_alone_is_the_crow_with_all_its_cents(string typed, string note, int? cents)
    {
        var slots = Assert.Single(PhraseReader.Read(typed, PhraseCorpus.Context([])).Entries).Slots;

        Assert.Equal((TestKind.Crow, note, (decimal?)cents), (slots.Test, slots.Pitch, slots.Cents));
    }

    [Theory]
    [InlineData("um clip a hair, okay", 0)]
    [InlineData("clip a hair; zebra umbrella", 1)]
    public void Words_in_passing_are_not_worth_keeping_and_others_are(string typed, int kept) =>
        Assert.Equal(kept, PhraseReader.Read(typed, PhraseCorpus.Context([])).Kept.Count);

    [Fact]
    public void Cents_without_a_note_borrow_none_where_the_test_is_held_against_no_note()
    {
        var context = PhraseCorpus.Context([]);
        var entry = Assert.Single(PhraseReader.Read("peep ten cents flat", context).Entries);

        var test = Assert.IsType<Test>(Assert.IsType<ReedClinic.Domain.Outcomes.Outcome<BenchEntry>.Done>(entry.ToEntry(context)).Value);
        Assert.Null(test.Pitch);
        Assert.Equal("peep ten cents flat", test.Words);
    }

    [Fact]
    public void Capitals_change_nothing() => Assert.All(
        Plain.Where(labelled => !PitchLetter().IsMatch(labelled.Phrase)),
        labelled => Assert.Equal(Lines(labelled.Phrase), Lines(char.ToUpperInvariant(labelled.Phrase[0]) + labelled.Phrase[1..])));

    // The words that make it the speaker's own deed, and what leads up to it, give way to the twist.
    private static string Bare(string said) => Lead().Replace(said, "");

    private static List<string> Heard(Labelled labelled) => [.. PhraseCorpus.Hear(labelled).Entries.Select(entry => PhraseCorpus.LineOf(entry).ToString())];

    // The judge weighs every word; a twist may tip the scales where they hung level.
    private static void HardlyEverOtherwise(int of, int otherwise) => Assert.InRange(otherwise, 0, of * 6 / 100);

    private static List<string> Ruled(string phrase) => [.. TaughtPhrase.ByRules(phrase, PhraseCorpus.Context([])).Entries.Select(entry => PhraseCorpus.LineOf(entry).ToString())];

    private static List<string> Lines(string phrase) => Heard(new Labelled(0, [], phrase, []));

    private static string Swap(string line) => BladeName().Replace(line, word => word.Value == "Upper" ? "Lower" : "Upper");

    [GeneratedRegex(@"\b(Upper|Lower)\b")]
    private static partial Regex BladeName();

    [GeneratedRegex(@"\b(upper|lower)\b")]
    private static partial Regex Blade();

    [GeneratedRegex(@"^((what I'm doing is|and|so|then|but|um|now|also|only|I've|I'm|I|have|just|right|for|'ve|right now)\b[, ]*)+", RegexOptions.IgnoreCase)]
    private static partial Regex Lead();

    [GeneratedRegex(@"\b[A-Ga-g]\b")]
    private static partial Regex PitchLetter();
}
