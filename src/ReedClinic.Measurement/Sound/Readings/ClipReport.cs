using System.Numerics.Tensors;
using ReedClinic.Domain.Recordings.Readings;
using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Measurement.Sound.Drawing;
using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>Reads a clip as it is kept and shown: its numbers, what a drawing needs of it, its spectrogram, and what seems to be played.</summary>
public static class ClipReport
{
    private const double LeastStep = 0.01;

    /// <summary>Reads a clip.</summary>
    /// <param name="clip">The clip.</param>
    public static SoundFindings Of(SoundClip clip)
    {
        ArgumentNullException.ThrowIfNull(clip);
        var read = ClipAnalyser.Analyse(clip.Samples.Span);
        return new SoundFindings(
            new ReadingFigures(
                clip.Seconds,
                clip.IsCutShort,
                Kept(read.Pitch),
                Kept(read.Unsteadiness),
                Kept(read.Drift),
                [.. read.Partials.Select(partial => new OctaveFigure(partial.Octave, partial.IsPresent, Kept(partial.Level), Kept(partial.Entry)))],
                Kept(read.BreathOnset),
                Kept(read.TimeToSpeak),
                Kept(read.SpeaksAt),
                Kept(read.HarmonicToNoise),
                Kept(read.Roughness)),
            Thinned(clip, read.Track),
            Spectrogram.Png(clip.Samples.Span),
            read.Kind is { } guess ? new SoundGuess(Kept(guess.Kind), guess.Share) : null);
    }

    /// <summary>Why a file can’t be read, as it is kept.</summary>
    /// <param name="refusal">As the decoder says it.</param>
    public static SoundTrouble Kept(DecodeRefusal refusal) => refusal switch
    {
        DecodeRefusal.Empty => SoundTrouble.Empty,
        DecodeRefusal.TooManyBytes => SoundTrouble.TooLarge,
        DecodeRefusal.NotSound => SoundTrouble.NotSound,
        DecodeRefusal.FormNotRead => SoundTrouble.FormNotRead,
        DecodeRefusal.ChannelsNotRead => SoundTrouble.ChannelsNotRead,
        DecodeRefusal.RateNotRead => SoundTrouble.RateNotRead,
        DecodeRefusal.TooLong => SoundTrouble.TooLong,
        DecodeRefusal.NotNumbers => SoundTrouble.NotNumbers,
        DecodeRefusal.NoSound => SoundTrouble.NoSound,
        _ => SoundTrouble.Damaged,
    };

    private static SoundKind Kept(ClipKind kind) => kind switch
    {
        ClipKind.Crow => SoundKind.Crow,
        ClipKind.Peep => SoundKind.Peep,
        ClipKind.LongTone => SoundKind.LongTone,
        _ => SoundKind.Attack,
    };

    private static Figure Kept(Reading reading) => reading switch
    {
        Reading.Known(var amount, var sure) when double.IsFinite(amount) && double.IsFinite(sure) => Figure.Of(amount, Math.Abs(sure)),
        Reading.Unknown(var why) => Figure.None(why switch
        {
            Unreadable.TooShort => Unread.TooShort,
            Unreadable.NoTone => Unread.NoTone,
            Unreadable.NoQuietBefore => Unread.NoQuietBefore,
            Unreadable.Clipped => Unread.Clipped,
            _ => Unread.TooFaint,
        }),
        _ => Figure.None(Unread.TooFaint),
    };

    /// <summary>As few moments as a drawing can show: of the pitches in each the middle one, of the sound its level.</summary>
    private static SoundSeries Thinned(SoundClip clip, PitchTrack track)
    {
        var samples = clip.Samples.Span;
        var step = Math.Max(LeastStep, clip.Seconds / SoundSeries.Most);
        var count = Math.Clamp((int)Math.Ceiling(clip.Seconds / step), 1, SoundSeries.Most);
        var (hertz, levels) = (new double?[count], new double[count]);
        for (var at = 0; at < count; at++)
        {
            var from = (int)Math.Min(samples.Length - 1, at * step * SoundClip.Rate);
            var to = (int)Math.Clamp((at + 1) * step * SoundClip.Rate, from + 1, samples.Length);
            levels[at] = Math.Max(SoundSeries.Silence, 10 * Math.Log10(TensorPrimitives.SumOfSquares(samples[from..to]) / (to - from)));
            var first = Math.Min(track.Frames.Count, (from + PitchTrack.Hop - 1) / PitchTrack.Hop);
            var last = Math.Clamp((to + PitchTrack.Hop - 1) / PitchTrack.Hop, first, track.Frames.Count);
            var heard = Enumerable.Range(first, last - first).Select(frame => track.Frames[frame]).Where(frame => frame.IsVoiced).Select(frame => frame.Hertz).ToArray();
            hertz[at] = heard.Length == 0 ? null : Steadiness.Median(heard);
        }

        return new SoundSeries((float)step, hertz, levels);
    }
}
