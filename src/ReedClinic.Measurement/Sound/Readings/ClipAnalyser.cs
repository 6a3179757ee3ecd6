using System.Numerics.Tensors;
using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>Reads all that there is to read from a clip.</summary>
public static class ClipAnalyser
{
    /// <summary>Reads a clip.</summary>
    /// <param name="clip">One channel at 48 kHz, every sample a number.</param>
    public static ClipReadings Analyse(ReadOnlySpan<float> clip)
    {
        var track = PitchTracker.Track(clip);
        var (pitch, fromC, unsteadiness, drift) = Steadiness.Of(track.Frames);
        var breath = new Breath(clip);
        var onset = breath.Onset();
        if (pitch.Value is not { } hertz)
        {
            var none = Reading.Not(Unreadable.NoTone);
            return new ClipReadings(track, none, none, none, none, [], onset, none, none, none, none, null);
        }

        var isClipped = Level.Of(clip).IsClipped;
        var partials = Octaves.Of(clip, track.Frames, hertz, isClipped);
        var begins = Begins(track.Frames, partials);
        var (ratio, roughness) = isClipped ? (Reading.Not(Unreadable.Clipped), Reading.Not(Unreadable.Clipped)) : new Harmonicity().Of(clip, track.Frames);
        var kind = KindGuesser.Of(track.Frames, partials, fromC.Value ?? 0, unsteadiness.Value ?? 0, OctaveShare(clip, track.Frames, partials));
        var isOn = onset.Value is { } at && at < begins;
        return new ClipReadings(
            track, pitch, fromC, unsteadiness, drift, partials, onset,
            isOn ? Reading.Of(begins - onset.Value!.Value, 0.002) : Reading.Not(Unreadable.NoQuietBefore),
            isOn ? breath.Over(onset.Value!.Value, begins) : Reading.Not(Unreadable.NoQuietBefore),
            ratio, roughness, kind);
    }

    /// <summary>When the first octave has half its size; where none has, when the first pitch is heard.</summary>
    private static double Begins(IReadOnlyList<PitchFrame> frames, IReadOnlyList<OctavePartial> partials) =>
        partials.Select(partial => partial.Entry.Value).Where(entry => entry is not null).DefaultIfEmpty(frames.First(frame => frame.IsVoiced).Seconds).Min()!.Value;

    /// <summary>How much of the tone’s power is in the octaves.</summary>
    private static double OctaveShare(ReadOnlySpan<float> clip, IReadOnlyList<PitchFrame> frames, IReadOnlyList<OctavePartial> partials)
    {
        double power = 0, octaves = 0;
        var count = 0;
        for (var frame = 0; frame < frames.Count && (frame + 1) * PitchTrack.Hop <= clip.Length; frame++)
        {
            if (frames[frame].IsVoiced)
            {
                power += TensorPrimitives.SumOfSquares(clip.Slice(frame * PitchTrack.Hop, PitchTrack.Hop)) / PitchTrack.Hop;
                count++;
            }
        }

        foreach (var partial in partials.Where(partial => partial.IsPresent))
        {
            octaves += partial.Power;
        }

        return count == 0 ? 0 : Math.Min(1, octaves / (power / count));
    }
}
