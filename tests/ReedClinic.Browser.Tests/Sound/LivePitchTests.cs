using System.Runtime.InteropServices;
using System.Text.Json;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.Measurement.Sound.Readings;

namespace ReedClinic.Browser.Tests.Sound;

/// <summary>
/// The browser’s reader of pitch beside the server’s, on the same made tones: what the teacher sees live is what the reading of a clip says.
/// A4 = 440 Hz is ISO 16:1975; everything else is computed.
/// </summary>
public sealed class LivePitchTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string Read = """
        async ([samples, rate, settled]) => {
          const { PitchReader } = await import('/js/sound/pitch.js');
          const clip = new Float32Array(Uint8Array.from(atob(samples), (one) => one.charCodeAt(0)).buffer);
          const reader = new PitchReader(rate);
          const shown = [];
          const octaves = [0, 0, 0];
          for (let at = 0; at + 512 <= clip.length; at += 512) {
            reader.hear(clip.subarray(at, at + 512));
            const now = reader.read();
            if (at / rate < settled) continue;
            shown.push(now.shown);
            now.octaves.forEach((one, which) => (octaves[which] += one.present ? 1 : 0));
          }
          return { shown, octaves };
        }
        """;

    [Fact]
    public async Task Live_readings_agree_with_the_servers_within_half_a_cent()
    {
        await using var visitor = await browser.VisitAsync(app.Home, "live-pitch");
        await visitor.GoToAsync("/");
        foreach (var tone in MadeTones.All.Tones)
        {
            var samples = tone.Samples();
            var read = await visitor.Page.EvaluateAsync<JsonElement>(Read, new object[] { Convert.ToBase64String(MemoryMarshal.AsBytes<float>(samples)), MadeTones.All.Rate, MadeTones.All.Settled });
            var live = read.Deserialize<Live>(JsonSerializerOptions.Web)!;
            var clip = ClipAnalyser.Analyse(samples);
            var settled = clip.Track.Frames.Where(frame => frame.Seconds > MadeTones.All.Settled).Select(frame => frame.Hertz).Order().ToList();
            var apart = live.Shown.Select(hertz => hertz > 0 ? Math.Abs(MadeTones.Cents(hertz, settled[settled.Count / 2])) : 9999).Order().ToList();

            Assert.True(apart[(int)(apart.Count * 0.95)] <= 0.5, $"{tone.Name}: median {apart[apart.Count / 2]:0.00}, 95th percentile {apart[(int)(apart.Count * 0.95)]:0.00} cents");
            if (tone.Octaves is not null)
            {
                var heard = live.Octaves.Index().Where(one => one.Item > 0.9 * live.Shown.Count).Select(one => one.Index + 4);
                Assert.Equal((tone.Name, Octaves(clip)), (tone.Name, string.Join(' ', heard)));
                Assert.True(live.Octaves.All(count => count < 0.1 * live.Shown.Count || count > 0.9 * live.Shown.Count), tone.Name);
            }
        }
    }

    private static string Octaves(ClipReadings clip) => string.Join(' ', clip.Partials.Where(one => one.IsPresent).Select(one => one.Octave));

    private sealed record Live(List<double> Shown, List<int> Octaves);
}
