using System.Diagnostics;
using System.Text;
using CsCheck;
using ReedClinic.Domain.Recordings;

namespace ReedClinic.Domain.Tests.Recordings;

/// <summary>What is kept of a file and what isn’t taken: OWASP ASVS 5.0, 5.2.1, 5.2.2, 5.2.3, 5.2.6, 14.2.8.</summary>
public sealed class MediaFileTests
{
    [Fact]
    public void Every_good_file_is_taken_and_nothing_that_tells_of_somebody_is_left_in_it()
    {
        var wrong = new List<string>();
        foreach (var sample in MediaCorpus.Good)
        {
            if (MediaFile.Read(sample.Bytes, sample.Kind) is not MediaReading.Clean clean)
            {
                wrong.Add($"{sample}: {MediaFile.Read(sample.Bytes, sample.Kind)}");
                continue;
            }

            wrong.AddRange(LeftIn(clean.Bytes.Span).Select(secret => $"{sample}: “{secret}” is left"));
        }

        Assert.Empty(wrong);
        Assert.True(MediaCorpus.Good.Count >= 20);
        Assert.All(MediaCorpus.Secrets.Except(["GPS"]), secret => Assert.Contains(MediaCorpus.Good, sample => LeftIn(sample.Bytes).Contains(secret)));
    }

    [Fact]
    public void What_was_taken_is_taken_again_as_it_is()
    {
        Assert.All(MediaCorpus.Good, sample =>
        {
            var once = Clean(sample);
            var twice = Assert.IsType<MediaReading.Clean>(MediaFile.Read(once.Bytes.Span, sample.Kind));

            Assert.Equal(once.Type, twice.Type);
            Assert.True(once.Bytes.Span.SequenceEqual(twice.Bytes.Span), sample.Name);
            Assert.Equal((once.Milliseconds, once.Pixels), (twice.Milliseconds, twice.Pixels));
        });
    }

    [Fact]
    public void No_hostile_file_is_taken_and_each_is_refused_soon()
    {
        var taken = new List<string>();
        foreach (var sample in MediaCorpus.Hostile)
        {
            if (MediaFile.Read(sample.Bytes, sample.Kind) is not MediaReading.Refused { Why: var why })
            {
                taken.Add(sample.Name);
            }
            else
            {
                Assert.NotEmpty(why.Words(sample.Kind));
            }

            // A machine may be busy: only what is slow three times is slow.
            Assert.True(Enumerable.Range(0, 3).Any(_ => Took(sample) < TimeSpan.FromSeconds(2)), sample.Name);
        }

        Assert.Empty(taken);
        Assert.True(MediaCorpus.Hostile.Count >= 40);
        Assert.Equal(MediaCorpus.Hostile.Count, MediaCorpus.Hostile.Select(sample => sample.Name).Distinct().Count());
    }

    private static TimeSpan Took(MediaSample sample)
    {
        var watch = Stopwatch.StartNew();
        _ = MediaFile.Read(sample.Bytes, sample.Kind);
        return watch.Elapsed;
    }

    [Fact]
    public void No_file_that_lacks_its_end_breaks_the_reader()
    {
        foreach (var sample in MediaCorpus.Good)
        {
            for (var length = 0; length < Math.Min(sample.Bytes.Length, 1_500); length++)
            {
                _ = MediaFile.Read(sample.Bytes.AsSpan(0, length), sample.Kind);
            }
        }
    }

    [Theory]
    [InlineData(0, 1_540)]
    [InlineData(4, 1_520)]
    public void A_recording_that_broke_off_while_it_was_made_is_kept_up_to_its_last_whole_block(int lacks, int milliseconds)
    {
        var whole = SoundFiles.WebM(isEndless: true, part: []);
        byte[] broken = lacks == 0 ? [.. whole, 0xA3] : whole[..^lacks];

        var kept = Assert.IsType<MediaReading.Clean>(MediaFile.Read(broken, RecordingKind.VoiceMemo));

        Assert.Equal(milliseconds, kept.Milliseconds);
        Assert.Equal(lacks == 0 ? whole.Length : LastGroup(whole), kept.Bytes.Length);
        Assert.IsType<MediaReading.Clean>(MediaFile.Read(kept.Bytes.Span, RecordingKind.VoiceMemo));
        Assert.IsType<MediaReading.Refused>(MediaFile.Read(SoundFiles.WebM(part: []).AsSpan()[..^4], RecordingKind.VoiceMemo));
        Assert.IsType<MediaReading.Refused>(MediaFile.Read([.. whole, .. "<html>"u8], RecordingKind.VoiceMemo));
    }

    [Fact]
    public void No_turned_bytes_break_the_reader_or_let_a_secret_through() =>
        Gen.Select(Gen.Int[0, MediaCorpus.Good.Count - 1], Gen.Int[0, 1_000], Gen.Byte, Gen.Int[0, 1_000], Gen.Byte).Sample(
            (which, first, one, second, other) =>
            {
                var sample = MediaCorpus.Good[which];
                var bytes = sample.Bytes.ToArray();
                bytes[first % bytes.Length] = one;
                bytes[second % bytes.Length] = other;
                if (MediaFile.Read(bytes, sample.Kind) is MediaReading.Clean clean)
                {
                    Assert.True(clean.Bytes.Length <= bytes.Length + 64);
                    Assert.DoesNotContain("<script", LeftIn(clean.Bytes.Span));
                }
            },
            iter: 20_000);

