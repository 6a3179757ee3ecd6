using System.Globalization;
using System.Text.Json;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Load;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Sound;

/// <summary>
/// How long it takes from a sound to its note on the screen: a few notes in the quick suite, as many as the environment says in
/// <c>tests/tuner.sh</c>. The clock of the sound is Chromium’s own MediaStreamTrackProcessor: of all blocks the one that came soonest says when the
/// samples of any were there.
/// </summary>
public sealed class TunerLatencyTests(DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string NotesGivenBy = "REEDCLINIC_TUNER_NOTES";
    private const string LogGivenBy = "REEDCLINIC_TUNER_LOG";
    private const double FirstAt = 8;
    private const double LastsMeasured = 0.45;
    private const double LastsOtherwise = 1.2;

    private const string Measure = """
        async () => {
          const track = window.heard.getAudioTracks()[0].clone();
          const all = (window.measured = { first: null, offset: Infinity, shown: [] });
          const note = document.querySelector('#sound-sheet [data-note]');
          const octave = document.querySelector('#sound-sheet [data-octave]');
          new MutationObserver(() => {
            const label = note.textContent + octave.textContent;
            requestAnimationFrame(() => {
              const after = new MessageChannel();
              after.port1.onmessage = () => all.shown.push({ label, at: performance.now() });
              after.port2.postMessage(0);
            });
          }).observe(document.getElementById('sound-sheet'), { subtree: true, childList: true, characterData: true });
          const reader = new MediaStreamTrackProcessor({ track }).readable.getReader();
          let samples = 0;
          (async () => {
            for (;;) {
              const { value, done } = await reader.read();
              if (done) return;
              const arrived = performance.now();
              const block = new Float32Array(value.numberOfFrames);
              value.copyTo(block, { planeIndex: 0, format: 'f32-planar' });
              const loud = all.first === null ? block.findIndex((one) => Math.abs(one) > 0.1) : -1;
              if (loud >= 0) all.first = ((samples + loud) / value.sampleRate) * 1000;
              samples += value.numberOfFrames;
              all.offset = Math.min(all.offset, arrived - (samples / value.sampleRate) * 1000);
              value.close();
            }
          })();
        }
        """;

    private static readonly (string Name, double Hertz)[] Notes =
        [("C4", 261.63), ("E5", 659.26), ("G4", 392.00), ("B5", 987.77), ("D5", 587.33), ("F4", 349.23), ("A5", 880.00), ("C5", 523.25)];

    private static int Count => int.TryParse(Environment.GetEnvironmentVariable(NotesGivenBy), NumberStyles.None, CultureInfo.InvariantCulture, out var given) ? given : 4;

    // Where nothing is measured a busy machine has its time to draw each note before the next one.
    private static double Lasts => Environment.GetEnvironmentVariable(NotesGivenBy) is { Length: > 0 } ? LastsMeasured : LastsOtherwise;

    [Fact]
    public async Task Every_note_that_begins_or_follows_another_comes_to_the_screen()
    {
        await using var browser = new OneBrowser { Hears = path => FakeMicrophone.Write(path, FirstAt + (3 * Lasts * Count / 2) + 5, Sound) };
        await browser.InitializeAsync();
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "tuner-latency");
        await teacher.AllowAsync("microphone");
        await teacher.Page.EmulateMediaAsync(new() { ReducedMotion = ReducedMotion.NoPreference });
        await teacher.Page.AddInitScriptAsync(
            "const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices); navigator.mediaDevices.getUserMedia = async (what) => (window.heard = await ask(what));");
        await teacher.GoToAsync(await app.BenchOfAsync("Tomas Arden", 1, TestContext.Current.CancellationToken));
        await teacher.LiveAsync();
        await teacher.Page.Locator("html[data-bench-ready][data-sound-ready]").WaitForAsync();
        await teacher.Page.Keyboard.PressAsync("z");
        await teacher.Page.Locator("[data-hears]").WaitForAsync();
        await teacher.Page.EvaluateAsync(Measure);
        await teacher.Page.WaitForFunctionAsync("count => window.measured.shown.filter((one) => one.label !== '–').length >= count", Count, new() { Timeout = 120_000 });
        var last = At(Count - 1) - FirstAt + 0.4;
        await teacher.Page.WaitForFunctionAsync("last => performance.now() > window.measured.offset + window.measured.first + 1000 * last", last, new() { Timeout = 120_000 });

        var measured = (await teacher.Page.EvaluateAsync<JsonElement>("window.measured")).Deserialize<Measured>(JsonSerializerOptions.Web)!;
        LoadFigures begins = new(), follows = new();
        for (var one = 0; one < Count; one++)
        {
            var sounds = measured.Offset + measured.First + (1000 * (At(one) - FirstAt));
            var seen = measured.Shown.Where(shown => shown.Label == Notes[one % Notes.Length].Name && shown.At > sounds && shown.At < sounds + (1000 * Lasts)).ToList();
            Assert.True(seen.Count > 0, $"note {one}, {Notes[one % Notes.Length].Name}, wasn't seen");
            (one % 2 == 0 ? begins : follows).Add(seen[0].At - sounds);
        }

        if (Environment.GetEnvironmentVariable(LogGivenBy) is { Length: > 0 } log)
        {
            await File.AppendAllTextAsync(log, $"| out of silence | {begins} |\n| after another note | {follows} |\n", TestContext.Current.CancellationToken);
        }
    }

    // By pairs: one note out of silence, another right after it, then silence.
    private static double At(int note) => FirstAt + (Lasts * ((3 * (note / 2)) + (note % 2)));

    private static double Sound(double time)
    {
        var part = (int)Math.Floor((time - FirstAt) / Lasts);
        var note = part / 3 * 2 + part % 3;
        if (time < FirstAt || part % 3 == 2 || note >= Count)
        {
            return 0;
        }

        var (since, turns) = (time - At(note), Notes[note % Notes.Length].Hertz * time * 2 * Math.PI);
        return Math.Clamp(since / 0.004, 0, 1) * 0.25 * (Math.Sin(turns) + (0.6 * Math.Sin((2 * turns) + 1)) + (0.3 * Math.Sin((3 * turns) + 2)));
    }

    private sealed record Seen(string Label, double At);

    private sealed record Measured(double First, double Offset, List<Seen> Shown);
}
