using System.Globalization;
using ReedClinic.Measurement.Sound.Readings;
using ReedClinic.Measurement.Tests.Sound.Synthetic;

namespace ReedClinic.Measurement.Tests.Sound.Readings;

/// <summary>Readings against signals of which everything is known. No recording of a crow was available: these rest on synthetic ones.</summary>
public sealed class ClipAnalyserTests
{
    private static readonly int[][] Choices = [[4], [5], [6], [4, 5], [4, 6], [5, 6], [4, 5, 6]];

    [Theory]
    [InlineData(15)]
    [InlineData(20)]
    public void Every_partial_is_found_and_none_that_isnt_there(int ratio)
    {
        foreach (var (seed, crow, readings) in Crows(ratio))
        {
            Assert.Equal((seed, string.Join(' ', crow.Partials.Select(one => one.Octave))), (seed, string.Join(' ', readings.Partials.Where(one => one.IsPresent).Select(one => one.Octave))));
        }
    }

    [Fact]
    public void Entries_and_the_beginning_of_the_breath_are_read_to_five_milliseconds()
    {
        List<double> entries = [], onsets = [];
        foreach (var (_, crow, readings) in Crows(15))
        {
            onsets.Add(Math.Abs(Assert.IsType<Reading.Known>(readings.BreathOnset).Amount - crow.BreathOnset));
            entries.AddRange(crow.Partials.Select(one => Math.Abs(Entry(readings, one) - one.Entry)));
            var toSpeak = crow.Partials.Min(one => one.Entry) - crow.BreathOnset;
            Assert.Equal(toSpeak, readings.TimeToSpeak.Value!.Value, 0.01);
        }

        Assert.InRange(Percentile(entries, 95), 0, 0.005);
        Assert.InRange(Percentile(onsets, 95), 0, 0.005);
    }

    [Fact]
    public void A_weak_C5_is_found_with_its_level_and_its_entry_to_ten_milliseconds()
    {
        List<double> entries = [];
        for (var seed = 400; seed < 440; seed++)
        {
            var crow = SyntheticCrow.Make(seed, 15, [4, 5, 6], weak: 5);
            var readings = ClipAnalyser.Analyse(crow.Samples);
            var weak = readings.Partials[1];
            Assert.True(weak.IsPresent, string.Create(CultureInfo.InvariantCulture, $"seed {seed}"));
            Assert.Equal(-16, weak.Level.Value!.Value, 1.5);
            entries.Add(Math.Abs(weak.Entry.Value!.Value - crow.Partials[1].Entry));
        }

        Assert.InRange(Percentile(entries, 95), 0, 0.010);
    }

    [Fact]
    public void Of_octaves_that_sound_from_the_beginning_none_has_an_entry_also_where_one_fades_and_comes_back()
    {
        var random = new Random(12);
        float[] clip = [.. Enumerable.Range(0, 96_000).Select(i =>
        {
            var time = i / 48_000.0;
            double Partial(int times, double size, double phase) => size * Math.Sin((2 * Math.PI * 262 * times * time) + phase);
            var fades = time is > 0.8 and < 1.0 ? 0.2 : 1;
            return (float)(Partial(1, 0.2, 0) + (fades * Partial(2, 0.3, 1)) + Partial(4, 0.15, 2) + (0.004 * SyntheticTone.Normal(random)));
        })];

        var readings = ClipAnalyser.Analyse(clip);

        Assert.All(readings.Partials, one => Assert.Equal((true, new Reading.Unknown(Unreadable.NoQuietBefore)), (one.IsPresent, one.Entry)));
    }

    [Theory]
    [InlineData(10)]
    [InlineData(15)]
    [InlineData(20)]
    [InlineData(25)]
    [InlineData(30)]
    public void The_noise_ratio_is_read_to_a_decibel_and_a_half(int ratio)
    {
        foreach (var hertz in (double[])[233, 262, 415, 523, 880, 1047])
        {
            var tone = SyntheticTone.Make(hertz, SyntheticTone.Reedy, 1, ratio, 600 + ratio);
            Assert.Equal(ratio, ClipAnalyser.Analyse(tone).HarmonicToNoise.Value!.Value, 1.5);
        }
    }

    [Fact]
    public void Steadiness_and_drift_are_those_that_were_put_in()
    {
        var wavering = ClipAnalyser.Analyse(SyntheticTone.Make(523.25, SyntheticTone.Reedy, 3, 30, 1, time => (7 * time) + (10 * Math.Sin(2 * Math.PI * 4 * time))));
        var steady = ClipAnalyser.Analyse(SyntheticTone.Make(523.25, SyntheticTone.Reedy, 3, 30, 2));

        // A sine of 10 cents has a standard deviation of 10 / √2.
        Assert.Equal(7.07, wavering.Unsteadiness.Value!.Value, 0.3);
        Assert.Equal(7, wavering.Drift.Value!.Value, 0.8);
        Assert.InRange(steady.Unsteadiness.Value!.Value, 0, 0.1);
        Assert.Equal(0, steady.Drift.Value!.Value, 0.1);
        Assert.Equal(0, steady.FromC.Value!.Value, 0.1);
    }

