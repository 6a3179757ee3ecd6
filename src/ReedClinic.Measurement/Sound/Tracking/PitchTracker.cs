namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>Reads the pitch of a clip: YIN, a check of the octave, and refinement by the phase of the partials.</summary>
public static class PitchTracker
{
    private const int Hop = PitchTrack.Hop;
    private const double Rate = 48_000;
    private const float MostAperiodic = 0.3f;
    private const double OneStep = 1.03; // 51 cents from a frame to the next are no glide
    private const int ShortestStretch = 6;
    private const int CheckEvery = 8;
    private const int CalmReach = 6;
    private const double Faint = 3e-4; // −70 dB of full scale: below, a pitch is hum

    /// <summary>Reads the pitch.</summary>
    /// <param name="clip">One channel at 48 kHz.</param>
    public static PitchTrack Track(ReadOnlySpan<float> clip)
    {
        var frames = clip.Length < Hop ? 0 : (clip.Length / Hop) + 1;
        var made = new PitchFrame[frames];
        if (frames == 0)
        {
            return new PitchTrack(made);
        }

        var (hertz, aperiodicity, variance) = (new double[frames], new float[frames], new double[frames]);
        Coarse(clip, hertz, aperiodicity);
        Mend(hertz);
        CheckOctaves(clip, hertz);
        RefineStretches(clip, hertz, variance);
        for (var frame = 0; frame < frames; frame++)
        {
            var cents = hertz[frame] > 0 ? 1200 / Math.Log(2) * Math.Sqrt(variance[frame]) / hertz[frame] : 0;
            made[frame] = new PitchFrame(frame * Hop / Rate, hertz[frame], cents, aperiodicity[frame]);
        }

        return new PitchTrack(made);
    }

    private static void Coarse(ReadOnlySpan<float> clip, Span<double> hertz, Span<float> aperiodicity)
    {
        var half = new float[Math.Max(Yin.PaddedLength(hertz.Length), Yin.Before + (clip.Length / 2))];
        HalfRate.Fill(clip, half.AsSpan(Yin.Before, clip.Length / 2));
        new Yin().Read(half, hertz, aperiodicity);
        for (var frame = 0; frame < hertz.Length; frame++)
        {
            var around = clip[Math.Max(0, (frame - 1) * Hop)..Math.Min(clip.Length, (frame + 1) * Hop)];
            var isHeard = aperiodicity[frame] < MostAperiodic && System.Numerics.Tensors.TensorPrimitives.Norm(around) > Faint * Math.Sqrt(around.Length);
            hertz[frame] = isHeard && hertz[frame] >= PitchTrack.LowestHertz ? hertz[frame] : 0;
        }
    }

    /// <summary>A single frame that neither of its neighbours agrees with, while they agree with each other, was misread.</summary>
    private static void Mend(Span<double> hertz)
    {
        for (var frame = 1; frame < hertz.Length - 1; frame++)
        {
            var (before, here, after) = (hertz[frame - 1], hertz[frame], hertz[frame + 1]);
            if (before > 0 && after > 0 && IsOneStep(before, after) && !IsOneStep(before, here))
            {
                hertz[frame] = (before + after) / 2;
            }
        }
    }

    private static void CheckOctaves(ReadOnlySpan<float> clip, Span<double> hertz)
    {
        OctaveCheck? check = null;
        var isLower = new bool[(hertz.Length / CheckEvery) + 1];
        for (var at = 0; at * CheckEvery < hertz.Length; at++)
        {
            var frame = at * CheckEvery;
            isLower[at] = hertz[frame] > 0 && (check ??= new OctaveCheck()).IsLower(clip, frame * Hop, hertz[frame]);
        }

        for (var at = 0; at * CheckEvery < hertz.Length; at++)
        {
            // Noise looks like a partial now and then, but not twice of three times.
            var (before, after) = (isLower[Math.Max(0, at - 1)], isLower[Math.Min(isLower.Length - 1, at + 1)]);
            if (isLower[at] ? before || after : before && after)
            {
                Lower(hertz, at * CheckEvery);
            }
        }
    }

    private static void Lower(Span<double> hertz, int frame)
    {
        var reference = hertz[frame];
        for (var near = Math.Max(0, frame - (CheckEvery / 2)); near < Math.Min(hertz.Length, frame + (CheckEvery / 2)); near++)
        {
            if (hertz[near] / 2 >= PitchTrack.LowestHertz && hertz[near] / reference is > 0.9 and < 1.1)
            {
                hertz[near] /= 2;
            }
        }
    }

    /// <summary>Takes the jitter out of the rough pitches, which refining would keep; what a glide loses by it, refining brings back.</summary>
    private static void Calm(Span<double> stretch, Span<double> scratch)
    {
        stretch.CopyTo(scratch);
        for (var frame = 0; frame < stretch.Length; frame++)
        {
            var reach = Math.Min(CalmReach, Math.Min(frame, stretch.Length - 1 - frame));
            double sum = 0, weights = 0;
            for (var off = -reach; off <= reach; off++)
            {
                var weight = 1 - (Math.Abs(off) / (reach + 1.0));
                (sum, weights) = (sum + (weight * scratch[frame + off]), weights + weight);
            }

            stretch[frame] = sum / weights;
        }
    }

    private static void RefineStretches(ReadOnlySpan<float> clip, Span<double> hertz, Span<double> variance)
    {
        var longest = LongestStretch(hertz);
        var (refinement, smoothing) = (new PhaseRefinement(longest), new TrackSmoothing(longest));
        for (var start = 0; start < hertz.Length;)
        {
            var end = EndOfStretch(hertz, start);
            var stretch = hertz[start..end];
            if (hertz[start] > 0 && (stretch.Length < ShortestStretch || hertz[start] > PitchTrack.HighestHertz))
            {
                stretch.Clear();
            }
            else if (hertz[start] > 0)
            {
                var noise = variance[start..end];
                Calm(stretch, noise);
                refinement.Refine(clip, start, stretch, noise, reach: 3, most: 2);
                refinement.Refine(clip, start, stretch, noise, reach: 4, most: 4);
                refinement.Refine(clip, start, stretch, noise, reach: 6, most: Demodulator.Partials);
                refinement.Refine(clip, start, stretch, noise, reach: 6, most: Demodulator.Partials);
                Unbend(stretch);
                smoothing.Smooth(stretch, noise);
            }

            start = end;
        }
    }

    /// <summary>Between frames the phase was foretold by straight lines; a curve runs beside its chords by a twelfth of its second difference.</summary>
    private static void Unbend(Span<double> stretch)
    {
        var before = stretch[0];
        for (var frame = 1; frame < stretch.Length - 1; frame++)
        {
            var here = stretch[frame];
            stretch[frame] += (before - (2 * here) + stretch[frame + 1]) / 12;
            before = here;
        }
    }

    private static int LongestStretch(ReadOnlySpan<double> hertz)
    {
        var longest = 1;
        for (var start = 0; start < hertz.Length;)
        {
            var end = EndOfStretch(hertz, start);
            longest = Math.Max(longest, end - start);
            start = end;
        }

        return longest;
    }

    private static int EndOfStretch(ReadOnlySpan<double> hertz, int start)
    {
        var end = start + 1;
        while (end < hertz.Length && (hertz[start] > 0 ? IsOneStep(hertz[end - 1], hertz[end]) : hertz[end] == 0))
        {
            end++;
        }

        return end;
    }

    private static bool IsOneStep(double one, double other) => one > 0 && other > 0 && one / other is > 1 / OneStep and < OneStep;
}
