using System.Collections.Concurrent;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Browser.Tests.Sound;

/// <summary>What sounds at the bench, live and as a test by one key; the microphone hears a made crow, a C4 that is 12 cents sharp.</summary>
public sealed class BenchSoundTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    // A microphone that hears one steady A4 from the beginning.
    private const string SteadyTone =
        "navigator.mediaDevices.getUserMedia = async () => { const context = new AudioContext(); const to = context.createMediaStreamDestination(); " +
        "const tone = new OscillatorNode(context, { frequency: 440 }); const soft = new GainNode(context, { gain: 0.1 }); tone.connect(soft).connect(to); tone.start(); return to.stream; };";

    [Theory]
    [InlineData(1280, false)]
    [InlineData(320, true)]
    public async Task The_tuner_shows_the_note_its_cents_and_its_octaves_and_sends_nothing(int width, bool lamp)
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, $"tuner-{width}", width);
        await teacher.AllowAsync("microphone");
        var sent = await OpenAsync(teacher, 1);
        await teacher.Page.EvaluateAsync("lamp => { if (lamp) document.documentElement.dataset.lamp = 'on'; }", lamp);

        await teacher.Page.Keyboard.PressAsync("z");

        // What the microphone hears comes round each twelve seconds.
        await Assertions.Expect(Part(teacher, "note")).ToHaveTextAsync("C");
        await Assertions.Expect(Part(teacher, "cents")).ToHaveTextAsync("+12");
        await Assertions.Expect(Part(teacher, "octave")).ToHaveTextAsync("4");
        await Assertions.Expect(Part(teacher, "words")).ToHaveTextAsync("on C");
        await Assertions.Expect(Sheet(teacher).Locator("[data-sounds=yes]")).ToHaveCountAsync(3);
        await Assertions.Expect(Part(teacher, "said")).ToHaveTextAsync(new Regex("^C4, on C; C4 C5 C6$"));
        await teacher.FitsAsync();
        await teacher.LookAsync("on C");
        await teacher.Page.Keyboard.PressAsync("Escape");
        await Assertions.Expect(Sheet(teacher)).ToBeHiddenAsync();
        Assert.Empty(sent);
    }

    [Fact]
    public async Task One_key_records_a_test_that_ends_with_the_sound_and_is_kept_as_a_test_of_this_reed()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "retest");
        await teacher.AllowAsync("microphone");
        var sent = await OpenAsync(teacher, 2);

        // Silence isn't a test.
        await Box(teacher).EvaluateAsync("box => (box.dataset.most = 0.3)");
        await teacher.Page.Keyboard.PressAsync("j");
        await Assertions.Expect(Part(teacher, "state")).ToContainTextAsync("Nothing was heard");
        await teacher.Page.Keyboard.PressAsync("Escape");
        Assert.Empty(sent);

        await Box(teacher).EvaluateAsync("box => (box.dataset.most = 15)");
        var (states, pressed, note) = (await Passing.NoteAsync(Sheet(teacher), "data-now"), await Passing.NoteAsync(teacher.Page.Locator("[data-bench-name=retest]"), "aria-pressed"), await Passing.NoteAsync(Part(teacher, "note")));
        var outcome = await Passing.NoteAsync(Box(teacher).Locator("[data-outcome]"));
        await teacher.Page.Keyboard.PressAsync("j");
        await states.UntilAsync("counting");
        await teacher.LookAsync("counting");
        await states.UntilAsync("sounding");
        await pressed.UntilAsync("true");
        await note.UntilAsync("C");
        await teacher.LookAsync("sounding");
        await outcome.UntilAsync("The test is kept");

        await Assertions.Expect(Sheet(teacher)).ToBeHiddenAsync();
        await teacher.LookAsync("kept");
        var begun = Assert.Single(sent, one => one.Method == "POST" && one.Url.EndsWith("/recordings", StringComparison.Ordinal));
        Assert.Contains("retest=true", begun.PostData, StringComparison.Ordinal);
        var kept = await Assert.Single(sent, one => one.Url.EndsWith("/done", StringComparison.Ordinal)).ResponseAsync();
        var id = (await kept!.JsonAsync())!.Value.GetProperty("id").GetGuid();
        var file = await (await teacher.Page.Context.APIRequest.GetAsync($"{app.Home}recordings/{id}")).BodyAsync();
        var clip = Assert.IsType<DecodeResult.Done>(SoundDecoder.Decode(file, DecodeLimits.Usual)).Clip;
        Assert.InRange(clip.Seconds, 4, 9);
        var heard = PitchTracker.Track(clip.Samples.Span).Frames.Where(frame => frame.IsVoiced).Select(frame => frame.Hertz).Order().ToList();
        Assert.InRange(MadeTones.Cents(heard[heard.Count / 2], FakeMicrophone.Hertz), -1, 1);
    }

    [Fact]
    public async Task A_poor_test_asks_first_and_a_microphone_that_cannot_be_had_is_told()
    {
        await using var teacher = await browser.VisitAsync(app, DemoClinic.Teacher, "retest-poor", 390);
        await teacher.Page.AddInitScriptAsync(SteadyTone);
        var sent = await OpenAsync(teacher, 3);
        await Box(teacher).EvaluateAsync("box => (box.dataset.most = 1)");

        await teacher.Page.Keyboard.PressAsync("j");
        await Assertions.Expect(Sheet(teacher)).ToHaveAttributeAsync("data-now", "poor");
        await Assertions.Expect(Part(teacher, "poor")).ToContainTextAsync("The sound had begun before the count was over");
        Assert.Empty(sent);
        await teacher.FitsAsync();
        await teacher.LookAsync("poor");
        await teacher.Button("Keep it anyway").ClickAsync();
        await Assertions.Expect(Box(teacher).Locator("[data-outcome]")).ToContainTextAsync("The test is kept");

        await teacher.Page.EvaluateAsync("() => { navigator.mediaDevices.getUserMedia = async () => { throw new DOMException('', 'NotAllowedError'); }; }");
        foreach (var key in (string[])["z", "j"])
        {
            await teacher.Page.Keyboard.PressAsync(key);
            await Assertions.Expect(Part(teacher, "state")).ToContainTextAsync("may not use the microphone");
            await teacher.LookAsync($"refused, {key}");
            await teacher.Page.Keyboard.PressAsync("Escape");
            await Assertions.Expect(Sheet(teacher)).ToBeHiddenAsync();
        }
    }

    private static ILocator Box(Visitor teacher) => teacher.Page.Locator("[data-sound]");

    private static ILocator Sheet(Visitor teacher) => teacher.Page.Locator("#sound-sheet");

    private static ILocator Part(Visitor teacher, string name) => Sheet(teacher).Locator($"[data-{name}]");

    // What is sent to the store of recordings from now on.
    private async Task<ConcurrentQueue<IRequest>> OpenAsync(Visitor teacher, int reed)
    {
        await teacher.GoToAsync(await app.BenchOfAsync("Tomas Arden", reed, TestContext.Current.CancellationToken));
        await teacher.LiveAsync();
        await teacher.Page.Locator("html[data-bench-ready][data-sound-ready]").WaitForAsync();
        var sent = new ConcurrentQueue<IRequest>();
        teacher.Page.Request += (_, request) =>
        {
            if (request.Url.Contains("/recordings", StringComparison.Ordinal))
            {
                sent.Enqueue(request);
            }
        };
        return sent;
    }
}
