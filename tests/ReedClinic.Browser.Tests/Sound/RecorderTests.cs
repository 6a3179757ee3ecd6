using System.Buffers.Binary;
using System.Globalization;
using System.Security.Cryptography;
using System.Text.RegularExpressions;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;
using ReedClinic.Measurement.Sound.Decoding;
using ReedClinic.Measurement.Sound.Tracking;

namespace ReedClinic.Browser.Tests.Sound;

/// <summary>Recording in the page (W3C Media Capture and Streams, Web Audio), with a microphone that hears a made crow.</summary>
public sealed class RecorderTests(OneBrowser browser, DemoClinic app) : IClassFixture<DemoClinic>
{
    private const string SumOfTheTake =
        "async box => [...new Uint8Array(await crypto.subtle.digest('SHA-256', await box.closest('form').recorded.arrayBuffer()))].map(one => one.toString(16).padStart(2, '0')).join('')";

    private static readonly object[][] Poor =
    [
        [0.0005, 0.0, 1.0, -70, -70, "nothing"],
        [2.0, 0.5, 2.5, -70, -70, "clipped"],
        [0.006, 0.5, 2.5, -70, -70, "quiet"],
        [0.3, 0.0, 2.5, -70, -70, "begun"],
        [0.3, 0.0, 2.5, -70, -13.5, "begun"], // while it was counted somebody played already
        [0.3, 0.0, 3.0, -35, -13.5, "begun"],
        [0.3, 0.0, 0.3, -70, -13.5, "begun short"],
        [0.3, 0.5, 2.5, -28, -28, "noisy"],
        [0.0, 0.5, 2.5, -28, -28, "noisy"],
        [0.3, 0.5, 0.8, -70, -70, "short"],
        [0.3, 0.5, 2.5, -70, -70, ""],
    ];

