using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>Guesses what a clip is by a few points for each kind. The points are our own and rest on no recording of a crow.</summary>
internal static class KindGuesser
{
    private const double NearC = 200;
    private const double Long = 1.2;
    private const double Short = 0.6;
    private const int Gap = 15; // frames: 80 ms

    public static KindGuess Of(IReadOnlyList<PitchFrame> frames, IReadOnlyList<OctavePartial> partials, double fromC, double unsteadiness, double octaveShare)
    {
        var seconds = frames.Count(frame => frame.IsVoiced) * PitchTrack.Hop / 48_000.0;
        var (present, begun) = (partials.Count(partial => partial.IsPresent), Begun(frames));
        var isNearC = Math.Abs(fromC) < NearC;
        var isOctaves = octaveShare > 0.75;
        Span<double> points =
        [
            (isNearC ? 1 : -1) + (isOctaves && present >= 2 ? 2.5 : 0) + (present == 3 ? 0.5 : 0) + (unsteadiness > 8 ? 0.5 : 0),
            (isOctaves && present == 1 ? 3 : 0) + (partials[0].IsPresent ? -1 : 0.5),
            (seconds > Long ? 1.5 : -1) + (isOctaves ? -0.5 : 1.5) + (begun == 1 ? 0.5 : -1),
            (begun > 1 ? 1 + Math.Min(2, begun / 2.0) : 0) + (seconds < Short ? 1 : 0) + (isOctaves ? -0.5 : 0.5),
        ];
        double sum = 0, best = double.MinValue;
        var kind = 0;
        for (var at = 0; at < points.Length; at++)
        {
            sum += Math.Exp(points[at]);
            (best, kind) = points[at] > best ? (points[at], at) : (best, kind);
        }

        return new KindGuess((ClipKind)kind, Math.Exp(best) / sum);
    }

    /// <summary>How often a tone begins after a pause.</summary>
    private static int Begun(IReadOnlyList<PitchFrame> frames)
    {
        int begun = 0, silent = Gap;
        foreach (var frame in frames)
        {
            begun += frame.IsVoiced && silent >= Gap ? 1 : 0;
            silent = frame.IsVoiced ? 0 : silent + 1;
        }

        return begun;
    }
}
