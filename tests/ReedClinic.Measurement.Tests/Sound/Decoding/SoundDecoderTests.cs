using ReedClinic.Measurement.Sound.Decoding;
using static ReedClinic.Media.Pack;
using static ReedClinic.Media.SoundFiles;

namespace ReedClinic.Measurement.Tests.Sound.Decoding;

public sealed class SoundDecoderTests
{
    [Theory]
    [InlineData("sine.mp3", SoundForm.Mp3, 44_100, 2)]
    [InlineData("sine-vorbis.ogg", SoundForm.OggVorbis, 44_100, 2)]
    [InlineData("sine-opus.ogg", SoundForm.OggOpus, 48_000, 1)]
    [InlineData("sine.webm", SoundForm.WebmOpus, 48_000, 2)]
    [InlineData("sine-live.webm", SoundForm.WebmOpus, 48_000, 1)]
    [InlineData("sine-24.aiff", SoundForm.Aiff, 22_050, 2)]
    public void What_encoders_of_others_made_is_read_as_the_sine_it_is(string name, SoundForm form, int rate, int channels)
    {
        var clip = Read(Clip(name));

        Assert.Equal((form, rate, channels, false), (clip.Form, clip.OriginalRate, clip.OriginalChannels, clip.IsCutShort));
        Assert.InRange(clip.Seconds, 0.39, 0.47);
        AssertSine(clip.Samples.Span[4_800..14_400], 440, 0.5, rest: 0.03);
    }

    public static TheoryData<string, int, int, int> Codes => new()
    {
        { "8 bits", 1, 8, 1 }, { "16 bits", 1, 16, 2 }, { "24 bits", 1, 24, 1 }, { "32 bits", 1, 32, 2 }, { "float", 3, 32, 1 }, { "float of 64 bits", 3, 64, 2 },
        { "16 bits, extensible", 0xFFFE, 16, 1 }, { "24 bits, extensible", 0xFFFE, 24, 2 }, { "float, extensible", 0xFFFE + 0x10000, 32, 2 },
    };

    [Theory]
    [MemberData(nameof(Codes))]
    public void Every_code_of_a_wave_is_read(string code, int tag, int bits, int channels)
    {
        var clip = Read(Wave(tag, bits, channels, 48_000));

        Assert.Equal(9_600, clip.Samples.Length);
        AssertSine(clip.Samples.Span, 440, 0.5, rest: bits == 8 ? 0.02 : 1e-4);
        Assert.Equal(channels, clip.OriginalChannels);
        Assert.NotEmpty(code);
    }

    [Theory]
    [InlineData(8_000)]
    [InlineData(11_025)]
    [InlineData(44_100)]
    [InlineData(44_099)]
    [InlineData(96_000)]
    [InlineData(192_000)]
    public void Any_rate_becomes_48_thousand_and_the_sine_stays_to_a_hundred_thousandth(int rate)
    {
        var clip = Read(Wave(3, 32, 1, rate));

        Assert.Equal(9_600, clip.Samples.Length, tolerance: 6.0);
        AssertSine(clip.Samples.Span[1_000..8_600], 440, 0.5, rest: 2e-5);
    }

    [Fact]
    public void What_lies_above_the_new_rate_is_gone_and_not_folded_down()
    {
        var high = new float[96_000];
        for (var i = 0; i < high.Length; i++)
        {
            high[i] = MathF.Sin(2 * MathF.PI * 30_000f * (i % 16) / 96_000f);
        }

        var made = Resampler.To(high, 96_000, 48_000).Span[1_000..47_000];

        // 30 kHz would come back as 18 kHz. −90 dB of full scale.
        Assert.All(made.ToArray(), sample => Assert.InRange(sample, -3.2e-5f, 3.2e-5f));
    }

    [Fact]
    public void A_wave_whose_length_was_left_open_is_read_to_its_end()
    {
        foreach (var said in (long[])[0xFFFFFFFF, 0])
        {
            var clip = Read(Riffed([.. Riff("fmt ", Format(1, 48_000, 1, 16)), .. Riff("data", new byte[9_600], said)], 0xFFFFFFFF));
            Assert.Equal((4_800, false), (clip.Samples.Length, clip.IsCutShort));
        }
    }

