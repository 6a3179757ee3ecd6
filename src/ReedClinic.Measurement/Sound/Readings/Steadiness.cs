using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Measurement.Sound.Readings;

/// <summary>The middle of a pitch, how it wavers, and whether it sinks or rises.</summary>
internal static class Steadiness
{
    private const double Least = 0.2;
    private const int PerHop = 5; // frames whose errors hang together, by the windows of the track
    private const double MiddleC = 261.6255653005986;

    public static (Reading Pitch, Reading FromC, Reading Unsteadiness, Reading Drift) Of(IReadOnlyList<PitchFrame> frames)
    {
        var voiced = frames.Where(frame => frame.IsVoiced).ToList();
        if (voiced.Count == 0)
        {
            var none = Reading.Not(Unreadable.NoTone);
            return (none, none, none, none);
        }

        var middle = Median([.. voiced.Select(frame => frame.Hertz)]);
        var line = voiced.Where(frame => Math.Abs(Cents(frame.Hertz, middle)) < 100).ToList();
        var (slope, spread) = Line(line, middle);
        var independent = Math.Max(1, line.Count / (double)PerHop);
        var claimed = Math.Sqrt(line.Average(frame => frame.PlusMinusCents * frame.PlusMinusCents));
        var sure = 1.25 * Math.Max(spread, claimed) / Math.Sqrt(independent);
        var octaves = Math.Log2(middle / MiddleC);
        var pitch = Reading.Of(middle, sure * middle * Math.Log(2) / 1200);
        var fromC = Reading.Of(1200 * (octaves - Math.Round(octaves)), sure);
        var length = line.Count * PitchTrack.Hop / 48_000.0;
        return length < Least
            ? (pitch, fromC, Reading.Not(Unreadable.TooShort), Reading.Not(Unreadable.TooShort))
            : (pitch, fromC, Reading.Of(Math.Sqrt(Math.Max(0, (spread * spread) - (claimed * claimed))), spread / Math.Sqrt(2 * independent)), Reading.Of(slope, spread * Math.Sqrt(12 / independent) / length));
    }

    public static double Median(double[] values)
    {
        Array.Sort(values);
        return values.Length % 2 == 1 ? values[values.Length / 2] : (values[(values.Length / 2) - 1] + values[values.Length / 2]) / 2;
    }

    private static double Cents(double hertz, double middle) => 1200 * Math.Log2(hertz / middle);

    private static (double Slope, double Spread) Line(List<PitchFrame> frames, double middle)
    {
        var (time, cents) = (frames.Average(frame => frame.Seconds), frames.Average(frame => Cents(frame.Hertz, middle)));
        double xx = 0, xy = 0, yy = 0;
        foreach (var frame in frames)
        {
            var (x, y) = (frame.Seconds - time, Cents(frame.Hertz, middle) - cents);
            (xx, xy, yy) = (xx + (x * x), xy + (x * y), yy + (y * y));
        }

        var slope = xx > 0 ? xy / xx : 0;
        return (slope, Math.Sqrt(Math.Max(0, yy - (slope * xy)) / Math.Max(1, frames.Count - 2)));
    }
}
