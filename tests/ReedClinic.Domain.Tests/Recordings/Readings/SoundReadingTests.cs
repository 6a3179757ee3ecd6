using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recordings;
using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Domain.Tests.Recordings.Readings;

public sealed class SoundReadingTests
{
    private static readonly RecordingId Id = new(new Guid(1, 2, 3, new byte[8]));

    [Fact]
    public void What_was_read_stays_as_it_is_whoever_comes_later()
    {
        var reading = new SoundReading(Id, DateTimeOffset.UnixEpoch);
        reading.Begin();
        reading.Keep(MadeReadings.Crow(), DateTimeOffset.UnixEpoch.AddSeconds(2));

        reading.GiveUp(SoundTrouble.Damaged, DateTimeOffset.UnixEpoch.AddDays(1));
        reading.Begin();
        reading.Keep(MadeReadings.Crow() with { Guess = new SoundGuess(SoundKind.Peep, 0.5) }, DateTimeOffset.UnixEpoch.AddDays(1));

        Assert.Equal((ReadingState.Read, null, SoundKind.Crow, 81), (reading.State, reading.Trouble, reading.GuessedKind, reading.GuessHundredths));
        Assert.Equal(DateTimeOffset.UnixEpoch.AddSeconds(2), reading.EndedAt);
    }

    [Fact]
    public void What_somebody_says_is_played_goes_before_the_guess_and_needs_something_that_was_read()
    {
        var reading = new SoundReading(Id, DateTimeOffset.UnixEpoch);
        Assert.Throws<InvalidOperationException>(() => reading.Correct(SoundKind.Peep));
        reading.Keep(MadeReadings.Crow(), DateTimeOffset.UnixEpoch);

        reading.Correct(SoundKind.Peep);

        Assert.Equal((SoundKind.Peep, SoundKind.Crow), (reading.Kind, reading.GuessedKind));
    }

    [Fact]
    public void A_picture_that_is_too_large_is_not_kept_and_the_numbers_are()
    {
        var reading = new SoundReading(Id, DateTimeOffset.UnixEpoch);

        reading.Keep(MadeReadings.Crow() with { Picture = new byte[SoundReading.LargestPicture + 1] }, DateTimeOffset.UnixEpoch);

        Assert.Null(reading.Picture);
        Assert.NotNull(reading.Figures);
    }

    [Fact]
    public void A_series_comes_back_to_a_twentieth_of_a_cent_and_a_quarter_of_a_decibel()
    {
        var random = new Random(8);
        double?[] hertz = [.. Enumerable.Range(0, 500).Select(_ => random.NextDouble() < 0.2 ? (double?)null : 138 * Math.Pow(16.6, random.NextDouble()))];
        double[] levels = [.. Enumerable.Range(0, 500).Select(_ => -120 * random.NextDouble())];

        var back = SoundSeries.Read(new SoundSeries(0.02f, hertz, levels).ToBytes())!;

        Assert.Equal((500, 0.02f), (back.Count, back.Step));
        for (var at = 0; at < 500; at++)
        {
            Assert.Equal(hertz[at] is null, back.Hertz[at] is null);
            Assert.InRange(1200 * Math.Log2((hertz[at] ?? 1) / (back.Hertz[at] ?? 1)), -0.0501, 0.0501);
            Assert.Equal(levels[at], back.Decibels[at], tolerance: 0.2501);
        }
    }

    [Theory]
    [InlineData("")]
    [InlineData("01")]
    [InlineData("020000803f")]
    [InlineData("010000803f0102")]
    [InlineData("0100000000")]
    [InlineData("010000c07f")]
    public void Bytes_that_are_no_series_give_none(string hex) => Assert.Null(SoundSeries.Read(Convert.FromHexString(hex)));

    [Theory]
    [InlineData(1.0, null, null)]
    [InlineData(null, 1.0, Unread.NoTone)]
    [InlineData(1.0, 1.0, Unread.NoTone)]
    [InlineData(null, null, null)]
    [InlineData(double.NaN, 1.0, null)]
    [InlineData(1.0, -1.0, null)]
    public void A_figure_is_a_number_with_its_uncertainty_or_a_reason(double? value, double? sure, Unread? why) =>
        Assert.Throws<ArgumentException>(() => new Figure(value, sure, why));

    /// <summary>ISO 16:1975 for A4 = 440 Hz; the frequencies of C by equal temperament, as any table has them (C5 = 523.25 Hz at 440, 525.63 Hz at 442).</summary>
    [Theory]
    [InlineData(523.2511, 440, 0.0)]
    [InlineData(261.6256, 440, 0.0)]
    [InlineData(1046.502, 442, -7.85)]
    [InlineData(525.6295, 442, 0.0)]
    [InlineData(493.8833, 440, -100.0)]
    public void A_pitch_is_told_from_the_players_own_C_whatever_its_octave(double hertz, double a4, double cents)
    {
        var figures = MadeReadings.Crow().Figures with { Pitch = Figure.Of(hertz, 0.1) };

        var from = figures.From(CrowTarget.OnC(new Tuning(new Hertz(a4))));

        Assert.Equal(cents, from.Value!.Value, tolerance: 0.01);
        Assert.Equal(1200 * Math.Log2((hertz + 0.1) / hertz), from.PlusMinus!.Value, tolerance: 0.001);
    }

    [Fact]
    public void A_reason_that_a_refusal_shares_is_told_in_its_words()
    {
        Assert.All(Enum.GetValues<SoundTrouble>().Select(trouble => trouble.Same()).OfType<RecordingRefusal>(), same => Assert.NotEmpty(same.Words(RecordingKind.ArrivalSound)));
        Assert.Equal(RecordingRefusal.Broken, SoundTrouble.Damaged.Same());
    }
}