    [Fact]
    public void What_breaks_off_is_read_so_far_and_says_so()
    {
        var whole = Wave(1, 16, 1, 48_000);
        var clip = Read(whole[..(whole.Length / 2)]);

        Assert.True(clip.IsCutShort);
        Assert.InRange(clip.Samples.Length, 4_700, 4_800);
    }

    [Fact]
    public void Words_pictures_and_places_in_a_file_leave_no_trace_in_the_clip()
    {
        byte[] plain = Wave(1, 16, 1, 48_000);
        byte[] talking = Riffed([.. Riff("LIST", Text("INFOINAM" + Secret)), .. plain[12..36], .. Riff("id3 ", Id3(Secret)), .. plain[36..]]);

        Assert.Equal(Read(plain).Samples.ToArray(), Read(talking).Samples.ToArray());
    }

    /// <summary>Layout: EBU Tech 3306, version 1.1 (2009), figure 3: the lengths of all and of the sound stand in “ds64”, and all bits set where they stood.</summary>
    [Fact]
    public void A_wave_whose_lengths_stand_in_64_bits_is_read_and_one_that_lies_there_is_refused()
    {
        Assert.Equal((4_800, false), (Read(Long(9_600)).Samples.Length, Read(Long(9_600)).IsCutShort));
        Assert.Equal((4_800, true), (Read(Long(19_200)).Samples.Length, Read(Long(19_200)).IsCutShort));
        Assert.Equal(new DecodeResult.Refused(DecodeRefusal.TooLong, SoundForm.Wave), SoundDecoder.Decode(Long(ulong.MaxValue - 1), DecodeLimits.Usual));

        static byte[] Long(ulong said)
        {
            byte[] body = [.. Riff("ds64", [.. new byte[8], .. BitConverter.GetBytes(said), .. new byte[12]]), .. Riff("fmt ", Format(1, 48_000, 1, 16)), .. Riff("data", new byte[9_600], 0xFFFFFFFF)];
            return [.. Text("RF64"), .. Riffed(body, 0xFFFFFFFF)[4..]];
        }
    }

    [Theory]
    [InlineData("m4a", DecodeRefusal.FormNotRead, SoundForm.Mp4)]
    [InlineData("flac", DecodeRefusal.FormNotRead, SoundForm.Flac)]
    public void Forms_that_are_sound_but_not_read_here_are_named_as_such(string name, DecodeRefusal reason, SoundForm form)
    {
        var bytes = name == "m4a" ? Mp4() : Flac();

        Assert.Equal(new DecodeResult.Refused(reason, form), SoundDecoder.Decode(bytes, DecodeLimits.Usual));
    }

    [Fact]
    public async Task A_stream_that_is_no_sound_is_refused_at_its_first_bytes()
    {
        using var stream = new MemoryStream(new byte[10_000_000]);

        var refused = Assert.IsType<DecodeResult.Refused>(await SoundDecoder.DecodeAsync(stream, DecodeLimits.Usual, TestContext.Current.CancellationToken));

        Assert.Equal(DecodeRefusal.NotSound, refused.Reason);
        Assert.InRange(stream.Position, 1, 256);
    }

    [Fact]
    public async Task A_stream_is_read_like_bytes_and_not_beyond_the_limit()
    {
        var bytes = Wave(1, 24, 2, 44_100);
        using var stream = new MemoryStream(bytes);
        var done = Assert.IsType<DecodeResult.Done>(await SoundDecoder.DecodeAsync(stream, DecodeLimits.Usual, TestContext.Current.CancellationToken));
        Assert.Equal(Read(bytes).Samples.ToArray(), done.Clip.Samples.ToArray());

        stream.Position = 0;
        var refused = await SoundDecoder.DecodeAsync(stream, DecodeLimits.Usual with { Bytes = bytes.Length - 1 }, TestContext.Current.CancellationToken);
        Assert.Equal(new DecodeResult.Refused(DecodeRefusal.TooManyBytes, SoundForm.Wave), refused);
    }

    [Theory]
    [InlineData("sine.mp3")]
    [InlineData("sine-vorbis.ogg")]
    [InlineData("sine-opus.ogg")]
    [InlineData("sine.webm")]
    [InlineData("sine-24.aiff")]
    public void A_clip_longer_than_the_limit_is_refused_before_it_is_decoded(string name)
    {
        // Nought seconds are less than anything lasts.
        var refused = Assert.IsType<DecodeResult.Refused>(SoundDecoder.Decode(Clip(name), DecodeLimits.Usual with { Seconds = 0 }));

        Assert.Equal(DecodeRefusal.TooLong, refused.Reason);
    }

