using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>A teacher at the bench by keys alone: every press is counted, and after each what was said is waited for in the log.</summary>
public sealed class BenchHands(Visitor teacher)
{
    private readonly List<double> _times = [];

    /// <summary>Milliseconds between two letters that are typed; as fast as can be unless said otherwise.</summary>
    public float Pace { get; init; }

    /// <summary>Keys pressed since the last one was asked for.</summary>
    public int Keys { get; private set; }

    private IPage Page => teacher.Page;

    private ILocator Line => Page.Locator("#bench-line");

    /// <summary>Finds a reed of a student's batch from the desk, and opens it.</summary>
    public static async Task<BenchHands> OpenAsync(Visitor teacher, string student, int reed)
    {
        await teacher.GoToAsync("/desk");
        await teacher.PressAsync(teacher.Link(student).First, "/batches/[^/]+");
        await teacher.PressAsync(teacher.Link($"Bench: reed {reed}"), "/bench/[^/]+");
        var hands = new BenchHands(teacher);
        await hands.ReadyAsync();
        return hands;
    }

    /// <summary>Opens a reed by its address.</summary>
    public static async Task<BenchHands> OpenAsync(Visitor teacher, ClinicApp app, string student, int reed)
    {
        await teacher.GoToAsync(await app.BenchOfAsync(student, reed, TestContext.Current.CancellationToken));
        var hands = new BenchHands(teacher);
        await hands.ReadyAsync();
        return hands;
    }

    public async Task ReadyAsync()
    {
        await teacher.LiveAsync();
        await Page.Locator("html[data-bench-ready]").WaitForAsync();
    }

    public int TakeKeys()
    {
        var keys = Keys;
        Keys = 0;
        return keys;
    }

    public async Task PressAsync(string key)
    {
        Keys++;
        await Page.Keyboard.PressAsync(key);
    }

    /// <summary>Types into the line, and goes there first if the hands aren't.</summary>
    public async Task TypeAsync(string text)
    {
        if (!await Line.EvaluateAsync<bool>("line => line === document.activeElement") && !IsNote(text[0]))
        {
            await PressAsync("/");
        }

        Keys += text.Length;
        await Page.Keyboard.TypeAsync(text, new() { Delay = Pace });
    }

    /// <summary>Says a line and waits until so many more facts stand in the log.</summary>
    /// <returns>Milliseconds from the press to the frame that shows them.</returns>
    public async Task<double> SayAsync(string text, int facts = 1)
    {
        await TypeAsync(text);
        return await DrawnAsync("Enter", facts);
    }

    /// <summary>Presses a key that says something by itself, and waits until it stands in the log.</summary>
    /// <returns>Milliseconds from the press to the frame that shows it.</returns>
    public Task<double> PickAsync(string key, int facts = 1) => DrawnAsync(key, facts);

    /// <summary>Leaves the line, so that single keys work.</summary>
    public async Task LeaveLineAsync()
    {
        if (await Line.EvaluateAsync<bool>("line => line === document.activeElement"))
        {
            await PressAsync("Escape");
        }
    }

    /// <summary>Until a question that has just come has been there long enough to be answered.</summary>
    public Task AnswerableAsync() => Page.EvaluateAsync(
        "() => new Promise(done => { const since = performance.now(); const wait = now => now - since > 700 ? done() : requestAnimationFrame(wait); requestAnimationFrame(wait); })");

    public Task<int> FactsAsync() => Page.Locator(".log-line").CountAsync();

    public ILocator Answer(string kind) => Page.Locator($"#line-answer.{kind}");

    /// <summary>How long each press took until it was drawn, in milliseconds.</summary>
    public IReadOnlyList<double> Times => _times;

    // Drawn is the end of the first frame after the log has them all.
    private async Task<double> DrawnAsync(string key, int facts)
    {
        await Page.EvaluateAsync(
            """
            facts => {
              const lines = () => document.querySelectorAll(".log-line").length;
              const wanted = lines() + facts;
              let pressed = 0;
              addEventListener("keydown", () => { pressed = performance.now(); }, { capture: true, once: true });
              window.drawn = new Promise((done, fail) => {
                const late = setTimeout(() => fail(new Error(`${lines()} lines in the log, not ${wanted}; ${document.getElementById("line-answer").textContent}`)), 60_000);
                const seen = new MutationObserver(() => {
                  if (lines() < wanted) return;
                  seen.disconnect();
                  clearTimeout(late);
                  const after = new MessageChannel();
                  after.port1.onmessage = () => done(performance.now() - pressed);
                  requestAnimationFrame(() => after.port2.postMessage(0));
                });
                seen.observe(document.querySelector(".bench"), { childList: true, subtree: true });
              });
              window.drawn.catch(() => {});
            }
            """,
            facts);
        await PressAsync(key);
        _times.Add(await Page.EvaluateAsync<double>("window.drawn"));
        return _times[^1];
    }

    // A note's letter goes to the line by itself, wherever the hands are.
    private static bool IsNote(char letter) => letter is >= 'a' and <= 'g';
}