    [Fact]
    public async Task A_take_is_counted_in_stops_by_itself_is_looked_over_heard_and_kept_as_it_sounded()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Sender, "record-390", 390);
        await student.AllowAsync("microphone");
        await OpenAsync(student);
        await student.LookAsync("idle");
        await Box(student).EvaluateAsync("box => (box.dataset.most = 8)");

        var (states, counts, level) = (await StatesAsync(student), await Passing.NoteAsync(Box(student).Locator("[data-count]")), await Passing.NoteAsync(Box(student).Locator("[data-level]").Last, "data-level"));
        await Press(student, "record").ClickAsync();
        await counts.UntilAsync("2");
        await student.LookAsync("counting");
        await level.UntilAsync("well");
        await student.LookAsync("sounding");
        await Now(student, "looked");

        Assert.Equal(["idle", "asking", "counting", "sounding", "looked"], await states.ShownAsync());
        Assert.Equal(["", "3", "2", "1"], await counts.ShownAsync());
        await Assertions.Expect(Told(student)).ToContainTextAsync("The 15 seconds are over. A good take.");
        await Press(student, "listen").ClickAsync();
        await Assertions.Expect(Press(student, "listen")).ToHaveTextAsync("Stop listening");
        await student.FitsAsync();
        await student.LookAsync("looked over");
        var taken = await Box(student).EvaluateAsync<string>(SumOfTheTake);
        var place = await KeptAsync(student);
        var sound = place.Locator("audio");

        var file = await (await student.Page.Context.APIRequest.GetAsync(new Uri(app.Home, await sound.GetAttributeAsync("src")).ToString())).BodyAsync();
        Assert.Equal(taken, Convert.ToHexStringLower(SHA256.HashData(file)));
        Assert.Equal((1, 48_000, 16), (BinaryPrimitives.ReadInt16LittleEndian(file.AsSpan(22)), BinaryPrimitives.ReadInt32LittleEndian(file.AsSpan(24)), BinaryPrimitives.ReadInt16LittleEndian(file.AsSpan(34))));
        var clip = Assert.IsType<DecodeResult.Done>(SoundDecoder.Decode(file, DecodeLimits.Usual)).Clip;
        var heard = PitchTracker.Track(clip.Samples.Span).Frames.Where(frame => frame.IsVoiced).Select(frame => frame.Hertz).Order().ToList();
        Assert.InRange(heard.Count, 300, 700); // a busy machine may drop some of what sounds before the page has it
        Assert.InRange(MadeTones.Cents(heard[heard.Count / 2], FakeMicrophone.Hertz), -1, 1);
        await SaysAndGoesAsync(student, place);
    }

    [Fact]
    public async Task A_microphone_that_is_gone_before_anything_was_heard_is_told_and_another_try_works()
    {
        await using var student = await browser.VisitAsync(app, DemoClinic.Sender, "record-gone");
        await student.AllowAsync("microphone");
        await student.Page.AddInitScriptAsync(
            "const ask = navigator.mediaDevices.getUserMedia.bind(navigator.mediaDevices); let asked = 0; navigator.mediaDevices.getUserMedia = async (what) => { const all = await ask(what); if (asked++ === 0) all.getTracks().forEach((one) => one.stop()); return all; };");
        await OpenAsync(student);

        await Press(student, "record").ClickAsync();
        await Now(student, "idle", "The microphone is gone.");
        var states = await StatesAsync(student);
        await Press(student, "record").First.ClickAsync();
        await states.UntilAsync("counting");
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
                async ([size, from, to, hiss, room]) => {
                  const { check } = await import('/js/sound/check.js');
                  const rate = 48000;
                  const noise = (Math.sqrt(12) * 10 ** (hiss / 20));
                  let state = 1;
                  const samples = Float32Array.from({ length: 3 * rate }, (_, i) => {
                    state = (Math.imul(state, 1664525) + 1013904223) | 0;
                    const tone = i >= from * rate && i < to * rate ? size * Math.sin((2 * Math.PI * 440 * i) / rate) : 0;
                    return Math.max(-1, Math.min(1, tone + (noise * state) / 2 ** 32));
                  });
                  return check({ samples, rate, room }).join(' ');
                }
                """,
                one[..5]);

            Assert.Equal((string)one[5], said);
        }
    }

    private static async Task<ILocator> KeptAsync(Visitor student)
    {
        // The connection goes twice and comes back; then the server has no room, and later it has.
        await student.Page.EvaluateAsync(
            """
            () => {
              const [go, answers] = [window.fetch, [() => Promise.reject(new TypeError('')), () => Promise.reject(new TypeError('')), () => Promise.resolve(new Response('', { status: 507 }))]];
              window.fetch = (address, options) => (address === '/recordings' && answers.length > 0 ? answers.shift()() : go(address, options));
            }
            """);
        var told = await Passing.NoteAsync(Told(student));
        await Press(student, "keep").ClickAsync();
        await told.UntilAsync("It goes on from here as soon as it is back");
        await Now(student, "looked", "Nothing is lost: press the button again");
        await Assertions.Expect(student.Page.Locator("[data-problem]:visible")).ToHaveCountAsync(0);
        await student.LookAsync("not sent");
        await Press(student, "keep").ClickAsync();

        // The page comes back at the place, and says so.
        var place = student.Page.Locator("li.just-kept");
        await Assertions.Expect(place.GetByText("This is kept.")).ToBeInViewportAsync();
        await student.FitsAsync();
        await student.LookAsync("kept");
        return place;
    }

    private static async Task SaysAndGoesAsync(Visitor student, ILocator place)
    {
        // What it says; then it goes, after it was asked.
        var says = await place.GetByRole(AriaRole.Link, new() { NameRegex = new Regex("^What was measured in it") }).GetAttributeAsync("href");
        await student.GoToAsync(says!);
        await student.Page.Locator("[data-reading=Read]").WaitForAsync();
        await Assertions.Expect(student.Page.Locator(".verdict")).ToHaveTextAsync(new Regex("12 cents above C"));
        await student.LookAsync("what it says");
        await PlayHeadAsync(student);
        await student.Page.GoBackAsync();
        await place.Locator("summary", new() { HasText = "Remove" }).ClickAsync();
        await Assertions.Expect(place.GetByText("It goes for good")).ToBeVisibleAsync();
        await student.LookAsync("asked");
        await place.Locator("button", new() { HasText = "Remove it for good" }).ClickAsync();
        await Assertions.Expect(student.Page.GetByText("It is removed.")).ToBeInViewportAsync();
        await Assertions.Expect(student.Page.Locator($"[href='{says}']")).ToHaveCountAsync(0);
    }

    // By keyboard, by a press on a plot, and while it plays: where the line stands is where the sound is.
    private static async Task PlayHeadAsync(Visitor student)
    {
        var heads = student.Page.Locator(".play-head:visible");
        await Assertions.Expect(heads).ToHaveCountAsync(0);
        await student.Page.Locator("#place").FocusAsync();
        await student.Page.Keyboard.PressAsync("End");
        await Assertions.Expect(heads).ToHaveCountAsync(2);
        Assert.Equal(1, await ShareAsync(), 0.001);

        var plot = student.Page.Locator("[aria-labelledby=pitch-title] [data-plot]:visible");
        var box = (await plot.BoundingBoxAsync())!;
        var (left, right) = (double.Parse((await plot.GetAttributeAsync("data-left"))!, CultureInfo.InvariantCulture), double.Parse((await plot.GetAttributeAsync("data-right"))!, CultureInfo.InvariantCulture));
        await plot.ClickAsync(new() { Position = new() { X = (float)(box.Width * (left + (0.25 * (right - left)))), Y = box.Height / 2 } });
        Assert.Equal(0.25, await ShareAsync(), 0.01);
        var seconds = double.Parse((await student.Page.Locator("[data-seconds]").GetAttributeAsync("data-seconds"))!, CultureInfo.InvariantCulture);
        Assert.Equal(seconds / 4, await student.Page.EvaluateAsync<double>("document.querySelector('[data-sound]').currentTime"), 0.05 * seconds);

        await student.Page.EvaluateAsync("document.querySelector('[data-sound]').play()");
        await student.Page.WaitForFunctionAsync("since => document.querySelector('[data-sound]').currentTime > since", 0.3 * seconds);
        await student.Page.EvaluateAsync("document.querySelector('[data-sound]').pause()");
        await student.Page.WaitForFunctionAsync("""
            () => {
              const [sound, plot] = [document.querySelector('[data-sound]'), document.querySelector('[data-plot]')];
              const [left, right, at] = [Number(plot.dataset.left), Number(plot.dataset.right), parseFloat(plot.querySelector('.play-head').style.left) / 100];
              return Math.abs((at - left) / (right - left) - sound.currentTime / Number(document.querySelector('[data-seconds]').dataset.seconds)) < 0.001;
            }
            """);
        await student.ShotAsync("while it plays");

        async Task<double> ShareAsync() => await student.Page.EvaluateAsync<double>(
            "(() => { const plot = document.querySelector('[data-plot]'); const [left, right] = [Number(plot.dataset.left), Number(plot.dataset.right)]; return (parseFloat(plot.querySelector('.play-head').style.left) / 100 - left) / (right - left); })()");
    }

    private static ILocator Box(Visitor student) => student.Page.Locator("[data-recorder]").First;

    private static ILocator Press(Visitor student, string what) => Box(student).Locator($"button[data-press={what}]:visible");

    private static ILocator Told(Visitor student) => Box(student).Locator("[data-told]");

    private static Task<Passing> StatesAsync(Visitor student) => Passing.NoteAsync(Box(student), "data-now");

    private static async Task Now(Visitor student, string what, string? told = null)
    {
        if (told is not null)
        {
            await Assertions.Expect(Told(student)).ToContainTextAsync(told);
        }

        await Assertions.Expect(Box(student)).ToHaveAttributeAsync("data-now", what);
    }

    // The count is over, and so is a good part of the crow.
    private static Task SoundedAsync(Visitor student) =>
        Assertions.Expect(Box(student).Locator("[data-time]:visible")).ToHaveTextAsync(new Regex("0:(0[5-9]|1[0-5]) of 0:15"));

    private static async Task OpenAsync(Visitor student)
    {
        await student.GoToAsync("/");
        await student.PressAsync(student.Page.Locator("main a[href^='/batches/']").First, thenAt: "/batches/[^/]+");
        await student.Page.Locator("html[data-records]").WaitForAsync();
        await student.Page.Locator("summary", new() { HasText = "Add a sound: before you post it" }).First.ClickAsync();
        await Box(student).ScrollIntoViewIfNeededAsync();
    }
}
