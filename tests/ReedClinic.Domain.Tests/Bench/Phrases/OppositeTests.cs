using System.Text.RegularExpressions;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Phrases;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Phrases;

/// <summary>Nothing is read as its opposite, and “it” is what the phrase speaks of.</summary>
public sealed partial class OppositeTests
{
    private static readonly Dictionary<string, string> Other = new()
    {
        ["thick"] = "thin",
        ["thin"] = "thick",
        ["long"] = "short",
        ["short"] = "long",
        ["wide"] = "narrow",
        ["narrow"] = "wide",
        ["up"] = "down",
        ["open"] = "closed",
        ["steep"] = "gentle",
        ["brighter"] = "darker",
        ["blunter"] = "more pointed",
        ["uneven"] = "even",
        ["even"] = "uneven",
        ["loose"] = "tight",
        ["straight"] = "crooked",
        ["crooked"] = "straight",
        ["smooth"] = "steep",
        ["matched"] = "uneven",
    };

    public static TheoryData<string, string> Turned()
    {
        var turned = new TheoryData<string, string>();
        // A tip that is as thick at its sides as in its middle is the same fault as one that is as thin.
        foreach (var kind in FindingCatalogue.All.Where(kind => Ends().Count(kind.Name) == 1 && kind.Id.Value is not "tip-even-across"))
        {
            turned.Add(kind.Id.Value, Ends().Replace(kind.Name, word => Other[word.Value]));
        }

        return turned;
    }

    [Theory]
    [MemberData(nameof(Turned))]
    public void What_is_said_with_the_opposite_word_is_never_that_finding_without_doubt(string kind, string phrase) =>
        Assert.DoesNotContain(Read(phrase), entry => entry.Kind is EntryKind.Finding && entry.Slots.Kind == kind && entry.Doubts.Count == 0);

    [Theory]
    [InlineData("left side of the heart too thin")]
    [InlineData("sides of the heart too thin")]
    public void Thin_sides_of_the_heart_are_not_thick(string phrase)
    {
        var found = Assert.Single(Read(phrase));

        Assert.Equal((EntryKind.Finding, "heart-thin", Zone.HeartSides), (found.Kind, found.Slots.Kind, found.Slots.Zone));
    }

    [Theory]
    [InlineData("sides of the heart too thick", "heart-sides-thick")]
    [InlineData("tip too long", "tip-long")]
    [InlineData("opening too narrow", "opening-narrow")]
    public void What_is_said_as_it_is_called_is_that_finding(string phrase, string kind) => Assert.Equal(kind, Assert.Single(Read(phrase)).Slots.Kind);

    [Fact]
    public void It_is_what_the_phrase_speaks_of_and_not_where_work_was_done_last()
    {
        var left = Assert.Single(Read("maybe the tip is a hair too long? I would rather leave it", "two strokes off the windows"), entry => entry.Kind is EntryKind.LeaveAlone);

        Assert.Equal(Zone.Rooftop, left.Slots.Zone);
    }

    [Fact]
    public void Where_nothing_is_spoken_of_the_last_place_is_taken_in_doubt()
    {
        var left = Assert.Single(Read("leave it alone", "two strokes off the windows"));

        Assert.Equal((EntryKind.LeaveAlone, Zone.Windows), (left.Kind, left.Slots.Zone));
        Assert.Contains(left.Doubts, doubt => doubt.Slot is "zone");
    }

    [Theory]
    [InlineData("high notes sag")]
    [InlineData("top notes are sagging")]
    public void Notes_that_sag_are_kept_in_their_words_and_do_not_wander(string phrase)
    {
        var context = PhraseCorpus.Context([]);
        var test = Assert.IsType<Domain.Bench.Test>(Assert.IsType<Domain.Outcomes.Outcome<BenchEntry>.Done>(Assert.Single(Read(phrase)).ToEntry(context)).Value);

        Assert.Equal((TestKind.HighSteadiness, null, phrase), (test.TestKind, test.StepWord, test.Words));
    }

    [Theory]
    [InlineData("tip too thin, stop here, it was played out")]
    [InlineData("reed is worn out, stop here, it was played out")]
    [InlineData("opening too wide, stop here, it was played out")]
    public void To_stop_here_is_a_stop_behind_a_finding_too(string phrase) =>
        Assert.Equal([EntryKind.Finding, EntryKind.Stopped], Read(phrase).Take(2).Select(entry => entry.Kind));

    private static IReadOnlyList<ReadEntry> Read(string phrase, params string[] before) => PhraseReader.Read(phrase, PhraseCorpus.Context(before)).Entries;

    [GeneratedRegex(@"\b(thick|thin|long|short|wide|narrow|up|open|steep|brighter|blunter|uneven|even|loose|straight|crooked|smooth|matched)\b")]
    private static partial Regex Ends();
}
