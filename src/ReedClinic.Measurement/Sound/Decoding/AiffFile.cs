using System.Buffers.Binary;
using NAudio.Wave;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Reads AIFF: NAudio gets a file that has the description and the sound in it and nothing else, with lengths that are true.</summary>
internal static class AiffFile
{
    private const int Description = 18;
    private const int Offsets = 8;

    public static DecodeResult Read(byte[] bytes, DecodeLimits limits)
    {
        if (Chunks.Find(bytes, "COMM"u8, isBigEndian: true) is not { IsCutShort: false, Length: >= Description } told)
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.Aiff);
        }

        var comm = told.In(bytes);
        var channels = BinaryPrimitives.ReadInt16BigEndian(comm);
        var frames = BinaryPrimitives.ReadUInt32BigEndian(comm[2..]);
        var bits = BinaryPrimitives.ReadInt16BigEndian(comm[6..]);
        var rate = Extended(comm.Slice(8, 10));
        if (bits is not (8 or 16 or 24 or 32) || (bytes[11] == 'C' && (comm.Length < 22 || !comm.Slice(18, 4).SequenceEqual("NONE"u8))))
        {
            return new DecodeResult.Refused(DecodeRefusal.FormNotRead, SoundForm.Aiff);
        }

        if (limits.Against(rate, channels, frames) is { } reason)
        {
            return new DecodeResult.Refused(reason, SoundForm.Aiff);
        }

        if (Chunks.Find(bytes, "SSND"u8, isBigEndian: true) is not { Length: >= Offsets } sound)
        {
            return new DecodeResult.Refused(DecodeRefusal.Damaged, SoundForm.Aiff);
        }

        var align = channels * bits / 8;
        var there = Math.Min((long)frames * align, (sound.Length - Offsets) / align * align);
        return Pcm.Read(new AiffFileReader(new MemoryStream(Rebuilt(comm, sound.In(bytes).Slice(Offsets, (int)there), (uint)(there / align)))), limits, SoundForm.Aiff, there < (long)frames * align);
    }

    private static byte[] Rebuilt(ReadOnlySpan<byte> comm, ReadOnlySpan<byte> sound, uint frames)
    {
        var padded = sound.Length + (sound.Length & 1);
        var made = new byte[12 + 8 + Description + 8 + Offsets + padded];
        Name(made, 0, "FORM"u8, made.Length - 8);
        "AIFF"u8.CopyTo(made.AsSpan(8));
        Name(made, 12, "COMM"u8, Description);
        comm[..Description].CopyTo(made.AsSpan(20));
        BinaryPrimitives.WriteUInt32BigEndian(made.AsSpan(22), frames);
        Name(made, 38, "SSND"u8, Offsets + sound.Length);
        sound.CopyTo(made.AsSpan(54));
        return made;
    }

    private static void Name(byte[] made, int at, ReadOnlySpan<byte> name, int length)
    {
        name.CopyTo(made.AsSpan(at));
        BinaryPrimitives.WriteInt32BigEndian(made.AsSpan(at + 4), length);
    }

    /// <summary>A whole number from the 80 bits that AIFF keeps a rate in (IEEE 754, extended); −1 for what can be no rate.</summary>
    private static long Extended(ReadOnlySpan<byte> ten)
    {
        var power = BinaryPrimitives.ReadUInt16BigEndian(ten) - 16383;
        return power is < 0 or > 30 ? -1 : (long)(BinaryPrimitives.ReadUInt64BigEndian(ten[2..]) >> (63 - power));
    }
}
