using System.Globalization;
using ReedClinic.Domain.Drawings;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Domain.Tests.Drawings;

/// <summary>What a recording says, as one sentence, as one picture, and as plots over time. Every number is made.</summary>
public sealed class SoundSketchTests
{
    private static readonly CrowTarget Target = CrowTarget.OnC(new Tuning(new Hertz(442)));

    [Fact]
    public void The_first_words_tell_whether_it_is_in_tune_which_octaves_sound_and_how_soon()
    {
        var crow = MadeReadings.Crow(525.6295).Figures;

        Assert.Equal(
            "In tune: on C. All three octaves sound: the high one first, 0.08 s after the breath, then the others within 0.12 s.",
            SoundTelling.Sentence(SoundKind.Crow, crow, Target, true));
        Assert.Equal("The peep stood at a C5. It spoke 0.08 s after the breath.", SoundTelling.Sentence(SoundKind.Peep, crow, Target, true));
        Assert.Equal("No tone is heard in it.", SoundTelling.Sentence(null, crow, Target, true));
    }

    // By equal temperament and ISO 16:1975: 1200·log2(442/440) is 7.85 cents.
    [Theory]
    [InlineData(440, "A note near A4")]
    [InlineData(442, "A note near A4, 8 cents high")]
    [InlineData(439.8, "A note near A4, 1 cent low")]
    public void What_was_heard_is_said_without_a_judgement(double hertz, string words) =>
        Assert.Equal(words, SoundTelling.Heard(MadeReadings.Crow(hertz).Figures, Tuning.Standard));

    [Theory]
    [InlineData(0.9, 2, GuessSureness.Like)]
    [InlineData(0.6, 2, GuessSureness.Probably)]
    [InlineData(0.4, 2, GuessSureness.Perhaps)]
    [InlineData(0.9, 0.1, GuessSureness.Perhaps)]
    public void Of_a_scrap_nothing_is_sure(double share, double seconds, GuessSureness sureness) =>
        Assert.Equal(sureness, new SoundGuess(SoundKind.Crow, share).Sureness(seconds));

    // Pitches by equal temperament (ISO 16:1975 for A4): the C5 of an A at 442 Hz is 525.6295 Hz.
    [Theory]
    [InlineData(-14, true, CrowStand.InTune, "In tune: 14 cents below C")]
    [InlineData(30, true, CrowStand.InTune, "In tune: 30 cents above C")]
    [InlineData(31, true, CrowStand.High, "High: 31 cents above C")]
    [InlineData(-45, true, CrowStand.Low, "Low: 45 cents below C")]
    [InlineData(-86, true, CrowStand.Low, "Low: 86 cents below C, nearer to B")]
    [InlineData(1, false, CrowStand.InTune, "In tune for A at 442 Hz: 1 cent above C")]
    [InlineData(-45, false, CrowStand.Low, "Low for A at 442 Hz: 45 cents below C")]
    public void Near_high_and_low_are_told_from_the_players_own_C(double cents, bool isSaid, CrowStand stand, string words)
    {
        var crow = MadeReadings.Crow(525.6295 * Math.Pow(2, cents / 1200)).Figures;

        Assert.Equal(stand, SoundTelling.StandOf(SoundKind.Crow, crow, Target));
        Assert.Equal(words, SoundTelling.Head(SoundKind.Crow, crow, Target, isSaid));
        Assert.Null(SoundTelling.StandOf(SoundKind.Peep, crow, Target));
    }

    [Fact]
    public void What_can_t_be_told_is_left_out_or_said_so()
    {
        var crow = MadeReadings.Crow(525.6295).Figures;
        var nothing = Figure.None(Unread.NoQuietBefore);
        var alone = crow with { Octaves = [.. crow.Octaves.Select(one => one with { Sounds = one.Octave == 4 })], TimeToSpeak = nothing };
        var two = crow with { Octaves = [.. crow.Octaves.Select(one => one with { Sounds = one.Octave != 5 })] };

        Assert.Equal("Only the low octave sounds.", SoundTelling.Octaves(SoundKind.Crow, alone));
        Assert.Equal("The high and low octaves sound: the high one first, 0.08 s after the breath, then the low one 0.12 s later.", SoundTelling.Octaves(SoundKind.Crow, two));
        Assert.Equal("All three octaves sound, all at once, 0.08 s after the breath.", SoundTelling.Octaves(SoundKind.Crow, Entering(crow, 0.61, 0.6, 0.58)));
        Assert.Equal("No octave stands out.", SoundTelling.Octaves(SoundKind.Crow, crow with { Octaves = [] }));
    }

