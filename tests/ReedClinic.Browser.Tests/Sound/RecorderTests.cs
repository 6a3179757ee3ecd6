using System.Buffers.Binary;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Browser.Tests.Sound;

/// <summary>Recording in the page (W3C Media Capture and Streams, Web Audio), with a microphone that hears a made crow.</summary>
public sealed class RecorderTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private static readonly object[][] Poor =
    [
        [0.0005, 0.0, 1.0, -70, "nothing"],
        [2.0, 0.5, 2.5, -70, "clipped"],
        [0.006, 0.5, 2.5, -70, "quiet"],
        [0.3, 0.0, 2.5, -70, "begun"],
        [0.3, 0.5, 2.5, -28, "noisy"],
        [0.3, 0.5, 0.8, -70, "short"],
        [0.3, 0.5, 2.5, -70, ""],
    ];

    [Fact]
    public async Task A_take_is_counted_in_stops_by_itself_is_looked_over_heard_and_kept_as_it_sounded()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Sender, "record-390", 390);
        await student.AllowAsync("microphone");
        await OpenAsync(student);
        await student.LookAsync("idle");
        await Box(student).EvaluateAsync("box => (box.dataset.most = 8)");

        await Press(student, "record").ClickAsync();
        await Now(student, "counting");
        await Assertions.Expect(Box(student).Locator("[data-count]")).ToHaveTextAsync("2");
        await student.LookAsync("counting");
        await Now(student, "sounding");
        await Box(student).Locator("[data-level=well]").Last.WaitForAsync();
        await student.LookAsync("sounding");
        await Now(student, "looked");

        await Assertions.Expect(Told(student)).ToContainTextAsync("The 15 seconds are over. A good take.");
        await Press(student, "listen").ClickAsync();
        await Assertions.Expect(Press(student, "listen")).ToHaveTextAsync("Stop listening");
        await student.FitsAsync();
        await student.LookAsync("looked over");
        await Press(student, "keep").ClickAsync();
        var sound = student.Page.Locator("figure.recording audio").First;
        await sound.WaitForAsync();

        var file = await (await student.Page.Context.APIRequest.GetAsync(new Uri(app.Home, await sound.GetAttributeAsync("src")).ToString())).BodyAsync();
        Assert.Equal((1, 48_000, 16), (BinaryPrimitives.ReadInt16LittleEndian(file.AsSpan(22)), BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(24)), BinaryPrimitives.ReadInt16LittleEndian(file.AsSpan(34))));
        var clip = Assert.IsType<DecodeResult.Done>(SoundDecoder.Decode(file, DecodeLimits.Usual)).Clip;
        var heard = PitchTracker.Track(clip.Samples.Span).Frames.Where(frame => frame.IsVoiced).Select(frame => frame.Hertz).Order().ToList();
        Assert.InRange(heard.Count, 500, 700);
        Assert.InRange(MadeTones.Cents(heard[heard.Count / 2], FakeMicrophone.Hertz), -1, 1);
    }

    [Fact]
    public async Task By_the_keyboard_on_a_small_phone_a_take_is_begun_ended_and_taken_again_and_silence_is_not_kept()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Sender, "record-320", 320);
        await student.AllowAsync("microphone");
        await OpenAsync(student);
        await student.Page.EvaluateAsync("document.documentElement.dataset.lamp = 'on'");
        await Box(student).EvaluateAsync("box => (box.dataset.most = 0.3)");
        await student.TabToAsync(Press(student, "record").First);
        await student.Page.Keyboard.PressAsync("Enter");
        await Now(student, "idle", "Nothing was heard");
        await student.LookAsync("silence, by lamp");

        // The focus goes along: Enter begins again, and Enter ends it.
        await Box(student).EvaluateAsync("box => (box.dataset.most = 15)");
        await Assertions.Expect(Press(student, "record").First).ToBeFocusedAsync();
        await student.Page.Keyboard.PressAsync("Enter");
        await SoundedAsync(student);
        await student.Page.Keyboard.PressAsync("Enter");
        await Now(student, "looked");
        await Assertions.Expect(Press(student, "keep")).ToBeFocusedAsync();
        await student.FitsAsync();
        await student.LookAsync("looked over, by lamp");
        await student.TabToAsync(Press(student, "leave").Last);
        await student.Page.Keyboard.PressAsync("Enter");
        await Now(student, "idle");
    }

    [Fact]
    public async Task Without_a_microphone_plain_words_say_why_and_a_file_can_be_sent()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Sender, "record-refused");
        await student.AllowAsync("microphone");
        await student.Page.AddInitScriptAsync(
            "const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices); navigator.mediaDevices.getUserMedia = async (what) => (window.heard = await ask(window.asked = what));");
        await OpenAsync(student);

        // Pulled out half way: what was heard until then is there.
        await Press(student, "record").ClickAsync();
        await SoundedAsync(student);
        Assert.Equal("false,false,false", await student.Page.EvaluateAsync<string>("[window.asked.audio.echoCancellation, window.asked.audio.noiseSuppression, window.asked.audio.autoGainControl].join()"));
        await student.Page.EvaluateAsync("window.heard.getAudioTracks()[0].dispatchEvent(new Event('ended'))");
        await Now(student, "looked", "The microphone is gone. What was heard until then is here");
        await Press(student, "leave").Last.ClickAsync();

        foreach (var (name, words) in new[]
        {
            ("NotAllowedError", "may not use the microphone"), ("NotFoundError", "No microphone was found"), ("NotReadableError", "Another program may be using it"),
        })
        {
            await student.Page.EvaluateAsync("name => { navigator.mediaDevices.getUserMedia = async () => { throw new DOMException('', name); }; }", name);
            await Press(student, "record").First.ClickAsync();
            await Now(student, "idle", words);
            await Assertions.Expect(Told(student)).ToContainTextAsync("send a file");
            await Assertions.Expect(student.Field("Sound file").First).ToBeVisibleAsync();
            await student.LookAsync(name);
        }
    }

    [Fact]
    public async Task A_poor_take_says_why()
    {
        await using var student = await browser.VisitAsync(app.Home, "record-poor");
        await student.GoToAsync("/");
        foreach (var one in Poor)
        {
            var said = await student.Page.EvaluateAsync<string>(
                """
                async ([size, from, to, room]) => {
                  const { check } = await import('/js/sound/check.js');
                  const rate = 48000;
                  const noise = (Math.sqrt(12) * 10 ** (room / 20));
                  let state = 1;
                  const samples = Float32Array.from({ length: 3 * rate }, (_, i) => {
                    state = (Math.imul(state, 1664525) + 1013904223) | 0;
                    const tone = i >= from * rate && i < to * rate ? size * Math.sin((2 * Math.PI * 440 * i) / rate) : 0;
                    return Math.max(-1, Math.min(1, tone + (noise * state) / 2 ** 32));
                  });
                  return check({ samples, rate, room }).join(' ');
                }
                """,
                one[..4]);

            Assert.Equal((string)one[4], said);
        }
    }

    private static ILocator Box(Visitor student) => student.Page.Locator("[data-recorder]").First;

    private static ILocator Press(Visitor student, string what) => Box(student).Locator($"button[data-press={what}]:visible");

    private static ILocator Told(Visitor student) => Box(student).Locator("[data-told]");

    private static async Task Now(Visitor student, string what, string? told = null)
    {
        if (told is not null)
        {
            await Assertions.Expect(Told(student)).ToContainTextAsync(told);
        }

        await Assertions.Expect(Box(student)).ToHaveAttributeAsync("data-now", what, new() { Timeout = 20_000 });
    }

    // The count is over, and so is a good part of the crow.
    private static Task SoundedAsync(Visitor student) =>
        Assertions.Expect(Box(student).Locator("[data-time]:visible")).ToHaveTextAsync(new Regex("0:0[5-9] of 0:15"), new() { Timeout = 20_000 });

    private static async Task OpenAsync(Visitor student)
    {
        await student.GoToAsync("/");
        await student.PressAsync(student.Page.Locator("main a[href^='/batches/']").First, thenAt: "/batches/[^/]+");
        await student.Page.Locator("html[data-records]").WaitForAsync();
        await student.Page.Locator("summary", new() { HasText = "Add a sound: as it came" }).First.ClickAsync();
        await Box(student).ScrollIntoViewIfNeededAsync();
    }
}
