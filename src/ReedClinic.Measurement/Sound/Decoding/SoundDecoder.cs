using NAudio.Wave;

namespace ReedClinic.Measurement.Sound.Decoding;

/// <summary>
/// Makes samples of a file that anybody may have sent. What it is follows from its content; how much is read, from the limits.
/// Whatever is wrong with it comes back as a reason, never as an exception.
/// </summary>
public static class SoundDecoder
{
    private const int FirstPiece = 1 << 16;

    /// <summary>Reads a file that is in memory.</summary>
    /// <param name="bytes">The whole file.</param>
    /// <param name="limits">How much is read at the most.</param>
    public static DecodeResult Decode(byte[] bytes, DecodeLimits limits)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(limits);
        var form = SoundForms.Of(bytes.AsSpan(0, Math.Min(bytes.Length, SoundForms.Enough)));
        return Before(bytes.Length, form, limits) is { } refused ? refused : Read(bytes, form!.Value, limits);
    }

    /// <summary>Reads a file as it comes. One that is no sound is refused at its first bytes, and no more is taken than the limits allow.</summary>
    /// <param name="stream">The file, from its beginning.</param>
    /// <param name="limits">How much is read at the most.</param>
    /// <param name="ct">Ends it, also while it is decoded; the one thing that is thrown.</param>
    public static async Task<DecodeResult> DecodeAsync(Stream stream, DecodeLimits limits, CancellationToken ct)
    {
        ArgumentNullException.ThrowIfNull(stream);
        ArgumentNullException.ThrowIfNull(limits);
        var head = new byte[SoundForms.Enough];
        var there = await stream.ReadAtLeastAsync(head, head.Length, throwOnEndOfStream: false, ct).ConfigureAwait(false);
        var form = SoundForms.Of(head.AsSpan(0, there));
        if (Before(there, form, limits) is { } refused)
        {
            return refused;
        }

        var bytes = new byte[FirstPiece];
        head.AsSpan(0, there).CopyTo(bytes);
        for (int read; (read = await stream.ReadAsync(bytes.AsMemory(there), ct).ConfigureAwait(false)) > 0;)
        {
            there += read;
            if (there > limits.Bytes)
            {
                return new DecodeResult.Refused(DecodeRefusal.TooManyBytes, form);
            }

            if (there == bytes.Length)
            {
                Array.Resize(ref bytes, (int)Math.Min(limits.Bytes + 1L, 2L * bytes.Length));
            }
        }

        Array.Resize(ref bytes, there);
        return Read(bytes, form!.Value, limits with { Stop = ct });
    }

    /// <summary>Makes a clip of what another decoder gave of a form that isn’t read here.</summary>
    /// <param name="bytes">Floats of 32 bits, little end first, fractions of full scale: one channel at <see cref="SoundClip.Rate"/>.</param>
    /// <param name="form">What they were decoded from.</param>
    /// <param name="limits">How much is taken at the most.</param>
    public static DecodeResult OfSamples(byte[] bytes, SoundForm form, DecodeLimits limits)
    {
        ArgumentNullException.ThrowIfNull(bytes);
        ArgumentNullException.ThrowIfNull(limits);
        return bytes.Length % sizeof(float) != 0
            ? new DecodeResult.Refused(DecodeRefusal.Damaged, form)
            : Pcm.Read(new RawSourceWaveStream(bytes, 0, bytes.Length, WaveFormat.CreateIeeeFloatWaveFormat(SoundClip.Rate, 1)), limits, form, isCutShort: false);
    }

    private static DecodeResult.Refused? Before(int length, SoundForm? form, DecodeLimits limits) =>
        length == 0 ? new DecodeResult.Refused(DecodeRefusal.Empty)
        : length > limits.Bytes ? new DecodeResult.Refused(DecodeRefusal.TooManyBytes, form)
        : form is null ? new DecodeResult.Refused(DecodeRefusal.NotSound)
        : SoundForms.Read.Contains(form.Value) ? null
        : new DecodeResult.Refused(DecodeRefusal.FormNotRead, form);

    private static DecodeResult Read(byte[] bytes, SoundForm form, DecodeLimits limits)
    {
        try
        {
            return form switch
            {
                SoundForm.Wave => WaveFile.Read(bytes, limits),
                SoundForm.Aiff => AiffFile.Read(bytes, limits),
                SoundForm.Mp3 => Mp3File.Read(bytes, limits),
                SoundForm.OggVorbis => VorbisFile.Read(bytes, limits),
                SoundForm.OggOpus => OggOpusFile.Read(bytes, limits),
                _ => WebmFile.Read(bytes, limits),
            };
        }
        catch (Exception fault) when (fault is not (OutOfMemoryException or OperationCanceledException))
        {
            // The packages’ decoders say by all kinds of exceptions that a stream makes no sense to them.
            return new DecodeResult.Refused(DecodeRefusal.Damaged, form);
        }
    }
}