    [Fact]
    public void Of_a_crow_that_sounds_from_the_beginning_neither_words_nor_picture_name_a_first_octave()
    {
        var none = Figure.None(Unread.NoQuietBefore);
        var crow = MadeReadings.Crow(525.6295).Figures with { BreathOnset = none, TimeToSpeak = none };
        foreach (var begun in new[] { Entering(crow, 0.004, 0.01, 0.008), Entering(crow, 0.3, 0.005, 0.4), crow with { Octaves = [.. crow.Octaves.Select(one => one with { Entry = none })] } })
        {
            var sketch = SoundSketch.Of(new SoundPicture(SoundKind.Crow, begun, Target, true), true);

            Assert.EndsWith("All three octaves sound, and which came first can’t be told: nothing quiet is before them.", sketch.Description, StringComparison.Ordinal);
            Assert.Empty(Paths(sketch, SketchInk.FirstOctave));
            Assert.Equal(3, Paths(sketch, SketchInk.Octave).Count());
            Assert.DoesNotContain(sketch.Parts.OfType<SketchWords>(), words => words.Text.Contains("first", StringComparison.Ordinal) || words.Text.EndsWith(" s", StringComparison.Ordinal));
            Assert.Null(MeasuredTest.StepOf(begun.Octaves));
        }
    }

    [Fact]
    public void Seconds_count_from_the_breath_else_from_the_first_octave_and_not_from_the_recordings_beginning()
    {
        var crow = MadeReadings.Crow().Figures;
        var breathless = crow with { BreathOnset = Figure.None(Unread.TooFaint), TimeToSpeak = Figure.None(Unread.TooFaint) };

        Assert.Equal((0.5, 0.58), (crow.Zero, breathless.Zero));
        var words = SoundSketch.Of(new SoundPicture(SoundKind.Crow, breathless, Target, true), true).Parts.OfType<SketchWords>().Select(one => one.Text).ToList();
        Assert.Contains("seconds after the first octave", words);
        Assert.Equal(["first", "0.04 s later", "0.12 s later"], words.Where(one => one == "first" || one.EndsWith("later", StringComparison.Ordinal)));
        var plot = SoundPlots.Pitch(new SoundTrack(new SoundPicture(SoundKind.Crow, crow, Target, true), MadeReadings.Crow().Series), true).Drawing;
        Assert.Equal("0", plot.Parts.OfType<SketchWords>().First(one => Math.Abs(one.X - (64 + (0.5 / 2 * 602))) < 0.1).Text);
        Assert.EndsWith("The high octave is first, the middle one 0.04 s later, the low one 0.12 s later.", plot.Description, StringComparison.Ordinal);
    }

    [Fact]
    public void Octaves_that_came_all_at_once_are_so_in_the_picture_too_and_none_is_dark()
    {
        var at = Entering(MadeReadings.Crow().Figures, 0.61, 0.6, 0.58);
        var breathless = at with { BreathOnset = Figure.None(Unread.TooFaint), TimeToSpeak = Figure.None(Unread.TooFaint) };

        Assert.Equal(["together, 0.08 s", "together", "together"], Steps(at));
        Assert.Equal(["together", "together", "together"], Steps(breathless));
        Assert.Empty(Paths(SoundSketch.Of(new SoundPicture(SoundKind.Crow, at, Target, true), true), SketchInk.FirstOctave));
        var plot = SoundPlots.Pitch(new SoundTrack(new SoundPicture(SoundKind.Crow, at, Target, true), MadeReadings.Crow().Series), true).Drawing;
        Assert.EndsWith(" The octaves come together.", plot.Description, StringComparison.Ordinal);
        Assert.Equal(["together"], plot.Parts.OfType<SketchWords>().Select(words => words.Text).Where(text => text is "together" or "high" or "middle" or "low"));

        static IEnumerable<string> Steps(ReadingFigures figures) => SoundSketch.Of(new SoundPicture(SoundKind.Crow, figures, Target, true), true)
            .Parts.OfType<SketchWords>().Where(words => words.Type == SketchType.Step).Select(words => words.Text);
    }

