using ReedClinic.Measurement.Sound;

namespace ReedClinic.Measurement.Tests.Sound;

/// <summary>Closed forms: a sine of amplitude A over whole periods has an RMS of A/√2; a square wave of A has A.</summary>
public sealed class LevelTests
{
    private const int SampleRateHz = 48_000;

    [Theory]
    [InlineData(1.0, -3.0103)]
    [InlineData(0.5, -9.0309)]
    [InlineData(0.01, -43.0103)]
    public void A_sine_over_whole_periods_has_its_amplitude_over_root_two_as_rms(double amplitude, double decibels)
    {
        var level = Level.Of(Sine(amplitude, hertz: 441, seconds: 1));

        Assert.Equal(amplitude / Math.Sqrt(2), level.Rms, 6);
        Assert.Equal(decibels, level.RmsDecibels, 3);
        Assert.Equal(amplitude, level.Peak, 4);
    }

    [Fact]
    public void A_square_wave_has_its_amplitude_as_rms_and_as_peak()
    {
        var samples = new float[1000];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = i / 50 % 2 == 0 ? 0.25f : -0.25f;
        }

        Assert.Equal(new Level(0.25, 0.25, 0), Level.Of(samples));
    }

    [Fact]
    public void Silence_has_no_level_at_all()
    {
        var level = Level.Of(new float[100]);

        Assert.Equal(double.NegativeInfinity, level.RmsDecibels);
        Assert.False(level.IsClipped);
    }

    [Fact]
    public void A_full_scale_sine_is_not_clipped_though_it_touches_the_top()
    {
        Assert.False(Level.Of(Sine(1, hertz: 4000, seconds: 1)).IsClipped);
    }

    [Theory]
    [InlineData(2, 0)]
    [InlineData(3, 3)]
    [InlineData(7, 7)]
    public void Only_a_run_of_three_or_more_at_full_scale_is_clipped(int length, int clipped)
    {
        var samples = new float[50];
        samples.AsSpan(10, length).Fill(-1f);

        Assert.Equal(clipped, Level.Of(samples).ClippedSamples);
    }

    [Fact]
    public void An_overdriven_sine_is_clipped_on_both_sides()
    {
        var samples = Array.ConvertAll(Sine(2, hertz: 100, seconds: 1), sample => Math.Clamp(sample, -1f, 1f));

        // |2 sin x| ≥ 1 for two thirds of a period.
        Assert.Equal(2.0 / 3 * samples.Length, Level.Of(samples).ClippedSamples, tolerance: 250);
    }

    [Theory]
    [InlineData(new float[0])]
    [InlineData(new[] { 0.1f, float.NaN })]
    [InlineData(new[] { float.PositiveInfinity })]
    public void Nothing_and_what_is_no_number_are_refused(float[] samples)
    {
        Assert.Throws<ArgumentException>(() => Level.Of(samples));
    }

    private static float[] Sine(double amplitude, double hertz, double seconds)
    {
        var samples = new float[(int)(seconds * SampleRateHz)];
        for (var i = 0; i < samples.Length; i++)
        {
            samples[i] = (float)(amplitude * Math.Sin(2 * Math.PI * hertz * i / SampleRateHz));
        }

        return samples;
    }
}