    [Theory]
    [InlineData("png of 30,000 by 30,000", RecordingRefusal.TooManyPixels)]
    [InlineData("jpeg of 60,000 by 60,000", RecordingRefusal.TooManyPixels)]
    [InlineData("webp of 16,384 by 16,384", RecordingRefusal.TooManyPixels)]
    [InlineData("webp that moves", RecordingRefusal.Moving)]
    [InlineData("six minutes of wave", RecordingRefusal.TooLong)]
    [InlineData("m4a with pictures", RecordingRefusal.Film)]
    [InlineData("webm with pictures", RecordingRefusal.Film)]
    [InlineData("an iPhone’s photograph", RecordingRefusal.Heic)]
    [InlineData("a photograph", RecordingRefusal.NotASound)]
    [InlineData("a sound", RecordingRefusal.NotAPhoto)]
    [InlineData("a zip", RecordingRefusal.NotKnown)]
    [InlineData("nothing", RecordingRefusal.Empty)]
    [InlineData("wave of 24 hours in its header", RecordingRefusal.Broken)]
    public void A_refusal_says_what_is_wrong(string name, RecordingRefusal why)
    {
        var sample = MediaCorpus.Hostile.Single(sample => sample.Name == name);

        Assert.Equal(new MediaReading.Refused(why), MediaFile.Read(sample.Bytes, sample.Kind));
    }

    [Fact]
    public void A_file_larger_than_its_kind_may_be_is_not_read() =>
        Assert.Equal(
            new MediaReading.Refused(RecordingRefusal.TooLarge),
            MediaFile.Read(new byte[RecordingLimits.Bytes(RecordingKind.ArrivalPhoto) + 1], RecordingKind.ArrivalPhoto));

    [Theory]
    [InlineData("wave", MediaType.Wav, 1000)]
    [InlineData("mp3", MediaType.Mp3, 1044)] // 40 frames of 1152 samples at 44.1 kHz
    [InlineData("flac", MediaType.Flac, 1200)]
    [InlineData("opus", MediaType.Ogg, 1000)] // the first 312 samples aren’t played: RFC 7845, 4.2
    [InlineData("vorbis", MediaType.Ogg, 1000)]
    [InlineData("webm", MediaType.WebM, 1540)]
    [InlineData("m4a", MediaType.Mp4, 2000)]
    [InlineData("tone.flac", MediaType.Flac, 160)]
    [InlineData("opus.ogg", MediaType.Ogg, 160)]
    [InlineData("vorbis.ogg", MediaType.Ogg, 160)]
    public void How_long_a_sound_plays_is_read_from_it(string name, MediaType type, int milliseconds)
    {
        var clean = Clean(MediaCorpus.Good.Single(sample => sample.Name == name));

        Assert.Equal((type, milliseconds), (clean.Type, clean.Milliseconds));
    }

    [Fact]
    public void A_photograph_keeps_which_way_up_it_is_and_nothing_else_of_what_the_camera_wrote()
    {
        var clean = Clean(MediaCorpus.Good.Single(sample => sample.Name == "jpeg with a place and which way up"));
        var exif = clean.Bytes.Span[20..56];

        Assert.Equal((8, 8), clean.Pixels);
        Assert.True(exif[4..].StartsWith("Exif\0\0MM\0*"u8));
        Assert.Equal((byte)1, exif[19]); // one field
        Assert.Equal([0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 6, 0, 0], exif[20..32].ToArray());
        Assert.Equal(34 + 2, exif.Length);
    }

    [Fact]
    public void Only_what_is_heard_is_kept_of_a_wave()
    {
        var words = Clean(MediaCorpus.Good.Single(sample => sample.Name == "wave with words in it"));

        Assert.Equal(SoundFiles.Wave(), words.Bytes.ToArray());
    }

    [Fact]
    public void The_sums_are_those_of_the_published_check_words()
    {
        // The check word of every catalogue of such sums, “123456789”: CRC-32 of ISO-HDLC; CRC-8 of SMBus; CRC-16 of UMTS; the plain one of Ogg is CKSUM’s turned over.
        var word = Encoding.ASCII.GetBytes("123456789");

        Assert.Equal(0xCBF43926, Pack.Crc32(word));
        Assert.Equal(0xF4U, Pack.Crc(word, 8, 0x07));
        Assert.Equal(0xFEE8U, Pack.Crc(word, 16, 0x8005));
        Assert.Equal(~0x765E7680U, Pack.Crc(word, 32, 0x04C11DB7));
    }

    private static MediaReading.Clean Clean(MediaSample sample) => Assert.IsType<MediaReading.Clean>(MediaFile.Read(sample.Bytes, sample.Kind));

    private static List<string> LeftIn(ReadOnlySpan<byte> bytes)
    {
        var text = Encoding.Latin1.GetString(bytes);
        return [.. MediaCorpus.Secrets.Where(secret => text.Contains(secret, StringComparison.Ordinal))];
    }

    private static int LastGroup(byte[] file) => Array.LastIndexOf(file, (byte)0xA0);
}
