using System.Globalization;
using ReedClinic.Domain.Pitch;
using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Measurement.Sound.Tracking;
using ReedClinic.Measurement.Tests.Sound.Synthetic;

namespace ReedClinic.Measurement.Tests.Sound.Tracking;

/// <summary>Pitch against exact truth, and against another program’s reading of recorded notes. Seeds are 100 and on, one for each note.</summary>
public sealed class PitchTrackerTests
{
    private const double Gross = 50;

    /// <summary>From B♭3 to F6, the oboe’s range, twelve notes that are no whole semitones apart.</summary>
    private static readonly double[] Notes = [.. Enumerable.Range(0, 12).Select(i => 440 * Math.Pow(2, (58 - 69 + (i * 31 / 11.0)) / 12))];

    public static TheoryData<string> Colours => ["reedy", "pure", "octave"];

    [Theory]
    [MemberData(nameof(Colours))]
    public void A_steady_tone_at_20_decibels_is_read_to_a_twentieth_of_a_cent(string colour)
    {
        var errors = Errors(colour, 20);

        Assert.InRange(errors[errors.Count / 2], 0, 0.05);
        Assert.InRange(errors[errors.Count * 95 / 100], 0, 0.25);
        Assert.InRange(errors[^1], 0, Gross);
    }

    [Theory]
    [MemberData(nameof(Colours))]
    public void A_steady_tone_at_10_decibels_is_read_to_less_than_a_cent(string colour)
    {
        var errors = Errors(colour, 10);

        Assert.InRange(errors[errors.Count * 95 / 100], 0, 0.8);
        Assert.InRange(errors[^1], 0, Gross);
    }

    [Theory]
    [MemberData(nameof(Colours))]
    public void A_vibrato_is_followed_to_a_quarter_of_a_cent(string colour)
    {
        var errors = Errors(colour, 40, time => 50 * Math.Sin(2 * Math.PI * 5 * time));

        Assert.InRange(errors[errors.Count / 2], 0, 0.25);
        Assert.InRange(errors[^1], 0, Gross);
    }

    /// <summary>ISO 16: A4 = 440 Hz; the other frequencies are those of equal semitones as tables print them, to the hundredth of a hertz.</summary>
    [Theory]
    [InlineData("B♭3", 58, 233.08)]
    [InlineData("C4", 60, 261.63)]
    [InlineData("E4", 64, 329.63)]
    [InlineData("A4", 69, 440.00)]
    [InlineData("C5", 72, 523.25)]
    [InlineData("G5", 79, 783.99)]
    [InlineData("C6", 84, 1046.50)]
    [InlineData("F6", 89, 1396.91)]
    public void Notes_of_equal_temperament_are_read_as_tables_print_them(string name, int midi, double hertz)
    {
        Assert.Equal(hertz, EqualTemperament.FrequencyOf(midi, Tuning.Standard).Value, 0.005);
        var frames = PitchTracker.Track(SyntheticTone.Make(440 * Math.Pow(2, (midi - 69) / 12.0), SyntheticTone.Reedy, 0.5, 40, midi)).Frames;
        Assert.True(Math.Abs(hertz - Median(frames)) < 0.01, name);
    }

    [Fact]
    public void Recorded_notes_agree_with_an_independent_program()
    {
        var differences = new List<double>();
        foreach (var cells in File.ReadLines(Note("reference.csv")).Skip(1).Select(line => line.Split(',')).Where(cells => File.Exists(Note(cells[0]))))
        {
            var clip = Assert.IsType<DecodeResult.Done>(SoundDecoder.Decode(File.ReadAllBytes(Note(cells[0])), DecodeLimits.Usual)).Clip;
            var reference = double.Parse(cells[3], CultureInfo.InvariantCulture);
            differences.Add(Math.Abs(1200 * Math.Log2(Median(PitchTracker.Track(clip.Samples.Span).Frames) / reference)));
        }

        Assert.True(differences.Count >= 9);
        differences.Sort();
        Assert.InRange(differences[differences.Count / 2], 0, 0.3);
        Assert.InRange(differences[^1], 0, 1.5);
    }

