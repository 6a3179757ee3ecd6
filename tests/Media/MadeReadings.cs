using ReedClinic.Domain.Recordings.Readings;

namespace ReedClinic.Media;

/// <summary>Readings whose every number was chosen.</summary>
public static class MadeReadings
{
    /// <summary>A crow whose high octave comes first, 80 ms after the breath, and whose pitch is B4, a little sharp.</summary>
    public static SoundFindings Crow(double hertz = 500) => new(
        new ReadingFigures(
            2, false,
            Figure.Of(hertz, 0.3), Figure.Of(4.2, 0.8), Figure.Of(-1.5, 2),
            [
                new OctaveFigure(4, true, Figure.Of(-9.5, 0.5), Figure.Of(0.7, 0.004)),
                new OctaveFigure(5, true, Figure.Of(0, 0.2), Figure.Of(0.62, 0.002)),
                new OctaveFigure(6, true, Figure.Of(-4, 0.3), Figure.Of(0.58, 0.001)),
            ],
            Figure.Of(0.5, 0.001), Figure.Of(0.08, 0.002), Figure.Of(18, 1), Figure.Of(22, 0.6), Figure.Of(3, 0.4)),
        new SoundSeries(0.01f, [.. Enumerable.Range(0, 200).Select(at => at < 60 ? (double?)null : hertz)], [.. Enumerable.Range(0, 200).Select(at => at < 50 ? -70.0 : -20.0)]),
        [1, 2, 3],
        new SoundGuess(SoundKind.Crow, 0.81));
}
