namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>Collects what a decoder gives, mixed into one channel, and stops where the limits are.</summary>
internal sealed class Mono(int channels, int rate, DecodeLimits limits, long expected)
{
    /// <summary>Beyond this no recording goes that means anything: 36 dB over full scale, which floating point can hold.</summary>
    private const float BeyondMeasure = 64;

    private readonly long _most = (long)rate * limits.Seconds;
    private float[] _samples = new float[Math.Clamp(expected, 256, Math.Max(256, (long)rate * limits.Seconds))];

    public int Count { get; private set; }

    public int Rate => rate;

    public int Channels => channels;

    public DecodeRefusal? Refusal { get; private set; }

    /// <summary>Takes samples of all channels by turns.</summary>
    /// <returns>False when no more are wanted.</returns>
    public bool Take(ReadOnlySpan<float> interleaved)
    {
        limits.Stop.ThrowIfCancellationRequested();
        var frames = interleaved.Length / channels;
        if (Count + (long)frames > _most)
        {
            Refusal = DecodeRefusal.TooLong;
            return false;
        }

        if (Count + frames > _samples.Length)
        {
            Array.Resize(ref _samples, (int)Math.Min(_most, Math.Max(2L * _samples.Length, Count + frames)));
        }

        var share = 1f / channels;
        for (var frame = 0; frame < frames; frame++)
        {
            var sum = 0f;
            for (var channel = 0; channel < channels; channel++)
            {
                var sample = interleaved[(frame * channels) + channel];
                if (!(Math.Abs(sample) <= BeyondMeasure))
                {
                    Refusal = DecodeRefusal.NotNumbers;
                    return false;
                }

                sum += sample;
            }

            _samples[Count + frame] = sum * share;
        }

        Count += frames;
        return true;
    }

    public DecodeResult Finish(SoundForm form, bool isCutShort, int skip = 0, long? until = null)
    {
        var end = (int)Math.Min(Count, until ?? Count);
        if (Refusal is { } reason)
        {
            return new DecodeResult.Refused(reason, form);
        }

        return end - skip < 1
            ? new DecodeResult.Refused(DecodeRefusal.NoSound, form)
            : new DecodeResult.Done(new SoundClip(Resampler.To(_samples.AsMemory(skip, end - skip), rate, SoundClip.Rate), form, rate, channels, isCutShort));
    }
}
