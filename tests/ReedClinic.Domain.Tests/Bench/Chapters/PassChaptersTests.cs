using System.Globalization;
using System.Text.RegularExpressions;
using CsCheck;
using ReedClinic.Domain.Bench;
using ReedClinic.Domain.Bench.Chapters;
using ReedClinic.Domain.Faults;
using ReedClinic.Domain.Reeds;

namespace ReedClinic.Domain.Tests.Bench.Chapters;

/// <summary>
/// The file is checked against W3C, WebVTT: The Web Video Text Tracks Format, section 4 (https://www.w3.org/TR/webvtt1/, its
/// syntax from memory): a file begins with WEBVTT, blocks are parted by empty lines, a cue may have an identifier without
/// “--&gt;”, timings are hours (two digits or more), minutes and seconds from 00 to 59 and three digits after a full stop, a cue
/// ends after it begins, and cues come in the order of their starts; cue text has no empty line, no “--&gt;”, and &amp; and &lt; are
/// written as escapes.
/// </summary>
public sealed partial class PassChaptersTests
{
    private static readonly DateTimeOffset Zero = DateTimeOffset.UnixEpoch;

    private readonly Writer writer = new();

    [Fact]
    public void Passes_become_chapters_counted_from_the_zero_point()
    {
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Clip());

        var chapters = PassChapters.Of(writer.Log, Zero.AddMinutes(1));

