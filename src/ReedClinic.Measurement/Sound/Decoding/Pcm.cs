using NAudio.Wave;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Has NAudio make numbers of samples.</summary>
internal static class Pcm
{
    private const int FramesAtOnce = 4096;

    public static DecodeResult Read(WaveStream source, DecodeLimits limits, SoundForm form, bool isCutShort)
    {
        using (source)
        {
            var format = source.WaveFormat;
            var mono = new Mono(format.Channels, format.SampleRate, limits, source.Length / Math.Max(1, format.BlockAlign));
            var samples = source.ToSampleProvider();
            var buffer = new float[FramesAtOnce * format.Channels];
            for (int read; (read = samples.Read(buffer)) > 0;)
            {
                if (!mono.Take(buffer.AsSpan(0, read)))
                {
                    break;
                }
            }

            return mono.Finish(form, isCutShort);
        }
    }
}