    [Fact]
    public void A_note_whose_second_partial_dominates_is_not_read_an_octave_high()
    {
        foreach (var note in Notes)
        {
            double[] heavy = [0.04, 1, 0.04, 0.2];
            var pitch = Median(PitchTracker.Track(SyntheticTone.Make(note, heavy, 0.5, 40, 7)).Frames);
            Assert.Equal(0, 1200 * Math.Log2(pitch / note), 1.0);
        }
    }

    [Fact]
    public void A_note_is_not_read_an_octave_low_where_there_is_only_noise_below_it()
    {
        foreach (var note in Notes.Where(note => note > 2 * PitchTrack.LowestHertz))
        {
            Assert.All(
                PitchTracker.Track(SyntheticTone.Make(note, SyntheticTone.Reedy, 1, 10, 11)).Frames.Where(frame => frame.IsVoiced),
                frame => Assert.True(frame.Hertz > 0.7 * note));
        }
    }

    [Fact]
    public void What_a_frame_claims_of_its_error_is_not_far_from_the_truth()
    {
        double squares = 0, claims = 0;
        foreach (var (index, note) in Notes.Index())
        {
            foreach (var frame in Inner(SyntheticTone.Make(note, SyntheticTone.Reedy, 2, 20, 100 + index)))
            {
                var error = 1200 * Math.Log2(frame.Hertz / note);
                (squares, claims) = (squares + (error * error), claims + (frame.PlusMinusCents * frame.PlusMinusCents));
            }
        }

        Assert.InRange(Math.Sqrt(squares / claims), 0.4, 2.5);
    }

    [Fact]
    public void Noise_and_silence_have_no_pitch()
    {
        var random = new Random(5);
        float[] noise = [.. Enumerable.Range(0, 48_000).Select(_ => (float)(0.1 * SyntheticTone.Normal(random)))];

        Assert.DoesNotContain(PitchTracker.Track(noise).Frames, frame => frame.IsVoiced);
        Assert.DoesNotContain(PitchTracker.Track(new float[48_000]).Frames, frame => frame.IsVoiced);
        Assert.Empty(PitchTracker.Track(new float[100]).Frames);
        Assert.All(Enumerable.Range(250, 4_000), length => PitchTracker.Track(noise.AsSpan(0, length)));
    }

    [Fact]
    public void A_clip_of_ten_seconds_takes_little_memory_however_it_sounds()
    {
        var clip = SyntheticTone.Make(440, SyntheticTone.Reedy, 10, 20, 3);
        PitchTracker.Track(clip);
        var before = GC.GetAllocatedBytesForCurrentThread();
        PitchTracker.Track(clip);

        // The clip at half its rate, twice, and a row for each frame; nothing inside the loops.
        Assert.InRange(GC.GetAllocatedBytesForCurrentThread() - before, 0, 2_600_000);
    }

    private static List<double> Errors(string colour, double ratio, Func<double, double>? cents = null)
    {
        var partials = colour switch { "reedy" => SyntheticTone.Reedy, "pure" => SyntheticTone.Pure, _ => SyntheticTone.OctaveHeavy };
        var errors = new List<double>();
        foreach (var (index, note) in Notes.Index())
        {
            var frames = Inner(SyntheticTone.Make(note, partials, 1.2, ratio, 100 + index, cents)).ToList();
            Assert.All(frames, frame => Assert.True(frame.IsVoiced, string.Create(CultureInfo.InvariantCulture, $"{note:0.0} Hz, seed {100 + index}")));
            errors.AddRange(frames.Select(frame => Math.Abs((1200 * Math.Log2(frame.Hertz / note)) - (cents?.Invoke(frame.Seconds) ?? 0))));
        }

        errors.Sort();
        return errors;
    }

    private static IEnumerable<PitchFrame> Inner(float[] clip) =>
        PitchTracker.Track(clip).Frames.Where(frame => frame.Seconds > 0.1 && frame.Seconds < ((double)clip.Length / SyntheticTone.Rate) - 0.1);

    private static double Median(IReadOnlyList<PitchFrame> frames)
    {
        var sorted = frames.Where(frame => frame.IsVoiced).Select(frame => frame.Hertz).Order().ToList();
        return sorted[sorted.Count / 2];
    }

    private static string Note(string name) => Path.Combine(AppContext.BaseDirectory, "Sound", "Notes", name);
}