    [Fact]
    public void Roughness_is_that_of_the_periods_sizes_and_not_of_the_noise()
    {
        float[] rough = SyntheticTone.Make(480, SyntheticTone.Pure, 6, 60, 3), smooth = [.. rough], noisy = SyntheticTone.Make(480, SyntheticTone.Pure, 1, 20, 3);
        var random = new Random(4);
        var size = 1.0;
        for (var i = 0; i < rough.Length; i++)
        {
            // 480 Hz: a period is a hundred samples.
            size = i % 100 == 0 ? 1 + (0.05 * SyntheticTone.Normal(random)) : size;
            rough[i] *= (float)size;
        }

        Assert.Equal(5, ClipAnalyser.Analyse(rough).Roughness.Value!.Value, 1.0);
        Assert.InRange(ClipAnalyser.Analyse(smooth).Roughness.Value!.Value, 0, 0.3);
        Assert.InRange(ClipAnalyser.Analyse(noisy).Roughness.Value!.Value, 0, 1.0);
    }

    [Fact]
    public void The_level_at_which_it_speaks_is_counted_from_the_clips_own_quiet()
    {
        var crow = SyntheticCrow.Make(77, 20, [4, 5]);
        var louder = crow.Samples.Select(sample => sample * 3).ToArray();
        var (one, other) = (ClipAnalyser.Analyse(crow.Samples).SpeaksAt.Value!.Value, ClipAnalyser.Analyse(louder).SpeaksAt.Value!.Value);

        Assert.InRange(one, 30, 60);
        Assert.Equal(one, other, 0.01);
    }

    [Fact]
    public void What_cant_be_read_says_why()
    {
        var silent = ClipAnalyser.Analyse(new float[48_000]);
        Assert.Equal(new Reading.Unknown(Unreadable.NoTone), silent.Pitch);
        Assert.Null(silent.Kind);
        Assert.Empty(silent.Partials);

        // The tone is there from the first sample.
        var late = ClipAnalyser.Analyse(SyntheticTone.Make(523, SyntheticTone.Reedy, 1, 20, 1));
        Assert.IsType<Reading.Unknown>(late.BreathOnset);
        Assert.Equal(new Reading.Unknown(Unreadable.NoQuietBefore), late.TimeToSpeak);
        Assert.Equal(new Reading.Unknown(Unreadable.NoQuietBefore), late.SpeaksAt);

        var cutOff = ClipAnalyser.Analyse([.. SyntheticTone.Make(523, SyntheticTone.Reedy, 1, 20, 1).Select(sample => Math.Clamp(sample * 9, -1, 1))]);
        Assert.Equal(new Reading.Unknown(Unreadable.Clipped), cutOff.HarmonicToNoise);
        Assert.Equal(new Reading.Unknown(Unreadable.Clipped), cutOff.Roughness);

        Assert.Equal(new Reading.Unknown(Unreadable.NoTone), ClipAnalyser.Analyse(new float[10]).Pitch);
        Assert.Equal(new Reading.Unknown(Unreadable.TooShort), ClipAnalyser.Analyse(SyntheticTone.Make(523, SyntheticTone.Reedy, 0.1, 20, 1)).Unsteadiness);
    }

    [Fact]
    public void Kinds_are_told_apart_on_clear_cases()
    {
        Assert.Equal(ClipKind.Crow, Kind(SyntheticCrow.Make(5, 20, [4, 5, 6]).Samples));
        Assert.Equal(ClipKind.Peep, Kind(SyntheticCrow.Make(6, 20, [5]).Samples));
        Assert.Equal(ClipKind.LongTone, Kind(SyntheticTone.Make(440, SyntheticTone.Reedy, 4, 30, 1)));
        var attack = SyntheticTone.Make(440, SyntheticTone.Reedy, 0.25, 30, 1);
        Assert.Equal(ClipKind.Attack, Kind([.. new float[9_600], .. attack, .. new float[9_600], .. attack, .. new float[9_600], .. attack, .. new float[9_600]]));
    }

    [Fact]
    public void A_clip_may_begin_and_break_off_anywhere()
    {
        var (tone, crow) = (SyntheticTone.Make(620, SyntheticTone.Reedy, 0.3, 20, 9), SyntheticCrow.Make(9, 15, [4, 5, 6]).Samples);
        for (var length = 0; length < tone.Length; length += 61)
        {
            Assert.NotNull(ClipAnalyser.Analyse(tone.AsSpan(0, length)));
        }

        for (var from = 0; from < crow.Length; from += 3_001)
        {
            Assert.NotNull(ClipAnalyser.Analyse(crow.AsSpan(from)));
            Assert.NotNull(ClipAnalyser.Analyse(crow.AsSpan(0, from)));
        }
    }

    private static ClipKind Kind(float[] clip)
    {
        var guess = ClipAnalyser.Analyse(clip).Kind!.Value;
        Assert.InRange(guess.Share, 0.3, 1);
        return guess.Kind;
    }

    private static IEnumerable<(int Seed, SyntheticCrow Crow, ClipReadings Readings)> Crows(int ratio)
    {
        for (var seed = 300; seed < 342; seed++)
        {
            var crow = SyntheticCrow.Make(seed, ratio, Choices[seed % Choices.Length]);
            yield return (seed, crow, ClipAnalyser.Analyse(crow.Samples));
        }
    }

    private static double Entry(ClipReadings readings, KnownPartial known) => readings.Partials[known.Octave - 4].Entry.Value ?? double.PositiveInfinity;

    private static double Percentile(List<double> values, int percent)
    {
        values.Sort();
        return values[Math.Min(values.Count - 1, values.Count * percent / 100)];
    }
}
