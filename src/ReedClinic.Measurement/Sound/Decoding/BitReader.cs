namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Reads bits as Vorbis packs them, the lowest of a byte first. Beyond the end there are only noughts, and it says so.</summary>
internal ref struct BitReader(ReadOnlySpan<byte> bytes)
{
    private readonly ReadOnlySpan<byte> _bytes = bytes;
    private long _at;

    public readonly bool IsBeyond => _at > (long)_bytes.Length * 8;

    public uint Read(int bits)
    {
        uint value = 0;
        for (var bit = 0; bit < bits; bit++, _at++)
        {
            var place = _at >> 3;
            if (place < _bytes.Length)
            {
                value |= (uint)((_bytes[(int)place] >> (int)(_at & 7)) & 1) << bit;
            }
        }

        return value;
    }

    public void Skip(long bits) => _at += bits;
}
