using System.Buffers.Binary;
using System.IO.Compression;
using ReedClinic.Domain.Pitch;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Measurement.Sound.Drawing;
using ReedClinic.Measurement.Sound.Readings;
using ReedClinic.Measurement.Tests.Sound.Synthetic;

namespace ReedClinic.Measurement.Tests.Sound.Readings;

/// <summary>What is kept of a clip, on signals whose truth is known. No recording of a crow was available.</summary>
public sealed class ClipReportTests
{
    [Fact]
    public void A_made_crow_is_kept_with_the_octaves_entries_and_pitch_that_it_was_made_with()
    {
        var crow = SyntheticCrow.Make(11, 20, [4, 5, 6]);

        var found = ClipReport.Of(Clip(crow.Samples));

        Assert.Equal([4, 5, 6], found.Figures.Octaves.Where(octave => octave.Sounds).Select(octave => octave.Octave));
        foreach (var octave in found.Figures.Octaves)
        {
            Assert.Equal(crow.Partials.Single(one => one.Octave == octave.Octave).Entry, octave.Entry.Value!.Value, tolerance: 0.01);
        }

        Assert.Equal(SoundKind.Crow, found.Guess!.Value.Kind);
        Assert.InRange(found.Series.Count, 100, SoundSeries.Most);
        Assert.Equal(found.Figures.Seconds, found.Series.Count * found.Series.Step, tolerance: 0.02);
    }

    [Fact]
    public void A_note_is_kept_by_its_name_in_the_players_own_tuning()
    {
        var figures = ClipReport.Of(Clip(SyntheticTone.Make(415, SyntheticTone.Reedy, 2, 40, 3))).Figures;

        Assert.Equal("A4", figures.Said(new Tuning(new Hertz(415)))!.Text);
        Assert.Equal("A♭4 -1", figures.Said(Tuning.Standard)!.Text);
    }

    [Fact]
    public void Silence_is_kept_with_the_reasons_and_no_guess()
    {
        var found = ClipReport.Of(Clip(new float[48_000]));

        Assert.Equal(Figure.None(Unread.NoTone), found.Figures.Pitch);
        Assert.Empty(found.Figures.Octaves);
        Assert.Null(found.Guess);
        Assert.All(found.Series.Decibels, level => Assert.Equal(SoundSeries.Silence, level));
    }

    [Theory]
    [InlineData(1)]
    [InlineData(300)]
    [InlineData(48_000 * 60)]
    public void Any_length_is_kept_in_as_few_moments_as_a_drawing_shows(int samples)
    {
        var found = ClipReport.Of(Clip(SyntheticTone.Make(440, SyntheticTone.Pure, samples / 48_000.0, 30, 4)[..samples]));

        Assert.InRange(found.Series.Count, 1, SoundSeries.Most);
        Assert.InRange(found.Picture.Length, 100, SoundReading.LargestPicture);
    }

    /// <summary>ISO/IEC 15948:2004 (PNG): signature (5.2), header (11.2.2), four bits with a palette (11.2.3), rows behind a filter’s number (9), the sum of each chunk (annex D).</summary>
    [Fact]
    public void The_spectrogram_is_a_palette_PNG_in_which_a_tone_is_a_dark_line_at_its_pitch()
    {
        var png = Spectrogram.Png(SyntheticTone.Make(1046.5, SyntheticTone.Pure, 1, 60, 5));
        var (points, palette) = Read(png);

        // Three octaves over the lower edge: half way up. Dark there, paper an octave away.
        var (line, above) = (points[Spectrogram.Height / 2, Spectrogram.Width / 2], points[Spectrogram.Height / 3, Spectrogram.Width / 2]);
        Assert.Equal((15, 0), (line, above));
        Assert.Equal([0xFB, 0xF8, 0xF2], palette[..3]);
        Assert.Equal([0x1E, 0x2A, 0x2F], palette[^3..]);
    }

    [Fact]
    public void Noise_which_packs_worst_stays_below_what_is_kept()
    {
        var random = new Random(6);
        var noise = new float[480_000];
        for (var at = 0; at < noise.Length; at++)
        {
            noise[at] = (float)(0.1 * SyntheticTone.Normal(random));
        }

        Assert.InRange(Spectrogram.Png(noise).Length, 10_000, SoundReading.LargestPicture);
    }

    [Fact]
    public void Every_reason_of_the_decoder_has_one_that_is_kept()
    {
        var kept = Enum.GetValues<DecodeRefusal>().Select(ClipReport.Kept).ToList();

        Assert.Equal(kept.Count, kept.Distinct().Count());
        Assert.DoesNotContain(SoundTrouble.Missing, kept);
    }

    private static SoundClip Clip(float[] samples) => new(samples, SoundForm.Wave, 48_000, 1, false);

    private static (byte[,] Points, byte[] Palette) Read(byte[] png)
    {
        Assert.Equal([0x89, 0x50, 0x4E, 0x47, 0x0D, 0x0A, 0x1A, 0x0A], png[..8]);
        var chunks = new Dictionary<string, byte[]>();
        for (var at = 8; at < png.Length;)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at));
            var body = png.AsSpan(at + 4, length + 4);
            Assert.Equal(Crc(body), BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at + 8 + length)));
            chunks[System.Text.Encoding.ASCII.GetString(body[..4])] = body[4..].ToArray();
            at += 12 + length;
        }

        Assert.Equal([0, 0, 2, 48, 0, 0, 0, 180, 4, 3, 0, 0, 0], chunks["IHDR"]);
        using var zlib = new ZLibStream(new MemoryStream(chunks["IDAT"]), CompressionMode.Decompress);
        var points = new byte[Spectrogram.Height, Spectrogram.Width];
        var row = new byte[1 + (Spectrogram.Width / 2)];
        for (var y = 0; y < Spectrogram.Height; y++)
        {
            zlib.ReadExactly(row);
            Assert.Equal(0, row[0]);
            for (var x = 0; x < Spectrogram.Width; x++)
            {
                points[y, x] = (byte)((x & 1) == 0 ? row[1 + (x / 2)] >> 4 : row[1 + (x / 2)] & 15);
            }
        }

        Assert.Equal(-1, zlib.ReadByte());
        return (points, chunks["PLTE"]);
    }

    // As annex D has it, bit by bit.
    private static uint Crc(ReadOnlySpan<byte> bytes)
    {
        var sum = uint.MaxValue;
        foreach (var next in bytes)
        {
            sum ^= next;
            for (var bit = 0; bit < 8; bit++)
            {
                sum = (sum & 1) != 0 ? 0xEDB88320 ^ (sum >> 1) : sum >> 1;
            }
        }

        return ~sum;
    }
}
