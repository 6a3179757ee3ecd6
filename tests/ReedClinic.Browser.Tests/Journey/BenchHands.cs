using System.Text.Json;
using Microsoft.Playwright;
using ReedClinic.Browser.Tests.Running;

namespace ReedClinic.Browser.Tests.Journey;

/// <summary>A teacher at the bench by keys alone: every press is counted, and after each what was said is waited for in the log.</summary>
public sealed class BenchHands(Visitor teacher)
{
    /// <summary>Keys pressed since the last one was asked for.</summary>
    public int Keys { get; private set; }

    private IPage Page => teacher.Page;

    private ILocator Line => Page.Locator("#bench-line");

    /// <summary>Opens a reed of a student's batch.</summary>
    public static async Task<BenchHands> OpenAsync(Visitor teacher, string student, int reed)
    {
        await teacher.GoToAsync("/desk");
        await teacher.PressAsync(teacher.Link(student).First, "/batches/[^/]+");
        await teacher.PressAsync(teacher.Link($"Bench: reed {reed}"), "/bench/[^/]+");
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

        foreach (var letter in text)
        {
            Keys++;
            await Page.Keyboard.TypeAsync(letter.ToString());
        }
    }

    /// <summary>Says a line and waits until so many more facts stand in the log.</summary>
    public async Task SayAsync(string text, int facts = 1)
    {
        await TypeAsync(text);
        await DrawnAsync("Enter", facts);
    }

    /// <summary>Presses a key that says something by itself, and waits until it stands in the log.</summary>
    public Task PickAsync(string key, int facts = 1) => DrawnAsync(key, facts);

    /// <summary>Leaves the line, so that single keys work.</summary>
    public async Task LeaveLineAsync()
    {
        if (await Line.EvaluateAsync<bool>("line => line === document.activeElement"))
        {
            await PressAsync("Escape");
        }
    }

    public Task<int> FactsAsync() => Page.Locator(".log-line").CountAsync();

    public ILocator Answer(string kind) => Page.Locator($"#line-answer.{kind}");

    /// <summary>How long each press took until it was drawn, in milliseconds.</summary>
    public async Task<IReadOnlyList<double>> TimesAsync() => [.. (await Page.EvaluateAsync<JsonElement>("window.drawn ?? []")).EnumerateArray().Select(one => one.GetDouble())];

    private async Task DrawnAsync(string key, int facts)
    {
        var wanted = await FactsAsync() + facts;
        await Page.EvaluateAsync(
            """
            wanted => {
              window.drawn ??= [];
              let pressed = 0;
              addEventListener("keydown", () => { pressed = performance.now(); }, { capture: true, once: true });
              const seen = new MutationObserver(() => {
                if (document.querySelectorAll(".log-line").length < wanted) return;
                seen.disconnect();
                window.drawn.push(performance.now() - pressed);
              });
              seen.observe(document.querySelector(".bench"), { childList: true, subtree: true });
            }
            """,
            wanted);
        await PressAsync(key);
        await Assertions.Expect(Page.Locator(".log-line")).ToHaveCountAsync(wanted);
    }

    // A note's letter goes to the line by itself, wherever the hands are.
    private static bool IsNote(char letter) => letter is >= 'a' and <= 'g';
}