    [Theory]
    [InlineData(-0.04, 1, false, "0.0")]
    [InlineData(-0.06, 1, false, "−0.1")]
    [InlineData(0.04, 1, true, "0.0")]
    [InlineData(1.25, 1, true, "+1.3")]
    [InlineData(-0.0, 3, false, "0.000")]
    public void A_number_has_a_minus_only_where_something_is_left_of_it(double value, int places, bool withPlus, string written) =>
        Assert.Equal(written, SoundSketch.Number(value, places, withPlus));

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_first_octave_is_the_dark_bar_and_every_bar_begins_when_it_comes(bool isWide)
    {
        var sketch = SoundSketch.Of(new SoundPicture(SoundKind.Crow, MadeReadings.Crow().Figures, Target, true), isWide);

        var first = Assert.Single(Paths(sketch, SketchInk.FirstOctave));
        var later = Paths(sketch, SketchInk.Octave).Select(Left).ToList();
        Assert.Equal(2, later.Count);
        Assert.True(Left(first) < later[0] && later[0] < later[1], "High, then middle, then low.");
        Assert.Equal(["first, 0.08 s", "0.04 s later", "0.12 s later"], sketch.Parts.OfType<SketchWords>().Where(words => words.Type == SketchType.Step).Select(words => words.Text));
        Assert.All(sketch.Parts.OfType<SketchWords>(), words => Assert.InRange(words.X, 0, sketch.Width));
        Assert.All(sketch.Parts.OfType<SketchWords>(), words => Assert.InRange(words.Y, 8, sketch.Height));
    }

    [Theory]
    [InlineData(SoundKind.Crow, true, 1)]
    [InlineData(SoundKind.Crow, false, 0)]
    [InlineData(SoundKind.LongTone, true, 0)]
    public void There_is_a_band_only_for_a_crow_whose_player_said_what_they_tune_to(SoundKind kind, bool isSaid, int bands)
    {
        var picture = new SoundPicture(kind, MadeReadings.Crow().Figures, Target, isSaid);

        Assert.Equal(bands, Paths(SoundSketch.Of(picture, true), SketchInk.Band).Count());
        Assert.Equal(bands, Paths(SoundPlots.Pitch(new SoundTrack(picture, MadeReadings.Crow().Series), true).Drawing, SketchInk.Band).Count());
    }

    [Fact]
    public void An_octave_that_isn_t_heard_is_a_dotted_line_and_says_so()
    {
        var crow = MadeReadings.Crow().Figures;
        var sketch = SoundSketch.Of(new SoundPicture(SoundKind.Crow, crow with { Octaves = [.. crow.Octaves.Select(one => one with { Sounds = one.Octave > 4 })] }, Target, true), true);

        Assert.Single(Paths(sketch, SketchInk.NoOctave));
        Assert.Contains(sketch.Parts.OfType<SketchWords>(), words => words.Text == "not heard");
    }

    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void The_plot_of_the_pitch_has_a_line_where_a_pitch_is_heard_and_each_octave_at_its_moment(bool isWide)
    {
        var plot = SoundPlots.Pitch(new SoundTrack(new SoundPicture(SoundKind.Crow, MadeReadings.Crow().Figures, Target, true), MadeReadings.Crow().Series), isWide);

        double X(double seconds) => plot.Drawing.Width * (plot.Left + (seconds / 2 * (plot.Right - plot.Left)));
        Assert.Equal(X(0.605), Left(Assert.Single(Paths(plot.Drawing, SketchInk.Trace))), tolerance: 0.2);
        Assert.Equal([0.58, 0.62, 0.7], Paths(plot.Drawing, SketchInk.Moment).Select(path => Math.Round(2 * ((Left(path) / plot.Drawing.Width) - plot.Left) / (plot.Right - plot.Left), 2)));
    }

