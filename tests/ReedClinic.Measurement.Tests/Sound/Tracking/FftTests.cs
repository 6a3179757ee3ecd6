using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Measurement.Tests.Sound.Tracking;

public sealed class FftTests
{
    [Theory]
    [InlineData(16)]
    [InlineData(32)]
    [InlineData(64)]
    [InlineData(512)]
    [InlineData(2048)]
    [InlineData(4096)]
    public void Every_line_is_the_sum_that_defines_it(int length)
    {
        var random = new Random(length);
        float[] samples = [.. Enumerable.Range(0, length).Select(_ => (float)(random.NextDouble() - 0.5))];
        var fft = new Fft(length);

        fft.Transform(samples);

        for (var line = 0; line <= length / 2; line += 1 + (length / 200))
        {
            double re = 0, im = 0;
            for (var i = 0; i < length; i++)
            {
                var (sin, cos) = Math.SinCos(-2 * Math.PI * ((long)line * i % length) / length);
                (re, im) = (re + (samples[i] * cos), im + (samples[i] * sin));
            }

            Assert.Equal((re * re) + (im * im), fft.PowerOf(line), 1e-4 * length);
        }
    }
}
