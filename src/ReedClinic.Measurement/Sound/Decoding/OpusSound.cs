using System.Buffers.Binary;
using Concentus.Structs;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Decodes packets of Opus by Concentus’ managed decoder, one channel or two (RFC 6716; head and gain: RFC 7845, 5.1).</summary>
internal sealed class OpusSound : IDisposable
{
    private const int LongestPacket = 5760; // 120 ms at 48 kHz

    private readonly OpusDecoder _decoder;
    private readonly float[] _buffer;
    private readonly float _gain;

    private OpusSound(int channels, int skip, double gain, DecodeLimits limits, long expected)
    {
        // The factory would rather take a library of the system’s, which is not the one that was tried.
#pragma warning disable CS0618
        _decoder = new OpusDecoder(SoundClip.Rate, channels);
#pragma warning restore CS0618
        _buffer = new float[LongestPacket * channels];
        _gain = (float)Math.Pow(10, gain / 20);
        Skip = skip;
        Mono = new Mono(channels, SoundClip.Rate, limits, expected);
    }

    public int Skip { get; }

    public Mono Mono { get; }

    public static (OpusSound? Sound, DecodeRefusal? Refusal) Begin(ReadOnlySpan<byte> head, DecodeLimits limits, long expected)
    {
        if (head.Length < 19 || !head.StartsWith("OpusHead"u8) || head[8] > 15)
        {
            return (null, DecodeRefusal.Damaged);
        }

        if (head[9] is not (1 or 2) || head[18] != 0)
        {
            return (null, DecodeRefusal.ChannelsNotRead);
        }

        var gain = BinaryPrimitives.ReadInt16LittleEndian(head[16..]) / 256.0;
        return (new OpusSound(head[9], BinaryPrimitives.ReadUInt16LittleEndian(head[10..]), gain, limits, expected), null);
    }

    /// <summary>Decodes one packet.</summary>
    /// <returns>False when no more are wanted.</returns>
    public bool Take(ReadOnlySpan<byte> packet)
    {
        if (packet.IsEmpty)
        {
            return true;
        }

        var frames = _decoder.Decode(packet, _buffer, LongestPacket, false);
        var heard = _buffer.AsSpan(0, frames * Mono.Channels);
        System.Numerics.Tensors.TensorPrimitives.Multiply(heard, _gain, heard);
        return Mono.Take(heard);
    }

    public void Dispose() => _decoder.Dispose();
}
