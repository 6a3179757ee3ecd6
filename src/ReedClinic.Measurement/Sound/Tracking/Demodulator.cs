using System.Numerics;

namespace ReedClinic.Measurement.Sound.Tracking;

/// <summary>
/// Turns each partial back by the phase that the pitch track foretells, and adds up over a block of a hop, once under the rising half of a cosine
/// bell and once under the falling one: what remains turns only as far as the track is wrong, and other partials are kept out where halves meet.
/// A partial’s phasor is the fundamental’s, multiplied once more for each partial.
/// </summary>
internal sealed class Demodulator
{
    /// <summary>Partials at the most.</summary>
    public const int Partials = 8;

    private const int Block = PitchTrack.Hop;
    private const double Rate = 48_000;
    private static readonly int Width = Vector<float>.Count;

    private readonly float[] _start = new float[2 * Vector<float>.Count];
    private readonly float[] _step = new float[2 * Vector<float>.Count];
    private readonly float[] _oneRe = new float[Block], _oneIm = new float[Block], _partialRe = new float[Block], _partialIm = new float[Block];
    private readonly float[] _bell = [.. Enumerable.Range(0, Block).Select(i => (float)Math.Cos(Math.PI * (i + 0.5) / Block))];

    /// <summary>Adds up one block.</summary>
    /// <param name="samples">Its samples.</param>
    /// <param name="phase">The fundamental’s phase at its beginning, in turns.</param>
    /// <param name="from">The pitch at its beginning.</param>
    /// <param name="to">The pitch at its end.</param>
    /// <param name="partials">How many partials are wanted.</param>
    /// <param name="before">The sums of the frame before the block, real and imaginary by turns: the falling half is added.</param>
    /// <param name="after">Those of the frame behind it: the rising half is added.</param>
    public void Add(ReadOnlySpan<float> samples, double phase, double from, double to, int partials, Span<float> before, Span<float> after)
    {
        var (slope, bend) = (from / Rate, (to - from) / Rate / (2 * Block));
        for (var lane = 0; lane < Width; lane++)
        {
            Put(_start, lane, phase + (slope * lane) + (bend * lane * lane));
            Put(_step, lane, (slope * Width) + (bend * ((2 * lane * Width) + (Width * Width))));
        }

        Phasors(bend);
        for (var k = 0; k < partials; k++)
        {
            var (allRe, allIm, leaningRe, leaningIm) = Sum(samples, k + 1 < partials);
            before[2 * k] += (allRe + leaningRe) / 2;
            before[(2 * k) + 1] += (allIm + leaningIm) / 2;
            after[2 * k] += (allRe - leaningRe) / 2;
            after[(2 * k) + 1] += (allIm - leaningIm) / 2;
        }
    }

    /// <summary>The fundamental’s phasor at every sample of the block: turned by a step that turns itself.</summary>
    private void Phasors(double bend)
    {
        var (sin, cos) = Math.SinCos(-2 * Math.PI * 2 * bend * Width * Width);
        Vector<float> turnRe = new((float)cos), turnIm = new((float)sin);
        Vector<float> oneRe = new(_start, 0), oneIm = new(_start, Width), stepRe = new(_step, 0), stepIm = new(_step, Width);
        for (var i = 0; i < Block; i += Width)
        {
            oneRe.CopyTo(_oneRe, i);
            oneIm.CopyTo(_oneIm, i);
            oneRe.CopyTo(_partialRe, i);
            oneIm.CopyTo(_partialIm, i);
            var re = (oneRe * stepRe) - (oneIm * stepIm);
            oneIm = (oneRe * stepIm) + (oneIm * stepRe);
            oneRe = re;
            re = (stepRe * turnRe) - (stepIm * turnIm);
            stepIm = (stepRe * turnIm) + (stepIm * turnRe);
            stepRe = re;
        }
    }

    /// <summary>Adds up one partial, and goes on to the next.</summary>
    private (float AllRe, float AllIm, float LeaningRe, float LeaningIm) Sum(ReadOnlySpan<float> samples, bool goesOn)
    {
        Vector<float> allRe = default, allIm = default, leaningRe = default, leaningIm = default;
        for (var i = 0; i < Block; i += Width)
        {
            Vector<float> x = new(samples.Slice(i, Width)), re = new(_partialRe, i), im = new(_partialIm, i);
            var bent = x * new Vector<float>(_bell, i);
            allRe += x * re;
            allIm += x * im;
            leaningRe += bent * re;
            leaningIm += bent * im;
            if (goesOn)
            {
                Vector<float> oneRe = new(_oneRe, i), oneIm = new(_oneIm, i);
                ((re * oneRe) - (im * oneIm)).CopyTo(_partialRe, i);
                ((re * oneIm) + (im * oneRe)).CopyTo(_partialIm, i);
            }
        }

        return (Vector.Sum(allRe), Vector.Sum(allIm), Vector.Sum(leaningRe), Vector.Sum(leaningIm));
    }

    private static void Put(float[] pair, int lane, double turns)
    {
        var (sin, cos) = Math.SinCos(-2 * Math.PI * (turns - Math.Floor(turns)));
        (pair[lane], pair[Width + lane]) = ((float)cos, (float)sin);
    }
}