    [Theory]
    [InlineData("wave")]
    [InlineData("sine-24.aiff")]
    [InlineData("sine.mp3")]
    [InlineData("sine-vorbis.ogg")]
    [InlineData("sine-opus.ogg")]
    [InlineData("sine.webm")]
    public async Task A_file_of_any_form_that_takes_too_long_is_left_in_the_middle(string name)
    {
        using var late = new CancellationTokenSource();
        await using var file = new LateAtTheEnd(name == "wave" ? Wave(1, 16, 1, 48_000) : Clip(name), late);

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => SoundDecoder.DecodeAsync(file, DecodeLimits.Usual, late.Token));
    }

    // Its time is over when all of it was read and nothing is decoded yet.
    private sealed class LateAtTheEnd(byte[] bytes, CancellationTokenSource late) : MemoryStream(bytes)
    {
        public override ValueTask<int> ReadAsync(Memory<byte> buffer, CancellationToken cancellationToken = default)
        {
            var read = Read(buffer.Span);
            if (read == 0)
            {
                late.Cancel();
            }

            return ValueTask.FromResult(read);
        }
    }

    internal static byte[] Clip(string name) => File.ReadAllBytes(Path.Combine(AppContext.BaseDirectory, "Sound", "Clips", name));

    private static SoundClip Read(byte[] bytes) => Assert.IsType<DecodeResult.Done>(SoundDecoder.Decode(bytes, DecodeLimits.Usual)).Clip;

    /// <summary>0.2 s of 440 Hz at half of full scale. Tag 0x1FFFE is an extensible format that holds floating point.</summary>
    internal static byte[] Wave(int tag, int bits, int channels, int rate)
    {
        var isFloat = tag is 3 or 0x1FFFE;
        var bytes = new MemoryStream();
        for (var i = 0; i < rate / 5; i++)
        {
            var value = 0.5 * Math.Sin(2 * Math.PI * 440 * i / rate);
            var code = isFloat && bits == 64 ? BitConverter.GetBytes(value) : isFloat ? Little32(BitConverter.SingleToUInt32Bits((float)value))
                : bits == 8 ? [(byte)(128 + Math.Round(value * 128))]
                : Little32((long)Math.Round(value * Math.Pow(2, bits - 1)) & 0xFFFFFFFF)[..(bits / 8)];
            for (var channel = 0; channel < channels; channel++)
            {
                bytes.Write(code);
            }
        }

        var format = Format(tag & 0xFFFF, rate, channels, bits);
        byte[] rest = tag > 3 ? [.. Little16(22), .. Little16(bits), .. Little32(0), (byte)(isFloat ? 3 : 1), 0, 0, 0, 0, 0, 0x10, 0, 0x80, 0, 0, 0xAA, 0, 0x38, 0x9B, 0x71] : [];
        return Riffed([.. Riff("fmt ", [.. format, .. rest]), .. Riff("data", bytes.ToArray())]);
    }

    /// <summary>Takes the sine out by least squares and looks at what remains.</summary>
    private static void AssertSine(ReadOnlySpan<float> samples, double hertz, double amplitude, double rest)
    {
        double sc = 0, ss = 0, cc = 0, xs = 0, xc = 0, xx = 0;
        for (var i = 0; i < samples.Length; i++)
        {
            var (s, c) = Math.SinCos(2 * Math.PI * hertz * i / SoundClip.Rate);
            (sc, ss, cc, xs, xc, xx) = (sc + (s * c), ss + (s * s), cc + (c * c), xs + (samples[i] * s), xc + (samples[i] * c), xx + (samples[i] * (double)samples[i]));
        }

        var determinant = (ss * cc) - (sc * sc);
        var (a, b) = (((xs * cc) - (xc * sc)) / determinant, ((xc * ss) - (xs * sc)) / determinant);
        Assert.Equal(amplitude, Math.Sqrt((a * a) + (b * b)), tolerance: Math.Max(1e-4, rest));
        Assert.InRange(Math.Sqrt(Math.Max(0, (xx - (a * xs) - (b * xc)) / samples.Length)), 0, rest);
    }
}
