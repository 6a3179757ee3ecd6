using System.Buffers.Binary;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Tells forms apart by content. A name is never asked: anybody can write one.</summary>
public static class SoundForms
{
    /// <summary>So many bytes from the beginning are enough to tell.</summary>
    public const int Enough = 128;

    /// <summary>The forms that are read; to name to somebody whose file isn’t.</summary>
    public static IReadOnlyList<SoundForm> Read { get; } =
        [SoundForm.Wave, SoundForm.Aiff, SoundForm.Mp3, SoundForm.OggVorbis, SoundForm.OggOpus, SoundForm.WebmOpus];

    /// <summary>What a file is.</summary>
    /// <param name="head">How it begins: <see cref="Enough"/> bytes, or all.</param>
    /// <returns>Its form; nothing when it is no sound that we know.</returns>
    public static SoundForm? Of(ReadOnlySpan<byte> head)
    {
        if (head.Length < 12)
        {
            return null;
        }

        var form = head.Slice(8, 4);
        return head[..4] switch
        {
            var name when (name.SequenceEqual("RIFF"u8) || name.SequenceEqual("RF64"u8)) && form.SequenceEqual("WAVE"u8) => SoundForm.Wave,
            var name when name.SequenceEqual("FORM"u8) && (form.SequenceEqual("AIFF"u8) || form.SequenceEqual("AIFC"u8)) => SoundForm.Aiff,
            var name when name.SequenceEqual("OggS"u8) => OfOgg(head),
            var name when name.SequenceEqual("fLaC"u8) => SoundForm.Flac,
            [0x1A, 0x45, 0xDF, 0xA3] => SoundForm.WebmOpus,
            [(byte)'I', (byte)'D', (byte)'3', _] => SoundForm.Mp3,
            _ when head.Slice(4, 4).SequenceEqual("ftyp"u8) => SoundForm.Mp4,
            _ when Mp3Frame.TryRead(head, out _) => SoundForm.Mp3,
            _ when (BinaryPrimitives.ReadUInt16BigEndian(head) & 0xFFF6) == 0xFFF0 => SoundForm.Mp4,
            _ => null,
        };
    }

    private static SoundForm OfOgg(ReadOnlySpan<byte> head)
    {
        var first = head.Length > 27 ? head[Math.Min(head.Length, 27 + head[26])..] : [];
        return first.StartsWith("OpusHead"u8) ? SoundForm.OggOpus : first.StartsWith("\u0001vorbis"u8) ? SoundForm.OggVorbis : SoundForm.Other;
    }
}
