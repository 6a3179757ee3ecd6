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

    // Each pair of notes, one right after the other: milliseconds of sound from the second one's beginning to its first reading, and readings after
    // that which say something else. Three partials, a rise of 4 ms, noise of our own.
    private const string Follow = """
        async (notes) => {
          const { PitchReader } = await import('/js/sound/pitch.js');
          const note = (hertz, t) => 0.25 * (Math.sin(2 * Math.PI * hertz * t) + 0.6 * Math.sin(4 * Math.PI * hertz * t + 1) + 0.3 * Math.sin(6 * Math.PI * hertz * t + 2));
          let state = 1;
          const all = [];
          for (const before of notes) {
            for (const after of notes) {
              if (before === after) continue;
              const reader = new PitchReader(48000);
              const one = { name: `${before} to ${after}`, milliseconds: 999, others: 0, isOctave: Math.abs(Math.log2(after / before) % 1) < 0.01 };
              for (let at = 0; at < 38400; at += 512) {
                reader.hear(Float32Array.from({ length: 512 }, (_, i) => {
                  const t = (at + i) / 48000;
                  const risen = Math.min(1, Math.max(0, (t - 0.4) / 0.004));
                  state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
                  return (1 - risen) * note(before, t) + risen * note(after, t) + 0.004 * (state / 2 ** 32 - 0.5);
                }));
                const { shown } = reader.read();
                const since = ((at + 512) / 48000 - 0.4) * 1000;
                if (since < 0) continue;
                const isIt = shown > 0 && Math.abs(1200 * Math.log2(shown / after)) < 50;
                if (isIt) one.milliseconds = Math.min(one.milliseconds, since);
                else if (one.milliseconds < 999) one.others++;
              }
              all.push(one);
            }
          }
          return all;
        }
        """;

    // Of the crow and of the notes about it, in hertz at A4 = 440 Hz (ISO 16:1975).
    private static readonly double[] Notes = [246.94, 261.63, 293.66, 349.23, 392.00, 523.25, 587.33, 659.26, 880.00, 987.77, 1046.50];

    [Fact]
    public async Task A_new_note_is_read_from_its_first_30_milliseconds_whatever_sounded_before()
    {
        await using var visitor = await browser.VisitAsync(app.Home, "live-pitch");
        await visitor.GoToAsync("/");

        var all = (await visitor.Page.EvaluateAsync<JsonElement>(Follow, Notes)).Deserialize<List<Followed>>(JsonSerializerOptions.Web)!;

        Assert.Equal(Notes.Length * (Notes.Length - 1), all.Count);
        Assert.All(all, one => Assert.True(one.Others == 0 && one.Milliseconds <= (one.IsOctave ? 50 : 30), $"{one.Name} Hz: after {one.Milliseconds:0.0} ms; something else {one.Others} times after that"));
    }

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

    private sealed record Followed(string Name, double Milliseconds, int Others, bool IsOctave);

    private sealed record Live(List<double> Shown, List<int> Octaves);
}
