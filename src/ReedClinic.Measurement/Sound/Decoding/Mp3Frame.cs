namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>The header of a frame of MPEG layer III (ISO/IEC 11172-3, 2.4.2.3, and 13818-3).</summary>
/// <param name="Length">Bytes of the frame.</param>
/// <param name="Samples">Samples of one channel in it.</param>
/// <param name="Rate">Samples a second.</param>
/// <param name="Channels">One or two.</param>
internal readonly record struct Mp3Frame(int Length, int Samples, int Rate, int Channels)
{
    private static readonly int[] Kilobits = [0, 32, 40, 48, 56, 64, 80, 96, 112, 128, 160, 192, 224, 256, 320];
    private static readonly int[] LowKilobits = [0, 8, 16, 24, 32, 40, 48, 56, 64, 80, 96, 112, 128, 144, 160];
    private static readonly int[] Rates = [44_100, 48_000, 32_000];

    public static bool TryRead(ReadOnlySpan<byte> at, out Mp3Frame frame)
    {
        frame = default;
        if (at.Length < 4 || at[0] != 0xFF || (at[1] & 0xE6) != 0xE2)
        {
            return false;
        }

        int version = (at[1] >> 3) & 3, bits = at[2] >> 4, rates = (at[2] >> 2) & 3;
        if (version == 1 || bits is 0 or 15 || rates == 3)
        {
            return false;
        }

        var isFirst = version == 3;
        var rate = Rates[rates] / (isFirst ? 1 : version == 2 ? 2 : 4);
        var samples = isFirst ? 1152 : 576;
        var length = (samples / 8 * 1000 * (isFirst ? Kilobits : LowKilobits)[bits] / rate) + ((at[2] >> 1) & 1);
        frame = new Mp3Frame(length, samples, rate, at[3] >> 6 == 3 ? 1 : 2);
        return true;
    }
}
