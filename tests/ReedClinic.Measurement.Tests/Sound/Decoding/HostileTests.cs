using System.Diagnostics;
using System.Globalization;
using ReedClinic.Domain.Recordings;
using ReedClinic.Measurement.Sound.Decoding;

namespace ReedClinic.Measurement.Tests.Sound.Decoding;

/// <summary>
/// Files made to hurt: each comes back as a clip or as a reason, within 200 ms, and with little memory taken. OWASP ASVS 5.0, 5.2, asks for
/// limits before a file is decoded.
/// </summary>
public sealed class HostileTests
{
    private static readonly TimeSpan Soon = TimeSpan.FromMilliseconds(200);

    /// <summary>Buffers of the decoders, and a minute at 48 kHz is 11.5 MB.</summary>
    private const long Little = 16_000_000;

    [Fact]
    public void Every_spoilt_file_is_refused_soon_and_with_little_memory()
    {
        var taken = new List<string>();
        foreach (var (name, bytes) in Spoilt.All())
        {
            if (Decode(name, bytes) is DecodeResult.Done)
            {
                taken.Add(name);
            }
        }

        Assert.Empty(taken);
    }

    [Fact]
    public void Files_of_the_corpus_that_are_something_else_are_refused()
    {
        foreach (var sample in MediaCorpus.Hostile)
        {
            var result = Decode(sample.Name, sample.Bytes);
            if (sample.Kind != RecordingKind.ArrivalSound || sample.Name.StartsWith("a ", StringComparison.Ordinal))
            {
                // One is a good wave, which was sent as a photograph.
                Assert.True(result is DecodeResult.Refused || sample.Name == "a sound", sample.Name);
            }
        }
    }

    [Theory]
    [InlineData("wave of 24 hours in its header", DecodeRefusal.TooLong)]
    [InlineData("six minutes of wave", DecodeRefusal.TooLong)]
    [InlineData("wave of 65,535 channels", DecodeRefusal.ChannelsNotRead)]
    [InlineData("wave at one sample a second", DecodeRefusal.RateNotRead)]
    [InlineData("wave of an unknown code", DecodeRefusal.FormNotRead)]
    [InlineData("wave whose samples don’t fit", DecodeRefusal.Damaged)]
    [InlineData("wave with nothing to hear", DecodeRefusal.NoSound)]
    [InlineData("webm with pictures", DecodeRefusal.FormNotRead)]
    [InlineData("matroska", DecodeRefusal.NotSound)]
    [InlineData("opus of nine channels", DecodeRefusal.ChannelsNotRead)]
    [InlineData("ogg with pictures", DecodeRefusal.FormNotRead)]
    [InlineData("nothing", DecodeRefusal.Empty)]
    [InlineData("a page", DecodeRefusal.NotSound)]
    [InlineData("a zip", DecodeRefusal.NotSound)]
    [InlineData("a tag before a page", DecodeRefusal.NotSound)]
    [InlineData("an MP3 of nothing but heads", DecodeRefusal.Damaged)]
    [InlineData("a float that is no number", DecodeRefusal.NotNumbers)]
    [InlineData("a Vorbis of 256 huge books", DecodeRefusal.Damaged)]
    public void The_reason_is_the_one_that_helps(string name, DecodeRefusal reason)
    {
        var bytes = MediaCorpus.Hostile.FirstOrDefault(sample => sample.Name == name)?.Bytes ?? Spoilt.All().Single(spoilt => spoilt.Name == name).Bytes;

        Assert.Equal(reason, Assert.IsType<DecodeResult.Refused>(SoundDecoder.Decode(bytes, DecodeLimits.Usual)).Reason);
    }

    public static TheoryData<string> Small => ["sine.mp3", "sine-vorbis.ogg", "sine-opus.ogg", "sine-live.webm", "wave", "aiff"];

    [Theory]
    [MemberData(nameof(Small))]
    public void Cut_off_anywhere_a_file_is_read_so_far_or_refused(string name)
    {
        var whole = Bytes(name);

        // Every length of the first thousand bytes, where the headers are; then one in 17, and the last hundred.
        foreach (var length in Enumerable.Range(0, whole.Length).Where(length => length < 1_000 || length % 17 == 0 || length > whole.Length - 100))
        {
            Decode(string.Create(CultureInfo.InvariantCulture, $"{name} cut at {length}"), whole[..length]);
        }
    }

    [Theory]
    [MemberData(nameof(Small))]
    public void With_bytes_turned_anywhere_a_file_is_read_or_refused(string name)
    {
        var whole = Bytes(name);
        var random = new Random(20_261);
        for (var round = 0; round < 200; round++)
        {
            var spoilt = (byte[])whole.Clone();
            for (var turned = 0; turned < 1 + (round % 4); turned++)
            {
                spoilt[random.Next(round % 2 == 0 ? Math.Min(300, spoilt.Length) : spoilt.Length)] = (byte)random.Next(256);
            }

            Decode(string.Create(CultureInfo.InvariantCulture, $"{name}, seed 20261, round {round}"), spoilt);
        }
    }

    private static byte[] Bytes(string name) => name switch
    {
        "wave" => SoundDecoderTests.Wave(0xFFFE, 24, 2, 8_000),
        "aiff" => Spoilt.Aiff(),
        _ => SoundDecoderTests.Clip(name),
    };

    private static DecodeResult Decode(string name, byte[] bytes)
    {
        DecodeResult? result = null;
        var shortest = TimeSpan.MaxValue;

        // The first decoding of a form makes the runtime compile it, and the machine may be busy: only what is slow three times is slow.
        for (var attempt = 0; attempt < 3 && shortest > Soon; attempt++)
        {
            var before = GC.GetAllocatedBytesForCurrentThread();
            var began = Stopwatch.GetTimestamp();
            result = SoundDecoder.Decode(bytes, DecodeLimits.Usual);
            var took = Stopwatch.GetElapsedTime(began);
            shortest = took < shortest ? took : shortest;
            Assert.True(GC.GetAllocatedBytesForCurrentThread() - before < Little + (3L * bytes.Length), $"{name} took {GC.GetAllocatedBytesForCurrentThread() - before} bytes");
        }

        Assert.True(shortest <= Soon, $"{name} took {shortest.TotalMilliseconds:0} ms");
        return result!;
    }
}