        Assert.Equal(
            [new Chapter(TimeSpan.Zero, "As it arrived"), new(TimeSpan.FromMinutes(1), "Pass 1: corners"), new(TimeSpan.FromMinutes(3), "Pass 2: clip 0.2 mm")],
            chapters);
        Assert.Equal("0:00 As it arrived\n1:00 Pass 1: corners\n3:00 Pass 2: clip 0.2 mm", PassChapters.ToLines(chapters));
    }

    [Fact]
    public void The_pass_that_was_going_on_when_the_video_began_is_its_first_chapter_and_what_lies_behind_its_end_is_left_out()
    {
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Clip());
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Writer.Work());

        var chapters = PassChapters.Of(writer.Log, Zero.AddMinutes(3), TimeSpan.FromMinutes(3));

        Assert.Equal([new Chapter(TimeSpan.Zero, "Pass 1: corners"), new(TimeSpan.FromMinutes(1), "Pass 2: clip 0.2 mm")], chapters);
    }

    // The writer’s clock goes on by a minute for each place in the log.
    [Fact]
    public void What_was_worked_on_another_day_is_no_chapter_of_a_video_that_had_ended_and_begins_one_of_its_own()
    {
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Add(Clip(), (24 * 60) + 3);

        Assert.Equal(["As it arrived", "Pass 1: corners"], PassChapters.Of(writer.Log, Zero.AddMinutes(1)).Select(chapter => chapter.Title));
        var (began, title) = Assert.Single(PassChapters.Later(writer.Log, Zero.AddMinutes(1)));
        Assert.Equal((Zero.AddDays(1).AddMinutes(3), "Pass 2: clip 0.2 mm"), (began, title));
        Assert.Equal([new Chapter(TimeSpan.Zero, title)], PassChapters.Of(writer.Log, began));
        Assert.Empty(PassChapters.Later(writer.Log, began));
    }

    // The form of the file in the examples of the introduction: the header, an empty line, then cues parted by empty lines.
    [Fact]
    public void The_file_is_written_as_the_standard_writes_its_examples()
    {
        Chapter[] chapters = [new(TimeSpan.Zero, "As it arrived"), new(TimeSpan.FromMilliseconds(11_000), "Pass 1"), new(new TimeSpan(0, 1, 2, 3, 45), "Pass 2")];

        Assert.Equal(
            """
            WEBVTT

            1
            00:00:00.000 --> 00:00:11.000
            As it arrived

            2
            00:00:11.000 --> 01:02:03.045
            Pass 1

            3
            01:02:03.045 --> 01:10:00.000
            Pass 2

            """.ReplaceLineEndings("\n"),
            PassChapters.ToWebVtt(chapters, new TimeSpan(1, 10, 0)));
    }

    [Fact]
    public void A_day_and_more_has_hours_of_more_than_two_digits_when_it_needs_them_and_a_last_chapter_has_an_end()
    {
        Assert.Contains("\n100:00:00.000 --> 100:05:00.000\n", PassChapters.ToWebVtt([new(TimeSpan.FromHours(100), "Late")]), StringComparison.Ordinal);
        Assert.Equal("100:00:00 Late", PassChapters.ToLines([new(TimeSpan.FromHours(100), "Late")]));
        Assert.Equal("WEBVTT\n", PassChapters.ToWebVtt([]));
    }

    [Fact]
    public void A_chapter_at_or_behind_the_end_of_the_video_still_ends_after_it_begins() =>
        Assert.Contains("\n00:00:10.000 --> 00:00:10.001\n", PassChapters.ToWebVtt([new(TimeSpan.FromSeconds(10), "Late")], TimeSpan.FromSeconds(5)), StringComparison.Ordinal);

    [Fact]
    public void Of_passes_that_were_said_in_one_breath_the_last_is_the_chapter()
    {
        writer.Say(Writer.Work());
        writer.Say(Writer.Test(TestKind.Crow, 0));
        writer.Say(Clip());
        var breath = BenchLog.Fold([.. writer.Entries.Select(entry => entry.StampedWith(new EntryStamp(
            entry.Id, Writer.Reed, entry.Sequence, entry.OperationId, Zero.AddMinutes(1), Writer.Ada, null, null)))]);

        Assert.Equal([new Chapter(TimeSpan.FromMinutes(1), "Pass 2: clip 0.2 mm")], PassChapters.Of(breath, Zero));
    }

    [Theory]
    [InlineData("a --> b", "a --&gt; b")]
    [InlineData("salt & reed", "salt &amp; reed")]
    [InlineData("<c>x</c>", "&lt;c&gt;x&lt;/c&gt;")]
    [InlineData("one\n\ntwo\r\nthree", "one two three")]
    [InlineData("one\u2028two\0three", "one two three")]
    [InlineData(" \n ", "–")]
    public void A_title_stays_one_line_of_text_whatever_is_in_it(string title, string written)
    {
        Assert.EndsWith("\n" + written + "\n", PassChapters.ToWebVtt([new(TimeSpan.Zero, title)]), StringComparison.Ordinal);
        Assert.DoesNotContain('\n', PassChapters.ToLines([new(TimeSpan.Zero, title)]));
    }

    [Fact]
    public void Own_words_of_a_teacher_cannot_break_the_file()
    {
        writer.Say(Writer.Value(Adjustment.Of(AdjustmentKindId.SomethingElse, new Place(Zone.Windows), words: "a\n\n00:01 --> 00:02 & <b>")));

        var file = PassChapters.ToWebVtt(PassChapters.Of(writer.Log, Zero));

        Assert.Single(file.Split('\n'), line => line.Contains("-->", StringComparison.Ordinal));
    }

    [Fact]
    public void Any_titles_and_times_make_a_file_that_reads_back_as_the_same_chapters() =>
        Gen.Select(Gen.Long[0, 400_000_000], Gen.String).List[0, 12].Sample(
            (List<(long, string)> made) =>
            {
                List<Chapter> chapters = [.. made.Select(one => new Chapter(TimeSpan.FromMilliseconds(one.Item1), one.Item2)).DistinctBy(one => one.Start).OrderBy(one => one.Start)];

                var blocks = PassChapters.ToWebVtt(chapters).Split("\n\n");

                Assert.Equal("WEBVTT", blocks[0].TrimEnd('\n'));
                Assert.Equal(chapters.Count, blocks.Length - 1);
                for (var index = 0; index < chapters.Count; index++)
                {
                    var lines = blocks[index + 1].TrimEnd('\n').Split('\n');
                    var timing = Timing().Match(lines[1]);
                    Assert.Equal(3, lines.Length);
                    Assert.True(timing.Success, lines[1]);
                    Assert.Equal(chapters[index].Start, Read(timing, 1));
                    Assert.True(Read(timing, 5) > Read(timing, 1));
                    Assert.DoesNotContain("-->", lines[2], StringComparison.Ordinal);
                    Assert.DoesNotMatch("<|&(?!amp;|lt;|gt;)", lines[2]);
                }
            },
            iter: 2000);

    private static TimeSpan Read(Match timing, int at)
    {
        int Part(int part) => int.Parse(timing.Groups[at + part].Value, CultureInfo.InvariantCulture);
        return new TimeSpan(0, Part(0), Part(1), Part(2), Part(3));
    }

    private static Adjustment Clip() => Writer.Value(Adjustment.Of(
        new AdjustmentKindId("clip"), new Place(Zone.TipEdge), new Amount(Millimetres: 0.2m)));

    [GeneratedRegex(@"^([0-9]{2,}):([0-5][0-9]):([0-5][0-9])\.([0-9]{3}) --> ([0-9]{2,}):([0-5][0-9]):([0-5][0-9])\.([0-9]{3})$")]
    private static partial Regex Timing();
}