    [Fact]
    public void A_pitch_an_octave_away_lies_where_its_own_octave_does()
    {
        var (crow, series) = (MadeReadings.Crow(523), MadeReadings.Crow(523).Series);
        var jumping = series with { Hertz = [.. series.Hertz.Select((hertz, at) => at % 7 == 0 ? hertz * 2 : hertz)] };

        var cents = new SoundTrack(new SoundPicture(SoundKind.Crow, crow.Figures, Target, true), jumping).Cents.OfType<double>().ToList();

        Assert.All(cents, at => Assert.Equal(cents[0], at, tolerance: 0.001));
    }

    [Fact]
    public void Two_sounds_over_each_other_begin_with_their_first_tone_and_are_held_against_one_note()
    {
        var (flat, late) = (MadeReadings.Crow(515), MadeReadings.Crow(525.6295).Series);
        var other = new SoundTrack(new SoundPicture(SoundKind.Peep, MadeReadings.Crow(525.6295).Figures, Target, true), late with { Hertz = [.. Enumerable.Repeat((double?)null, 40).Concat(late.Hertz.SkipLast(40))] });

        var plot = SoundPlots.Beside(new SoundTrack(new SoundPicture(SoundKind.Crow, flat.Figures, Target, true), flat.Series), other, true);

        Assert.Equal(Left(Assert.Single(Paths(plot.Drawing, SketchInk.Trace))), Left(Assert.Single(Paths(plot.Drawing, SketchInk.OtherTrace))), tolerance: 0.2);
        Assert.Equal("This one stood 35 cents below C, the other on C.", plot.Drawing.Description);
    }

    [Fact]
    public void Silence_is_drawn_without_a_pitch()
    {
        var none = Figure.None(Unread.NoTone);
        var silent = MadeReadings.Crow().Figures with { Pitch = none, Octaves = [], BreathOnset = none };

        Assert.Empty(Paths(SoundSketch.Of(new SoundPicture(null, silent, Target, true), true), SketchInk.Octave));
        Assert.Contains("decibels, where 0 is the loudest that the recording can hold.", SoundPlots.Level(new SoundTrack(new SoundPicture(null, silent, Target, true), MadeReadings.Crow().Series), false).Drawing.Description, StringComparison.Ordinal);
        Assert.NotEmpty(SoundPlots.Level(new SoundTrack(new SoundPicture(null, silent, Target, true), MadeReadings.Crow().Series), false).Drawing.Parts);
    }

    [Theory]
    [InlineData(0.7, 0.62, 0.58, 0)]
    [InlineData(0.6, 0.6, 0.58, 1)]
    [InlineData(0.58, 0.62, 0.62, 1)]
    [InlineData(0.58, 0.7, 0.7, null)] // the low one first: the scale has no word for it
    public void The_word_of_the_crow_follows_from_when_its_octaves_come(double low, double middle, double high, int? step)
    {
        double[] entries = [low, middle, high];
        var octaves = MadeReadings.Crow().Figures.Octaves.Select((one, at) => one with { Entry = Figure.Of(entries[at], 0.001) }).ToList();

        Assert.Equal(step, MeasuredTest.StepOf(octaves));
        Assert.Equal(2, MeasuredTest.StepOf([.. octaves.Select(one => one with { Sounds = one.Octave == 4 })]));
        Assert.Equal(3, MeasuredTest.StepOf([.. octaves.Select(one => one with { Sounds = one.Octave == 6 })]));
        Assert.Null(MeasuredTest.StepOf([]));
        Assert.Null(MeasuredTest.StepOf([.. octaves.Select(one => one with { Entry = Figure.None(Unread.NoQuietBefore) })]));
    }

    private static ReadingFigures Entering(ReadingFigures crow, params double[] entries) =>
        crow with { Octaves = [.. crow.Octaves.Select((one, at) => one with { Entry = Figure.Of(entries[at], 0.001) })] };

    private static IEnumerable<SketchPath> Paths(Sketch sketch, SketchInk ink) => sketch.Parts.OfType<SketchPath>().Where(path => path.Ink == ink);

    private static double Left(SketchPath path) => double.Parse(path.Data[1..path.Data.IndexOf(',', StringComparison.Ordinal)], CultureInfo.InvariantCulture);
}
