using System.Text.RegularExpressions;
using ReedClinic.Domain.Catalogues;
using ReedClinic.Domain.Intake;
using ReedClinic.Domain.Letters;
using ReedClinic.Domain.Recurrence;

namespace ReedClinic.Domain.Tests.Recurrence;

public sealed partial class LessonsTests
{
    private static readonly ReedScales StartsLate = new() { Response = new(2), SoftPlaying = new(2) };
    private static readonly ReedScales Bright = new() { Sound = new(-2) };

    [Fact]
    public void The_lesson_explains_most_of_what_bothers_the_student()
    {
        var lessons = Lessons(
            Sheets.Batch(1, "+tip-corners-thick +bumps", "+tip-corners-thick +bumps", "+bumps -tip-corners-thick"), StartsLate, StartsLate, StartsLate);

        Assert.Equal("tip-corners-thick", lessons[0].Kind.Value);
        Assert.Equal(4, lessons[0].Explained);
        Assert.Equal(6, lessons[0].Complaints);
        Assert.Equal("Tip corners too thick: in two of the three reeds, and it fits four of your six troubles.", lessons[0].Sentence);
    }

    [Fact]
    public void A_family_stands_where_its_kinds_together_are_in_more_reeds_than_each_alone()
    {
        var lessons = Lessons(Sheets.Batch(1, "+tip-corners-thick", "+tip-even-across", "+tip-corners-thick"), StartsLate, Bright, StartsLate);

        Assert.Equal("tip-sides-not-thinner", lessons[0].Theme.Id);
        Assert.Equal("tip-corners-thick", lessons[0].Kind.Value);
        Assert.Equal("The sides of the tip are not thinner than its middle: in all three reeds, and it fits all five of your troubles. Of this the letter names “tip corners too thick”: in both reeds looked at for it (three in the batch).", lessons[0].Sentence);
    }

    [Fact]
    public void What_is_common_goes_before_what_one_reed_alone_has()
    {
        var lessons = Lessons(Sheets.Batch(1, "+tip-thick +worn", "+worn", "+worn"), StartsLate, Bright, Bright);

        Assert.Equal("worn", lessons[0].Theme.Id);
    }

    [Fact]
    public void Without_complaints_the_surest_comes_first_and_none_lies_within_another()
    {
        var lessons = Lessons(Sheets.Batch(1, "+tip-corners-thick +tip-not-separate +side-leak", "+tip-corners-thick -side-leak", "+tip-corners-thick"));

        Assert.Equal("tip-corners-thick", lessons[0].Theme.Id);
        Assert.Equal("Tip corners too thick: in all three reeds.", lessons[0].Sentence);
        Assert.All(lessons, one => Assert.DoesNotContain(lessons, other => one.Theme.IsWithin(other.Theme)));
    }

    [Fact]
    public void What_is_only_suspected_explains_less()
    {
        var lessons = Lessons(Sheets.Batch(1, "?tip-thick +tip-corners-thick", "?tip-thick +tip-corners-thick"), StartsLate, StartsLate);

        Assert.Equal("tip-corners-thick", lessons[0].Kind.Value);
    }

    [Fact]
    public void Only_what_can_be_taught_is_offered_and_what_is_done_well_is_no_lesson() =>
        Assert.All(Themes.Faults, theme => Assert.Equal(
            theme.Kinds.Any(TeachingNote.HasOwn), Lessons(Sheets.Batch(1, string.Join(' ', theme.Kinds.Select(kind => "+" + kind.Value)))).Count > 0));

    [Fact]
    public void With_nothing_found_or_no_reeds_there_is_no_lesson()
    {
        Assert.Empty(Lessons(Sheets.Batch(1, "-tip-thick", ""), StartsLate, StartsLate));
        Assert.Empty(Lessons(Sheets.Batch(1)));
        Assert.Empty(Lessons(Sheets.Batch(1, "+spine-intact")));
    }

    /// <summary>
    /// J. P. Kincaid and others (1975), Research Branch Report 8-75, Naval Technical Training Command: grade = 0.39 words a sentence +
    /// 11.8 syllables a word − 15.59. A fourteen-year-old is in the eighth or ninth grade. Syllables are counted by groups of vowels.
    /// </summary>
    [Fact]
    public void Each_sentence_can_be_read_at_fourteen()
    {
        foreach (var theme in Themes.Faults.Where(theme => theme.Kinds.Any(TeachingNote.HasOwn)))
        {
            var found = string.Join(' ', theme.Kinds.Select(kind => "+" + kind.Value));
            var batch = Sheets.Batch(1, found, found, "");
            var line = Report(batch).Of(theme.Id)!;
            var sentence = new Lesson(theme, theme.Kinds[0], 2, 4, 6, 2, line).Sentence;
            var words = Word().Matches(sentence).Select(match => match.Value).ToList();
            var grade = (0.39 * words.Count) + (11.8 * words.Sum(Syllables) / words.Count) - 15.59;

            Assert.True(grade < 10 && words.Count <= 30, $"{sentence} ({grade:0.0}, {words.Count} words)");
            Assert.DoesNotContain("%", sentence, StringComparison.Ordinal);
        }
    }

    private static int Syllables(string word) => Math.Max(1, Vowels().Count(word.EndsWith('e') && !word.EndsWith("le", StringComparison.Ordinal) ? word[..^1] : word));

    private static IReadOnlyList<Lesson> Lessons(FindingSheet batch, params ReedScales[] marks) => Domain.Recurrence.Lessons.Of(
        batch, batch.Reeds.Zip(marks).ToDictionary(pair => pair.First, pair => pair.Second), Report(batch), Catalogue.Shipped);

    private static RecurrenceReport Report(FindingSheet batch) => Recurrences.Of(Sheets.History(batch), StudioRates.Unknown);

    [GeneratedRegex("[a-zA-Z’]+")]
    private static partial Regex Word();

    [GeneratedRegex("[aeiouyAEIOUY]+")]
    private static partial Regex Vowels();
}
