using ReedClinic.Measurement.Sound.Readings;

namespace ReedClinic.Measurement.Tests.Sound.Readings;

/// <summary>
/// The made tones that the browser’s reader is tried on too (see the tests in a browser): where both keep to a quarter of a cent, they
/// agree within half of one. A4 = 440 Hz is ISO 16:1975; everything else is computed.
/// </summary>
public sealed class MadeTonesTests
{
    [Fact]
    public void Each_made_tone_is_read_to_a_quarter_of_a_cent_with_its_octaves()
    {
        Assert.NotEmpty(MadeTones.All.Tones);
        foreach (var tone in MadeTones.All.Tones)
        {
            var readings = ClipAnalyser.Analyse(tone.Samples());
            var settled = readings.Track.Frames.Where(frame => frame.Seconds > MadeTones.All.Settled).Select(frame => frame.Hertz).Order().ToList();
            Assert.True(settled[0] > 0, tone.Name);
            Assert.True(Math.Abs(MadeTones.Cents(settled[settled.Count / 2], tone.Hertz)) < 0.25, $"{tone.Name}: {settled[settled.Count / 2]} Hz");
            if (tone.Octaves is { } octaves)
            {
                Assert.Equal((tone.Name, string.Join(' ', octaves)), (tone.Name, string.Join(' ', readings.Partials.Where(one => one.IsPresent).Select(one => one.Octave))));
            }
        }
    }
}
